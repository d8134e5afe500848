package deferent.reading.tether;

import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What the shadow of a side's cord on its plane is to do over a cycle, and how such motions are
 * shot for.
 *
 * @param normal of the plane in which everything stays; the zero vector where it does not
 * @param axis about which the shadow turns; the zero vector where its plane turns itself, and turns
 *     are not counted while shooting
 * @param turn what it is to turn by, radians about the axis
 */
record Shadow(Vector3D normal, Vector3D axis, double turn) {
    /** So little may a cycle miss its own start by, radians and turns a cycle. */
    static final double CLOSE = 1e-11;

    /** Speed, in turns of the swing length a cycle, below which a start counts as closing. */
    static final double ADRIFT = 1e-5;

    static final int CLOSING = 10;

    private static final int MOST = 12;

    /** Of Newton's steps, from near. */
    private static final int SETTLES = 6;

    /**
     * @param ownCycle of that side
     */
    static Shadow of(Trace ownCycle, Side side, Cord cord) {
        Vector3D normal = KeepTheHandPath.planeNormal(ownCycle, side, cord);
        boolean turnsItself = ownCycle.pairing().part(side).place().turn().turns() != 0;
        return new Shadow(
                normal,
                turnsItself ? Vector3D.ZERO : Turning.of(ownCycle, side).normal(),
                2 * Math.PI * Turning.wanted(ownCycle, side));
    }

    boolean planar() {
        return normal.getNormSq() > 0;
    }

    /** Whether a direction of the shadow can be held while the rest closes. */
    boolean held() {
        return turn != 0 && axis.getNormSq() > 0;
    }

    Directions directions(HandTable table, Cord cord) {
        return planar()
                ? new PlaneShooting(table, cord, axis, turn)
                : new Shooting(table, cord, axis, turn);
    }

    /** A periodic state from a guess. */
    Optional<double[]> from(HandTable table, Cord cord, double[] guess, double tolerance) {
        return directions(table, cord).from(guess, tolerance, MOST).map(PlaneShooting.Found::state);
    }

    /** A periodic state next to a guess. */
    Optional<double[]> near(HandTable table, Cord cord, double[] guess) {
        Directions shooting = directions(table, cord);
        return shooting.near(guess, CLOSE, SETTLES)
                .map(PlaneShooting.Found::state)
                .or(() -> held() ? shooting.beside(guess, CLOSE) : Optional.empty());
    }

    /** A state that closes but for a drift too slow to matter; empty where there is none. */
    Optional<double[]> drifting(HandTable table, Cord cord, double[] guess) {
        // Air damps whatever drifts.
        return held() && !cord.kit().air()
                ? directions(table, cord)
                        .closed(guess, CLOSE, CLOSING)
                        .filter(c -> Math.abs(c.missing()) < ADRIFT)
                        .map(PlaneShooting.Closed::state)
                : Optional.empty();
    }
}
