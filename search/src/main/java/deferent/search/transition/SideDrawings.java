package deferent.search.transition;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Draws sides, each once: what a hand does alone is the same in every pairing that has it, but for
 * where its cycle starts. Safe to share between threads.
 */
final class SideDrawings {
    /** All that a side's drawing depends on, but for where its cycle starts. */
    private record Key(
            Motion motion, double length, Place place, boolean mirrored, double ownPeriod) {}

    private final Map<Key, DrawnSide> drawn = new ConcurrentHashMap<>();

    DrawnSide draw(Trace ideal, Side side) {
        Pairing pairing = ideal.pairing();
        Part part = pairing.part(side);
        if (part.motion().riding()) {
            return DrawnSide.of(ideal, side);
        }
        double own = ideal.period() / part.cycles();
        double ahead = own * pairing.startPhase(side);
        Key key =
                new Key(
                        part.motion(),
                        part.tether().length(),
                        part.place(),
                        pairing.mirrored(side),
                        own);
        // Kept as from a start of 0: so much earlier on its clock.
        return drawn.computeIfAbsent(key, k -> DrawnSide.of(ideal, side).ahead(-ahead))
                .ahead(ahead);
    }
}
