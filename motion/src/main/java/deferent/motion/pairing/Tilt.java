package deferent.motion.pairing;

import java.util.Optional;
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
        SpinLaw spin = motion.spin();
        if (motion.path().still()) {
            return spin.match(
                    even -> OptionalDouble.empty(),
                    stretches -> OptionalDouble.of(stretches.start()),
                    swing -> OptionalDouble.of(swing.rest() - Swing.DOWN));
        }
        Optional<Series.Term> circle = motion.path().circle().filter(c -> c.k() == 1);
        if (circle.isEmpty() || circle.get().angle() != 0) {
            return motion.path().tilt();
        }
        return spin.match(
                even ->
                        even.turns() == 1
                                ? OptionalDouble.empty()
                                : OptionalDouble.of(even.start() / (1 - even.turns())),
                stretches -> OptionalDouble.of(0),
                swing -> OptionalDouble.of(0));
    }

    /**
     * The motion with its figure at {@code tilt} radians, unmirrored; unchanged where it has none.
     */
    public static Motion set(Motion motion, double tilt) {
        OptionalDouble now = of(motion);
        if (now.isEmpty()) {
            return motion;
        }
        return circlesFromZero(motion)
                ? motion.withSpin(
                        new Turns(motion.spin().turns(), (1 - motion.spin().turns()) * tilt))
                : motion.turned(tilt - now.getAsDouble());
    }

    /** Whether the hand goes round once from angle zero while the poi turns evenly. */
    public static boolean circlesFromZero(Motion motion) {
        return motion.spin().even().isPresent()
                && motion.path().circle().filter(c -> c.k() == 1 && c.angle() == 0).isPresent();
    }
}
