package deferent.studio;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Weave;
import deferent.motion.shared.Side;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A side's plane at an instant, as its motion sees it: a frame of two directions, mirror and turn
 * of the plane included, in which the spin law's angle counts from {@code u} toward {@code v}.
 */
record InPlane(Vector3D u, Vector3D v) {

    /** The directions the poi's angle is counted in, at a phase of the side's own cycle. */
    static InPlane ofPoi(Pairing pairing, Side side, double phase) {
        Part part = pairing.part(side);
        PlaneTurn turn = part.place().turn();
        Vector3D u = part.place().plane().u();
        Vector3D v = part.place().plane().v();
        Vector3D n = part.place().plane().normal();
        double mirror = pairing.mirrored(side) ? -1 : 1;
        double angle = 2 * Math.PI * turn.turns() * phase;
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        if (turn.turns() != 0 && turn.axis() == PlaneTurn.Axis.UPRIGHT) {
            return new InPlane(new Vector3D(mirror * c, u, -s, n), v);
        }
        if (turn.turns() != 0) {
            return new InPlane(new Vector3D(mirror, u), new Vector3D(c, v, s, n));
        }
        return part.motion().weave().filter(Weave::mirrorsUp).isPresent()
                ? new InPlane(u, new Vector3D(mirror, v))
                : new InPlane(new Vector3D(mirror, u), v);
    }

    /** The directions of the plane as placed, neither mirrored nor turned. */
    static InPlane placed(Pairing pairing, Side side) {
        Part part = pairing.part(side);
        return new InPlane(part.place().plane().u(), part.place().plane().v());
    }

    double along(Vector3D a) {
        return a.dotProduct(u);
    }

    double up(Vector3D a) {
        return a.dotProduct(v);
    }

    /** The length of a vector's shadow in the plane. */
    double length(Vector3D a) {
        return Math.hypot(along(a), up(a));
    }

    /** Direction of a vector's shadow in the plane, radians from u toward v. */
    double angle(Vector3D a) {
        return Math.atan2(up(a), along(a));
    }
}
