package deferent.reading.tether;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.State;
import deferent.motion.trace.TimedBreak;
import deferent.motion.trace.Trace;
import java.util.Locale;

/** Where acceleration is not finite, so that no cord's equation can be asked there. */
final class Corners {
    private Corners() {}

    /** Refuses a side whose hand or head has a corner or a jump. */
    static void refuse(Trace trace, Side side) {
        for (TimedBreak b : trace.breaks()) {
            if (b.side() == side && b.order() <= 1) {
                throw refusal(side, b);
            }
        }
    }

    /** Refuses a side whose hand itself has a corner or a jump, whatever its poi does. */
    static void refuseHand(Trace trace, Side side) {
        for (TimedBreak b : trace.breaks()) {
            if (b.side() == side && b.order() <= 1) {
                State before = trace.hand(side).before(b.time());
                State after = trace.hand(side).at(b.time());
                if (before.velocity().distance(after.velocity())
                                > 1e-9 * (1 + after.velocity().getNorm())
                        || before.position().distance(after.position()) > 1e-9) {
                    throw refusal(side, b);
                }
            }
        }
    }

    private static Refusal refusal(Side side, TimedBreak b) {
        return new Refusal(
                String.format(
                        Locale.ROOT, "takes an infinite force at %.3f s (%s)", b.time(), b.why()),
                "the " + side.word() + " hand's motion",
                "round the corner (a rounded hand path, or an ease above 0 where the poi changes its"
                        + " rate)");
    }
}
