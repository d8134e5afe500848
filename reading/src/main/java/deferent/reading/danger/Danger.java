package deferent.reading.danger;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import java.util.Optional;

/**
 * Something that asks for care or is a danger. SI units, as {@link Hazard} says them.
 *
 * @param level care or danger
 * @param hazard what it is
 * @param side whose head or hand; empty where it is of both together
 * @param value how much of it there is
 * @param time when it is worst, seconds
 * @param limit the number at which this level begins
 * @param end where this level ends; empty while something is dragged, when that is not worked out
 */
public record Danger(
        Level level,
        Hazard hazard,
        Optional<Side> side,
        double value,
        double time,
        double limit,
        Optional<DangerEnd> end) {
    public Danger {
        Refusal.numbers("a danger", value, time, limit);
        if (level == Level.CALM) {
            throw new Refusal("is calm", "a danger", "leave out what is calm");
        }
    }
}
