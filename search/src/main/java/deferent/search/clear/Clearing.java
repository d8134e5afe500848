package deferent.search.clear;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.reading.body.InTheWay;
import java.util.List;
import java.util.Optional;

/**
 * What is in the way in a pattern, and the least change of planes that clears it.
 *
 * @param pairing as it is placed
 * @param inTheWay what is in the way so, by time
 * @param arms whether arms could be looked at, because both hands are in reach
 * @param cleared the least change that was found, confirmed at full sampling; none where nothing is
 *     in the way, or where no change within bounds clears it
 * @param remains where none clears it, what still is in the way where least is
 * @param whole whether the search was gone through, and not stopped before
 */
public record Clearing(
        Pairing pairing,
        List<InTheWay> inTheWay,
        boolean arms,
        Optional<Cleared> cleared,
        List<InTheWay> remains,
        boolean whole) {
    /**
     * The pattern with its planes moved.
     *
     * @param left how the left hand's is
     * @param right how the right hand's is
     */
    public record Cleared(Pairing pairing, PlaneChange left, PlaneChange right) {
        static Cleared between(Pairing from, Pairing to) {
            return new Cleared(
                    to,
                    PlaneChange.between(Side.LEFT, from.left(), to.left()),
                    PlaneChange.between(Side.RIGHT, from.right(), to.right()));
        }

        public PlaneChange change(Side side) {
            return side == Side.LEFT ? left : right;
        }

        /** Both together, in hands' breadths: the root of their summed squares. */
        public double cost() {
            return Math.hypot(left.cost(), right.cost());
        }

        boolean within() {
            return left.within() && right.within();
        }
    }

    public Clearing {
        inTheWay = List.copyOf(inTheWay);
        remains = List.copyOf(remains);
    }

    /** Whether nothing is in the way as it is placed. */
    public boolean clear() {
        return inTheWay.isEmpty();
    }
}
