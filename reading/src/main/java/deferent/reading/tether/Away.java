package deferent.reading.tether;

import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Trace;

/**
 * How far a course strays from another: from where that one is at the same instant, and from its
 * path as a curve, whenever it passes there.
 *
 * @param greatest at the same instant, metres
 * @param time when that is, seconds
 * @param mean at the same instant, over time, metres
 * @param fromPath greatest distance from the path, metres
 * @param fromPathTime when that is, seconds
 * @param fromPathMean over time, metres
 */
public record Away(
        double greatest,
        double time,
        double mean,
        double fromPath,
        double fromPathTime,
        double fromPathMean) {
    public Away {
        Refusal.numbers(
                "the distance from the ideal",
                greatest,
                time,
                mean,
                fromPath,
                fromPathTime,
                fromPathMean);
    }

    private static final int COUNT = 360;

    static Away of(Course course, Course from, Trace trace, Side side) {
        Times times = Times.of(trace, side, 2, COUNT);
        Polyline path = Polyline.of(from, trace.interval());
        double[] gap = new double[times.count()];
        double[] off = new double[times.count()];
        for (int i = 0; i < gap.length; i++) {
            var at = course.at(times.at(i)).position();
            gap[i] = -at.distance(from.at(times.at(i)).position());
            off[i] = -path.distance(at);
        }
        double time =
                times.least(gap, t -> -course.at(t).position().distance(from.at(t).position()));
        double offTime = times.least(off, t -> -path.distance(course.at(t).position()));
        return new Away(
                course.at(time).position().distance(from.at(time).position()),
                time,
                -times.mean(gap),
                path.distance(course.at(offTime).position()),
                offTime,
                -times.mean(off));
    }
}
