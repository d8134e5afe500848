package deferent.motion.phrase;

import deferent.motion.shared.Refused;
import deferent.motion.trade.Word;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

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
    private final transient List<Edit> edits;
    private final transient Optional<Explained> explained;
    private final List<String> offers;

    /** A word that is explained and not said, and the number that stands with it. */
    record Explained(Word word, OptionalDouble number) {}

    /**
     * @param text the whole phrase
     * @param spot the part that is wrong
     * @param what what is wrong, a clause without a full stop
     * @param expected what was expected there
     * @param nearest words that are spelt much the same, nearest first; may be empty
     * @param edits changes that might mend it
     */
    PhraseError(
            String text,
            Spot spot,
            String what,
            String expected,
            List<String> nearest,
            List<Edit> edits) {
        this(text, spot, what, expected, nearest, edits, Optional.empty(), List.of());
    }

    private PhraseError(
            String text,
            Spot spot,
            String what,
            String expected,
            List<String> nearest,
            List<Edit> edits,
            Optional<Explained> explained,
            List<String> offers) {
        super(sentence(what, expected, nearest), what, "phrase", right(expected, nearest, offers));
        this.text = text;
        this.start = spot.start();
        this.end = spot.end();
        this.expected = expected;
        this.nearest = List.copyOf(nearest);
        this.edits = List.copyOf(edits);
        this.explained = explained;
        this.offers = List.copyOf(offers);
    }

    /** A word that is explained, and said some other way. */
    static PhraseError explaining(String text, Spot spot, Word word, OptionalDouble number) {
        return new PhraseError(
                text,
                spot,
                "\"" + text.substring(spot.start(), spot.end()) + "\" is " + word.means(),
                "words that a phrase takes",
                List.of(),
                List.of(),
                Optional.of(new Explained(word, number)),
                List.of());
    }

    /** The same with phrases near it that read. */
    PhraseError offering(List<String> phrases) {
        String expects =
                explained.isEmpty() || phrases.isEmpty()
                        ? expected
                        : phrases.stream()
                                .map(phrase -> "\"" + phrase + "\"")
                                .collect(Collectors.joining(" or "));
        return new PhraseError(
                text, new Spot(start, end), what(), expects, nearest, edits, explained, phrases);
    }

    private static String sentence(String what, String expected, List<String> nearest) {
        return what
                + "; expected: "
                + expected
                + (nearest.isEmpty() ? "" : ". Nearest: " + String.join(", ", nearest));
    }

    private static String right(String expected, List<String> nearest, List<String> offers) {
        if (!nearest.isEmpty()) {
            return "did you mean " + String.join(" or ", nearest) + "?";
        }
        return offers.isEmpty() || offers.stream().anyMatch(expected::contains)
                ? expected
                : expected + "; near it is \"" + offers.get(0) + "\"";
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

    /** Phrases near this one that read, likeliest first; what is offered to pick from. */
    public List<String> offers() {
        return offers;
    }

    List<Edit> edits() {
        return edits;
    }

    Optional<Explained> explained() {
        return explained;
    }

    /** The phrase, and below it a line of carets under the part that is wrong. */
    public String underlined() {
        return text.replace('\t', ' ').replace('\n', ' ')
                + "\n"
                + " ".repeat(start)
                + "^".repeat(Math.max(1, end - start));
    }
}
