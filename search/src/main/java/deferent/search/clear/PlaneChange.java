package deferent.search.clear;

import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * How one hand's plane is moved: shifted as a whole and leaned about its centre.
 *
 * @param side whose
 * @param shift of its centre in the frame, metres
 * @param tip by how much more it is leaned about its own u, radians
 * @param swivel by how much more it is turned about the upright, radians
 * @param lean the angle of the one turn that both make together, radians
 * @param tether the poi's, metres
 */
public record PlaneChange(
        Side side, Vector3D shift, double tip, double swivel, double lean, double tether) {
    /** No plane is shifted further, metres (our choice): beyond it is another pattern. */
    public static final double FARTHEST = 0.40;

    /** None is leaned further, radians (our choice). */
    public static final double STEEPEST = Math.toRadians(35);

    public PlaneChange {
        Refusal.numbers("a change of planes", shift.getNorm(), tip, swivel, lean, tether);
    }

    static PlaneChange between(Side side, Part from, Part to) {
        Plane a = from.place().plane();
        Plane b = to.place().plane();
        double trace =
                a.u().dotProduct(b.u())
                        + a.v().dotProduct(b.v())
                        + a.normal().dotProduct(b.normal());
        return new PlaneChange(
                side,
                to.place().centre().subtract(from.place().centre()),
                b.tip() - a.tip(),
                b.swivel() - a.swivel(),
                Math.acos(Math.max(-1, Math.min(1, (trace - 1) / 2))),
                from.tether().length());
    }

    /**
     * How far it moves the head's path at most, in hands' breadths: the shift, and what the lean
     * makes at the end of a tether, as the root of their summed squares.
     */
    public double cost() {
        return Math.hypot(shift.getNorm(), tether * lean) / Place.HAND_BREADTH;
    }

    /** Whether it is one that may be made. */
    boolean within() {
        return shift.getNorm() <= FARTHEST + 1e-9 && lean <= STEEPEST + 1e-9;
    }

    /** Whether anything is moved. */
    public boolean moves() {
        return cost() > 1e-9;
    }
}
