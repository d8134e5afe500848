package deferent.motion.phrase;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Tether;
import deferent.motion.trade.Word;
import java.util.Map;
import java.util.Optional;

/**
 * A pairing written in trade words, on one line: what was said, with sizes left unsaid kept unsaid.
 *
 * <pre>
 * Pairing pairing = Phrase.parse("isolation vs four-petal antispin, split time").pairing();
 * </pre>
 *
 * What stands before "vs" is said of the left or first hand, what stands after it of the other, and
 * what stands after a comma at the end of both. A single motion is both hands doing it.
 */
public final class Phrase {
    private final String text;
    private final Said left;
    private final Said right;
    private final Map<Word, Said.Remark> shared;

    private final Lexicon lexicon;

    Phrase(String text, Said left, Said right, Map<Word, Said.Remark> shared, Lexicon lexicon) {
        this.lexicon = lexicon;
        this.text = text;
        this.left = left;
        this.right = right;
        this.shared = Map.copyOf(shared);
    }

    /** Reads a phrase in the trade's words; throws {@link PhraseError} where it cannot. */
    public static Phrase parse(String text) {
        return parse(text, Lexicon.EMPTY);
    }

    /** Reads a phrase in the trade's words and the user's own. */
    public static Phrase parse(String text, Lexicon lexicon) {
        try {
            return new Parser(text, lexicon).phrase();
        } catch (PhraseError error) {
            throw error.offering(Mending.offers(error, lexicon, Tether.USUAL));
        }
    }

    /** A phrase that reads back as exactly this pairing; empty where the trade has no words. */
    public static Optional<String> write(Pairing pairing) {
        return write(pairing, Lexicon.EMPTY);
    }

    /** As {@link #write(Pairing)}, with the user's own names for motions. */
    public static Optional<String> write(Pairing pairing, Lexicon lexicon) {
        return new PhraseWriter(pairing, lexicon).phrase();
    }

    /** As it was said. */
    public String text() {
        return text;
    }

    /** The pairing at the usual tether where none is said. */
    public Pairing pairing() {
        return with(Tether.USUAL);
    }

    /**
     * The pairing, with {@code usual} for hands whose tether is unsaid; sizes unsaid scale with it.
     * Throws {@link PhraseError} where the sizes said are impossible.
     */
    public Pairing with(Tether usual) {
        try {
            return sized(usual);
        } catch (PhraseError error) {
            throw error.offering(Mending.offers(error, lexicon, usual));
        }
    }

    /**
     * As {@link #with}, without looking for phrases that would do where the sizes are impossible.
     */
    Pairing sized(Tether usual) {
        return new Sizing(text, left, right, shared).pairing(usual);
    }

    @Override
    public String toString() {
        return text;
    }
}
