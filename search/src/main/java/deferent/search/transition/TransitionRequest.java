package deferent.search.transition;

import deferent.motion.pairing.Refusal;
import deferent.reading.body.Performer;

/**
 * What is asked of transitions.
 *
 * @param hardest what counts as possible at most
 * @param performer whose arms
 * @param most how many transitions of a pair are told at most, 1 to 32
 */
public record TransitionRequest(Grade hardest, Performer performer, int most) {
    /** A transition is over within so many cycles of the slower pattern. */
    public static final int CYCLES = 4;

    /** The one default of every face. */
    public static final TransitionRequest USUAL =
            new TransitionRequest(Grade.USUAL, Performer.USUAL, 6);

    public TransitionRequest {
        Refusal.within(most, 1, 32, "transitions of a pair", "transitions");
    }

    public TransitionRequest with(Grade other) {
        return new TransitionRequest(other, performer, most);
    }

    public TransitionRequest with(Performer other) {
        return new TransitionRequest(hardest, other, most);
    }

    public TransitionRequest withMost(int other) {
        return new TransitionRequest(hardest, performer, other);
    }
}
