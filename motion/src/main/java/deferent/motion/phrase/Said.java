package deferent.motion.phrase;

import deferent.motion.pairing.Series;
import deferent.motion.pairing.Stretches;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a phrase says of one hand, as it was said: sizes left unsaid are not in it.
 *
 * @param motion the trade's word, empty for a motion of the user's own
 * @param own the user's own motion, empty for a trade word
 * @param spot where the motion's word stands
 * @param remarks everything else that was said of this hand
 */
record Said(
        Optional<Word> motion, Optional<Lexicon.Own> own, Spot spot, Map<Word, Remark> remarks) {

    /** What can be said with a motion of the user's own. */
    static final Set<Word> OWN_TAKES = ownTakes();

    private static Set<Word> ownTakes() {
        Set<Word> all = EnumSet.copyOf(Word.PLACED);
        all.addAll(EnumSet.of(Word.HAND_RADIUS, Word.TILT, Word.HORIZONTAL, Word.VERTICAL));
        return all;
    }

    /** A word said of a hand, with its amount and where it stands. */
    record Remark(Amount amount, Spot spot) {}

    /** What stands with a word: a number, a size, or nothing. */
    sealed interface Amount {}

    /** Nothing: the word says all. */
    record Plain() implements Amount {}

    /** A bare number. */
    record Count(double value) implements Amount {}

    /** A length: metres, or a share of the hand's own tether; and the unit it was said in. */
    record Length(double value, boolean ofTether, Unit unit) implements Amount {
        double metres(double tether) {
            return ofTether ? value * tether : value;
        }
    }

    /** An angle in radians, and the unit it was said in. */
    record Angle(double radians, Unit unit) implements Amount {}

    /** Poi turns on the way out and on the way back. */
    record OutAndBack(double out, double back) implements Amount {}

    /** Stretches with their own turns. */
    record InStretches(List<Stretches.Stretch> stretches) implements Amount {}

    /** Circles that add up to a hand path. */
    record Sum(List<Series.Term> terms) implements Amount {}

    /** Three lengths: left, up, forward; from the usual centre, or from the breastbone. */
    record Shift(Length left, Length up, Length forward, boolean fromUsual) implements Amount {}

    /** Two lengths: along and across. */
    record Pair(Length along, Length across) implements Amount {}

    /** The unit an amount was said in; empty where it is no size, or of several units. */
    static Optional<Unit> unit(Amount amount) {
        if (amount instanceof Length length) {
            return Optional.of(length.unit());
        }
        if (amount instanceof Angle angle) {
            return Optional.of(angle.unit());
        }
        if (amount instanceof Shift shift) {
            return Optional.of(shift.left().unit());
        }
        return amount instanceof Pair pair ? Optional.of(pair.along().unit()) : Optional.empty();
    }

    boolean has(Word word) {
        return remarks.containsKey(word);
    }
}
