package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Turns;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.hipparchus.complex.Complex;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SteadinessTest {
    private static Steadiness weightless(Trace trace) {
        return Steadiness.of(
                KeepTheFigure.of(trace, Side.LEFT, Cord.of(trace, Side.LEFT, Kit.USUAL, 0)));
    }

    /**
     * Turning with the hand at Ω, the cord at angle ψ from the hand's own direction, the head feels
     * the hand's centrifugal pull: L·ψ″ = −Ω²R·sin ψ. An extension (ψ = 0) swings about it at
     * Ω√(R/L); an isolation (ψ = π) falls away as e^{Ω√(R/L)·t}. Rotating-frame pendulum.
     */
    @ParameterizedTest
    @CsvSource({"0.5, 85.02", "0.25, 23.14", "0.8, 275.8"})
    void anIsolationWithoutWeightRunsAwayByTheRotatingPendulumsLaw(double share, double rounded) {
        Trace isolation = Spun.of(Motion.flower(share * Spun.TETHER, 1, Math.PI), 1.3);
        Steadiness steadiness = weightless(isolation);
        assertThat(steadiness.growth())
                .isCloseTo(Math.exp(2 * Math.PI * Math.sqrt(share)), within(1e-6 * rounded))
                .isCloseTo(rounded, within(5e-4 * rounded));
        assertThat(steadiness.verdict()).isEqualTo(Steadiness.Verdict.RUNS_AWAY);
    }

    @ParameterizedTest
    @CsvSource({"0.3", "0.6", "0.45"})
    void anExtensionWithoutWeightNeitherGrowsNorDiesAndSwings(double radius) {
        Steadiness steadiness = weightless(Spun.extension(radius, 1.1));
        double swings = Math.sqrt(radius / Spun.TETHER);
        assertThat(steadiness.verdict()).isEqualTo(Steadiness.Verdict.NEUTRAL);
        Complex expected = Complex.I.multiply(2 * Math.PI * swings).exp();
        assertThat(steadiness.multipliers())
                .anySatisfy(
                        m -> assertThat(m.subtract(expected).norm()).as("%s", m).isLessThan(1e-6));
    }

    // Mathieu: x″ + (a − 2q·cos 2τ)x = 0 is the slip of a cord hanging from a hand that goes up and
    // down as A·cos ωt, with τ = ωt/2, a = 4g/(Lω²), q = 2A/L; standing upright, a = −4g/(Lω²).
    private static double trace(double a, double q) {
        double period = 1.0;
        double omega = 2 * Math.PI / period;
        double gravity = Math.abs(a) * Spun.TETHER * omega * omega / 4;
        Cord cord = new Cord(Spun.TETHER, Kit.USUAL, gravity);
        Trace shaken =
                Spun.of(
                        new Motion(Series.line(q * Spun.TETHER / 2, Math.PI / 2), new Turns(0, 0)),
                        period);
        HandTable table = HandTable.of(shaken.hand(Side.LEFT), new double[] {0, period}, 192);
        double[] still = {0, a >= 0 ? -1 : 1, 0, 0, 0, 0};
        double[][] m =
                Floquet.of(new Orbit(table, cord, still, Vector3D.PLUS_K)).monodromy().getData();
        return m[0][0] + m[2][2];
    }

    /** Abramowitz and Stegun, table 20.1; DLMF 28. */
    @ParameterizedTest
    @CsvSource({
        "a0, 5, -5.800046021",
        "b2, 5, 2.099460445",
        "a2, 5, 7.449109740",
        "a0, 1, -0.455138604"
    })
    void theSlipsOfAShakenPendulumHaveMathieusCharacteristicValues(
            String name, double q, double value) {
        // On the curves a0, a2, b2 a slip of the same period exists: both multipliers are 1.
        DoubleUnaryOperator offBoundary = a -> trace(a, q) - 2;
        double found =
                new BrentSolver(1e-13, 1e-12)
                        .solve(200, offBoundary::applyAsDouble, value - 0.05, value + 0.05);
        assertThat(found).as(name).isCloseTo(value, within(2e-9));
    }

    /**
     * Kapitza (1951); Landau and Lifshitz, Mechanics, section 30: a pendulum stands on a hand
     * shaken up and down as A·cos ωt when (Aω)² > 2gL, in the limit of small A and large ω.
     */
    @ParameterizedTest
    @CsvSource({"1.02, true", "0.98, false"})
    void aShakenPoiStandsOnItsHeadPastKapitzasLimit(double share, boolean stands) {
        double amplitude = 0.004 * Spun.TETHER;
        double omega = share * Math.sqrt(2 * Gravity.STANDARD * Spun.TETHER) / amplitude;
        Course shaken =
                t -> {
                    double c = amplitude * Math.cos(omega * t);
                    double s = amplitude * Math.sin(omega * t);
                    return new State(
                            new Vector3D(0, c, 0),
                            new Vector3D(0, -omega * s, 0),
                            new Vector3D(0, -omega * omega * c, 0),
                            new Vector3D(0, omega * omega * omega * s, 0));
                };
        HandTable table = HandTable.of(shaken, new double[] {0, 2 * Math.PI / omega}, 48);
        Cord cord = new Cord(Spun.TETHER, Kit.USUAL, Gravity.STANDARD);
        Orbit upright = new Orbit(table, cord, new double[] {0, 1, 0, 0, 0, 0}, Vector3D.PLUS_K);
        // Over one shake growth is a hair above 1 at most; the trace of the map tells it surely.
        double[][] m = Floquet.of(upright).monodromy().getData();
        assertThat(Math.abs(m[0][0] + m[2][2]) < 2).isEqualTo(stands);
    }

    @Test
    void onlyTheAirSteadiesAnExtension() {
        Trace extension = Spun.extension(0.4, 0.8);
        assertThat(Steadiness.of(KeepTheFigure.of(extension, Side.LEFT, Kit.USUAL)).verdict())
                .isEqualTo(Steadiness.Verdict.NEUTRAL);
        Steadiness inAir =
                Steadiness.of(KeepTheFigure.of(extension, Side.LEFT, Kit.USUAL.withAir(true)));
        assertThat(inAir.verdict()).isEqualTo(Steadiness.Verdict.STEADIES);
        assertThat(inAir.doubling()).isInfinite();
    }

    /** Without drag the map keeps volume: the multipliers' product is 1. */
    /** Liouville: without air a cycle keeps the volume of slips, and they cannot all shrink. */
    @Test
    void aCordOfAHairsBreadthIsNotSaidToSteadyItself() {
        Trace hair =
                Trace.of(
                        Phrase.parse(
                                        "linear extension wheel swivel 30° vs arc swinging"
                                                + " amplitude 54° tether 0.0317 mm wheel")
                                .pairing());
        KeepTheHandPath.Solution kept =
                KeepTheHandPath.of(hair, Side.RIGHT, Kit.USUAL).solutions().get(0);
        assertThatThrownBy(() -> Steadiness.of(kept)).hasMessageContaining("swings too often");
    }

    @Test
    void withoutAirWhatDiesOneWayGrowsAnother() {
        for (KeepTheHandPath.Solution s :
                KeepTheHandPath.of(Spun.triquetra(1.0), Side.LEFT, Kit.USUAL).solutions()) {
            Complex product =
                    Steadiness.of(s).multipliers().stream().reduce(Complex.ONE, Complex::multiply);
            assertThat(product.subtract(1).norm()).isLessThan(1e-9);
        }
    }

    /** Common practice, no source. */
    @Test
    void isolationsAskForMoreCareThanExtensions() {
        Steadiness isolation =
                Steadiness.of(KeepTheFigure.of(Spun.isolation(0.8), Side.LEFT, Kit.USUAL));
        Steadiness extension =
                Steadiness.of(KeepTheFigure.of(Spun.extension(0.6, 0.8), Side.LEFT, Kit.USUAL));
        assertThat(isolation.verdict()).isEqualTo(Steadiness.Verdict.RUNS_AWAY);
        assertThat(isolation.growth()).isGreaterThan(10 * extension.growth());
        assertThat(isolation.growthInReaction()).isGreaterThan(2 * extension.growthInReaction());
    }

    /** Let go with a slip and no speed of its own, a weightless isolation's slip grows as cosh. */
    @Test
    void aSimulatedSlipGrowsAsTheEquationsOfSlipsSay() {
        Trace isolation = Spun.isolation(1.0);
        Cord weightless = Cord.of(isolation, Side.LEFT, Kit.USUAL, 0);
        double slip = 1e-7;
        LetGo run =
                LetGo.of(
                        isolation,
                        Side.LEFT,
                        weightless,
                        LetGo.Start.slipped(isolation, Side.LEFT, 0, slip),
                        1.0,
                        96);
        assertThat(run.away(1.0) / slip)
                .isCloseTo(Math.cosh(2 * Math.PI * Math.sqrt(0.5)), within(1e-3));
    }

    /** Put aside without a speed of its own, x″ = λ²x: by cosh, at √(R/L) of the hand's rate. */
    @Test
    void theReactionTimesGrowthOfAnIsolationIsItsHyperbolicCosine() {
        double rate = 2 * Math.PI * Math.sqrt(0.5);
        assertThat(weightless(Spun.isolation(1.0)).growthInReaction())
                .isCloseTo(Math.cosh(rate * Steadiness.REACTION), within(1e-6));
    }

    /**
     * An independent calculation: 22.2, 52.9 and 6.6 cm, at the worst of some hundred moments. The
     * worst moment of all is a little worse, the more the faster the cord turns about there.
     */
    @ParameterizedTest
    @CsvSource({
        "isolation, 60, 22, 22.4",
        "horizontal cat-eye, 60, 52.9, 54",
        "triquetra, 35, 6.55, 6.8"
    })
    void aCentimetreAsideHasComeSoFarBeforeItIsAnswered(
            String motion, double tempo, double least, double most) {
        Trace trace = Trace.of(Phrase.parse(motion + " vs static spin, tempo " + tempo).pairing());
        Steadiness steadiness = Steadiness.of(KeepTheFigure.of(trace, Side.LEFT, Kit.USUAL));
        assertThat(100 * steadiness.slipped(0.01)).isBetween(least, most);
    }

    /** The same slip let go: beside the head, the cord turned, its speed as the figure's. */
    @Test
    void aHeadPutAsideAtTheWorstMomentComesAsFarAsIsSaid() {
        KeepTheFigure kept = KeepTheFigure.of(Spun.triquetra(60 / 35.0), Side.LEFT, Kit.USUAL);
        Steadiness steadiness = Steadiness.of(kept);
        Cord cord = kept.cord();
        double time = steadiness.worstTime();
        State hand = kept.orbit().hand().at(time);
        State head = kept.orbit().course().at(time);
        double aside = 1e-7;
        double most = 0;
        for (int way = 0; way < 2; way++) {
            Vector3D e = head.position().subtract(hand.position()).normalize();
            Vector3D axis = Slips.axes(e, Vector3D.PLUS_K)[way];
            Vector3D moved = e.add(axis.scalarMultiply(aside / cord.length())).normalize();
            Vector3D across =
                    head.velocity()
                            .subtract(moved.scalarMultiply(moved.dotProduct(head.velocity())));
            double[] y = {
                moved.getX(),
                moved.getY(),
                moved.getZ(),
                across.getX(),
                across.getY(),
                across.getZ()
            };
            Marching marching = new Marching(cord, 0);
            HandTable table = kept.orbit().table();
            double now = time;
            double end = time + Steadiness.REACTION;
            for (int i = 1; i <= 200; i++) {
                double next = time + (end - time) * i / 200;
                marching.step(table, now, next, y);
                now = next;
            }
            Vector3D there = kept.orbit().hand().at(end).position();
            Vector3D wanted = kept.orbit().course().at(end).position().subtract(there);
            Vector3D is = new Vector3D(y[0], y[1], y[2]).scalarMultiply(cord.length());
            most = Math.max(most, is.distance(wanted) / aside);
        }
        assertThat(steadiness.growthInReaction()).isCloseTo(most, within(1e-3 * most));
    }

    /** Every moment tried: shift the hand a little, let three cycles pass, see what it did. */
    @Test
    void aCorrectionDoesMostWhenItsLeverageSaysSo() {
        KeepTheFigure keep = KeepTheFigure.of(Spun.triquetra(1.0), Side.LEFT, Kit.USUAL);
        Steadiness steadiness = Steadiness.of(keep);
        HandTable table = keep.orbit().table();
        Cord cord = keep.cord();
        Marching marching = new Marching(cord, 0);
        double shift = 1e-9;
        double most = 0;
        double sum = 0;
        double when = 0;
        int moments = 0;
        for (int i = 0; i < table.steps(); i += 2) {
            double[] y = keep.orbit().start();
            for (int k = 0; k < i; k++) {
                marching.step(table, k, y);
            }
            double effect = 0;
            Vector3D e = new Vector3D(y[0], y[1], y[2]);
            Vector3D q = new Vector3D(y[3], y[4], y[5]);
            Vector3D velocity =
                    q.add(
                            e.scalarMultiply(
                                    e.dotProduct(table.hand().at(table.time(i)).velocity())));
            for (Vector3D axis : Slips.axes(e, Vector3D.PLUS_K)) {
                Vector3D moved = e.subtract(axis.scalarMultiply(shift / cord.length())).normalize();
                Vector3D across =
                        velocity.subtract(moved.scalarMultiply(moved.dotProduct(velocity)));
                double[] z = {
                    moved.getX(), moved.getY(), moved.getZ(),
                    across.getX(), across.getY(), across.getZ()
                };
                double[] plain = y.clone();
                for (int k = i; k < 2 * table.steps(); k++) {
                    marching.step(table, k % table.steps(), z);
                    marching.step(table, k % table.steps(), plain);
                }
                double dx = z[0] - plain[0];
                double dy = z[1] - plain[1];
                double dz = z[2] - plain[2];
                effect += dx * dx + dy * dy + dz * dz;
            }
            effect = Math.sqrt(effect);
            sum += effect;
            moments++;
            if (effect > most) {
                most = effect;
                when = table.time(i);
            }
        }
        assertThat(steadiness.leverageTime()).isCloseTo(when, within(1e-9));
        assertThat(steadiness.leverage()).isCloseTo(most / (sum / moments), within(0.05));
    }

    /**
     * The cord turns about in an instant there, and a slip grows a great deal; of a Hamiltonian
     * system the multipliers within the plane multiply to 1 all the same (Liouville).
     */
    @Test
    void aFigureThatAllButLosesItsPullStillHasASteadiness() {
        Trace trace =
                Trace.of(
                        Phrase.parse("pendulum amplitude 70° vs CAP turns 1 start 0° riding")
                                .pairing());
        KeepTheFigure kept = KeepTheFigure.of(trace, Side.RIGHT, Kit.USUAL);
        assertThat(kept.leastPullWeights()).isBetween(KeepTheFigure.LOST, 0.2);
        double[][] m = Floquet.of(kept.orbit()).monodromy().getData();
        double determinant = m[0][0] * m[2][2] - m[0][2] * m[2][0];
        double size = Math.abs(m[0][0] * m[2][2]) + Math.abs(m[0][2] * m[2][0]);
        assertThat(determinant).isCloseTo(1, within(1e-4 + 1e-9 * size));
        Steadiness steadiness = Steadiness.of(kept);
        assertThat(steadiness.growth()).isGreaterThan(1);
        assertThat(steadiness.growthInReaction()).isFinite().isGreaterThan(1);
        assertThat(steadiness.leverage()).isFinite().isGreaterThanOrEqualTo(1);
    }

    /**
     * The rotating pendulum's law above, over many cycles in one: e^(2π·√(1/2)) a cycle. Gone
     * through in one, a double holds nothing of the motion itself past a growth of 1e16.
     */
    @ParameterizedTest
    @CsvSource({"4", "12", "24"})
    void anIsolationRunsAwayByTheSameLawHoweverManyCyclesAreLookedAt(int cycles) {
        Trace isolation =
                Trace.of(
                        Phrase.parse("isolation cycles " + cycles + " vs static spin cycles 1")
                                .pairing());
        double perCycle = 2 * Math.PI * Math.sqrt(0.5);
        Steadiness steadiness = weightless(isolation);
        assertThat(Math.log(steadiness.growth())).isCloseTo(cycles * perCycle, within(1e-3));
        assertThat(steadiness.doubling())
                .isCloseTo(isolation.period() / cycles * Math.log(2) / perCycle, within(1e-5));
        // In a plane without drag the two multipliers multiply to 1 (Liouville).
        assertThat(steadiness.multipliers().get(3).norm() * steadiness.growth())
                .isCloseTo(1, within(1e-5));
        // The earlier a correction, the longer it grows.
        assertThat(steadiness.leverageTime()).isEqualTo(isolation.interval().start());
    }

    /** An arc swung three times to two of a CAP: its cord turns over again and again. */
    @Test
    void aFigureThatTheCordFallsFromWithinACycleHasTheSameSteadinessOnFinerSteps() {
        Trace trace = Trace.of(Phrase.parse("arc cycles 3 vs CAP cycles 2, tempo 68").pairing());
        KeepTheFigure kept = KeepTheFigure.of(trace, Side.LEFT, Kit.USUAL);
        Steadiness usual = Steadiness.of(kept);
        Steadiness finer = Steadiness.of(kept.orbit(3000));
        assertThat(usual.growth()).isGreaterThan(1e16);
        assertThat(usual.growth() / finer.growth()).isCloseTo(1, within(1e-5));
        assertThat(usual.leverage()).isGreaterThan(1).isFinite();
    }

    /** A small weight that hangs still slips as a pendulum: multipliers e^(±i·√(g/L)·T). */
    @ParameterizedTest
    @CsvSource({"0.01", "0.1", "1"})
    void aPoiOnAThreadSwingsAsAPendulumHoweverShortTheThread(double millimetres) {
        Trace trace =
                Trace.of(
                        Phrase.parse("cat-eye tether " + millimetres + " mm vs isolation")
                                .pairing());
        Steadiness steadiness = Steadiness.of(KeepTheFigure.of(trace, Side.LEFT, Kit.USUAL));
        double turned = Math.sqrt(Gravity.STANDARD / (millimetres / 1000)) * trace.period();
        assertThat(steadiness.verdict()).isEqualTo(Steadiness.Verdict.NEUTRAL);
        assertThat(steadiness.multipliers())
                .allSatisfy(m -> assertThat(m.getReal()).isCloseTo(Math.cos(turned), within(2e-3)));
    }

    /**
     * Liouville: without air a cycle keeps the volume of slips, so that the multipliers' product is
     * 1 however short the cord and however fast its hand.
     */
    @ParameterizedTest
    @CsvSource({
        "ellipse axes 73.6 cm by 40 cm tilt 90° tether 2.52 mm",
        "circle hand radius 40 cm turns 2 tether 1 cm",
        "triquetra tether 5 mm"
    })
    void aShortCordKeepsTheVolumeOfSlips(String motion) {
        Trace trace = Trace.of(Phrase.parse(motion + " vs static spin").pairing());
        Kit kit = new Kit(0.12, 0.07, 0, false);
        double product = 1;
        for (Complex one : Steadiness.of(KeepTheFigure.of(trace, Side.LEFT, kit)).multipliers()) {
            product *= one.norm();
        }
        assertThat(product).isCloseTo(1, within(1e-4));
        for (KeepTheHandPath.Solution one : KeepTheHandPath.of(trace, Side.LEFT, kit).solutions()) {
            product = 1;
            for (Complex m : Steadiness.of(one).multipliers()) {
                product *= m.norm();
            }
            assertThat(product).isCloseTo(1, within(1e-4));
        }
    }
}
