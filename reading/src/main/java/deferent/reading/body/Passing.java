package deferent.reading.body;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * One tether passing before the other, as the audience sees them from far off along z.
 *
 * @param spell how long they cross in view, seconds; one that runs over the cycle's end ends beyond
 *     the period
 * @param time the middle of it, when what follows holds
 * @param left the point of the left tether that lies in the crossing, metres; its z is its depth
 * @param right that of the right tether: same x and y
 * @param leftLies the plane the left poi then turns in
 * @param rightLies the right poi's
 */
public record Passing(
        Interval spell,
        double time,
        Vector3D left,
        Vector3D right,
        Lying leftLies,
        Lying rightLies) {
    public Passing {
        Refusal.numbers("where the tethers cross", time, left.getNorm(), right.getNorm());
    }

    /** Depths nearer to each other than this touch, metres. */
    private static final double TOUCHING = 1e-6;

    /** Metres between the two, along z. */
    public double depthBetween() {
        return Math.abs(left.getZ() - right.getZ());
    }

    /** The side nearer to the audience; empty where they touch. */
    public Optional<Side> front() {
        if (depthBetween() < TOUCHING) {
            return Optional.empty();
        }
        return Optional.of(left.getZ() > right.getZ() ? Side.LEFT : Side.RIGHT);
    }
}
