package deferent.search.route;

import deferent.motion.pairing.Refusal;
import deferent.search.transition.Grade;
import deferent.search.transition.Hindrance;
import deferent.search.transition.Transition;
import deferent.search.transition.Transitions;
import java.util.Optional;

/**
 * What leads from one pattern of a shelf to another.
 *
 * @param from the place on the shelf of the pattern that is left
 * @param to that of the pattern that is joined, another place
 * @param grade of the gentlest transition; empty where there is none
 * @param hardness of the same, on the scale of {@link Grade}; infinite where there is none
 * @param why why there is none; {@link Hindrance#NONE} where there is one
 */
public record ShelfPair(int from, int to, Optional<Grade> grade, double hardness, Hindrance why) {
    public ShelfPair {
        if (from < 0 || to < 0 || from == to) {
            throw new Refusal(
                    "are " + from + " and " + to, "two places on a shelf", "give two, from 0 on");
        }
        if (grade.isPresent() != hardness < Double.POSITIVE_INFINITY || !(hardness >= 0)) {
            throw new Refusal(
                    "is " + hardness, "the hardness of a transition", "0 or more, or infinite");
        }
    }

    static ShelfPair of(int from, int to, Transitions found) {
        Optional<Transition> best = found.best();
        return new ShelfPair(
                from,
                to,
                best.map(Transition::grade),
                best.map(Transition::hardness).orElse(Double.POSITIVE_INFINITY),
                found.why());
    }

    /** One pattern under two names: it goes on. */
    static ShelfPair same(int from, int to) {
        return new ShelfPair(from, to, Optional.of(Grade.EASY), 0, Hindrance.NONE);
    }

    static ShelfPair none(int from, int to, Hindrance why) {
        return new ShelfPair(from, to, Optional.empty(), Double.POSITIVE_INFINITY, why);
    }

    ShelfPair at(int otherFrom, int otherTo) {
        return new ShelfPair(otherFrom, otherTo, grade, hardness, why);
    }

    /** Whether there is a transition. */
    public boolean leads() {
        return grade.isPresent();
    }
}
