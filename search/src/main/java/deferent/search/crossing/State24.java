package deferent.search.crossing;

import deferent.motion.pairing.Side;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A pairing's whole state at an instant as 24 numbers: places of left hand, right hand, left head,
 * right head, then their velocities in the same order, x, y, z each.
 */
final class State24 {
    static final int SIZE = 24;
    static final int POINTS = 4;
    static final int VELOCITY = 12;

    private State24() {}

    static int hand(Side side) {
        return side.ordinal();
    }

    static int head(Side side) {
        return 2 + side.ordinal();
    }

    static double[] of(Trace trace, double time) {
        double[] out = new double[SIZE];
        for (Side side : Side.values()) {
            put(trace.hand(side).at(time), hand(side), out);
            put(trace.head(side).at(time), head(side), out);
        }
        return out;
    }

    static void put(State s, int point, double[] out) {
        put(s.position(), out, 3 * point);
        put(s.velocity(), out, VELOCITY + 3 * point);
    }

    static void put(Vector3D a, double[] out, int at) {
        out[at] = a.getX();
        out[at + 1] = a.getY();
        out[at + 2] = a.getZ();
    }

    static Vector3D place(double[] state, int point) {
        return new Vector3D(state[3 * point], state[3 * point + 1], state[3 * point + 2]);
    }

    static Vector3D velocity(double[] state, int point) {
        int at = VELOCITY + 3 * point;
        return new Vector3D(state[at], state[at + 1], state[at + 2]);
    }

    /** From hand to head. */
    static Vector3D tether(double[] state, Side side) {
        return place(state, head(side)).subtract(place(state, hand(side)));
    }

    static Vector3D tetherSpeed(double[] state, Side side) {
        return velocity(state, head(side)).subtract(velocity(state, hand(side)));
    }
}
