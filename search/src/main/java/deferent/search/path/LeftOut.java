package deferent.search.path;

import deferent.motion.shared.Side;
import java.util.Optional;

/**
 * A drill that was thought of and is none of the path's.
 *
 * @param kind what it would be of the pattern
 * @param hand whose hand would be alone or changed, where it is one hand's
 * @param why why it is none
 */
public record LeftOut(DrillKind kind, Optional<Side> hand, Why why) {
    /** Why a drill is left out. */
    public enum Why {
        /** That hand goes where the other head goes, and so has nowhere to go alone. */
        RIDES,
        /** The body keeps turned away, and there is no place for the other hand to rest. */
        TURNED,
        /** Wherever the resting poi were held, it would be in the way. */
        NO_PLACE_TO_REST,
        /** Nothing meets that could be parted. */
        NOTHING_MEETS,
        /** Both hands are bound to the body or to each other, so that they cannot be parted. */
        BOUND,
        /** Gravity sets the tempo. */
        OWN_TEMPO,
        /** A cord would go slack, or slacker. */
        SLACK,
        /** The arms do not get there. */
        OUT_OF_REACH,
        /** There is nothing of it that could be so: no circle, no swing, a hand that is still. */
        NOT_THERE,
        /** It is no easier than the pattern. */
        NO_EASIER,
        /** Another one changes less. */
        ANOTHER_IS_NEARER,
        /** A slower version is there already. */
        SLOWER_DOES,
        /** Words cannot say it, so nobody could look it up or play it. */
        NO_WORDS
    }
}
