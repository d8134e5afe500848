package deferent.search.transition;

import deferent.motion.pairing.Place;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** Says what a hand does in a passage, by what comes out: the first of these that holds. */
final class KindOf {
    private static final int LOOKS = 48;
    private static final double BENT = Math.toRadians(10);
    private static final double STOPS = 0.2;

    private KindOf() {}

    static TransitionKind of(SpunPattern from, SpunPattern to, Bridge bridge) {
        Side side = bridge.side();
        var plane = from.pairing().part(side).place().plane();
        var next = to.pairing().part(side).place().plane();
        if (Vector3D.angle(plane.normal(), next.normal()) > BENT) {
            return TransitionKind.PLANE_BEND;
        }
        BlendedSide blend = BlendedSide.of(from, to, bridge);
        double apart = 0;
        double slowest = Double.POSITIVE_INFINITY;
        double still = 0;
        Vector3D middle = blend.plainHand().position(bridge.seconds() / 2);
        for (int i = 0; i <= LOOKS; i++) {
            double x = bridge.seconds() * i / LOOKS;
            double t = bridge.leaves() + x;
            double there = t + bridge.later();
            apart = Math.max(apart, gap(from.trace(), t, to.trace(), there, side));
            slowest = Math.min(slowest, blend.head().at(x).velocity().getNorm());
            still = Math.max(still, blend.plainHand().position(x).distance(middle));
        }
        if (apart <= Place.HAND_BREADTH) {
            return TransitionKind.STRAIGHT_OVER;
        }
        if (slowest < STOPS * Math.min(mean(from.trace(), side), mean(to.trace(), side))) {
            return TransitionKind.STALL;
        }
        if (sense(from.trace(), side) * sense(to.trace(), side) < 0
                || spin(from, side) * spin(to, side) < 0) {
            return TransitionKind.TURN_ROUND;
        }
        return still <= Place.HAND_BREADTH ? TransitionKind.HINGE : TransitionKind.SLIDE;
    }

    private static double gap(Trace from, double t, Trace to, double there, Side side) {
        return Math.max(
                from.hand(side).position(t).distance(to.hand(side).position(there)),
                from.head(side).position(t).distance(to.head(side).position(there)));
    }

    private static double mean(Trace trace, Side side) {
        double sum = 0;
        for (int i = 0; i < LOOKS; i++) {
            double t = trace.interval().start() + trace.period() * i / LOOKS;
            sum += trace.head(side).at(t).velocity().getNorm();
        }
        return sum / LOOKS;
    }

    /** Which way the hand goes round: 1 or −1 in its plane, 0 where it does not. */
    private static double sense(Trace trace, Side side) {
        Vector3D normal = trace.pairing().part(side).place().plane().normal();
        Vector3D centre = trace.pairing().part(side).place().centre();
        double area = 0;
        double length = 0;
        for (int i = 0; i < LOOKS; i++) {
            double t = trace.interval().start() + trace.period() * i / LOOKS;
            var hand = trace.hand(side).at(t);
            Vector3D r = hand.position().subtract(centre);
            area += r.crossProduct(hand.velocity()).dotProduct(normal);
            length += r.getNorm() * hand.velocity().getNorm();
        }
        return Math.abs(area) < 0.2 * length || length < 1e-9 ? 0 : Math.signum(area);
    }

    /** Which way the poi turns, 0 where it comes and goes. */
    private static double spin(SpunPattern pattern, Side side) {
        return Math.signum(pattern.side(side).growth());
    }
}
