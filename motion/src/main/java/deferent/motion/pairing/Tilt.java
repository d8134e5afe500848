package deferent.motion.pairing;

import java.util.OptionalDouble;

/**
 * How far a motion's figure is turned in its plane from the way its trade word draws it, radians
 * from u toward v. A circling hand keeps its start, so there the poi's start angle carries the
 * tilt: turning the figure of n poi turns by α adds (1 − n)·α to it (for a cat-eye, φ = 2α).
 * Everything else turns whole. A circle about a still or circling hand (n = 1, or no hand circle)
 * has no tilt.
 */
public final class Tilt {
    private Tilt() {}

    /** The motion's tilt, unmirrored; empty where turning it changes nothing. */
    public static OptionalDouble of(Motion motion) {
        if (motion.path() instanceof Series series) {
            if (motion.path().still()) {
                return motion.spin() instanceof Swing swing
                        ? OptionalDouble.of(swing.rest() - Swing.DOWN)
                        : motion.spin() instanceof Stretches s
                                ? OptionalDouble.of(s.start())
                                : OptionalDouble.empty();
            }
            if (circlesOnce(series)) {
                double handStart = series.terms().get(0).angle();
                if (handStart != 0) {
                    return OptionalDouble.of(handStart);
                }
                if (motion.spin() instanceof Turns even) {
                    return even.turns() == 1
                            ? OptionalDouble.empty()
                            : OptionalDouble.of(even.start() / (1 - even.turns()));
                }
                return OptionalDouble.of(0);
            }
            Series.Term out = series.terms().get(series.terms().size() - 1);
            Series.Term first = series.terms().get(0);
            return OptionalDouble.of(
                    series.terms().size() == 2 ? (out.angle() + first.angle()) / 2 : first.angle());
        }
        if (motion.path() instanceof Arc arc) {
            return OptionalDouble.of(arc.middle() - Swing.DOWN);
        }
        if (motion.path() instanceof Polygon polygon) {
            return OptionalDouble.of(polygon.start());
        }
        return OptionalDouble.empty();
    }

    /**
     * The motion with its figure at {@code tilt} radians, unmirrored; unchanged where it has none.
     */
    public static Motion set(Motion motion, double tilt) {
        if (motion.path() instanceof Series series
                && circlesOnce(series)
                && series.terms().get(0).angle() == 0
                && motion.spin() instanceof Turns even) {
            return even.turns() == 1
                    ? motion
                    : motion.withSpin(new Turns(even.turns(), (1 - even.turns()) * tilt));
        }
        OptionalDouble now = of(motion);
        return now.isPresent() ? motion.turned(tilt - now.getAsDouble()) : motion;
    }

    private static boolean circlesOnce(Series series) {
        return series.terms().size() == 1 && series.terms().get(0).k() == 1;
    }
}
