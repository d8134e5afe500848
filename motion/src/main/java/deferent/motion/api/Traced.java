package deferent.motion.api;

import deferent.motion.api.opened.Opened;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Where both hands and both heads of a pairing are at any time: the ideal figure, from closed
 * forms, with the tether as a rod. It comes round again after {@link #period()}.
 */
public final class Traced {
    private final Trace trace;

    private Traced(Trace trace) {
        this.trace = trace;
    }

    /**
     * Works a pairing out.
     *
     * @param pairing what is spun
     * @return its trace
     */
    public static Traced of(TwoPoi pairing) {
        return new Traced(Trace.of(Opened.pairing(pairing)));
    }

    /**
     * How long it takes until both hands and both heads are back.
     *
     * @return seconds
     */
    public double period() {
        return trace.period();
    }

    /**
     * Where a hand is.
     *
     * @param side which
     * @param time seconds from the start of the cycle
     * @return its place
     */
    public Vector hand(Side side, double time) {
        return vector(trace.hand(side).position(time));
    }

    /**
     * Where a head is.
     *
     * @param side in which hand its poi is
     * @param time seconds from the start of the cycle
     * @return its place
     */
    public Vector head(Side side, double time) {
        return vector(trace.head(side).position(time));
    }

    /**
     * How a hand moves.
     *
     * @param side which
     * @param time seconds from the start of the cycle
     * @return its velocity, exact; where a path has a corner, that just after it
     */
    public Vector handVelocity(Side side, double time) {
        return vector(trace.hand(side).at(time).velocity());
    }

    /**
     * How a head moves.
     *
     * @param side in which hand its poi is
     * @param time seconds from the start of the cycle
     * @return its velocity, exact; where a path has a corner, that just after it
     */
    public Vector headVelocity(Side side, double time) {
        return vector(trace.head(side).at(time).velocity());
    }

    private static Vector vector(Vector3D of) {
        return new Vector(of.getX(), of.getY(), of.getZ());
    }
}
