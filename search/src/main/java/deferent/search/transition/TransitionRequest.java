package deferent.search.transition;

import deferent.motion.pairing.Refusal;
import deferent.reading.body.Performer;
import java.util.OptionalDouble;

/**
 * What is asked of transitions.
 *
 * @param hardest what counts as possible at most
 * @param performer whose arms
 * @param most how many transitions of a pair are told at most, 1 to 32
 * @param beat of a song to which both patterns are spun, seconds: the joined pattern's clock is
 *     ahead by whole beats then, so that where the one's first count falls on a beat, so does the
 *     other's; empty where no song counts
 */
public record TransitionRequest(Grade hardest, Performer performer, int most, OptionalDouble beat) {
    /** A transition is over within so many cycles of the slower pattern. */
    public static final int CYCLES = 4;

    /** The one default of every face. */
    public static final TransitionRequest USUAL =
            new TransitionRequest(Grade.USUAL, Performer.USUAL, 6);

    public TransitionRequest {
        Refusal.within(most, 1, 32, "transitions of a pair", "transitions");
        beat.ifPresent(b -> Refusal.positive(b, 60, "beat of a song", "s"));
    }

    /** To no song. */
    public TransitionRequest(Grade hardest, Performer performer, int most) {
        this(hardest, performer, most, OptionalDouble.empty());
    }

    /** To a song with so many seconds a beat. */
    public TransitionRequest onBeat(double seconds) {
        return new TransitionRequest(hardest, performer, most, OptionalDouble.of(seconds));
    }

    public TransitionRequest with(Grade other) {
        return new TransitionRequest(other, performer, most, beat);
    }

    public TransitionRequest with(Performer other) {
        return new TransitionRequest(hardest, other, most, beat);
    }

    public TransitionRequest withMost(int other) {
        return new TransitionRequest(hardest, performer, other, beat);
    }
}
