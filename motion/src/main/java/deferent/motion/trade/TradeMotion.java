package deferent.motion.trade;

import static deferent.motion.trade.Word.*;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Tilt;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.function.Function;

/**
 * A motion under a name, all that is known of it in one row: phrases are read and written by it,
 * and lists of words and what completes a word come from it.
 *
 * @param spellings as it is written, then its second names
 * @param means what it is, for the list of words
 * @param sizesUnsaid the sizes it has where none are said, in words
 * @param takes the words that may stand with it
 * @param made the motion of the sizes said, before it is tilted
 * @param recognised what it calls a motion that is this one, whatever its sizes
 * @param both what it says of both hands where it stands alone, if it says more than that they do
 *     it
 */
public record TradeMotion(
        List<String> spellings,
        String means,
        String sizesUnsaid,
        SortedSet<Word> takes,
        Function<Sizes, Motion> made,
        Function<Seen, Optional<Call>> recognised,
        Optional<Both> both) {
    public TradeMotion {
        spellings = List.copyOf(spellings);
    }

    /** A motion of one hand; said alone, both do it together. */
    public TradeMotion(
            List<String> spellings,
            String means,
            String sizesUnsaid,
            SortedSet<Word> takes,
            Function<Sizes, Motion> made,
            Function<Seen, Optional<Call>> recognised) {
        this(spellings, means, sizesUnsaid, takes, made, recognised, Optional.empty());
    }

    /** As it is written. */
    public String said() {
        return spellings.get(0);
    }

    /** The word that has to follow its own, as in "loops 1 of 30 cm". */
    public Optional<Word> follows() {
        return takes.stream().filter(w -> w.kind() == Kind.OWN).findFirst();
    }

    /**
     * The motion of these sizes.
     *
     * @param mirrored whether it is mirrored before it is placed, which turns a tilt as placed
     *     round
     */
    public Motion motion(Sizes sizes, boolean mirrored) {
        Motion motion = made.apply(sizes);
        if (sizes.has(TILT) || sizes.has(VERTICAL) || sizes.has(DIAGONAL)) {
            double unsaid = sizes.has(DIAGONAL) ? Sizes.QUARTER_TURN / 2 : Sizes.QUARTER_TURN;
            double tilt = sizes.angle(TILT, unsaid);
            motion = Tilt.set(motion, mirrored ? 0.0 - tilt : tilt);
        }
        if (sizes.has(HAND_START) && motion.path().circle().isPresent()) {
            motion = motion.turned(sizes.angle(HAND_START, 0));
        }
        if (sizes.has(RIDING)) {
            if (sizes.has(HAND_RADIUS)) {
                throw new Refusal(
                        "is said of a hand that rides",
                        "hand radius",
                        "leave it out: a rider's hand goes where the other head goes");
            }
            motion = motion.withPath(new Riding());
        }
        return motion;
    }
}
