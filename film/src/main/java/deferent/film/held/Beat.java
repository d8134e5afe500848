package deferent.film.held;

import deferent.motion.shared.Side;
import java.util.Map;

/**
 * One count of the cycle, and how far off each head and hand is on it.
 *
 * @param count as it is said: "3"
 * @param moment seconds into the film at which it first falls
 * @param heads of both sides
 * @param hands of those sides whose cord pulls enough there for the hand to be told
 */
public record Beat(String count, double moment, Map<Side, Off> heads, Map<Side, Off> hands) {
    public Beat {
        heads = Map.copyOf(heads);
        hands = Map.copyOf(hands);
    }
}
