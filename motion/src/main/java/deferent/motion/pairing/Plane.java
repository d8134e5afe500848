package deferent.motion.pairing;

import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The plane a motion lives in. Angle zero points along {@link #u()}, the positive turn goes from u
 * to {@link #v()}:
 *
 * <ul>
 *   <li>wall: upright, facing the audience; u to the performer's left, v up
 *   <li>wheel: upright, front to back; u toward the audience, v up
 *   <li>floor: level; u to the performer's left, v toward the audience
 * </ul>
 *
 * @param kind the upright or level plane it starts from
 * @param tip leaned about its own u, radians, v toward {@link #normal()}
 * @param swivel then turned about the upright y, radians, z toward x (positive to the performer's
 *     left)
 */
public record Plane(Kind kind, double tip, double swivel) {
    public static final Plane WALL = new Plane(Kind.WALL, 0, 0);
    public static final Plane WHEEL = new Plane(Kind.WHEEL, 0, 0);
    public static final Plane FLOOR = new Plane(Kind.FLOOR, 0, 0);

    /** The three planes of the trade. */
    public enum Kind {
        WALL(Vector3D.PLUS_I, Vector3D.PLUS_J),
        WHEEL(Vector3D.PLUS_K, Vector3D.PLUS_J),
        FLOOR(Vector3D.PLUS_I, Vector3D.PLUS_K);

        private final Vector3D u;
        private final Vector3D v;

        Kind(Vector3D u, Vector3D v) {
            this.u = u;
            this.v = v;
        }
    }

    public Plane {
        Refusal.within(tip, -Math.PI, Math.PI, "tip of a plane", "rad");
        Refusal.within(swivel, -Math.PI, Math.PI, "swivel of a plane", "rad");
    }

    /** Unit vector of angle zero, in the frame. */
    public Vector3D u() {
        return swivelled(kind.u);
    }

    /** Unit vector a quarter of a positive turn on. */
    public Vector3D v() {
        if (tip == 0) {
            return swivelled(kind.v);
        }
        Vector3D across = kind.u.crossProduct(kind.v);
        return swivelled(new Vector3D(Math.cos(tip), kind.v, Math.sin(tip), across));
    }

    /**
     * Unit vector across the plane, u × v: wall toward the audience, wheel to the right, floor
     * down.
     */
    public Vector3D normal() {
        return u().crossProduct(v());
    }

    private Vector3D swivelled(Vector3D a) {
        if (swivel == 0) {
            return a;
        }
        double c = Math.cos(swivel);
        double s = Math.sin(swivel);
        return new Vector3D(c * a.getX() + s * a.getZ(), a.getY(), c * a.getZ() - s * a.getX());
    }
}
