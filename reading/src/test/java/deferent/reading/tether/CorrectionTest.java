package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.HandLimits;
import deferent.motion.pairing.Motion;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.closest.ClosestFigure;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.CancellationException;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CorrectionTest {
    private static final HandLimits NO_LIMITS = HandLimits.USUAL.withPace(1000, 1e5).withLeave(10);

    private static double[] even(double period, int steps) {
        double[] times = new double[steps + 1];
        for (int i = 0; i <= steps; i++) {
            times[i] = period * i / steps;
        }
        return times;
    }

    /** x″ = a·x + b·u, the same all the time. */
    private static SlipLaw steady(double a, double b, double period, int steps) {
        return SlipLaw.of(
                1,
                even(period, steps),
                (time, before) -> new SlipLaw.Rates(new double[] {a}, new double[] {0}, b));
    }

    private static KeepTheFigure kept(String motion, double tempo) {
        return KeepTheFigure.of(
                Trace.of(Phrase.parse(motion + " vs static spin, tempo " + tempo).pairing()),
                Side.LEFT,
                Kit.USUAL);
    }

    private static Orbit behindItsHand(String motion, double tempo) {
        return KeepTheHandPath.of(
                        Trace.of(
                                Phrase.parse(motion + " vs static spin, tempo " + tempo).pairing()),
                        Side.LEFT,
                        Kit.USUAL)
                .best()
                .orElseThrow()
                .orbit();
    }

    private static SlipLaw inPlane(Orbit orbit) {
        return SlipLaw.planar(MeantMotion.of(orbit), true);
    }

    /**
     * The roots of s² − a + b(P + D·s)e^{−sτ} are what the method's multipliers e^{sT} say, and by
     * the argument principle none lies further right.
     */
    @ParameterizedTest
    @CsvSource({"20, 20, 1.2, 0.25, 0.2", "-30, 10, -0.5, 0.1, 0.15", "45, 45, 1.05, 0.2, 0.23"})
    void anAnswerToASlipThatGrowsEvenlyHasTheCharacteristicEquationsRoots(
            double a, double b, double place, double speed, double delay) {
        double period = 0.3;
        DelayedAnswer late = new DelayedAnswer(steady(a, b, period, 240), delay);
        Complex[] multipliers = late.multipliers(new Gains(place, speed));
        double nearest = Double.POSITIVE_INFINITY;
        for (int turns = -1; turns <= 1; turns++) {
            Complex s =
                    multipliers[0].log().add(new Complex(0, 2 * Math.PI * turns)).divide(period);
            nearest = Math.min(nearest, characteristic(s, a, b, place, speed, delay).norm());
        }
        assertThat(nearest).as("%s", multipliers[0]).isLessThan(1e-4 * Math.abs(a));
        double rightmost = Math.log(multipliers[0].norm()) / period;
        assertThat(rootsRightOf(rightmost + 0.05, a, b, place, speed, delay)).isZero();
        assertThat(rootsRightOf(rightmost - 0.05, a, b, place, speed, delay)).isPositive();
    }

    private static Complex characteristic(
            Complex s, double a, double b, double place, double speed, double delay) {
        return s.multiply(s)
                .subtract(a)
                .add(s.multiply(speed).add(place).multiply(b).multiply(s.multiply(-delay).exp()));
    }

    /**
     * Turns of the characteristic function round the half plane's edge, by steps of a rectangle.
     */
    private static long rootsRightOf(
            double edge, double a, double b, double place, double speed, double delay) {
        double far = 400;
        Complex[] corners = {
            new Complex(edge, -far),
            new Complex(edge + far, -far),
            new Complex(edge + far, far),
            new Complex(edge, far),
            new Complex(edge, -far)
        };
        double turned = 0;
        for (int side = 0; side < 4; side++) {
            int steps = 40_000;
            Complex last = characteristic(corners[side], a, b, place, speed, delay);
            for (int i = 1; i <= steps; i++) {
                Complex s =
                        corners[side].add(
                                corners[side + 1]
                                        .subtract(corners[side])
                                        .multiply((double) i / steps));
                Complex next = characteristic(s, a, b, place, speed, delay);
                turned += next.divide(last).getArgument();
                last = next;
            }
        }
        return Math.round(turned / (2 * Math.PI));
    }

    /**
     * x″ + (δ + ε·cos t)x = b·x(t − 2π): a multiplier is 1 where δ − b is Mathieu's characteristic
     * value of a solution of period 2π, so that the chart's edges are straight lines (Insperger and
     * Stépán, Proc. R. Soc. Lond. A 458 (2002)). With t = 2τ, a = 4δ and q = 2ε; values from
     * Abramowitz and Stegun, table 20.1.
     */
    @ParameterizedTest
    @CsvSource({
        "5, -5.800046021, 0.3",
        "5, 2.099460445, -0.2",
        "5, 7.449109740, 0.15",
        "1, -0.455138604, 0.4"
    })
    void theDelayedMathieuEquationsEdgesAreStraight(double q, double value, double b) {
        double delta = value / 4 + b;
        SlipLaw law =
                SlipLaw.of(
                        1,
                        even(2 * Math.PI, 400),
                        (t, before) ->
                                new SlipLaw.Rates(
                                        new double[] {-(delta + q / 2 * Math.cos(t))},
                                        new double[] {0},
                                        1));
        Complex[] multipliers = new DelayedAnswer(law, 2 * Math.PI).multipliers(new Gains(-b, 0));
        assertThat(multipliers)
                .anySatisfy(m -> assertThat(m.subtract(1).norm()).as("%s", m).isLessThan(1e-6));
    }

    /**
     * A slip of x″ = a·x + b·u is held by an answer to place and speed up to a delay of √(2/a) and
     * no longer (Stépán, Phil. Trans. R. Soc. A 367 (2009)). A weightless isolation's a is Ω²R/L.
     */
    @ParameterizedTest
    @CsvSource({"60, 0.3183", "75, 0.2546", "90, 0.2122"})
    void aWeightlessIsolationIsHeldUpToTheCriticalDelay(double tempo, double critical) {
        Trace isolation = Spun.isolation(60 / tempo);
        SlipLaw law =
                inPlane(
                        KeepTheFigure.of(
                                        isolation,
                                        Side.LEFT,
                                        Cord.of(isolation, Side.LEFT, Kit.USUAL, 0))
                                .orbit());
        double expected = Math.sqrt(2 / 0.5) / (2 * Math.PI * tempo / 60);
        assertThat(expected).isCloseTo(critical, within(1e-4));
        assertThat(new DelayedAnswer(law, 0.95 * expected).best(0).holds()).isTrue();
        assertThat(new DelayedAnswer(law, 1.05 * expected).best(0).left()).isGreaterThan(1);
    }

    /** With the hand left alone, another method finds the same multipliers. */
    @ParameterizedTest
    @ValueSource(doubles = {60, 75, 90})
    void anIsolationThatIsNotAnsweredGrowsAsItsSteadinessSays(double tempo) {
        Orbit orbit = kept("isolation", tempo).orbit();
        double growth = Steadiness.of(orbit).growth();
        assertThat(new DelayedAnswer(inPlane(orbit), 0.2).left(Gains.NONE))
                .isCloseTo(growth, within(1e-4 * growth));
        MeantMotion meant = MeantMotion.of(orbit, 8);
        double[] cycles =
                new Answering(meant, NO_LIMITS).run(Answering.Steady.NONE, 0, 1e-7, 0, 0).cycles();
        assertThat(cycles[1] / cycles[0]).isCloseTo(growth, within(0.05 * growth));
    }

    @Test
    void soDoesOneBehindItsOwnHandAndOneInSpace() {
        Orbit isolation = behindItsHand("isolation", 90);
        double growth = Steadiness.of(isolation).growth();
        assertThat(inPlane(isolation).growth()).isCloseTo(growth, within(1e-4 * growth));
        // The axes carried round a toroid come back turned.
        Orbit toroid = kept("toroid", 60).orbit();
        double inSpace = Steadiness.of(toroid).growth();
        SlipLaw law = SlipLaw.spatial(MeantMotion.of(toroid, 2));
        assertThat(new DelayedAnswer(law, 0.2).multipliers(Gains.NONE)[0].norm())
                .isCloseTo(inSpace, within(1e-3 * inSpace));
    }

    /** With air, drag is in both. */
    @Test
    void dragSteadiesBothTheSame() {
        Trace trace = Spun.extension(0.4, 0.8);
        Orbit orbit = KeepTheFigure.of(trace, Side.LEFT, Kit.USUAL.withAir(true)).orbit();
        double within = inPlane(orbit).growth();
        double across = SlipLaw.planar(MeantMotion.of(orbit), false).growth();
        assertThat(Math.max(within, across))
                .isLessThan(1)
                .isCloseTo(Steadiness.of(orbit).growth(), within(1e-5));
    }

    /** An answer without delay only changes the equation: x″ = (a − κP)x − κD·x′. */
    @Test
    void anAnswerAtOnceIsAnotherPendulum() {
        Orbit orbit = kept("triquetra", 60).orbit();
        MeantMotion meant = MeantMotion.of(orbit, 16);
        Gains gains = new Gains(0.2, 0.03);
        SlipLaw answered =
                SlipLaw.of(
                        1,
                        meant.times(),
                        (time, before) -> {
                            SlipLaw.Rates rates = meant.at(time, before).rates();
                            return new SlipLaw.Rates(
                                    new double[] {rates.place()[0] - rates.pull() * gains.place()},
                                    new double[] {rates.speed()[0] - rates.pull() * gains.speed()},
                                    0);
                        });
        SlipLaw law = SlipLaw.planar(meant, true);
        double atOnce = answered.growth();
        double step = law.longestStep();
        double soon = new DelayedAnswer(law, step).left(gains);
        double later = new DelayedAnswer(law, 2 * step).left(gains);
        // Linear in so short a delay.
        assertThat(2 * soon - later).isCloseTo(atOnce, within(0.005 * atOnce));
        assertThat(Math.abs(later - atOnce)).isGreaterThan(0.01 * atOnce);
    }

    @Test
    void finerStepsLeaveTheSame() {
        Orbit orbit = kept("isolation", 75).orbit();
        Gains gains = new Gains(0.1, 0.03);
        double usual = new DelayedAnswer(inPlane(orbit), 0.213).left(gains);
        SlipLaw fine = SlipLaw.planar(MeantMotion.of(orbit, 4), true);
        assertThat(usual).isCloseTo(new DelayedAnswer(fine, 0.213).left(gains), within(2e-3));
    }

    /**
     * Small slips, no limits, over a seeded set: both say the same of what is held, but for a few
     * where the hand's own lag, of another shape than a delay, decides.
     */
    @Test
    void theSimulationAgreesWithTheSlipsEquation() {
        SplittableRandom random = new SplittableRandom(5);
        int held = 0;
        int lost = 0;
        List<String> otherwise = new ArrayList<>();
        while (held + lost < 60) {
            int turns = random.nextBoolean() ? 1 : -random.nextInt(1, 4);
            double radius = Spun.TETHER * random.nextDouble(0.2, 0.9);
            double period = random.nextDouble(0.6, 1.0);
            Trace trace = Spun.of(Motion.flower(radius, turns, Math.PI), period);
            KeepTheFigure kept = KeepTheFigure.of(trace, Side.LEFT, Kit.USUAL);
            double delay = random.nextDouble(0.1, 0.3);
            if (!kept.possible()) {
                continue;
            }
            DelayedAnswer late = new DelayedAnswer(inPlane(kept.orbit()), delay);
            Gains gains = late.best(0).gains().times(random.nextDouble(0.7, 1.3));
            double left = late.left(gains);
            if (left > 0.8 && left < 1.25 || left > 1e3) {
                continue;
            }
            Answering.Way way = new Answering.Steady(gains, Gains.NONE, delay);
            MeantMotion meant = MeantMotion.of(kept.orbit(), 6);
            Answering.Run run = new Answering(meant, NO_LIMITS).run(way, 0, 2e-5, 0, 0);
            boolean back = run.last() < 0.9 * run.cycles()[0];
            held += back ? 1 : 0;
            lost += back ? 0 : 1;
            if (back != left < 1) {
                otherwise.add(
                        String.format(
                                "%d turns, radius %.3f, period %.3f, delay %.3f, %s: %.3g",
                                turns, radius, period, delay, gains, left));
            }
        }
        assertThat(otherwise).hasSizeLessThanOrEqualTo(3);
        assertThat(held).isGreaterThan(20);
        assertThat(lost).isGreaterThan(20);
    }

    @Test
    void anExtensionHoldsWithAndWithoutAnAnswer() {
        Orbit orbit = KeepTheFigure.of(Spun.extension(0.6, 0.8), Side.LEFT, Kit.USUAL).orbit();
        MeantMotion meant = MeantMotion.of(orbit);
        Answering hand = new Answering(meant, HandLimits.USUAL);
        for (double slip : new double[] {0.01, 0.02, 0.05}) {
            assertThat(hand.run(Answering.Steady.NONE, 0, slip, 0, 0).held()).isTrue();
        }
        Correction correction = Correction.of(orbit);
        assertThat(correction.verdict()).isEqualTo(Correction.Verdict.HOLDS);
        assertThat(correction.longest()).isEqualTo(Correction.LONGEST);
    }

    @Test
    void oneStrokeACycleHoldsAFlowerAndNoIsolation() {
        Correction flower =
                Correction.of(
                        ClosestFigure.of(
                                        Trace.of(
                                                Phrase.parse("four-petal antispin vs static spin")
                                                        .pairing()),
                                        Side.LEFT,
                                        Kit.USUAL)
                                .orbit());
        assertThat(flower.once().orElseThrow().holds()).isTrue();
        Correction isolation = Correction.of(behindItsHand("isolation", 90));
        assertThat(isolation.once().orElseThrow().holds()).isFalse();
        // 0.1 of a slip that grows 86 times in between is left at least.
        assertThat(isolation.once().orElseThrow().left()).isGreaterThan(5);
    }

    /** The map from look to look, against the equation gone through by small steps. */
    @Test
    void aStrokeLeavesWhatTheSlipsEquationLeavesOfIt() {
        Orbit orbit = kept("triquetra", 60).orbit();
        MeantMotion meant = MeantMotion.of(orbit, 2);
        SlipLaw law = SlipLaw.planar(meant, true);
        Leaving.Best best = Stroke.of(law, 0, 0.213).best(0);
        assertThat(best.left()).isLessThan(0.1);
        Answering.Way once = new Answering.Once(best.gains(), Gains.NONE, 0.213, law.at(0));
        // Begun just after a stroke, looked at long before the next.
        Answering.Run run = new Answering(meant, NO_LIMITS).run(once, law.steps() / 3, 1e-6, 0, 0);
        Answering.Run alone =
                new Answering(meant, NO_LIMITS)
                        .run(Answering.Steady.NONE, law.steps() / 3, 1e-6, 0, 0);
        assertThat(run.cycles()[2]).isLessThan(0.02 * alone.cycles()[2]);
    }

    /** A slow extension pulls little more than the weight at the top; a slip takes the rest. */
    @Test
    void aSlipThatSlackensTheCordIsLost() {
        Orbit orbit = KeepTheFigure.of(Spun.extension(0.6, 1.5), Side.LEFT, Kit.USUAL).orbit();
        Answering hand = new Answering(MeantMotion.of(orbit), NO_LIMITS);
        assertThat(hand.run(Answering.Steady.NONE, 0, 1e-6, 0, 0).greatest()).isFinite();
        assertThat(hand.run(Answering.Steady.NONE, 0, 0.05, 0, 0).greatest()).isInfinite();
    }

    @Test
    void workThatIsCalledOffEnds() {
        Orbit orbit = kept("triquetra", 60).orbit();
        Thread.currentThread().interrupt();
        try {
            assertThatThrownBy(() -> Correction.of(orbit))
                    .isInstanceOf(CancellationException.class);
        } finally {
            assertThat(Thread.interrupted()).isTrue();
        }
    }
}
