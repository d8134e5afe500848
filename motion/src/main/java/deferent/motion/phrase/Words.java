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
     * @param goes where it stands in a phrase
     */
    public record Entry(
            String word, String means, String sizesUnsaid, List<String> alsoSaid, Goes goes) {
        public Entry {
            alsoSaid = List.copyOf(alsoSaid);
        }

        /** A phrase that shows it; empty where no phrase says it, or it takes more to say. */
        public Optional<Shown> shown(Lexicon lexicon) {
            return goes.frames.stream()
                    .map(
                            frame ->
                                    new Shown(
                                            goes.filled(frame, word),
                                            goes != Goes.PAIR && goes != Goes.BOTH))
                    .filter(s -> Completion.read(s.phrase(), lexicon).isPresent())
                    .findFirst();
        }
    }

    /**
     * A phrase that shows a word.
     *
     * @param alone whether its left hand alone shows it
     */
    public record Shown(String phrase, boolean alone) {}

    /** Where a word stands in a phrase. */
    public enum Goes {
        /** It is what one hand does. */
        HAND("%s vs %s"),
        /** It is what both hands do, in one word. */
        BOTH("%s"),
        /** It stands with a hand's motion. */
        BESIDE("%s cat-eye vs %s cat-eye", "%s four-petal antispin vs %s four-petal antispin"),
        /** It stands with a hand's motion, and a number with it. */
        SIZE("cat-eye %s vs cat-eye %s", "flower %s vs flower %s", "pendulum %s vs pendulum %s"),
        /** It is said of the two hands together, after a comma. */
        PAIR("isolation vs isolation, %s"),
        /** A phrase does not say it, or says it elsewhere. */
        NOWHERE;

        private final List<String> frames;

        Goes(String... frames) {
            this.frames = List.of(frames);
        }

        private static Goes of(Word word) {
            return switch (word.kind()) {
                case FLAG -> BESIDE;
                case SIZE -> SIZE;
                case SHARED -> PAIR;
                case OWN, JOIN, OWNER, AND, FILLER, ASIDE, EXPLAINED -> NOWHERE;
            };
        }

        private String filled(String frame, String word) {
            String number =
                    this == SIZE || this == PAIR
                            ? Word.spelt(Spelling.key(word)).map(Completion::example).orElse("")
                            : "";
            return frame.replace("%s", word + number);
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
                "is not a known word",
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
        return new Entry(word.said(), word.means(), word.sizesUnsaid(), word.also(), Goes.of(word));
    }

    private static Entry entry(TradeMotion motion) {
        List<String> also = motion.spellings().subList(1, motion.spellings().size());
        return new Entry(
                motion.said(),
                motion.means(),
                motion.sizesUnsaid(),
                also,
                motion.both().isPresent() ? Goes.BOTH : Goes.HAND);
    }
}
