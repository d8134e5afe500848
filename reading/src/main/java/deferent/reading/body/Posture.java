package deferent.reading.body;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * How a body holds itself over a whole cycle, whatever its trunk turns meanwhile.
 *
 * <p>Points of an upright body that looks straight ahead are first turned about the upright axis
 * midway between the shoulder joints, then leant forward and last aside, both about level axes
 * through the hips, 0.530 of stature up: so the trunk turns about its own leaning axis.
 *
 * @param forward how far both shoulder joints are brought forward, metres
 * @param raised how far they are raised, metres
 * @param lean how far the trunk leans toward the audience, radians
 * @param aside how far it leans to the performer's left, radians; below 0 to the right
 */
public record Posture(double forward, double raised, double lean, double aside) {
    /** At ease: upright, shoulders where they hang. */
    public static final Posture UPRIGHT = new Posture(0, 0, 0, 0);

    private static final double HIPS = 0.530;

    public Posture {
        Refusal.numbers("a posture", forward, raised, lean, aside);
    }

    /** What a body that bends so holds, or upright. */
    static Posture of(Optional<Bend> bend) {
        return bend.map(Bend::posture).orElse(UPRIGHT);
    }

    /** A shoulder joint of the upright body that looks straight ahead, metres. */
    Vector3D joint(Performer performer, Side side) {
        return performer.shoulder(side).add(new Vector3D(0, raised, forward));
    }

    /** Where a point of the upright body is with the trunk turned by so many radians. */
    Vector3D placed(Performer performer, Vector3D point, double turn) {
        double hips = performer.height(HIPS);
        double back = performer.shoulder(Side.LEFT).getZ();
        double ahead = point.getZ() - back;
        double x = point.getX() * Math.cos(turn) + ahead * Math.sin(turn);
        double z = ahead * Math.cos(turn) - point.getX() * Math.sin(turn);
        double up = point.getY() - hips;
        double y = up * Math.cos(lean) - z * Math.sin(lean);
        return new Vector3D(
                x * Math.cos(aside) + y * Math.sin(aside),
                hips + y * Math.cos(aside) - x * Math.sin(aside),
                back + up * Math.sin(lean) + z * Math.cos(lean));
    }

    /** The other way round: where a point of the frame is as the turned and leant trunk sees it. */
    Vector3D seen(Performer performer, Vector3D point, double turn) {
        double[] leant = new double[3];
        unleaning(performer).of(point.getX(), point.getY(), point.getZ(), leant, 0);
        double back = performer.shoulder(Side.LEFT).getZ();
        double ahead = leant[2] - back;
        double c = Math.cos(turn);
        double s = Math.sin(turn);
        return new Vector3D(leant[0] * c - ahead * s, leant[1], back + leant[0] * s + ahead * c);
    }

    /** How the leant trunk sees the frame, not turned yet. */
    Unleaning unleaning(Performer performer) {
        return new Unleaning(
                performer.height(HIPS),
                performer.shoulder(Side.LEFT).getZ(),
                Math.cos(lean),
                Math.sin(lean),
                Math.cos(aside),
                Math.sin(aside));
    }

    /** Worked out once for many points. */
    record Unleaning(
            double hips,
            double back,
            double cosLean,
            double sinLean,
            double cosAside,
            double sinAside) {
        /** Into x, y, z of an array from a place on. */
        void of(double x, double y, double z, double[] into, int at) {
            double up = (y - hips) * cosAside + x * sinAside;
            into[at] = x * cosAside - (y - hips) * sinAside;
            into[at + 1] = hips + up * cosLean + (z - back) * sinLean;
            into[at + 2] = back + (z - back) * cosLean - up * sinLean;
        }
    }
}
