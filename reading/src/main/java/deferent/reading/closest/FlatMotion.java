package deferent.reading.closest;

import deferent.motion.trace.Course;
import deferent.motion.trace.State;
import deferent.reading.tether.Cord;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A periodic motion of a poi, all of it told by its flat point's harmonics: hand and head with
 * exact derivatives.
 */
final class FlatMotion {
    /**
     * Where the harmonics stand in space and time.
     *
     * @param origin in the frame, metres
     * @param axes unit vectors: two in a plane, or three
     * @param start of a cycle, seconds
     * @param period of a cycle, seconds
     */
    record Setting(Vector3D origin, List<Vector3D> axes, double start, double period) {
        double rate() {
            return 2 * Math.PI / period;
        }

        double angle(double time) {
            return rate() * (time - start);
        }

        /** How many components: two in a plane, three in space. */
        int size() {
            return axes.size();
        }

        Vector3D along(double[] v) {
            Vector3D sum = Vector3D.ZERO;
            for (int d = 0; d < v.length; d++) {
                sum = sum.add(axes.get(d).scalarMultiply(v[d]));
            }
            return sum;
        }

        /** The components of what stands at a place, or of a vector where {@code free}. */
        double[] components(Vector3D v, boolean free) {
            Vector3D from = free ? v : v.subtract(origin);
            double[] out = new double[size()];
            for (int d = 0; d < out.length; d++) {
                out[d] = from.dotProduct(axes.get(d));
            }
            return out;
        }
    }

    private final Setting setting;
    private final Cord cord;
    private final double[] x;
    private final double[] drag;
    private final double[] fall;

    /**
     * @param x the flat point's coefficients, metres
     * @param drag those of the drag over the swing mass, m/s²; none where the air does not count
     */
    FlatMotion(Setting setting, Cord cord, double[] x, double[] drag) {
        this.setting = setting;
        this.cord = cord;
        this.x = x.clone();
        this.drag = drag.clone();
        this.fall = setting.components(cord.fall(), true);
    }

    Course hand() {
        return time -> state(time, cord.swingLength());
    }

    Course head() {
        return time -> state(time, cord.swingLength() - cord.length());
    }

    /** The cord's pull on the centre of oscillation over the swing mass, m/s². */
    double pull(double time) {
        Flatness flat = new Flatness(fall.length);
        solve(time, flat, 0);
        return flat.size();
    }

    /** The flat point and what lies so far from it toward the hand. */
    private State state(double time, double toward) {
        Flatness flat = new Flatness(fall.length);
        double[][] y = solve(time, flat, toward == 0 ? 0 : 3);
        for (int q = 0; q < 4; q++) {
            for (int d = 0; d < fall.length; d++) {
                y[q][d] += toward == 0 ? 0 : toward * flat.n()[q][d];
            }
        }
        return new State(
                setting.origin().add(setting.along(y[0])),
                setting.along(y[1]),
                setting.along(y[2]),
                setting.along(y[3]));
    }

    private double[][] solve(double time, Flatness flat, int levels) {
        double angle = setting.angle(time);
        double[][] y = new double[6][fall.length];
        sum(x, angle, y);
        double[][] air = new double[4][fall.length];
        if (drag.length > 0) {
            sum(drag, angle, air);
        }
        for (int k = 0; k <= levels; k++) {
            for (int d = 0; d < fall.length; d++) {
                flat.f()[k][d] = y[k + 2][d] - (k == 0 ? fall[d] : 0) - air[k][d];
            }
        }
        flat.solve(levels);
        return y;
    }

    /** Adds up harmonics and their derivatives: [derivative][component]. */
    private void sum(double[] coefficients, double angle, double[][] out) {
        int size = fall.length;
        int width = coefficients.length / size;
        double cos1 = Math.cos(angle);
        double sin1 = Math.sin(angle);
        double cos = 1;
        double sin = 0;
        for (int d = 0; d < size; d++) {
            out[0][d] = coefficients[d * width];
        }
        for (int k = 1; 2 * k < width; k++) {
            double next = cos * cos1 - sin * sin1;
            sin = sin * cos1 + cos * sin1;
            cos = next;
            double c = cos;
            double s = sin;
            double power = 1;
            for (double[] to : out) {
                for (int d = 0; d < size; d++) {
                    int at = d * width + 2 * k - 1;
                    to[d] += power * (coefficients[at] * c + coefficients[at + 1] * s);
                }
                double was = c;
                c = -s;
                s = was;
                power *= k * setting.rate();
            }
        }
    }
}
