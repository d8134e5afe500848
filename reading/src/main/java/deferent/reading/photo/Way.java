package deferent.reading.photo;

import deferent.motion.pairing.Part;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Lowest;
import deferent.motion.trace.Trace;

/**
 * The way a head goes along its figure, as a length that grows with time.
 *
 * <p>The figure ends when the head is for the first time back on the same way: three turns about a
 * still hand in one cycle draw one circle three times. Lengths are summed by Simpson's rule from
 * the exact speed, on a grid of {@link #count} steps a figure, and read between its points by the
 * cubic that has the right speed at both ends.
 */
final class Way {
    private static final int EACH_TURN = 720;
    private static final int LOOKS = 61;
    private static final double SAME = 1e-7;

    private final Course course;
    private final double start;
    private final double period;
    private final double[] along;
    private final double[] speeds;

    private Way(Course course, double start, double period, int count) {
        this.course = course;
        this.start = start;
        this.period = period;
        this.along = new double[count + 1];
        this.speeds = new double[count + 1];
        double step = period / count;
        for (int i = 0; i <= count; i++) {
            speeds[i] = speed(i * step);
            if (i > 0) {
                double middle = speed((i - 0.5) * step);
                along[i] = along[i - 1] + step * (speeds[i - 1] + 4 * middle + speeds[i]) / 6;
            }
        }
    }

    static Way of(Trace trace, Side side) {
        if (!trace.periodic()) {
            throw new Refusal(
                    "does not come round again", "motion to photograph", "give one that repeats");
        }
        Course head = trace.head(side);
        double start = trace.interval().start();
        // Of both hands, since a rider goes as its carrier's head does.
        int turns = 0;
        for (Side one : Side.values()) {
            Part part = trace.pairing().part(one);
            turns += part.cycles() * (1 + Math.abs(part.motion().spin().turns()));
        }
        int rounds = rounds(head, start, trace.period(), 2 * turns);
        return new Way(
                head, start, trace.period() / rounds, EACH_TURN * Math.max(1, turns / rounds));
    }

    /** How many times the trace goes over the same way. */
    private static int rounds(Course head, double start, double period, int most) {
        for (int rounds = most; rounds > 1; rounds--) {
            boolean same = true;
            for (int i = 0; i < LOOKS && same; i++) {
                double time = start + period * i / LOOKS;
                double later = start + (period * i / LOOKS + period / rounds) % period;
                same = head.position(time).distance(head.position(later)) < SAME;
            }
            if (same) {
                return rounds;
            }
        }
        return 1;
    }

    private double speed(double elapsed) {
        return course.at(start + elapsed % period).velocity().getNorm();
    }

    boolean still() {
        return length() < SAME;
    }

    /** Seconds of one figure. */
    double period() {
        return period;
    }

    /** Metres of one figure. */
    double length() {
        return along[along.length - 1];
    }

    int count() {
        return along.length - 1;
    }

    /** Metres between two times, seconds from the start of the figure. */
    double between(double from, double to) {
        return at(to) - at(from);
    }

    private double at(double time) {
        double rounds = Math.floor(time / period);
        double share = (time / period - rounds) * count();
        int i = Math.min(count() - 1, (int) share);
        double f = share - i;
        double step = period / count();
        double rise = along[i + 1] - along[i];
        double a = speeds[i] * step;
        double b = speeds[i + 1] * step;
        // Hermite's cubic through both ends with both speeds.
        double within = f * (a + f * (3 * rise - 2 * a - b + f * (a + b - 2 * rise)));
        return rounds * length() + along[i] + within;
    }

    /** The head's greatest speed, m/s. */
    double fastest() {
        int best = 0;
        for (int i = 1; i <= count(); i++) {
            best = speeds[i] > speeds[best] ? i : best;
        }
        double step = period / count();
        double at = best * step;
        double near =
                -Lowest.within(t -> -speed((t + period) % period), at - step, at + step, 40)
                        .value();
        return Math.max(near, speeds[best]);
    }
}
