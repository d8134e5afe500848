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
 * @param least lower bound; lengths and angles are above it
 * @param most upper bound
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
    /** What a size is measured in: metres, radians, whole numbers, or a share of the cycle. */
    public enum Unit {
        LENGTH,
        ANGLE,
        WHOLE,
        SHARE
    }

    // Greatest length in a hand path, metres.
    private static final double FARTHEST = 10;

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
        return of(
                key,
                word,
                Unit.ANGLE,
                Double.NEGATIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                unsaid,
                must);
    }

    /** The same size above {@code least} and at most {@code most}. */
    Measure within(double least, double most) {
        return new Measure(key, word, means, unsaidInWords, also, unit, least, most, unsaid, must);
    }

    /** Whether it has bounds of its own. */
    public boolean bounded() {
        return Double.isFinite(most);
    }

    static Measure whole(String key, String word, int least, int most, int unsaid) {
        return of(key, word, Unit.WHOLE, least, most, unsaid, true);
    }

    /** A share of the cycle, which a document may leave out. */
    static Measure share(String key, String word, double unsaid) {
        return of(key, word, Unit.SHARE, 0, 1, unsaid, false);
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
