package deferent.motion.seek;

import deferent.motion.pairing.Pairing;
import java.util.List;

/**
 * A tie between a class of roots (all that draw one head path) and a class of riders (all whose
 * hand goes one path), with one pairing to stand for all of them.
 *
 * @param headClass the roots' class
 * @param handClass the riders' class
 * @param roots how many motions may lead
 * @param riders how many may follow
 * @param gap clock gap, metres
 * @param exact whether it is linked without changing any size
 * @param root key of the representative's root, the left hand
 * @param rider key of its rider, the right hand
 * @param pairing the representative, placed and timed so that the rider's hand goes where the
 *     root's head goes
 * @param said its phrase, or where the trade has no words its description
 * @param phrase whether {@code said} is a phrase
 * @param family what stays when sizes change
 * @param closings sizes that close the gap, least change first; none where it is closed, or where
 *     no single size does
 * @param merit what it is ranked by
 */
public record Answer(
        int headClass,
        int handClass,
        int roots,
        int riders,
        double gap,
        boolean exact,
        int root,
        int rider,
        Pairing pairing,
        String said,
        boolean phrase,
        String family,
        List<Closing> closings,
        Merit merit) {
    public Answer {
        closings = List.copyOf(closings);
    }

    /** How many pairs the class stands for, a pair that ties both ways counted here as well. */
    public long pairs() {
        return (long) roots * riders;
    }
}
