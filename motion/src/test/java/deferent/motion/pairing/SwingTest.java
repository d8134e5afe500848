package deferent.motion.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.hipparchus.special.elliptic.jacobi.CopolarN;
import org.hipparchus.special.elliptic.jacobi.JacobiElliptic;
import org.hipparchus.special.elliptic.jacobi.JacobiEllipticBuilder;
import org.hipparchus.special.elliptic.legendre.LegendreEllipticIntegral;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SwingTest {
    private static final double TETHER = 0.60;

    /**
     * DLMF 19.2(ii) and 22.19(i): the period is 2K(k)/π small-swing periods, k = sin(amplitude/2).
     * Values worked out for the project in double precision; recomputed here by the
     * arithmetic-geometric mean, K(k) = π/(2·agm(1, cos(amplitude/2))), DLMF 19.8(i).
     */
    @ParameterizedTest
    @CsvSource({
        "30, 1.017408798",
        "60, 1.073182007",
        "90, 1.180340599",
        "120, 1.372880501",
        "150, 1.762203730",
        "170, 2.439362720"
    })
    void aWiderSwingTakesLongerAsTheCompleteEllipticIntegralSays(double degrees, double ratio) {
        double amplitude = Math.toRadians(degrees);
        double small = 2 * Math.PI * Math.sqrt(TETHER / Gravity.STANDARD);
        double period = new Swing(amplitude, Swing.DOWN).period(TETHER, Gravity.STANDARD);
        assertThat(period / small).isCloseTo(ratio, within(1e-9));
        assertThat(period / small).isCloseTo(1 / agm(1, Math.cos(amplitude / 2)), within(1e-12));
    }

    /** Length by length against the period's own formula, and one that is easily remembered. */
    @Test
    void aTetherIsFoundForATimeAndGivesItBack() {
        Swing quarter = new Swing(Math.PI / 2, Swing.DOWN);
        // At 120 beats a minute, a quarter-turn swing of four beats wants 71 cm.
        double tether = quarter.tether(4 * 60 / 120.0, Gravity.STANDARD);
        assertThat(tether).isCloseTo(0.7132, within(5e-5));
        double small = 2 * Math.PI * Math.sqrt(tether / Gravity.STANDARD);
        assertThat(1.180340599 * small).isCloseTo(2, within(1e-8));
        for (double degrees : new double[] {5, 45, 90, 150}) {
            Swing swing = new Swing(Math.toRadians(degrees), Swing.DOWN);
            double seconds = swing.period(TETHER, Gravity.STANDARD);
            assertThat(swing.tether(seconds, Gravity.STANDARD)).isCloseTo(TETHER, within(1e-12));
        }
    }

    private static double agm(double a, double b) {
        double x = a;
        double y = b;
        for (int i = 0; i < 40; i++) {
            double mean = (x + y) / 2;
            y = Math.sqrt(x * y);
            x = mean;
        }
        return x;
    }

    /**
     * The angle of DLMF 22.19(i) against a forward integration of θ″ = −(g/L)·sin θ, let go at rest
     * from the end of lower angle.
     */
    @ParameterizedTest
    @ValueSource(doubles = {10, 60, 90, 150, 175})
    void aSwingIsWhatALetGoPendulumDoes(double degrees) {
        double amplitude = Math.toRadians(degrees);
        Swing swing = new Swing(amplitude, Swing.DOWN);
        double period = swing.period(TETHER, Gravity.STANDARD);
        OrdinaryDifferentialEquation falling =
                new OrdinaryDifferentialEquation() {
                    @Override
                    public int getDimension() {
                        return 2;
                    }

                    @Override
                    public double[] computeDerivatives(double t, double[] y) {
                        return new double[] {y[1], -Gravity.STANDARD / TETHER * Math.sin(y[0])};
                    }
                };
        SpinLaw.Course course = swing.course();
        for (double share : new double[] {0.1, 0.25, 0.5, 0.7, 0.9}) {
            ODEStateAndDerivative then =
                    new DormandPrince853Integrator(1e-8, 0.1, 1e-13, 1e-13)
                            .integrate(
                                    falling,
                                    new ODEState(0, new double[] {-amplitude, 0}),
                                    share * period);
            Jet angle = course.at(share);
            assertThat(angle.value() - Swing.DOWN)
                    .isCloseTo(then.getPrimaryState()[0], within(1e-8));
            assertThat(angle.d1() / period).isCloseTo(then.getPrimaryState()[1], within(1e-7));
        }
    }

    @Test
    void aSwingPastAQuarterTurnNeedsARod() {
        assertThat(new Swing(Math.toRadians(90), Swing.DOWN).needsRod()).isFalse();
        assertThat(new Swing(Math.toRadians(91), Swing.DOWN).needsRod()).isTrue();
    }

    /** Mechanics textbook: at the end of a swing the cord carries cos(amplitude) weights. */
    @ParameterizedTest
    @ValueSource(doubles = {40, 90, 120})
    void theCordPullsAsManyWeightsAtTheEndAsTheCosineOfTheSwing(double degrees) {
        Swing swing = new Swing(Math.toRadians(degrees), Swing.DOWN);
        double period = swing.period(TETHER, Gravity.STANDARD);
        Jet end = swing.course().at(0).atRate(1 / period);
        double weights =
                Math.cos(end.value() - Swing.DOWN)
                        + TETHER * end.d1() * end.d1() / Gravity.STANDARD;
        assertThat(weights).isCloseTo(Math.cos(Math.toRadians(degrees)), within(1e-9));
        assertThat(weights < -1e-9).isEqualTo(swing.needsRod());
    }

    // DLMF 22.19(i), by Hipparchus's Jacobian elliptic functions, from a hair's swing to all but
    // upside down.
    @ParameterizedTest
    @ValueSource(doubles = {0.01, 1, 90, 170, 179.98})
    void theAngleOverTimeIsTheEllipticSinesAndTheSpeedTheCosines(double degrees) {
        double amplitude = Math.toRadians(degrees);
        double k = Math.sin(amplitude / 2);
        double quarter = LegendreEllipticIntegral.bigK(k * k);
        JacobiElliptic jacobi = JacobiEllipticBuilder.build(k * k);
        SpinLaw.Course swing = new Swing(amplitude, 0).course();
        for (int i = -50; i <= 150; i++) {
            double phase = i / 100.0;
            CopolarN n = jacobi.valuesN(4 * quarter * (phase - Math.rint(phase)) - quarter);
            Jet at = swing.at(phase);
            assertThat(at.value())
                    .isCloseTo(2 * Math.asin(k * n.sn()), within(1e-11 + 1e-12 * amplitude));
            assertThat(at.d1()).isCloseTo(8 * quarter * k * n.cn(), within(1e-10));
        }
    }

    @Test
    void aPendulumCannotSwingAllTheWayRound() {
        assertThatThrownBy(() -> new Swing(Math.PI, Swing.DOWN))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("at most 179.982°");
    }
}
