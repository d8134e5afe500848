package deferent.tell;

import deferent.motion.phrase.Words;
import java.util.List;
import java.util.stream.Stream;

/**
 * The words that sentences of readings use and not everybody knows, each with what it means: words
 * of our own here, one row each, and words of the trade as the words list explains them. A face
 * that can be tapped offers them where they stand in a sentence.
 */
public final class Glossary {
    /**
     * A word of a sentence.
     *
     * @param word as sentences write it
     * @param means what it means, without a full stop
     * @param alsoSaid how else sentences write it
     * @param trade whether the words list has it too, with what shows it
     */
    public record Term(String word, String means, List<String> alsoSaid, boolean trade) {
        public Term {
            alsoSaid = List.copyOf(alsoSaid);
        }
    }

    private static final List<Term> OWN =
            List.of(
                    own(
                            "apart now",
                            "how far that head and that hand get from each other, the way the"
                                    + " pattern is placed and timed now"),
                    own(
                            "at best",
                            "how far they would still get from each other if the whole motion were"
                                    + " turned, moved and timed to fit as well as it can"),
                    own("taut", "the cord is straight and pulls"),
                    own("slack", "the cord hangs loose, since a cord cannot push"),
                    own("slip", "the poi is a little ahead of where it belongs, or behind it"),
                    own("runs away", "a slip grows by itself until you lose the figure"),
                    own("steadies itself", "a slip dies away by itself"),
                    own(
                            "keeps the figure",
                            "the hand gives a little so that the head draws exactly the figure",
                            "keep the figure"),
                    own(
                            "keeps the hand path",
                            "the hand goes exactly its way and the head does what the cord makes of it",
                            "keeps its path",
                            "keep the hand path"),
                    own(
                            "arm's reach",
                            "as far from the shoulder as the grip gets with a straight arm",
                            "within reach"),
                    own("lag", "the hand comes where the head was, a moment later"),
                    own(
                            "closest figure",
                            "of all that a cord and a practised hand can draw, what is nearest to the"
                                    + " figure"));

    private static final List<String> TRADE =
            List.of(
                    "link",
                    "carrier",
                    "rider",
                    "head",
                    "handle",
                    "beat",
                    "static spin",
                    "extension",
                    "linear extension",
                    "isolation",
                    "linear isolation",
                    "point isolation",
                    "cat-eye",
                    "triquetra",
                    "flower",
                    "half-and-half flower",
                    "pendulum",
                    "CAP",
                    "cat-eye CAP",
                    "triquetra CAP",
                    "toroid",
                    "in-spin",
                    "antispin",
                    "petals",
                    "split");

    private Glossary() {}

    /** Every term, our own first. */
    public static List<Term> all() {
        return Stream.concat(OWN.stream(), TRADE.stream().map(Glossary::trade)).toList();
    }

    private static Term own(String word, String means, String... also) {
        return new Term(word, means, List.of(also), false);
    }

    private static Term trade(String word) {
        Words.Entry entry = Words.explain(word);
        return new Term(word, entry.means(), List.of(), true);
    }
}
