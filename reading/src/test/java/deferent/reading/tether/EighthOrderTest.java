package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Motion;
import deferent.motion.shared.Side;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EighthOrderTest {
    private static double[] marched(Trace trace, Cord cord, double[] start, int cycles, int steps) {
        HandTable table =
                HandTable.of(trace.hand(Side.LEFT), new double[] {0, trace.period()}, steps);
        double[] y = start.clone();
        Marching marching = new Marching(cord, 0);
        for (int i = 0; i < cycles; i++) {
            marching.cycle(table, y);
        }
        return y;
    }

    private static double apart(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            sum += (a[i] - b[i]) * (a[i] - b[i]);
        }
        return Math.sqrt(sum);
    }

    private static double[] start(Trace trace, Cord cord) {
        return Orbit.state(trace.hand(Side.LEFT).at(0), trace.head(Side.LEFT).at(0), cord);
    }

    @Test
    void halvingTheStepDividesTheErrorByTwoToTheEighth() {
        Trace trace = Spun.triquetra(1.0);
        Cord cord = Cord.of(trace, Side.LEFT, Kit.USUAL);
        double[] start = start(trace, cord);
        double[] exact = marched(trace, cord, start, 1, 1024);
        double last = 0;
        for (int steps : new int[] {24, 48, 96}) {
            double error = apart(marched(trace, cord, start, 1, steps), exact);
            if (last > 0) {
                double order = Math.log(last / error) / Math.log(2);
                assertThat(order).as("from %s steps", steps / 2).isBetween(7.8, 8.6);
            }
            last = error;
        }
        assertThat(last).isLessThan(1e-11);
    }

    /** DLMF 22.19(i); past a quarter turn the equations are a rod's. */
    @ParameterizedTest
    @ValueSource(doubles = {20, 90, 150, 170})
    void theEquationsSwingByJacobisFunctionsForAMinuteAtAnyAmplitude(double degrees) {
        Trace pendulum = Spun.pendulum(Math.toRadians(degrees));
        Cord cord = Cord.of(pendulum, Side.LEFT, Kit.USUAL);
        int cycles = (int) Math.ceil(60 / pendulum.period());
        double[] y = marched(pendulum, cord, start(pendulum, cord), cycles, 288);
        State head = pendulum.head(Side.LEFT).at(0);
        State hand = pendulum.hand(Side.LEFT).at(0);
        var e = head.position().subtract(hand.position()).scalarMultiply(1 / Spun.TETHER);
        assertThat(Math.atan2(y[0], -y[1]))
                .isCloseTo(Math.atan2(e.getX(), -e.getY()), within(1e-9));
    }

    /**
     * The same poi written another way, θ″ = (−(h″ − g)·t)/L in the plane, by a plain Hipparchus
     * integrator with tight tolerances: baseline and check.
     */
    @Test
    void aPlainHipparchusRunOfThePendulumOnAMovingPivotAgrees() {
        Trace trace = Spun.triquetra(1.0);
        Cord cord = Cord.of(trace, Side.LEFT, Kit.USUAL);
        OrdinaryDifferentialEquation plain =
                new OrdinaryDifferentialEquation() {
                    @Override
                    public int getDimension() {
                        return 2;
                    }

                    @Override
                    public double[] computeDerivatives(double t, double[] y) {
                        State hand = trace.hand(Side.LEFT).at(t);
                        double ax = -hand.acceleration().getX();
                        double ay = -Gravity.STANDARD - hand.acceleration().getY();
                        return new double[] {
                            y[1], (-ax * Math.sin(y[0]) + ay * Math.cos(y[0])) / Spun.TETHER
                        };
                    }
                };
        double[] theirs =
                new DormandPrince853Integrator(1e-8, 0.1, 1e-13, 1e-13)
                        .integrate(plain, new ODEState(0, new double[] {0, -4 * Math.PI}), 3)
                        .getPrimaryState();
        double[] ours = marched(trace, cord, start(trace, cord), 3, 192);
        assertThat(Math.IEEEremainder(Math.atan2(ours[1], ours[0]) - theirs[0], 2 * Math.PI))
                .isCloseTo(0, within(1e-10));
    }

    /** In air the joints of the drag curve's pieces cost two digits. */
    @Test
    void thePlanesTwoNumbersAndTheSixInSpaceAreTheSameMotion() {
        for (Kit kit : new Kit[] {Kit.USUAL, new Kit(0.12, 0.07, 0.02, true)}) {
            Trace trace = Spun.of(Motion.flower(0.35, 1, 0), 0.9);
            Cord cord = Cord.of(trace, Side.LEFT, kit);
            HandTable table = HandTable.of(trace.hand(Side.LEFT), new double[] {0, 0.9}, 128);
            KeepTheHandPath.Solution found =
                    KeepTheHandPath.of(trace, Side.LEFT, cord).solutions().get(0);
            double[] y = found.orbit().start();
            double[] after = y.clone();
            new Marching(cord, 0).cycle(table, after);
            assertThat(apart(after, y)).as("%s", kit).isLessThan(kit.air() ? 1e-7 : 1e-9);
        }
    }
}
