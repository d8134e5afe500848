package deferent.motion.phrase;

import deferent.motion.pairing.Refusal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Explains words: the trade's, our own, and those the user has named. */
public final class Words {
    private Words() {}

    /**
     * A word explained.
     *
     * @param word as it is written
     * @param means what it means, without a full stop
     * @param sizesUnsaid what it takes where the phrase leaves a size unsaid; may be empty
     * @param alsoSaid second names
     */
    public record Entry(String word, String means, String sizesUnsaid, List<String> alsoSaid) {
        public Entry {
            alsoSaid = List.copyOf(alsoSaid);
        }
    }

    /** Every word but fillers, in the order of the list: motions, qualifiers, sizes, timing. */
    public static List<Entry> all() {
        return Arrays.stream(Word.values())
                .filter(w -> w.kind() != Word.Kind.FILLER)
                .map(Words::entry)
                .toList();
    }

    /** Every word, and the user's own after them. */
    public static List<Entry> all(Lexicon lexicon) {
        List<Entry> entries = new ArrayList<>(all());
        lexicon.byKey().values().forEach(own -> entries.add(entry(own)));
        return List.copyOf(entries);
    }

    public static Entry explain(String word) {
        return explain(word, Lexicon.EMPTY);
    }

    /** The entry of that word; refuses one that is not known with the nearest ones. */
    public static Entry explain(String word, Lexicon lexicon) {
        String key = Spelling.key(word);
        Lexicon.Own own = lexicon.byKey().get(key);
        if (own != null) {
            return entry(own);
        }
        Optional<Word> known = Word.spelt(key).filter(w -> w.kind() != Word.Kind.FILLER);
        if (known.isPresent()) {
            return entry(known.get());
        }
        List<String> candidates = new ArrayList<>();
        all(lexicon)
                .forEach(
                        e -> {
                            candidates.add(e.word());
                            candidates.addAll(e.alsoSaid());
                        });
        List<String> nearest = Spelling.nearest(word, candidates);
        throw new Refusal(
                "is no word known here",
                "\"" + word + "\"",
                nearest.isEmpty()
                        ? "ask for all words to see them"
                        : "did you mean " + String.join(", ", nearest) + "?");
    }

    private static Entry entry(Word word) {
        return new Entry(word.said(), word.means(), word.sizesUnsaid(), word.also());
    }

    private static Entry entry(Lexicon.Own own) {
        return new Entry(
                own.name(),
                "a motion of your own: "
                        + MotionWords.describe(own.motion(), own.tether().length()),
                "as it was named, scaled with the tether from "
                        + Amounts.length(own.tether().length()),
                List.of());
    }
}
