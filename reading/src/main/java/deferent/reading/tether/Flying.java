package deferent.reading.tether;

import deferent.motion.trace.Course;
import deferent.motion.trace.State;
import java.util.Arrays;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A head that flies free while its cord is slack, p″ = g + D/m, from the integrator's steps:
 * between them the quintic that matches place, velocity and acceleration at either end.
 */
final class Flying implements Course {
    /** Place, then velocity. */
    static final int SIZE = 6;

    private final Cord cord;
    private final double[] times;
    private final double[] states;

    Flying(Cord cord, double[] times, double[] states) {
        this.cord = cord;
        this.times = times;
        this.states = states;
    }

    /** Rates of change of place and velocity. */
    static void rate(Cord cord, double[] y, double[] out) {
        double k = 0;
        if (cord.kit().air()) {
            k =
                    cord.dragOverSpeed(Math.sqrt(y[3] * y[3] + y[4] * y[4] + y[5] * y[5]))
                            / cord.kit().headMass();
        }
        out[0] = y[3];
        out[1] = y[4];
        out[2] = y[5];
        out[3] = -k * y[3];
        out[4] = -cord.gravity() - k * y[4];
        out[5] = -k * y[5];
    }

    @Override
    public State at(double time) {
        int step = Arrays.binarySearch(times, time);
        step = Math.max(0, Math.min(step >= 0 ? step : -step - 2, times.length - 2));
        double h = times[step + 1] - times[step];
        double x = Math.max(0, Math.min(1, (time - times[step]) / h));
        double[] a0 = new double[SIZE];
        double[] a1 = new double[SIZE];
        double[] y0 = Arrays.copyOfRange(states, SIZE * step, SIZE * step + SIZE);
        double[] y1 = Arrays.copyOfRange(states, SIZE * step + SIZE, SIZE * step + 2 * SIZE);
        rate(cord, y0, a0);
        rate(cord, y1, a1);
        double[] p = new double[3];
        double[] v = new double[3];
        double x3 = x * x * x;
        double x4 = x3 * x;
        double x5 = x4 * x;
        for (int i = 0; i < 3; i++) {
            p[i] =
                    y0[i]
                            + (y1[i] - y0[i]) * (10 * x3 - 15 * x4 + 6 * x5)
                            + h * y0[3 + i] * (x - 6 * x3 + 8 * x4 - 3 * x5)
                            + h * y1[3 + i] * (-4 * x3 + 7 * x4 - 3 * x5)
                            + h * h * a0[3 + i] * 0.5 * (x * x - 3 * x3 + 3 * x4 - x5)
                            + h * h * a1[3 + i] * 0.5 * (x3 - 2 * x4 + x5);
            v[i] =
                    (y1[i] - y0[i]) / h * (30 * x * x - 60 * x3 + 30 * x4)
                            + y0[3 + i] * (1 - 18 * x * x + 32 * x3 - 15 * x4)
                            + y1[3 + i] * (-12 * x * x + 28 * x3 - 15 * x4)
                            + h * a0[3 + i] * 0.5 * (2 * x - 9 * x * x + 12 * x3 - 5 * x4)
                            + h * a1[3 + i] * 0.5 * (3 * x * x - 8 * x3 + 5 * x4);
        }
        double[] y = {p[0], p[1], p[2], v[0], v[1], v[2]};
        double[] rate = new double[SIZE];
        rate(cord, y, rate);
        Vector3D velocity = new Vector3D(v);
        Vector3D acceleration = new Vector3D(rate[3], rate[4], rate[5]);
        return new State(new Vector3D(p), velocity, acceleration, jerk(velocity, acceleration));
    }

    private Vector3D jerk(Vector3D velocity, Vector3D acceleration) {
        if (!cord.kit().air()) {
            return Vector3D.ZERO;
        }
        double speed = velocity.getNorm();
        double mass = cord.kit().headMass();
        double quickening = speed > 0 ? velocity.dotProduct(acceleration) / speed : 0;
        return acceleration
                .scalarMultiply(-cord.dragOverSpeed(speed) / mass)
                .subtract(
                        velocity.scalarMultiply(
                                cord.dragOverSpeedSlope(speed) / mass * quickening));
    }
}
