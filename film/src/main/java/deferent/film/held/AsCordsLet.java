package deferent.film.held;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Refused;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.KeepTheHandPath;
import deferent.reading.tether.Kit;
import java.util.Map;

/**
 * The meant pairing as cords let it be spun, each side keeping what the film shows it kept: what a
 * film's hands are held against, since an ideal rod's hand is not where a cord's hand is.
 */
final class AsCordsLet {
    private AsCordsLet() {}

    /** A side that no cord lets be spun so stays the ideal one. */
    static Trace of(Pairing meant, Map<Side, KeptAs> kept) {
        Trace ideal = Trace.of(meant);
        Trace trace = ideal;
        for (Side side : Side.values()) {
            if (!meant.part(side).motion().undriven()) {
                trace = spun(ideal, trace, side, kept.get(side) == KeptAs.HAND_PATH);
            }
        }
        return trace;
    }

    private static Trace spun(Trace ideal, Trace trace, Side side, boolean handPath) {
        try {
            if (!handPath) {
                KeepTheFigure figure = KeepTheFigure.of(ideal, side, Kit.USUAL);
                return figure.possible() ? figure.in(trace) : trace;
            }
            KeepTheHandPath path = KeepTheHandPath.of(ideal, side, Kit.USUAL);
            return path.best().map(best -> path.in(trace, best)).orElse(trace);
        } catch (Refused impossible) {
            return trace;
        }
    }
}
