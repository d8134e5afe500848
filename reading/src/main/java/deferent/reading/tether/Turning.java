package deferent.reading.tether;

import deferent.motion.pairing.Part;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Trace;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * How often a cord gets round: the turn of its shadow on its motion's plane, from u toward v, over
 * the trace. For a plane that itself turns it is the shadow on the plane it starts in.
 */
record Turning(Vector3D u, Vector3D v, Interval over, int count) {
    private static final int COUNT = 480;

    /** So often is a turn looked at, at the least. */
    private static final int A_TURN = 40;

    /** A motion with more is not searched for what a cord makes of it: it would take too long. */
    private static final int MOST = 48;

    static Turning of(Trace trace, Side side) {
        Part part = trace.pairing().part(side);
        Plane plane = part.place().plane();
        int turns = part.cycles() * Math.abs(part.motion().spin().turns());
        return new Turning(plane.u(), plane.v(), trace.interval(), Math.max(COUNT, A_TURN * turns));
    }

    /** The axis about which it turns positively. */
    Vector3D normal() {
        return u.crossProduct(v);
    }

    /** Angle of the cord's shadow, radians in (−π, π]. */
    double angle(Vector3D cord) {
        return Math.atan2(cord.dotProduct(v), cord.dotProduct(u));
    }

    double turned(Course hand, Course head) {
        double sum = 0;
        double last = Double.NaN;
        for (int i = 0; i <= count; i++) {
            double t = over.start() + over.length() * i / count;
            Vector3D cord =
                    i == count
                            ? head.before(t).position().subtract(hand.before(t).position())
                            : head.position(t).subtract(hand.position(t));
            double angle = angle(cord);
            if (i > 0) {
                sum += Math.IEEEremainder(angle - last, 2 * Math.PI);
            }
            last = angle;
        }
        return sum;
    }

    int turns(Course hand, Course head) {
        return (int) Math.rint(turned(hand, head) / (2 * Math.PI));
    }

    /** As {@link #turns}; refuses a cord that turns too often before its hand's path repeats. */
    static int wanted(Trace ownCycle, Side side) {
        int turns = of(ownCycle, side).turns(ownCycle.hand(side), ownCycle.head(side));
        if (Math.abs(turns) > MOST) {
            throw new Refusal(
                    "turns " + Math.abs(turns) + " times before its hand's path repeats",
                    "the " + side.word() + " cord",
                    "what it does behind its hand is searched for up to " + MOST + " turns");
        }
        return turns;
    }
}
