package deferent.motion.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Turns;
import deferent.motion.trace.Trace;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.hipparchus.complex.Complex;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HoldTest {
    private static Hold weightless(Trace trace) {
        return Hold.of(KeepTheLight.of(trace, Side.LEFT, Cord.of(trace, Side.LEFT, Kit.USUAL, 0)));
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
        Hold hold = weightless(isolation);
        assertThat(hold.growth())
                .isCloseTo(Math.exp(2 * Math.PI * Math.sqrt(share)), within(1e-6 * rounded))
                .isCloseTo(rounded, within(5e-4 * rounded));
        assertThat(hold.verdict()).isEqualTo(Hold.Verdict.RUNS_AWAY);
    }

    @ParameterizedTest
    @CsvSource({"0.3", "0.6", "0.45"})
    void anExtensionWithoutWeightNeitherGrowsNorDiesAndSwings(double radius) {
        Hold hold = weightless(Spun.extension(radius, 1.1));
        double swings = Math.sqrt(radius / Spun.TETHER);
        assertThat(hold.verdict()).isEqualTo(Hold.Verdict.NEUTRAL);
        Complex expected = Complex.I.multiply(2 * Math.PI * swings).exp();
        assertThat(hold.multipliers())
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
        double[][] m = Floquet.of(new Orbit(table, cord, still, Vector3D.PLUS_K)).monodromy();
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
}
