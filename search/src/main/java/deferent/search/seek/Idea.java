package deferent.search.seek;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.MotionWords;
import deferent.motion.shared.Side;
import deferent.motion.trade.Names;
import java.util.stream.Collectors;

/**
 * A pairing without its sizes, as one spinner says it to another.
 *
 * @param carrier what the hand does whose head leads: "isolation"
 * @param rider what the other does: "triquetra"
 * @param together how the two go where that is not together and the same way round: ", split time"
 * @param spoken whether the trade has a word for what either hand does
 */
public record Idea(String carrier, String rider, String together, boolean spoken) {
    /** The idea of a pairing whose left head leads. */
    static Idea of(Pairing pairing) {
        String carrier = hand(pairing, Side.LEFT);
        return MotionKind.of(pairing, Side.RIGHT).walksAFigure()
                ? new Idea(carrier, "hand walking its figure", "", false)
                : new Idea(
                        carrier,
                        hand(pairing, Side.RIGHT),
                        together(pairing),
                        spoken(pairing, Side.LEFT) && spoken(pairing, Side.RIGHT));
    }

    /** All of it: "isolation vs triquetra, split time". */
    public String words() {
        return carrier + " vs " + rider + together;
    }

    /** What another idea has that this one has not: "four-petal antispin" of two carriers alike. */
    public String unlike(Idea other) {
        return carrier.equals(other.carrier)
                ? other.rider
                : rider.equals(other.rider) ? other.carrier : other.words();
    }

    /** How many words it takes. */
    public int length() {
        return words().split(" ").length;
    }

    private static String hand(Pairing pairing, Side side) {
        Motion motion = pairing.part(side).motion();
        MotionKind kind = MotionKind.of(pairing, side);
        String words =
                spoken(pairing, side)
                        ? MotionWords.of(pairing, side).replace(", riding", "")
                        : kind == MotionKind.STAR ? inRounds(motion) : kind.words();
        // "CAP riding, the poi turning three times"
        return motion.riding() ? words.replaceFirst("(?=,|$)", " riding") : words;
    }

    /** A flower that closes after several rounds of the hand: "five-petal antispin, two rounds". */
    private static String inRounds(Motion motion) {
        int k = motion.path().circle().orElseThrow().k();
        int turns = Integer.signum(k) * motion.spin().turns();
        int petals = Math.abs(turns - Math.abs(k));
        return Names.flower(turns < 0 ? 1 - petals : 1 + petals)
                + ", "
                + Names.count(Math.abs(k))
                + " rounds";
    }

    private static String together(Pairing pairing) {
        return MotionWords.together(pairing).stream()
                .map(words -> ", " + words)
                .collect(Collectors.joining());
    }

    // A motion that the trade has no word for is described by its hand's path.
    private static boolean spoken(Pairing pairing, Side side) {
        String noun = pairing.part(side).motion().path().noun();
        return !MotionWords.of(pairing, side).matches(noun + "\\b.*");
    }
}
