package deferent.reading.body;

import deferent.motion.trace.Course;
import deferent.motion.trace.Lowest;
import java.util.function.DoubleUnaryOperator;

/**
 * How fast a hand goes, to be held against what arms do.
 *
 * <p>A trained boxer's single hardest punch lands at 9.26 ± 2.09 m/s, less in a row of them
 * (Piorkowski, Lees and Barton, Single maximal versus combination punch kinematics, Sports
 * Biomechanics 10, 2011). A thrower's hand gets faster, but once, with the whole body, and not
 * round a circle.
 *
 * @param speed greatest, m/s
 * @param acceleration greatest, m/s²
 */
public record HandPace(double speed, double acceleration) {
    /** Faster than that no arm goes turn after turn, m/s: that punch and two deviations more. */
    public static final double FASTEST = 9.26 + 2 * 2.09;

    /**
     * Nor does it quicken more, m/s²: that speed reached within half a metre, which is about the
     * way of a punch (common practice, no source).
     */
    public static final double QUICKEST = FASTEST * FASTEST / (2 * 0.5);

    private static final int COUNT = 720;

    /**
     * The pace of a course.
     *
     * @param cuts start, the breaks between, end, seconds
     */
    public static HandPace of(Course hand, double[] cuts) {
        return new HandPace(
                greatest(cuts, time -> hand.at(time).velocity().getNorm()),
                greatest(cuts, time -> hand.at(time).acceleration().getNorm()));
    }

    public boolean tooFast() {
        return speed > FASTEST;
    }

    public boolean tooQuick() {
        return acceleration > QUICKEST;
    }

    /** Whether it is more than arms do. */
    public boolean beyond() {
        return tooFast() || tooQuick();
    }

    private static double greatest(double[] cuts, DoubleUnaryOperator of) {
        double most = 0;
        for (int p = 0; p + 1 < cuts.length; p++) {
            // A hair inside, so that nothing is taken across a break.
            double hair = 1e-9 * (cuts[p + 1] - cuts[p]);
            double from = cuts[p] + hair;
            double to = cuts[p + 1] - hair;
            int best = 0;
            double here = 0;
            for (int i = 0; i <= COUNT; i++) {
                double value = of.applyAsDouble(from + (to - from) * i / COUNT);
                best = value > here ? i : best;
                here = Math.max(here, value);
            }
            double step = (to - from) / COUNT;
            double at = from + best * step;
            double low = Math.max(from, at - step);
            double high = Math.min(to, at + step);
            double near = -Lowest.within(t -> -of.applyAsDouble(t), low, high, 24).value();
            most = Math.max(most, Math.max(here, near));
        }
        return most;
    }
}
