package deferent.search.fit;

import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Size;

/**
 * What missing one size costs the link.
 *
 * @param size the size that is missed
 * @param step by how much: 0.01 m, or five degrees in radians, or a seventy-second of a cycle
 * @param shapeCost how much more the shape gap then is, in the worse of the two directions, metres
 * @param placedCost the same of the placed gap in the carrier's plane, metres
 */
public record Cost(Size size, double step, double shapeCost, double placedCost) {
    public Cost {
        Refusal.numbers("what a missed size costs", step, shapeCost, placedCost);
    }

    /** The greater of the two: what to practise first. */
    public double gapCost() {
        return Math.max(shapeCost, placedCost);
    }
}
