package deferent.tell;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Figure;
import deferent.motion.trace.Trace;
import deferent.search.fit.SizeChange;
import java.util.ArrayList;
import java.util.List;

/** Says in one sentence what a fit did: which sizes went where, and what became of the figures. */
public final class TellBecame {
    // A figure whose width keeps to this share of itself looks the same.
    private static final double ALIKE = 0.01;

    // Metres too few to see.
    private static final double NOTHING = 1e-3;

    private TellBecame() {}

    /**
     * "The right hand radius went from 60 cm to 30 cm, and the timing from together to split; the
     * right figure is now 75% as wide."
     */
    public static String of(Pairing before, Pairing after) {
        List<SizeChange> changes = SizeChange.between(before, after);
        if (changes.isEmpty()) {
            return "Nothing changed.";
        }
        List<String> went = new ArrayList<>();
        for (SizeChange change : changes) {
            went.add(
                    TellFit.name(change.size(), before)
                            + (went.isEmpty() ? " went from " : " from ")
                            + TellFit.place(change.size(), change.from())
                            + " to "
                            + TellFit.place(change.size(), change.to()));
        }
        List<String> figures = new ArrayList<>();
        for (Side side : Side.values()) {
            double was = Figure.quick(Trace.of(before), side).width();
            double is = Figure.quick(Trace.of(after), side).width();
            if (was > NOTHING && is > NOTHING && Math.abs(is / was - 1) > ALIKE) {
                figures.add("the " + side.word() + " figure is now " + asWide(is / was));
            }
        }
        return Say.capital(Say.listed(went, "and"))
                + (figures.isEmpty()
                        ? "; both figures are as wide as before"
                        : "; " + Say.listed(figures, "and"))
                + ".";
    }

    private static String asWide(double ratio) {
        if (Math.abs(ratio - 0.5) < ALIKE) {
            return "half as wide";
        }
        return Math.abs(ratio - 2) < 2 * ALIKE
                ? "twice as wide"
                : ratio < 1
                        ? Say.percent(ratio) + " as wide"
                        : Say.trimmed(ratio, 1) + " times as wide";
    }
}
