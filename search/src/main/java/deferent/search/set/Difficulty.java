package deferent.search.set;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.shared.Side;
import deferent.reading.tether.Pull;
import deferent.search.whole.Readings;
import java.util.Optional;
import java.util.function.Function;

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
        return of(readings.pairing(), side -> readings.cord(side).pull().reading());
    }

    /** The same where nothing but the pulls was read. */
    public static double of(Pairing pairing, Function<Side, Optional<Pull>> pulls) {
        double hands = 0;
        double quickest = 0;
        for (Side side : Side.values()) {
            quickest = Math.max(quickest, quickness(pulls.apply(side)));
            hands += against(pairing.part(side));
        }
        double apart = Math.abs(turns(pairing.left()) - turns(pairing.right()));
        double ahead = 2 * pairing.timing().ahead();
        boolean crossed =
                pairing.direction() == Direction.OPPOSITE
                        || Math.abs(ahead - Math.rint(ahead)) > 1e-6;
        return quickest + HALF * apart + hands + (crossed ? HALF : 0);
    }

    /** The same of one hand by itself. */
    public static double of(Pairing pairing, Side side, Optional<Pull> pull) {
        return quickness(pull) + against(pairing.part(side));
    }

    private static double quickness(Optional<Pull> pull) {
        return pull.map(Pull::handAcceleration).orElse(0.0) / Gravity.STANDARD;
    }

    private static double against(Part part) {
        return antispin(part) ? HALF : 0;
    }

    private static int turns(Part part) {
        return part.motion().spin().turns();
    }

    private static boolean antispin(Part part) {
        SpinLaw spin = part.motion().spin();
        return !part.still() && spin.turns() < 0;
    }
}
