package deferent.search.crossing;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Side;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * How the two props stand to each other at an instant: each tether's angle in its own plane and
 * which way it turns.
 *
 * @param direction whether both turn the same way; empty where one of them stands
 * @param ahead how far the right prop is ahead of the left in turns, in [0, 1): 0 together, a half
 *     split. Where they turn opposite ways the right one is seen in a mirror, so that together
 *     means that they meet at top and bottom; where one stands they are compared as turning the
 *     same way
 * @param left turns a second of the left prop, positive from u toward v
 * @param right turns a second of the right prop
 */
public record Props(Optional<Direction> direction, double ahead, double left, double right) {
    /**
     * @param stands a prop whose head moves slower than this about its hand, m/s, stands
     */
    static Props of(Pairing pairing, double[] state, double stands) {
        double[] angle = new double[2];
        double[] rate = new double[2];
        boolean still = false;
        for (Side side : Side.values()) {
            int i = side.ordinal();
            Vector3D r = State24.tether(state, side);
            Vector3D v = State24.tetherSpeed(state, side);
            Part part = pairing.part(side);
            double a = r.dotProduct(part.place().plane().u());
            double b = r.dotProduct(part.place().plane().v());
            double da = v.dotProduct(part.place().plane().u());
            double db = v.dotProduct(part.place().plane().v());
            angle[i] = Math.atan2(b, a);
            rate[i] = (a * db - b * da) / Math.max(a * a + b * b, 1e-12) / (2 * Math.PI);
            still |= Math.abs(a * db - b * da) < stands * r.getNorm();
        }
        boolean opposite = !still && rate[0] * rate[1] < 0;
        double left = rate[0] < 0 && !still ? -1 : 1;
        double apart = opposite ? Math.PI - angle[1] - angle[0] : angle[1] - angle[0];
        double ahead = left * apart / (2 * Math.PI);
        ahead -= Math.floor(ahead);
        return new Props(
                still
                        ? Optional.empty()
                        : Optional.of(opposite ? Direction.OPPOSITE : Direction.SAME),
                ahead >= 1 ? 0 : ahead,
                rate[0],
                rate[1]);
    }
}
