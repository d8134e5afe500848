package deferent.motion.phrase;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import deferent.motion.trade.Amounts;
import deferent.motion.trade.Seen;
import deferent.motion.trade.SpinWords;
import deferent.motion.trade.Trade;
import deferent.motion.trade.TradeMotion;
import java.util.ArrayList;
import java.util.List;

/**
 * What a hand does, in the trade's words where it has some, else described: which motion it is, not
 * its sizes.
 */
public final class MotionWords {
    private MotionWords() {}

    public static String of(Pairing pairing, Side side) {
        return of(pairing, side, Lexicon.EMPTY);
    }

    /** "isolation", "horizontal cat-eye", "four-petal antispin", "CAP-like triquetra". */
    public static String of(Pairing pairing, Side side, Lexicon lexicon) {
        Seen seen = Seen.of(pairing, side);
        for (TradeMotion own : lexicon.motions()) {
            if (PhraseWriter.makes(own.said(), seen, lexicon)) {
                return own.said();
            }
        }
        String name = seen.motion().riding() ? rider(seen) : Trade.called(seen).name();
        return pairing.part(side).place().turn().turns() == 0 ? name : "toroid of " + name;
    }

    /**
     * How the two go together: "split time", "opposite direction"; none where they go together, the
     * same way round.
     */
    public static List<String> together(Pairing pairing) {
        List<String> said = new ArrayList<>();
        Timing timing = pairing.timing();
        if (timing.equals(Timing.SPLIT)) {
            said.add("split time");
        } else if (timing.equals(Timing.QUARTER)) {
            said.add("quarter time");
        } else if (!timing.equals(Timing.TOGETHER)) {
            said.add("timing " + Amounts.share(timing.ahead()));
        }
        if (pairing.direction() == Direction.OPPOSITE) {
            said.add(timing.equals(Timing.TOGETHER) ? "opposites" : "opposite direction");
        }
        return said;
    }

    private static String rider(Seen seen) {
        String riding = ", riding";
        int n = seen.motion().spin().turns();
        if (seen.motion().spin().even().isEmpty()) {
            String turning =
                    seen.motion().spin().swings()
                            ? "pendulum"
                            : SpinWords.turning(seen.motion().spin());
            return turning + riding;
        }
        if (seen.onArc() && n > 0) {
            return Trade.called(seen).name();
        }
        Seen circling = seen.with(seen.motion().withPath(Series.circle(seen.tether() / 2)));
        if (!seen.onArc() || n == 0) {
            return Trade.called(circling).name() + riding;
        }
        // Turned a little, a figure is called without the way it stands.
        Turns turned = new Turns(n, 0.1 * (1 - n));
        return "CAP-like "
                + Trade.called(circling.with(circling.motion().withSpin(turned))).words();
    }
}
