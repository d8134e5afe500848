package deferent.motion.phrase;

import static deferent.motion.trade.Word.*;

import deferent.motion.trade.Trade;
import deferent.motion.trade.TradeMotion;
import deferent.motion.trade.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** What has been said so far of one hand, or of the pairing, while its phrase is being read. */
final class Hand {
    /** Of each of these sets, one hand or pairing can be said only one word. */
    private static final List<Set<Word>> ONE_OF =
            List.of(
                    Set.of(WALL, WHEEL, FLOOR),
                    Set.of(HORIZONTAL, VERTICAL, DIAGONAL, DIAMOND, BOX, TILT),
                    Set.of(
                            AT_SHOULDER,
                            LEFT_SIDE,
                            RIGHT_SIDE,
                            BEHIND,
                            OVERHEAD,
                            BETWEEN_ARMS,
                            CENTRE),
                    Set.of(
                            AT_SHOULDER,
                            LEFT_SIDE,
                            RIGHT_SIDE,
                            BEHIND,
                            OVERHEAD,
                            BETWEEN_ARMS,
                            DEPTH),
                    Set.of(REST, TILT),
                    Set.of(IN_SPIN, ANTISPIN),
                    Set.of(TURNS, PETALS, STRETCHES, SWINGING),
                    Set.of(PETALS, SWEEP),
                    Set.of(UPRIGHT, LEVEL),
                    Set.of(TOGETHER, SPLIT, QUARTER, TIMING),
                    Set.of(SAME, OPPOSITE),
                    Set.of(REVERSED, CLOCKWISE, COUNTER_CLOCKWISE));

    /** Words that say a flower by themselves. */
    private static final Set<Word> FLOWERY =
            Set.of(PETALS, IN_SPIN, ANTISPIN, BOX, DIAMOND, TOROID);

    private final String name;
    private final Map<Word, Said.Remark> remarks = new TreeMap<>();
    private Optional<TradeMotion> motion = Optional.empty();
    private final List<Bare> bare = new ArrayList<>();
    private Optional<Word> label = Optional.empty();
    private Spot labelSpot = new Spot(0, 0);
    private Spot spot = new Spot(0, 0);

    /** A number or an angle said without the word of its size. */
    record Bare(double value, boolean angle, boolean at, Spot spot, String said) {}

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

    Optional<TradeMotion> motion() {
        return motion;
    }

    /** What the phrase calls this hand: left, right or both; empty where it does not. */
    Optional<Word> label() {
        return label;
    }

    void label(Word whose, Spot where) {
        label = Optional.of(whose);
        labelSpot = where;
    }

    Spot labelSpot() {
        return labelSpot;
    }

    /** Where its motion's word stands. */
    Spot spot() {
        return spot;
    }

    List<Bare> bare() {
        return bare;
    }

    /** This takes all that was said of the other. */
    void copy(Hand other) {
        motion = other.motion;
        spot = other.spot;
        remarks.putAll(other.remarks);
    }

    void does(TradeMotion found, Spot where) {
        motion = Optional.of(found);
        spot = where;
    }

    /** Whether a motion has been said, by name or by words that mean a flower. */
    boolean done() {
        return motion.isPresent() || remarks.keySet().stream().anyMatch(FLOWERY::contains);
    }

    /** Whether these words say a motion. */
    static boolean saysMotion(Reader.Found found) {
        return found.motion().isPresent() || found.word().filter(FLOWERY::contains).isPresent();
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
        return meant().takes().contains(word);
    }

    /** Its motion: words that mean a flower need not name it. */
    TradeMotion meant() {
        return motion.orElse(Trade.FLOWER);
    }

    /** A word that was said but does not go with the motion. */
    Optional<Word> stray() {
        return remarks.keySet().stream()
                .filter(w -> !takes(w) && w != TOROID && w != CLOCKWISE && w != COUNTER_CLOCKWISE)
                .findFirst();
    }

    /** Where a word was said of this hand, or the phrase's start. */
    Spot spotOf(Word word) {
        return Optional.ofNullable(remarks.get(word)).map(Said.Remark::spot).orElse(new Spot(0, 0));
    }

    String motionName() {
        return meant().said();
    }

    /** The sizes of its own that the motion takes, for an error. */
    String takesInWords() {
        List<String> own =
                meant().takes().stream()
                        .filter(w -> !w.placed() && w.kind() != Kind.OWN)
                        .map(Word::said)
                        .toList();
        return own.isEmpty()
                ? "nothing but its tether and its place"
                : "of its own sizes only " + String.join(", ", own);
    }

    Said said() {
        return new Said(
                meant(),
                motion.isPresent() ? spot : remarks.values().iterator().next().spot(),
                Map.copyOf(remarks));
    }
}
