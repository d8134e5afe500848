package deferent.search.fit;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Size;
import java.util.List;

/**
 * A way to close the link.
 *
 * @param pairing with the changes made
 * @param changes in the order they were found; none where the link is closed as it stands
 * @param gapLeft what the reading then still finds, metres: the shape gap, or the placed gap in the
 *     carrier's plane
 * @param exact whether every changed size comes from a closed form rather than a search
 * @param moved how far the hand or head that moves most is then from where it was in the same
 *     timing, metres
 */
public record Remedy(
        Pairing pairing, List<SizeChange> changes, double gapLeft, boolean exact, double moved) {
    public Remedy {
        changes = List.copyOf(changes);
    }

    /** How many sizes it changes, the timing not counted: to start later costs nothing. */
    public long sizesChanged() {
        return changes.stream().filter(c -> c.size().kind() != Size.Kind.TIMING).count();
    }
}
