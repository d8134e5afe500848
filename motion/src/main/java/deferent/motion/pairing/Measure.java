package deferent.motion.pairing;

import java.util.List;

/**
 * A size of a hand path's form. Documents, their schema and phrases take it from here.
 *
 * @param key its name in documents, without a unit
 * @param word its word in phrases
 * @param means what it is, for the list of words; empty where that list has the word already
 * @param unsaidInWords what a phrase means that leaves it out, for the list of words
 * @param also second spellings of its word
 * @param unit what it is measured in
 * @param least bounds; a length is above the lower one
 * @param most
 * @param unsaid the same as a number; of a length in tethers
 * @param must whether a document has to say it
 */
public record Measure(
        String key,
        String word,
        String means,
        String unsaidInWords,
        List<String> also,
        Unit unit,
        double least,
        double most,
        double unsaid,
        boolean must) {
    /** What a size is measured in: metres, radians, or whole numbers. */
    public enum Unit {
        LENGTH,
        ANGLE,
        WHOLE
    }

    // Greatest length in a hand path, metres, and greatest angle: about a thousand turns.
    private static final double FARTHEST = 10;
    private static final double MOST_TURNED = 6283;

    public Measure {
        also = List.copyOf(also);
    }

    /** The same size with its entry in the list of words. */
    Measure meaning(String means, String unsaidInWords, String... also) {
        return new Measure(
                key, word, means, unsaidInWords, List.of(also), unit, least, most, unsaid, must);
    }

    static Measure length(String key, String word, double tethersUnsaid) {
        return of(key, word, Unit.LENGTH, 0, FARTHEST, tethersUnsaid, true);
    }

    static Measure angle(String key, String word, double unsaid, boolean must) {
        return of(key, word, Unit.ANGLE, -MOST_TURNED, MOST_TURNED, unsaid, must);
    }

    static Measure whole(String key, String word, int least, int most, int unsaid) {
        return of(key, word, Unit.WHOLE, least, most, unsaid, true);
    }

    private static Measure of(
            String key,
            String word,
            Unit unit,
            double least,
            double most,
            double unsaid,
            boolean must) {
        return new Measure(key, word, "", "", List.of(), unit, least, most, unsaid, must);
    }
}
