package deferent.reading.closest;

import deferent.motion.pairing.HandLimits;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * How a closest figure is looked for.
 *
 * @param limits what the hand is held to
 * @param arm how far it gets; none where that does not count
 * @param near a closest figure found before for nearly the same question, to begin from that alone
 *     unless it leads nowhere
 * @param stop asked every little while; once it says so, a {@link
 *     java.util.concurrent.CancellationException} ends the search
 */
public record Closely(
        HandLimits limits, Optional<Arm> arm, Optional<ClosestFigure> near, BooleanSupplier stop) {
    /** The usual hand on an arm as long as it takes, from the beginning, to the end. */
    public static final Closely USUAL = of(HandLimits.USUAL);

    public static Closely of(HandLimits limits) {
        return new Closely(limits, Optional.empty(), Optional.empty(), () -> false);
    }

    /** The same with a hand that can do so much. */
    public Closely held(HandLimits to) {
        return new Closely(to, arm, near, stop);
    }

    /** The same with a hand that gets no farther. */
    public Closely within(Optional<Arm> reach) {
        return new Closely(limits, reach, near, stop);
    }

    /** The same from what was found before. */
    public Closely near(Optional<ClosestFigure> before) {
        return new Closely(limits, arm, before, stop);
    }

    /** The same until somebody says stop. */
    public Closely until(BooleanSupplier says) {
        return new Closely(limits, arm, near, says);
    }
}
