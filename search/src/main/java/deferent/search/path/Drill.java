package deferent.search.path;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import java.util.List;
import java.util.Optional;

/**
 * One thing to practise on the way to a pattern: a pairing of its own, which every face can play.
 *
 * @param kind what it is of the pattern
 * @param hand whose hand is alone or changed, where it is one hand's
 * @param pairing what is spun
 * @param phrase the same in trade words, which read back as exactly this pairing; empty only for a
 *     pattern that words cannot say
 * @param hardness how hard it is
 * @param needs places in the path, from 0, of what has to be known before
 */
public record Drill(
        DrillKind kind,
        Optional<Side> hand,
        Pairing pairing,
        Optional<String> phrase,
        Hardness hardness,
        List<Integer> needs) {
    /** Minutes that the easiest drill takes, and that each point of hardness adds (our choice). */
    private static final int FIRST = 10;

    private static final int EACH = 5;

    public Drill {
        needs = List.copyOf(needs);
    }

    /**
     * Minutes of practice after which it is counted as known: {@value #FIRST} and {@value #EACH}
     * for each point of hardness. A model, and no measurement.
     */
    public int minutes() {
        return FIRST + EACH * (int) Math.round(hardness.total());
    }
}
