package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.HandLimits;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.closest.ClosestFigure;
import java.util.Arrays;
import org.hipparchus.linear.EigenDecompositionNonSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UntimedTest {
    private static Orbit drawn(String motion, double tempo) {
        return ClosestFigure.of(
                        Trace.of(
                                Phrase.parse(motion + " vs static spin, tempo " + tempo).pairing()),
                        Side.LEFT,
                        Kit.USUAL)
                .orbit();
    }

    private static UntimedLaw law(Orbit orbit) {
        return UntimedLaw.of(MeantMotion.of(orbit));
    }

    private static int back(UntimedRun hand, UntimedLaw law, double slip) {
        int back = 0;
        for (int i = 0; i < 16; i++) {
            int begun = i / 2 * law.steps() / 8;
            back += hand.run(begun, i % 2 == 0 ? slip : -slip, 0, 1 + i).held() ? 1 : 0;
        }
        return back;
    }

    /** A motion begun a little later is as good a motion: its slip stays what it is. */
    @ParameterizedTest
    @CsvSource({"isolation, 75", "triquetra, 60", "CAP, 60", "toroid, 60"})
    void aPoiThatIsOnlyLateStaysAsLate(String motion, double tempo) {
        UntimedLaw law = UntimedLaw.of(MeantMotion.of(drawn(motion, tempo), 4));
        for (int i = 0; i < law.steps(); i++) {
            double[] next = new double[UntimedLaw.SLIP];
            law.step(i, law.late(i), 0, law.jerk(i), 0, next, 0);
            double[] late = law.late((i + 1) % law.steps());
            double size = Math.sqrt(Arrays.stream(late).map(x -> x * x).sum());
            for (int k = 0; k < UntimedLaw.SLIP; k++) {
                assertThat(next[k]).as("%d of %d", k, i).isCloseTo(late[k], within(2e-3 * size));
            }
            assertThat(law.lateBy(i, law.late(i), 0)).isCloseTo(1, within(1e-12));
        }
    }

    /** With the hand on its path a slip is the poi's own, whose growth another method finds. */
    @ParameterizedTest
    @CsvSource({"isolation, 75", "triquetra, 60", "horizontal cat-eye, 90"})
    void behindAHandThatMindsNothingASlipGrowsAsItsSteadinessSays(String motion, double tempo) {
        Orbit orbit = drawn(motion, tempo);
        UntimedLaw law = UntimedLaw.of(MeantMotion.of(orbit, 2));
        RealMatrix cycle = MatrixUtils.createRealIdentityMatrix(4);
        for (int i = 0; i < law.steps(); i++) {
            RealMatrix step = MatrixUtils.createRealMatrix(4, 4);
            for (int k = 0; k < 4; k++) {
                for (int j = 0; j < 4; j++) {
                    step.setEntry(k, j, law.own(i)[(6 + k) * UntimedLaw.SLIP + 6 + j]);
                }
            }
            cycle = step.multiply(cycle);
        }
        double most =
                Arrays.stream(new EigenDecompositionNonSymmetric(cycle).getEigenvalues())
                        .mapToDouble(e -> e.norm())
                        .max()
                        .orElseThrow();
        double growth = Steadiness.of(orbit).growth();
        assertThat(most).isCloseTo(growth, within(2e-3 * growth));
    }

    /** With air, drag is in it too. */
    @Test
    void dragSlowsASlip() {
        Trace trace = Spun.extension(0.4, 0.8);
        Kit kit = Kit.USUAL.withAir(true).withHeadDiameter(0.2);
        Orbit orbit = ClosestFigure.of(trace, Side.LEFT, kit).orbit();
        UntimedLaw law = UntimedLaw.of(MeantMotion.of(orbit, 2));
        double volume = 1;
        for (int i = 0; i < law.steps(); i++) {
            RealMatrix step = MatrixUtils.createRealMatrix(4, 4);
            for (int k = 0; k < 4; k++) {
                for (int j = 0; j < 4; j++) {
                    step.setEntry(k, j, law.own(i)[(6 + k) * UntimedLaw.SLIP + 6 + j]);
                }
            }
            volume *= new org.hipparchus.linear.LUDecomposition(step).getDeterminant();
        }
        double product =
                Steadiness.of(orbit).multipliers().stream()
                        .mapToDouble(m -> m.norm())
                        .reduce(1, (a, b) -> a * b);
        assertThat(product).isLessThan(0.9);
        assertThat(volume).isCloseTo(product, within(1e-3));
    }

    /** Who knows the motion and feels slips as they are answers as if at once (Smith, 1957). */
    @Test
    void toWhomFeelsSlipsAsTheyAreTheDelayDoesNotMatter() {
        UntimedLaw law = law(drawn("isolation", 90));
        double[][] gains = UntimedAnswer.gains(law, 12);
        double soon = new UntimedAnswer(law, gains, 0.05).left(0);
        assertThat(soon).isLessThan(0.3);
        assertThat(new UntimedAnswer(law, gains, 0.3).left(0)).isCloseTo(soon, within(0.01));
        double unsure = new UntimedAnswer(law, gains, 0.3).left(0.1);
        assertThat(unsure).isGreaterThan(2 * soon);
        assertThat(new UntimedAnswer(law, gains, 0.5).left(0.1)).isGreaterThan(1.5 * unsure);
    }

    /** Small slips, senses as they are, no limits: a cycle of the run leaves what the law says. */
    @ParameterizedTest
    @CsvSource({"isolation, 75", "isolation, 120", "triquetra, 60", "four-petal antispin, 60"})
    void theSimulationAgreesWithTheSlipsEquation(String motion, double tempo) {
        UntimedLaw law = UntimedLaw.of(MeantMotion.of(drawn(motion, tempo), 4));
        HandLimits free = HandLimits.USUAL.withPace(1000, 1e5).withLeave(10);
        double[][] gains = UntimedAnswer.gains(law, 8);
        double[][] none = new double[gains.length][UntimedLaw.SLIP * UntimedLaw.PUSH];
        double delay = 0.213;
        assertThat(new UntimedAnswer(law, gains, delay).left(0)).isLessThan(0.9);
        double[] cycles = new UntimedRun(law, gains, delay, free).run(0, 1e-3, 0, 0).cycles();
        assertThat(cycles[1]).isLessThan(0.9 * cycles[0]);
        double[] alone = new UntimedRun(law, none, delay, free).run(0, 1e-3, 0, 0).cycles();
        assertThat(alone[1]).as("%s", Arrays.toString(alone)).isGreaterThan(1.3 * cycles[1]);
    }

    /** What spinners do every day (common practice, no source). */
    @ParameterizedTest
    @ValueSource(doubles = {60, 75, 90, 120})
    void anIsolationIsHeldAtTheTempiThatPeopleSpinIt(double tempo) {
        Correction correction = Correction.of(drawn("isolation", tempo));
        assertThat(correction.verdict()).isNotEqualTo(Correction.Verdict.LOST);
        assertThat(correction.recovers()).isGreaterThanOrEqualTo(tempo > 100 ? 0.005 : 0.01);
        // At 120 there is no time to lose.
        assertThat(correction.longest()).isBetween(tempo > 100 ? 0.213 : 0.22, 0.55);
    }

    @Test
    void itIsLostToWhoLooksTooLate() {
        Orbit orbit = drawn("isolation", 90);
        double longest = Correction.of(orbit).longest();
        Correction late = Correction.of(orbit, longest + 0.15, HandLimits.USUAL);
        assertThat(late.verdict()).isEqualTo(Correction.Verdict.LOST);
        assertThat(late.recovers()).isLessThan(Correction.ENOUGH);
    }

    /** The hand goes on from where the poi is: what was lost is time, not the figure. */
    @Test
    void theTimingGives() {
        UntimedLaw law = law(drawn("isolation", 90));
        UntimedRun hand =
                new UntimedRun(law, UntimedAnswer.gains(law, 12), 0.213, HandLimits.USUAL);
        UntimedRun.Run run = hand.run(0, 0.02, 0, 0);
        assertThat(run.held()).isTrue();
        // So late its head is 2 cm from where it would be.
        assertThat(run.given()).isBetween(0.004, 0.15);
        assertThat(run.last()).isLessThan(0.01);
    }

    /** Or that may not leave its path. */
    @Test
    void aSlowHandCatchesLessAndSoDoesOneThatKeepsToItsPath() {
        UntimedLaw law = law(drawn("isolation", 120));
        double[][] gains = UntimedAnswer.gains(law, 12);
        HandLimits sluggish = HandLimits.USUAL.withPace(5, 2);
        HandLimits close = HandLimits.USUAL.withLeave(0.01);
        assertThat(back(new UntimedRun(law, gains, 0.213, HandLimits.USUAL), law, 0.01))
                .isGreaterThanOrEqualTo(14);
        assertThat(back(new UntimedRun(law, gains, 0.213, sluggish), law, 0.01))
                .isLessThanOrEqualTo(8);
        assertThat(back(new UntimedRun(law, gains, 0.213, close), law, 0.01))
                .isLessThanOrEqualTo(11);
    }

    /** The cord of a slow isolation hardly pulls at its top: it comes slack, and is caught. */
    @Test
    void aSlipThatSlackensTheCordIsCaughtAgain() {
        UntimedLaw law = law(drawn("isolation", 60));
        UntimedRun hand =
                new UntimedRun(law, UntimedAnswer.gains(law, 12), 0.213, HandLimits.USUAL);
        assertThat(back(hand, law, 0.02)).isGreaterThanOrEqualTo(14);
    }
}
