package deferent.motion.trace;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A trace at evenly spaced times, as contiguous arrays x, y, z, x, y, z, … in metres. The arrays
 * are the trace's own: read them, do not write.
 */
public final class Samples {
    private final double[] times;
    private final double[][] hands = new double[2][];
    private final double[][] heads = new double[2][];

    private Samples(double[] times) {
        this.times = times;
    }

    static Samples of(Trace trace, int count) {
        Refusal.within(count, 2, 1_000_000, "samples", "samples");
        double[] times = new double[count];
        double step = trace.period() / (trace.periodic() ? count : count - 1);
        for (int i = 0; i < count; i++) {
            times[i] = trace.interval().start() + i * step;
        }
        Samples samples = new Samples(times);
        for (Side side : Side.values()) {
            samples.hands[side.ordinal()] = sampled(trace.hand(side), times);
            samples.heads[side.ordinal()] = sampled(trace.head(side), times);
        }
        return samples;
    }

    private static double[] sampled(Course course, double[] times) {
        double[] out = new double[3 * times.length];
        for (int i = 0; i < times.length; i++) {
            Vector3D p = course.position(times[i]);
            out[3 * i] = p.getX();
            out[3 * i + 1] = p.getY();
            out[3 * i + 2] = p.getZ();
        }
        return out;
    }

    public int count() {
        return times.length;
    }

    /** Seconds. */
    public double time(int i) {
        return times[i];
    }

    public double[] hand(Side side) {
        return hands[side.ordinal()];
    }

    public double[] head(Side side) {
        return heads[side.ordinal()];
    }

    public static Vector3D point(double[] xyz, int i) {
        return new Vector3D(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]);
    }
}
