package deferent.search.transition;

import deferent.motion.pairing.Pairing;
import java.util.List;
import java.util.Optional;

/**
 * The transitions from one pattern to another.
 *
 * @param from the pattern that is left
 * @param to the pattern that is joined
 * @param request what was asked
 * @param list best first: by how hard they are, then by the hands' jerk and the time they take
 * @param why why there is none; {@link Hindrance#NONE} where there is one
 */
public record Transitions(
        Pairing from, Pairing to, TransitionRequest request, List<Transition> list, Hindrance why) {
    public Transitions {
        list = List.copyOf(list);
    }

    /** With the usual limits. */
    public static Transitions between(Pairing from, Pairing to) {
        return between(from, to, TransitionRequest.USUAL);
    }

    public static Transitions between(Pairing from, Pairing to, TransitionRequest request) {
        return new TransitionFinder(request).between(from, to);
    }

    public Optional<Transition> best() {
        return list.stream().findFirst();
    }
}
