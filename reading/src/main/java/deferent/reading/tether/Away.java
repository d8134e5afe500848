package deferent.reading.tether;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Trace;
import java.util.function.DoubleUnaryOperator;

/**
 * How far a course strays from another: from where that one is at the same instant, and from its
 * path as a curve, whenever it passes there; and how far from this one that path comes, for a head
 * that hangs still on a figure draws none of it.
 *
 * @param greatest at the same instant, metres
 * @param time when that is, seconds
 * @param mean at the same instant, over time, metres
 * @param fromPath greatest distance from the path, metres
 * @param fromPathTime when that is, seconds
 * @param fromPathMean over time, metres
 * @param missed greatest distance of the path from what this course draws, metres
 */
public record Away(
        double greatest,
        double time,
        double mean,
        double fromPath,
        double fromPathTime,
        double fromPathMean,
        double missed) {
    public Away {
        Refusal.numbers(
                "the distance from the ideal",
                greatest,
                time,
                mean,
                fromPath,
                fromPathTime,
                fromPathMean,
                missed);
    }

    /** Of both paths from each other, either way (Hausdorff's distance), metres. */
    public double paths() {
        return Math.max(fromPath, missed);
    }

    private static final int COUNT = 360;

    /**
     * How far a course strays over a trace.
     *
     * @param from the course it strays from, whose breaks are that side's
     */
    public static Away of(Course course, Course from, Trace trace, Side side) {
        Times times = Times.of(trace, side, 2, COUNT);
        Polyline path = Polyline.of(from, trace.interval());
        Polyline own = Polyline.of(course, trace.interval());
        DoubleUnaryOperator gap = t -> -course.at(t).position().distance(from.at(t).position());
        DoubleUnaryOperator off = t -> -path.distance(course.at(t).position());
        DoubleUnaryOperator missed = t -> -own.distance(from.at(t).position());
        double[] gaps = times.of(gap);
        double[] offs = times.of(off);
        double time = times.least(gaps, gap);
        double offTime = times.least(offs, off);
        return new Away(
                -gap.applyAsDouble(time),
                time,
                -times.mean(gaps),
                -off.applyAsDouble(offTime),
                offTime,
                -times.mean(offs),
                -missed.applyAsDouble(times.least(times.of(missed), missed)));
    }
}
