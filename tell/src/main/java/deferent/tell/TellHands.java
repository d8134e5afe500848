package deferent.tell;

import deferent.reading.link.MirroredHands;
import deferent.search.whole.Readings;
import java.util.Optional;

/** What binds the two hands of a weave, in words. */
final class TellHands {
    private static final double NOTHING = 5e-4;

    /** What arms that cross need between them, metres (our choice). */
    private static final double CROSSED = 0.20;

    private TellHands() {}

    /** Empty where no hand passes across the body, or the two do not mirror each other. */
    static Optional<Told> of(Readings readings) {
        return MirroredHands.of(readings.trace())
                .filter(hands -> hands.gap() <= CROSSED)
                .map(
                        hands ->
                                new Told(
                                        "hands",
                                        Told.Tone.NOTE,
                                        "The hands share one path as in a mirror, "
                                                + when(hands)
                                                + (hands.gap() < NOTHING
                                                        ? "."
                                                        : ", within "
                                                                + Say.length(hands.gap())
                                                                + " of it."),
                                        "Compared as placed: the right hand with where an upright mirror"
                                                + " through the middle of the body shows the left one."));
    }

    private static String when(MirroredHands hands) {
        double lag = hands.lag();
        if (Math.abs(lag) < 0.005) {
            return "at the same time";
        }
        if (Math.abs(Math.abs(lag) - 0.5) < 0.005) {
            return "half a cycle apart";
        }
        return Say.share(Math.abs(lag))
                + " apart, the "
                + (lag > 0 ? "left" : "right")
                + " hand first";
    }
}
