package deferent.motion.trace;

import deferent.motion.pairing.Part;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.shared.Side;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Which way one tether points in the plane of its motion, as an angle that counts on: radians from
 * the plane's u toward its v, at the start from −π to π, growing or shrinking from there without
 * jumps. A plane that turns is turned back first, so the angle is that within the turning plane;
 * what points out of the plane (a cord that keeps another hand's light) is cast onto it.
 *
 * <p>Which whole turn an instant belongs to is settled once on a grid fine enough that no poi gets
 * half round between two of its points; the angle itself is worked out at the instant.
 */
public final class TetherAngle {
    private static final int EACH_TURN = 48;

    private final Trace trace;
    private final Side side;
    private final Part part;
    private final Vector3D u;
    private final Vector3D v;
    private final Vector3D normal;
    private final double[] grid;

    private TetherAngle(Trace trace, Side side) {
        this.trace = trace;
        this.side = side;
        this.part = trace.pairing().part(side);
        this.u = part.place().plane().u();
        this.v = part.place().plane().v();
        this.normal = part.place().plane().normal();
        int turns =
                part.cycles()
                        * (1
                                + Math.abs(part.motion().spin().turns())
                                + Math.abs(part.place().turn().turns()));
        this.grid = new double[EACH_TURN * (turns + 2) + 1];
        for (int i = 0; i < grid.length; i++) {
            double raw = raw(trace.interval().start() + trace.period() * i / (grid.length - 1));
            grid[i] = i == 0 ? raw : near(raw, grid[i - 1]);
        }
    }

    public static TetherAngle of(Trace trace, Side side) {
        return new TetherAngle(trace, side);
    }

    /**
     * The angle unwrapped, radians.
     *
     * @param time within the trace's interval, seconds
     * @param cycle whole cycles that went before, 0 or more
     */
    public double at(double time, long cycle) {
        double share = (time - trace.interval().start()) / trace.period() * (grid.length - 1);
        int i = (int) Math.max(0, Math.min(grid.length - 2, Math.floor(share)));
        double about = grid[i] + (share - i) * (grid[i + 1] - grid[i]);
        return near(raw(time), about) + cycle * growth();
    }

    /** By how much it grows over the trace, radians. */
    public double growth() {
        double grown = grid[grid.length - 1] - grid[0];
        // Round a cycle it grows by whole turns.
        return trace.periodic() ? 2 * Math.PI * Math.rint(grown / (2 * Math.PI)) : grown;
    }

    private static double near(double angle, double about) {
        return angle + 2 * Math.PI * Math.rint((about - angle) / (2 * Math.PI));
    }

    private double raw(double time) {
        Vector3D d = trace.head(side).position(time).subtract(trace.hand(side).position(time));
        double a = d.dotProduct(u);
        double b = d.dotProduct(v);
        PlaneTurn turn = part.place().turn();
        if (turn.turns() != 0) {
            boolean mirrored = trace.pairing().mirrored(side);
            double c = d.dotProduct(normal);
            double phase =
                    trace.pairing().startPhase(side)
                            + part.cycles()
                                    * (time - trace.interval().start())
                                    / trace.pairing().period();
            double turned = 2 * Math.PI * turn.turns() * phase;
            double plain = mirrored ? -a : a;
            if (turn.axis() == PlaneTurn.Axis.UPRIGHT) {
                plain = plain * Math.cos(turned) - c * Math.sin(turned);
            } else {
                b = b * Math.cos(turned) + c * Math.sin(turned);
            }
            a = mirrored ? -plain : plain;
        }
        return Math.atan2(b, a);
    }
}
