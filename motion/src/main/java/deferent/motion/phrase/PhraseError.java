package deferent.motion.phrase;

import deferent.motion.pairing.Refused;
import java.util.List;

/**
 * A phrase that cannot be read, or that says something impossible: which part of it, what is wrong,
 * what was expected there, and the nearest words that would do.
 */
public final class PhraseError extends Refused {
    private static final long serialVersionUID = 1L;

    private final String text;
    private final int start;
    private final int end;
    private final String expected;
    private final List<String> nearest;

    /**
     * @param text the whole phrase
     * @param start first character of the part that is wrong
     * @param end the character after it
     * @param what what is wrong, a clause without a full stop
     * @param expected what was expected there
     * @param nearest words that are spelt much the same, nearest first; may be empty
     */
    public PhraseError(
            String text, int start, int end, String what, String expected, List<String> nearest) {
        super(sentence(what, expected, nearest), what, "phrase", right(expected, nearest));
        this.text = text;
        this.start = start;
        this.end = end;
        this.expected = expected;
        this.nearest = List.copyOf(nearest);
    }

    private static String sentence(String what, String expected, List<String> nearest) {
        return what
                + "; expected: "
                + expected
                + (nearest.isEmpty() ? "" : ". Nearest: " + String.join(", ", nearest));
    }

    private static String right(String expected, List<String> nearest) {
        return nearest.isEmpty() ? expected : "did you mean " + String.join(" or ", nearest) + "?";
    }

    public String text() {
        return text;
    }

    public int start() {
        return start;
    }

    public int end() {
        return end;
    }

    public String expected() {
        return expected;
    }

    @Override
    public List<String> nearest() {
        return nearest;
    }

    /** The phrase, and below it a line of carets under the part that is wrong. */
    public String underlined() {
        return text.replace('\t', ' ').replace('\n', ' ')
                + "\n"
                + " ".repeat(start)
                + "^".repeat(Math.max(1, end - start));
    }
}
