package deferent.search.set;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.SpinLaw;
import deferent.reading.tether.Pull;
import deferent.search.whole.Readings;
import java.util.Optional;

/**
 * How hard a pattern is next to others: a model of ours and no measurement, good for an order from
 * easy to hard. It adds up
 *
 * <ul>
 *   <li>the greatest acceleration of the quicker hand, in weights;
 *   <li>a half for each poi turn in a hand cycle by which the two poi differ, since one has to
 *       count two things at once;
 *   <li>a half for each poi that turns against its hand, and
 *   <li>a half where the hands go against each other or are neither together nor split.
 * </ul>
 */
public final class Difficulty {
    private static final double HALF = 0.5;

    private Difficulty() {}

    /** How hard it is, 0 or more; weights, roughly. */
    public static double of(Readings readings) {
        Pairing pairing = readings.pairing();
        double quickest = 0;
        double against = 0;
        for (Side side : Side.values()) {
            Optional<Pull> pull = readings.cord(side).pull().reading();
            quickest = Math.max(quickest, pull.map(Pull::handAcceleration).orElse(0.0));
            against += antispin(pairing.part(side)) ? HALF : 0;
        }
        double apart = Math.abs(turns(pairing.left()) - turns(pairing.right()));
        double ahead = 2 * pairing.timing().ahead();
        boolean crossed =
                pairing.direction() == Direction.OPPOSITE
                        || Math.abs(ahead - Math.rint(ahead)) > 1e-6;
        return quickest / Gravity.STANDARD + HALF * apart + against + (crossed ? HALF : 0);
    }

    private static int turns(Part part) {
        return part.motion().spin().turns();
    }

    private static boolean antispin(Part part) {
        SpinLaw spin = part.motion().spin();
        return !part.still() && spin.turns() < 0;
    }
}
