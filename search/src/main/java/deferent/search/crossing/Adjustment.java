package deferent.search.crossing;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Timing;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What is done to the second pairing so that it can be crossed into, in this order.
 *
 * @param mirrored whether both its motions go round the other way
 * @param timing by how much its right hand comes further ahead, in its own cycles, −1/2 to 1/2
 *     times its cycles
 * @param turn how far it is turned in its left hand's plane about {@code about}, radians, u toward
 *     v
 * @param about the point it is turned about, metres
 * @param shift how far it is carried, metres
 * @param tempo by which factor it is faster
 */
public record Adjustment(
        boolean mirrored,
        double timing,
        double turn,
        Vector3D about,
        Vector3D shift,
        double tempo) {
    /** Nothing at all. */
    public static final Adjustment NONE =
            new Adjustment(false, 0, 0, Vector3D.ZERO, Vector3D.ZERO, 1);

    private static final double NOTHING = 1e-9;

    public boolean none() {
        return !mirrored && !retimed() && !turned() && !shifted() && !faster();
    }

    /** Whether the timing between the hands changes. */
    public boolean retimed() {
        return Math.abs(timing) > NOTHING;
    }

    public boolean turned() {
        return Math.abs(turn) > NOTHING;
    }

    public boolean shifted() {
        return shift.getNorm() > NOTHING;
    }

    /** Whether the tempo changes, either way. */
    public boolean faster() {
        return Math.abs(tempo - 1) > NOTHING;
    }

    /** The pairing so changed. */
    public Pairing of(Pairing pairing) {
        Pairing p = mirrored ? mirror(pairing) : pairing;
        if (retimed()) {
            p = p.with(Timing.of(p.timing().ahead() + timing));
        }
        if (turned() || shifted()) {
            Vector3D normal = p.left().place().plane().normal();
            for (Side side : Side.values()) {
                p = p.with(side, placed(p, side, normal));
            }
        }
        return faster() ? p.withTempo(OptionalDouble.of(p.tempo() * tempo)) : p;
    }

    static Pairing mirror(Pairing pairing) {
        return pairing.with(pairing.sense().reversed());
    }

    private Part placed(Pairing p, Side side, Vector3D normal) {
        Part part = p.part(side);
        Motion motion = part.motion();
        Vector3D centre = part.place().centre();
        if (turned()) {
            Rotation rotation = new Rotation(normal, turn, RotationConvention.VECTOR_OPERATOR);
            centre = about.add(rotation.applyTo(centre.subtract(about)));
            // A mirrored motion is turned before it is mirrored, so the other way.
            boolean turnsBack =
                    p.mirrored(side) ^ (part.place().plane().normal().dotProduct(normal) < 0);
            motion = motion.turned(turnsBack ? -turn : turn);
        }
        return part.with(motion).with(part.place().withCentre(centre.add(shift)));
    }
}
