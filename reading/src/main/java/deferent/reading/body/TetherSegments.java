package deferent.reading.body;

import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The two tethers as segments in space: how near they come, and whether they cross in view of the
 * audience, that is, after dropping z.
 */
final class TetherSegments {
    // How far within both tethers a crossing lies, as a share of them: a head that only touches the
    // other hand, as in every link, crosses nothing.
    private static final double INSIDE = 1e-6;

    private final Trace trace;
    private final Samples samples;

    TetherSegments(Trace trace, Samples samples) {
        this.trace = trace;
        this.samples = samples;
    }

    /** How near they come in space. */
    Nearness nearness() {
        double[] sampled = new double[samples.count()];
        double[] ends = new double[12];
        for (int i = 0; i < sampled.length; i++) {
            load(ends, i);
            sampled[i] = apart(ends);
        }
        double[] exact = new double[12];
        return Nearness.of(
                trace,
                samples,
                sampled,
                t -> {
                    load(exact, t);
                    return apart(exact);
                });
    }

    boolean cross(int sample) {
        double[] ends = new double[12];
        load(ends, sample);
        return crosses(ends);
    }

    boolean crossAt(double time) {
        double[] ends = new double[12];
        load(ends, time);
        return crosses(ends);
    }

    /** The points of the left and the right tether that lie behind one another at {@code time}. */
    Vector3D[] crossing(double time) {
        double[] e = new double[12];
        load(e, time);
        double[] shares = shares(e);
        return new Vector3D[] {on(e, 0, shares[0]), on(e, 6, shares[1])};
    }

    private static Vector3D on(double[] e, int from, double share) {
        return new Vector3D(
                e[from] + share * (e[from + 3] - e[from]),
                e[from + 1] + share * (e[from + 4] - e[from + 1]),
                e[from + 2] + share * (e[from + 5] - e[from + 2]));
    }

    // Left hand, left head, right hand, right head.
    private void load(double[] ends, int i) {
        System.arraycopy(samples.hand(Side.LEFT), 3 * i, ends, 0, 3);
        System.arraycopy(samples.head(Side.LEFT), 3 * i, ends, 3, 3);
        System.arraycopy(samples.hand(Side.RIGHT), 3 * i, ends, 6, 3);
        System.arraycopy(samples.head(Side.RIGHT), 3 * i, ends, 9, 3);
    }

    private void load(double[] ends, double time) {
        int at = 0;
        for (Side side : Side.values()) {
            for (Vector3D p :
                    new Vector3D[] {
                        trace.hand(side).position(time), trace.head(side).position(time)
                    }) {
                ends[at++] = p.getX();
                ends[at++] = p.getY();
                ends[at++] = p.getZ();
            }
        }
    }

    /** Whether two segments cross in view, their ends left out. */
    static boolean crosses(double[] e) {
        double[] s = shares(e);
        return s[0] > INSIDE && s[0] < 1 - INSIDE && s[1] > INSIDE && s[1] < 1 - INSIDE;
    }

    /** How much nearer to the audience the first of them is where they cross in view, metres. */
    static double ahead(double[] e) {
        double[] s = shares(e);
        return e[2] + s[0] * (e[5] - e[2]) - e[8] - s[1] * (e[11] - e[8]);
    }

    // Where along either tether their lines cross in x and y; NaN where they are parallel in view.
    private static double[] shares(double[] e) {
        double ax = e[3] - e[0];
        double ay = e[4] - e[1];
        double bx = e[9] - e[6];
        double by = e[10] - e[7];
        double cross = ax * by - ay * bx;
        if (Math.abs(cross) <= 1e-9 * Math.sqrt((ax * ax + ay * ay) * (bx * bx + by * by))) {
            return new double[] {Double.NaN, Double.NaN};
        }
        double wx = e[6] - e[0];
        double wy = e[7] - e[1];
        return new double[] {(wx * by - wy * bx) / cross, (wx * ay - wy * ax) / cross};
    }

    /**
     * Least distance between two segments: the lines' nearest points, moved to the nearer end where
     * they lie outside. Method: Ericson, Real-Time Collision Detection (2005), 5.1.9, from memory.
     *
     * @param e x, y, z of either end of the one, then of the other
     */
    static double apart(double[] e) {
        double d1x = e[3] - e[0];
        double d1y = e[4] - e[1];
        double d1z = e[5] - e[2];
        double d2x = e[9] - e[6];
        double d2y = e[10] - e[7];
        double d2z = e[11] - e[8];
        double rx = e[0] - e[6];
        double ry = e[1] - e[7];
        double rz = e[2] - e[8];
        double a = d1x * d1x + d1y * d1y + d1z * d1z;
        double b = d1x * d2x + d1y * d2y + d1z * d2z;
        double c = d1x * rx + d1y * ry + d1z * rz;
        double d = d2x * d2x + d2y * d2y + d2z * d2z;
        double f = d2x * rx + d2y * ry + d2z * rz;
        double across = a * d - b * b;
        double s = across > 1e-12 * a * d ? clamp((b * f - c * d) / across) : 0;
        double t = (b * s + f) / d;
        if (t < 0) {
            t = 0;
            s = clamp(-c / a);
        } else if (t > 1) {
            t = 1;
            s = clamp((b - c) / a);
        }
        double x = rx + s * d1x - t * d2x;
        double y = ry + s * d1y - t * d2y;
        double z = rz + s * d1z - t * d2z;
        return Math.sqrt(x * x + y * y + z * z);
    }

    private static double clamp(double share) {
        return Math.max(0, Math.min(1, share));
    }
}
