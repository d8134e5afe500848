package deferent.search.seek;

import deferent.motion.pairing.Pairing;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A link between a class of carriers (all that draw one head path) and a class of riders (all whose
 * hand goes one path), with one pairing to stand for all of them.
 *
 * @param headClass the carriers' class
 * @param handClass the riders' class
 * @param carriers how many motions may lead
 * @param riders how many may follow
 * @param gap clock gap, metres
 * @param exact whether it is linked without changing any size
 * @param carrier key of the representative's carrier, the left hand
 * @param rider key of its rider, the right hand
 * @param pairing the representative, placed and timed so that the rider's hand goes where the
 *     carrier's head goes
 * @param said its phrase, or where the trade has no words its description
 * @param phrase whether {@code said} is a phrase
 * @param idea what it is, without its sizes
 * @param family what it stands for beside itself
 * @param against what speaks against trying it first; empty where nobody asked
 * @param closings sizes that close the gap, least change first; none where it is closed, or where
 *     no single size does
 * @param merit what it is ranked by
 */
public record Answer(
        int headClass,
        int handClass,
        int carriers,
        int riders,
        double gap,
        boolean exact,
        long carrier,
        long rider,
        Pairing pairing,
        String said,
        boolean phrase,
        Idea idea,
        Family family,
        Optional<Set<Against>> against,
        List<Closing> closings,
        Merit merit) {
    public Answer {
        closings = List.copyOf(closings);
    }

    /** How many pairs the class stands for, a pair that links both ways counted here as well. */
    public long pairs() {
        return (long) carriers * riders;
    }

    /** The same as something to try. */
    Answer tried(Ideas.Tried tried) {
        return new Answer(
                headClass,
                handClass,
                carriers,
                riders,
                gap,
                exact,
                carrier,
                rider,
                pairing,
                said,
                phrase,
                tried.idea(),
                tried.family(),
                Optional.of(tried.against()),
                closings,
                new Merit(
                        merit.contrast(),
                        merit.symmetry(),
                        merit.missing(),
                        tried.slowest(),
                        merit.growth(),
                        merit.toShelf()));
    }
}
