package deferent.motion.trace;

import deferent.motion.pairing.Refusal;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The upright axis that a body turns about.
 *
 * @param behind how far behind the frame's origin it stands, metres
 */
public record BodyAxis(double behind) {
    public BodyAxis {
        Refusal.numbers("a body's axis", behind);
    }

    /**
     * Where a point is once it has turned with the body.
     *
     * @param angle radians, to the performer's left above 0
     */
    public Vector3D turned(Vector3D point, double angle) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        double ahead = point.getZ() + behind;
        return new Vector3D(
                c * point.getX() + s * ahead, point.getY(), c * ahead - s * point.getX() - behind);
    }
}
