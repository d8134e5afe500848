package deferent.motion.phrase;

import static java.util.stream.Collectors.joining;

import deferent.motion.pairing.Refusal;
import deferent.motion.trade.Spelling;
import deferent.motion.trade.Trade;
import deferent.motion.trade.TradeMotion;
import deferent.motion.trade.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

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

    /** The trade's motions in the order of their table, then every word but fillers. */
    public static List<Entry> all() {
        return all(Lexicon.EMPTY);
    }

    /** Every word, and the user's own after them. */
    public static List<Entry> all(Lexicon lexicon) {
        Stream<Entry> motions = Trade.motions().stream().map(Words::entry);
        Stream<Entry> words = Word.all().stream().filter(Words::explained).map(Words::entry);
        Stream<Entry> own = lexicon.motions().stream().map(Words::entry);
        return Stream.of(motions, words, own).flatMap(entries -> entries).toList();
    }

    private static boolean explained(Word word) {
        return word.kind() != Word.Kind.FILLER && word.kind() != Word.Kind.OWN;
    }

    public static Entry explain(String word) {
        return explain(word, Lexicon.EMPTY);
    }

    /** The entry of that word; refuses one that is not known with the nearest ones. */
    public static Entry explain(String word, Lexicon lexicon) {
        String key = Spelling.key(word);
        String full = Stream.of(word.split("[ -]")).map(Spelling::full).collect(joining());
        Optional<Entry> known = known(key, lexicon).or(() -> known(full, lexicon));
        if (known.isPresent()) {
            return known.get();
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

    private static Optional<Entry> known(String key, Lexicon lexicon) {
        return lexicon.spelt(key)
                .map(Words::entry)
                .or(() -> Word.spelt(key).filter(Words::explained).map(Words::entry));
    }

    private static Entry entry(Word word) {
        return new Entry(word.said(), word.means(), word.sizesUnsaid(), word.also());
    }

    private static Entry entry(TradeMotion motion) {
        List<String> also = motion.spellings().subList(1, motion.spellings().size());
        return new Entry(motion.said(), motion.means(), motion.sizesUnsaid(), also);
    }
}
