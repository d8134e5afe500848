package deferent.motion.phrase;

import deferent.motion.pairing.Motion;
import deferent.motion.trade.Amount;
import deferent.motion.trade.Sizes;
import deferent.motion.trade.TradeMotion;
import deferent.motion.trade.Word;
import java.util.HashMap;
import java.util.Map;

/**
 * What a phrase says of one hand, as it was said: sizes left unsaid are not in it.
 *
 * @param motion the trade's, or one of the user's own
 * @param spot where the motion's word stands
 * @param remarks everything else that was said of this hand
 */
record Said(TradeMotion motion, Spot spot, Map<Word, Remark> remarks) {

    /** A word said of a hand, with its amount and where it stands. */
    record Remark(Amount amount, Spot spot) {}

    boolean has(Word word) {
        return remarks.containsKey(word);
    }

    /** The sizes said, on that tether in metres. */
    Sizes sizes(double tether) {
        return sizes(remarks, tether);
    }

    static Sizes sizes(Map<Word, Remark> remarks, double tether) {
        Map<Word, Amount> amounts = new HashMap<>();
        remarks.forEach((word, remark) -> amounts.put(word, remark.amount()));
        return new Sizes(amounts, tether);
    }

    /** The motion of those sizes. */
    Motion motion(double tether, boolean mirrored) {
        return motion.motion(sizes(tether), mirrored);
    }
}
