package deferent.motion.trade;

import java.util.Map;
import java.util.TreeMap;

/**
 * What the trade's word for a motion says of both hands where it stands alone: "three-beat weave"
 * is two hands that do it, in split time. Whatever of it is said otherwise is as it is said.
 *
 * @param unsaid words that go without saying, with what stands with them
 * @param only whether it is always said of both hands, so that one hand alone cannot do it
 */
public record Both(Map<Word, Amount> unsaid, boolean only) {
    public Both {
        unsaid = Map.copyOf(unsaid);
    }

    /**
     * Those words where the pattern goes the other way round: who was so far ahead is as far
     * behind.
     */
    public Map<Word, Amount> backwards() {
        Map<Word, Amount> all = new TreeMap<>(unsaid);
        all.replaceAll(
                (word, amount) ->
                        amount instanceof Amount.Count ahead && word == Word.TIMING
                                ? new Amount.Count(1 - ahead.value())
                                : amount);
        return all;
    }

    static Both of(Word... words) {
        return new Both(plain(words), false);
    }

    static Both only(Word... words) {
        return new Both(plain(words), true);
    }

    static Both at(Word word, double number) {
        return new Both(Map.of(word, new Amount.Count(number)), false);
    }

    static Both fountain() {
        Map<Word, Amount> all =
                plain(
                        Word.WHEEL,
                        Word.SPLIT,
                        Word.TURNING_ABOUT,
                        // Forward over the top.
                        Word.COUNTER_CLOCKWISE);
        all.put(Word.CYCLES, new Amount.Count(8));
        // Beside the axis that the body turns about: where both arms stay clear of all else.
        all.put(Word.CENTRE, new Amount.Shift(metres(0.34), metres(0), metres(-0.10), false));
        return new Both(all, true);
    }

    private static Amount.Length metres(double metres) {
        return new Amount.Length(metres, false, Unit.METRES);
    }

    private static Map<Word, Amount> plain(Word... words) {
        Map<Word, Amount> all = new TreeMap<>();
        for (Word word : words) {
            all.put(word, new Amount.Plain());
        }
        return all;
    }
}
