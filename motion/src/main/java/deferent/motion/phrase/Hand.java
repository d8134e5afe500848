package deferent.motion.phrase;

import static deferent.motion.phrase.Word.*;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What has been said so far of one hand, or of the pairing, while its phrase is being read. */
final class Hand {
    /** Of each of these sets, one hand or pairing can be said only one word. */
    private static final List<Set<Word>> ONE_OF =
            List.of(
                    EnumSet.of(WALL, WHEEL, FLOOR),
                    EnumSet.of(HORIZONTAL, VERTICAL, DIAMOND, BOX, TILT),
                    EnumSet.of(REST, TILT),
                    EnumSet.of(IN_SPIN, ANTISPIN),
                    EnumSet.of(TURNS, PETALS, STRETCHES, SWINGING),
                    EnumSet.of(UPRIGHT, LEVEL),
                    EnumSet.of(TOGETHER, SPLIT, QUARTER, TIMING),
                    EnumSet.of(SAME, OPPOSITE),
                    EnumSet.of(SAME, OPPOSITES),
                    EnumSet.of(SAME_TIME, OPPOSITE),
                    EnumSet.of(SAME_TIME, SPLIT, QUARTER, TIMING),
                    EnumSet.of(SAME_TIME, OPPOSITES),
                    EnumSet.of(CLOCKWISE, COUNTER_CLOCKWISE));

    /** Words that say a flower by themselves. */
    private static final Set<Word> FLOWERY =
            EnumSet.of(PETALS, IN_SPIN, ANTISPIN, BOX, DIAMOND, TOROID);

    private final String name;
    private final Map<Word, Said.Remark> remarks = new EnumMap<>(Word.class);
    private Optional<Reader.Found> motion = Optional.empty();

    Hand(String name) {
        this.name = name;
    }

    /** "first", "second". */
    String name() {
        return name;
    }

    Map<Word, Said.Remark> remarks() {
        return remarks;
    }

    Optional<Reader.Found> motion() {
        return motion;
    }

    void does(Reader.Found found) {
        motion = Optional.of(found);
    }

    /** Whether a motion has been said, by name or by words that mean a flower. */
    boolean done() {
        return motion.isPresent() || remarks.keySet().stream().anyMatch(FLOWERY::contains);
    }

    /** What has been said already that leaves no room for this word. */
    Optional<Word> clash(Word word) {
        if (remarks.containsKey(word)) {
            return Optional.of(word);
        }
        return ONE_OF.stream()
                .filter(set -> set.contains(word))
                .flatMap(Set::stream)
                .filter(remarks::containsKey)
                .findFirst();
    }

    /** Whether this word goes with the hand's motion. */
    boolean takes(Word word) {
        return taken().contains(word);
    }

    private Optional<Word> motionWord() {
        return motion.isPresent() ? motion.get().word() : Optional.of(FLOWER);
    }

    private Set<Word> taken() {
        return motionWord().map(Word::takes).orElse(Said.OWN_TAKES);
    }

    /** A word that was said but does not go with the motion. */
    Optional<Word> stray() {
        return remarks.keySet().stream()
                .filter(w -> !takes(w) && w != TOROID && w != LOOPS)
                .findFirst();
    }

    /** Where a word was said of this hand, or the phrase's start. */
    Spot spotOf(Word word) {
        return Optional.ofNullable(remarks.get(word)).map(Said.Remark::spot).orElse(new Spot(0, 0));
    }

    String motionName() {
        return motionWord()
                .map(Word::said)
                .or(() -> motion.flatMap(Reader.Found::own).map(Lexicon.Own::name))
                .orElse("");
    }

    /** The sizes of its own that the motion takes, for an error. */
    String takesInWords() {
        List<String> own =
                taken().stream().filter(w -> !Word.PLACED.contains(w)).map(Word::said).toList();
        return own.isEmpty()
                ? "nothing but its tether and its place"
                : "of its own sizes only " + String.join(", ", own);
    }

    Said said() {
        Spot spot =
                motion.map(Reader.Found::spot)
                        .orElseGet(() -> remarks.values().iterator().next().spot());
        return new Said(motionWord(), motion.flatMap(Reader.Found::own), spot, Map.copyOf(remarks));
    }
}
