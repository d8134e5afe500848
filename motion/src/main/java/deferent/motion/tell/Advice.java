package deferent.motion.tell;

import deferent.motion.fit.Cost;
import deferent.motion.fit.Fit;
import deferent.motion.fit.FitReading;
import deferent.motion.fit.Neighbour;
import deferent.motion.fit.Neighbours;
import deferent.motion.fit.Sensitivity;
import deferent.motion.link.LinkKind;
import deferent.motion.link.LinkReading;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;
import deferent.motion.tether.Kit;
import deferent.motion.tether.LinkedTruth;
import deferent.motion.trace.Trace;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What to do about the leading tie, worked out when everything else is.
 *
 * @param root whose head leads it
 * @param fit what would close it; empty where it touches already or was not searched
 * @param costs what a missed size costs, dearest first
 * @param left what the left motion falls into
 * @param right what the right motion falls into
 * @param truth whether a tie that links survives real cords; empty where none links, where the
 *     motions have corners that no cord follows, or where it was not worked out
 */
public record Advice(
        Side root,
        Optional<FitReading> fit,
        List<Cost> costs,
        List<Neighbour> left,
        List<Neighbour> right,
        Optional<LinkedTruth> truth) {
    public Advice {
        costs = List.copyOf(costs);
        left = List.copyOf(left);
        right = List.copyOf(right);
    }

    static Advice of(Trace trace, LinkReading link, Kit kit, boolean searched) {
        Pairing pairing = trace.pairing();
        Side root = link.root();
        return new Advice(
                root,
                !searched || link.kind() == LinkKind.TOUCHING
                        ? Optional.empty()
                        : Optional.of(Fit.of(pairing, link)),
                Sensitivity.of(pairing, root),
                Neighbours.of(pairing, Side.LEFT),
                Neighbours.of(pairing, Side.RIGHT),
                searched ? truth(trace, link, kit) : Optional.empty());
    }

    private static Optional<LinkedTruth> truth(Trace trace, LinkReading link, Kit kit) {
        boolean carried = link.kind() == LinkKind.CARRIED;
        boolean followed = link.kind() == LinkKind.FOLLOWED;
        if (!carried && !followed && link.kind() != LinkKind.TOUCHING) {
            return Optional.empty();
        }
        try {
            return Optional.of(
                    LinkedTruth.of(
                            trace,
                            link.root(),
                            kit,
                            carried ? link.offset() : Vector3D.ZERO,
                            followed ? link.lag() : 0,
                            link.tolerance()));
        } catch (Refusal corner) {
            // The same corner is told with the cord's other readings.
            return Optional.empty();
        }
    }

    public List<Neighbour> neighbours(Side side) {
        return side == Side.LEFT ? left : right;
    }
}
