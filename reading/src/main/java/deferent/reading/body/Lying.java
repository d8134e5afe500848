package deferent.reading.body;

import deferent.motion.pairing.Part;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Refusal;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * How a plane lies at one instant: which plane of the trade is nearest, and how far it leans from
 * it.
 *
 * @param nearest wall, wheel or floor
 * @param off the angle between the two planes, radians, 0 to about 0.96 (where it lies evenly
 *     between all three)
 * @param normal across the plane, a unit vector; which of its two ways says nothing
 */
public record Lying(Plane.Kind nearest, double off, Vector3D normal) {
    public Lying {
        Refusal.numbers("the plane of a figure", off, normal.getNorm());
    }

    private static final double SAME = 1e-9;

    static Lying across(Vector3D normal) {
        double wall = Math.abs(normal.getZ());
        double wheel = Math.abs(normal.getX());
        double floor = Math.abs(normal.getY());
        double most = Math.max(wall, Math.max(wheel, floor));
        Plane.Kind kind =
                most == wall
                        ? Plane.Kind.WALL
                        : most == wheel ? Plane.Kind.WHEEL : Plane.Kind.FLOOR;
        double rest = Math.sqrt(Math.max(0, normal.getNormSq() - most * most));
        return new Lying(kind, Math.atan2(rest, most), normal);
    }

    /**
     * The plane of a part's poi when its own cycle stands at {@code phase}: where the place turns,
     * its plane has turned that far.
     */
    static Lying of(Part part, boolean mirrored, double phase) {
        Plane plane = part.place().plane();
        PlaneTurn turn = part.place().turn();
        if (turn.turns() == 0) {
            return across(plane.normal());
        }
        double angle = 2 * Math.PI * turn.turns() * phase;
        // The trace turns u (upright axis) or v (level axis) toward the normal; a mirror flips u.
        Vector3D toward =
                turn.axis() == PlaneTurn.Axis.UPRIGHT
                        ? plane.u().scalarMultiply(mirrored ? -1 : 1)
                        : plane.v().negate();
        return across(new Vector3D(Math.cos(angle), plane.normal(), Math.sin(angle), toward));
    }

    /** Whether it is that plane of the trade itself. */
    public boolean exact() {
        return off < SAME;
    }
}
