package deferent.search.path;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One time of practice.
 *
 * @param day on which it was
 * @param phrase what was practised, in trade words without a tempo
 * @param hand the one hand that was practised of it, if only one was
 * @param minutes above 0, at most 600
 * @param tempo hand cycles a minute, if it was said
 * @param went how it went, if it was said
 */
public record Practised(
        long day,
        String phrase,
        Optional<Side> hand,
        double minutes,
        OptionalDouble tempo,
        Optional<Went> went) {
    public Practised {
        Refusal.positive(minutes, 600, "practice", "minutes");
        tempo.ifPresent(t -> Refusal.positive(t, 600, "tempo", "a minute"));
    }

    /** As {@link Spacing} counts how it went. */
    int quality() {
        return went.map(Went::quality).orElse(Went.UNSAID);
    }
}
