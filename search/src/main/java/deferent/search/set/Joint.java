package deferent.search.set;

import deferent.search.transition.Hindrance;
import deferent.search.transition.Transition;
import java.util.Optional;

/**
 * What comes after a pattern of a set.
 *
 * @param way how it goes on
 * @param transition where one leads on
 * @param why why none does, where none does
 * @param starts when it begins, seconds from the set's start
 */
public record Joint(Way way, Optional<Transition> transition, Hindrance why, double starts) {
    /** How it goes on. */
    public enum Way {
        /** By a transition. */
        LED,
        /** The same pattern goes on. */
        SAME,
        /** Nothing leads there: one stops and begins anew. */
        NONE,
        /** One of the two patterns is gone. */
        GONE
    }

    /** How long it takes, seconds. */
    public double seconds() {
        return transition.map(Transition::seconds).orElse(0.0);
    }
}
