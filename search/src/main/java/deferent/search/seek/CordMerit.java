package deferent.search.seek;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.tether.Cord;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.Kit;
import deferent.reading.tether.SlowestTempo;
import deferent.reading.tether.Steadiness;
import java.util.OptionalDouble;
import org.hipparchus.exception.MathRuntimeException;

/**
 * What real cords make of an answer, with the figure kept and the usual kit: the slowest tempo is
 * the higher of the two hands', the growth of a slip at the pairing's own tempo the greater. Empty
 * where a hand would have to turn a corner, the figure asks for free fall or the numbers come to no
 * end: such an answer stays among the others, with that merit unknown.
 *
 * @param slowest hand cycles a minute; 0 where any tempo does, infinite where no tempo does
 * @param growth how many times as far aside a slip has put the head after a reaction time
 */
record CordMerit(OptionalDouble slowest, OptionalDouble growth) {
    /** Only what is asked for is worked out: either takes tens of milliseconds. */
    static CordMerit of(Trace trace, boolean slowest, boolean growth) {
        return new CordMerit(
                slowest ? slowest(trace) : OptionalDouble.empty(),
                growth ? growth(trace) : OptionalDouble.empty());
    }

    private static OptionalDouble slowest(Trace trace) {
        double most = 0;
        try {
            for (Side side : Side.values()) {
                SlowestTempo.Limit limit =
                        SlowestTempo.figureKept(trace, side, Cord.of(trace, side, Kit.USUAL));
                most =
                        Math.max(
                                most,
                                limit.reason() == SlowestTempo.Reason.NEVER
                                        ? Double.POSITIVE_INFINITY
                                        : limit.tempo().orElse(0));
            }
        } catch (Refusal | MathRuntimeException none) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(most);
    }

    private static OptionalDouble growth(Trace trace) {
        double most = 0;
        try {
            for (Side side : Side.values()) {
                KeepTheFigure kept = KeepTheFigure.of(trace, side, Kit.USUAL);
                if (!kept.possible()) {
                    return OptionalDouble.empty();
                }
                most = Math.max(most, Steadiness.of(kept).growthInReaction());
            }
        } catch (Refusal | MathRuntimeException none) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(most);
    }
}
