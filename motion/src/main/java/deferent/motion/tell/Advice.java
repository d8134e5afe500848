package deferent.motion.tell;

import deferent.motion.fit.Cost;
import deferent.motion.fit.Fit;
import deferent.motion.fit.FitReading;
import deferent.motion.fit.Neighbour;
import deferent.motion.fit.Neighbours;
import deferent.motion.fit.Sensitivity;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Side;
import java.util.List;
import java.util.Optional;

/**
 * What to do about the leading tie, worked out when everything else is.
 *
 * @param root whose head leads it
 * @param fit what would close it; empty where it touches already
 * @param costs what a missed size costs, dearest first
 * @param left what the left motion falls into
 * @param right what the right motion falls into
 */
public record Advice(
        Side root,
        Optional<FitReading> fit,
        List<Cost> costs,
        List<Neighbour> left,
        List<Neighbour> right) {
    public Advice {
        costs = List.copyOf(costs);
        left = List.copyOf(left);
        right = List.copyOf(right);
    }

    static Advice of(Pairing pairing, Side root, boolean touching) {
        return new Advice(
                root,
                touching ? Optional.empty() : Optional.of(Fit.of(pairing, root)),
                Sensitivity.of(pairing, root),
                Neighbours.of(pairing, Side.LEFT),
                Neighbours.of(pairing, Side.RIGHT));
    }

    public List<Neighbour> neighbours(Side side) {
        return side == Side.LEFT ? left : right;
    }
}
