package deferent.reading.tether;

import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.State;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.jspecify.annotations.Nullable;

/**
 * A hand's velocity at every stage of every step of one cycle: steps of even length within each
 * piece between the hand's breaks.
 */
final class HandTable {
    private final Course hand;
    private final double[] times;
    private final double[] velocity;
    private volatile double @Nullable [] ends;

    private HandTable(Course hand, double[] times, double[] velocity) {
        this.hand = hand;
        this.times = times;
        this.velocity = velocity;
    }

    /**
     * @param cuts start, the breaks between, end
     * @param steps about how many over the whole
     */
    static HandTable of(Course hand, double[] cuts, int steps) {
        double whole = cuts[cuts.length - 1] - cuts[0];
        int total = 0;
        int[] counts = new int[cuts.length - 1];
        for (int p = 0; p < counts.length; p++) {
            counts[p] =
                    Math.max(2, (int) Math.ceil(steps * (cuts[p + 1] - cuts[p]) / whole - 1e-9));
            total += counts[p];
        }
        double[] times = new double[total + 1];
        int at = 0;
        for (int p = 0; p < counts.length; p++) {
            for (int i = 0; i < counts[p]; i++) {
                times[at++] = cuts[p] + (cuts[p + 1] - cuts[p]) * i / counts[p];
            }
        }
        times[total] = cuts[cuts.length - 1];
        double[] velocity = new double[total * EighthOrder.STAGES * 3];
        for (int step = 0; step < total; step++) {
            fill(hand, times[step], times[step + 1], velocity, step * EighthOrder.STAGES * 3);
        }
        return new HandTable(hand, times, velocity);
    }

    /**
     * The same hand path at another tempo: all times {@code slower} times as long.
     *
     * @param slowed that hand's course
     */
    HandTable slowed(double slower, Course slowed) {
        HandTable table = new HandTable(slowed, times.clone(), velocity.clone());
        for (int i = 0; i < times.length; i++) {
            table.times[i] *= slower;
        }
        for (int i = 0; i < velocity.length; i++) {
            table.velocity[i] /= slower;
        }
        double[] all = ends().clone();
        for (int i = 0; i < all.length; i++) {
            all[i] /= i % 6 < 3 ? slower : slower * slower;
        }
        table.ends = all;
        return table;
    }

    /** The same cycle begun at a step of this one, for whoever asks it for velocities alone. */
    HandTable begun(int step) {
        if (step == 0) {
            return this;
        }
        int steps = steps();
        double[] later = new double[times.length];
        for (int i = 0; i <= steps; i++) {
            later[i] = i + step <= steps ? times[i + step] : times[i + step - steps] + period();
        }
        double[] turned = new double[velocity.length];
        int at = offset(step);
        System.arraycopy(velocity, at, turned, 0, velocity.length - at);
        System.arraycopy(velocity, 0, turned, velocity.length - at, at);
        return new HandTable(hand, later, turned);
    }

    /** The same hand turned in space, for whoever asks it for velocities alone. */
    HandTable turned(Rotation by) {
        double[] other = new double[velocity.length];
        double[] in = new double[3];
        double[] out = new double[3];
        for (int i = 0; i < velocity.length; i += 3) {
            System.arraycopy(velocity, i, in, 0, 3);
            by.applyTo(in, out);
            System.arraycopy(out, 0, other, i, 3);
        }
        return new HandTable(hand, times, other);
    }

    /** Writes the hand's velocity at the stages of a step from one time to another. */
    static void fill(Course hand, double from, double to, double[] velocity, int at) {
        for (int s = 0; s < EighthOrder.STAGES; s++) {
            Vector3D v =
                    EighthOrder.C[s] == 1
                            ? hand.before(to).velocity()
                            : hand.at(from + EighthOrder.C[s] * (to - from)).velocity();
            velocity[at + 3 * s] = v.getX();
            velocity[at + 3 * s + 1] = v.getY();
            velocity[at + 3 * s + 2] = v.getZ();
        }
    }

    /** Velocity and acceleration of the hand at a step's start and at its end, six numbers each. */
    double[] ends() {
        double[] made = ends;
        if (made == null) {
            made = new double[12 * steps()];
            for (int i = 0; i < steps(); i++) {
                put(hand.at(times[i]), made, 12 * i);
                put(hand.before(times[i + 1]), made, 12 * i + 6);
            }
            ends = made;
        }
        return made;
    }

    static void put(State state, double[] out, int at) {
        Vector3D v = state.velocity();
        Vector3D a = state.acceleration();
        out[at] = v.getX();
        out[at + 1] = v.getY();
        out[at + 2] = v.getZ();
        out[at + 3] = a.getX();
        out[at + 4] = a.getY();
        out[at + 5] = a.getZ();
    }

    Course hand() {
        return hand;
    }

    int steps() {
        return times.length - 1;
    }

    double time(int step) {
        return times[step];
    }

    /** The step that begins nearest to a time, of this cycle or of another. */
    int nearest(double time) {
        int best = 0;
        for (int i = 1; i < steps(); i++) {
            if (away(i, time) < away(best, time)) {
                best = i;
            }
        }
        return best;
    }

    private double away(int step, double time) {
        return Math.abs(Math.IEEEremainder(times[step] - time, period()));
    }

    double length(int step) {
        return times[step + 1] - times[step];
    }

    double start() {
        return times[0];
    }

    double period() {
        return times[times.length - 1] - times[0];
    }

    Interval over() {
        return new Interval(times[0], times[times.length - 1]);
    }

    /** All stages' velocities; those of a step start at {@link #offset}. */
    double[] velocity() {
        return velocity;
    }

    int offset(int step) {
        return step * EighthOrder.STAGES * 3;
    }
}
