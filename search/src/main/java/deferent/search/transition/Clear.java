package deferent.search.transition;

import deferent.motion.pairing.Place;
import deferent.motion.shared.Refused;
import deferent.motion.trace.Trace;
import deferent.reading.body.Reach;

/**
 * Whether a transition on the whole can be done where the patterns themselves can: both arms reach
 * it as they reach those, and cords, hands, heads and body come no nearer to each other than in
 * those, or stay a hand's breadth apart.
 */
final class Clear {
    private static final double HAIR = 0.01;

    private Clear() {}

    static boolean of(
            Transition transition, SpunPattern from, SpunPattern to, TransitionRequest request) {
        try {
            return clear(transition, from, to, request);
        } catch (Refused past) {
            // Cords that lie along one another have no one place where they cross.
            return false;
        }
    }

    private static boolean clear(
            Transition transition, SpunPattern from, SpunPattern to, TransitionRequest request) {
        Trace trace = Played.of(transition, from, to).trace();
        double near = Math.min(Place.HAND_BREADTH, Math.min(from.nearness(), to.nearness())) - HAIR;
        if (SpunPattern.nearness(trace, request.performer()) < near) {
            return false;
        }
        double shortBy = Math.max(from.reachShort(), to.reachShort());
        return Reach.of(trace, request.performer()).turned().tooFar() <= shortBy + Reach.GIVES;
    }
}
