package deferent.reading.closest;

import deferent.motion.pairing.Refusal;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * How far a hand gets: to a sphere about its shoulder.
 *
 * @param shoulder in the frame, metres
 * @param length the farthest the hand can be from it, metres
 */
public record Arm(Vector3D shoulder, double length) {
    public Arm {
        Refusal.positive(length, 10, "an arm's length", "m");
    }
}
