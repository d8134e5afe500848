package deferent.motion.phrase;

import deferent.motion.pairing.Refusal;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The sizes said of a hand or of the pairing, or what they are when unsaid. */
record Sizes(Map<Word, Said.Remark> said) {
    boolean has(Word word) {
        return said.containsKey(word);
    }

    Optional<Said.Amount> amount(Word word) {
        return Optional.ofNullable(said.get(word)).map(Said.Remark::amount);
    }

    /** Metres; shares of a tether taken of {@code tether}. */
    double length(Word word, double tether, double unsaid) {
        return amount(word).orElse(null) instanceof Said.Length length
                ? length.metres(tether)
                : unsaid;
    }

    /** Radians. */
    double angle(Word word, double unsaid) {
        return amount(word).orElse(null) instanceof Said.Angle angle ? angle.radians() : unsaid;
    }

    /** A bare number. */
    OptionalDouble number(Word word) {
        return amount(word).orElse(null) instanceof Said.Count count
                ? OptionalDouble.of(count.value())
                : OptionalDouble.empty();
    }

    /** A whole number; refuses any other. */
    int whole(Word word, int unsaid) {
        if (amount(word).orElse(null) instanceof Said.Count count) {
            double value = count.value();
            if (value != Math.rint(value) || Math.abs(value) > 1000) {
                throw new Refusal(
                        "is " + Amounts.number(value), refused(word), "give a whole number");
            }
            return (int) value;
        }
        return unsaid;
    }

    private static String refused(Word word) {
        return word == Word.TURNS ? "poi turns" : word.said();
    }
}
