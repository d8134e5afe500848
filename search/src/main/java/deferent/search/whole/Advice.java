package deferent.search.whole;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Side;
import deferent.motion.trace.Trace;
import deferent.reading.link.LinkKind;
import deferent.reading.link.LinkReading;
import deferent.reading.tether.Kit;
import deferent.reading.tether.LinkedTruth;
import deferent.reading.worked.Worked;
import deferent.search.fit.Cost;
import deferent.search.fit.Fit;
import deferent.search.fit.FitReading;
import deferent.search.fit.Neighbour;
import deferent.search.fit.Neighbours;
import deferent.search.fit.Sensitivity;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What to do about the leading link, worked out when everything else is.
 *
 * @param carrier whose head leads it
 * @param fit what would close it; unasked where it touches already or was not searched
 * @param costs what a missed size costs, dearest first
 * @param left what the left motion falls into
 * @param right what the right motion falls into
 * @param truth whether a link survives real cords; unasked where none links and where it was not
 *     searched
 */
public record Advice(
        Side carrier,
        Worked<FitReading> fit,
        Worked<List<Cost>> costs,
        Worked<List<Neighbour>> left,
        Worked<List<Neighbour>> right,
        Worked<LinkedTruth> truth) {

    public static Advice of(
            Trace trace, Side carrier, Worked<LinkReading> link, Kit kit, boolean searched) {
        Pairing pairing = trace.pairing();
        String fit = "the fit that would close it";
        String truth = "whether it links on real cords";
        return new Advice(
                carrier,
                !searched
                        ? Worked.unasked()
                        : link.then(
                                fit,
                                known ->
                                        known.kind() == LinkKind.TOUCHING
                                                ? Worked.unasked()
                                                : Worked.of(fit, () -> Fit.of(pairing, known))),
                Worked.of("what a missed size costs", () -> Sensitivity.of(pairing, carrier)),
                neighbours(pairing, Side.LEFT),
                neighbours(pairing, Side.RIGHT),
                !searched
                        ? Worked.unasked()
                        : link.then(
                                truth,
                                known ->
                                        survives(known)
                                                ? Worked.of(truth, () -> truth(trace, known, kit))
                                                : Worked.unasked()));
    }

    private static Worked<List<Neighbour>> neighbours(Pairing pairing, Side side) {
        return Worked.of(
                "what the " + side.word() + " motion lies near",
                () -> Neighbours.of(pairing, side));
    }

    /** Whether it is a link that real cords might keep. */
    private static boolean survives(LinkReading link) {
        return switch (link.kind()) {
            case TOUCHING, CARRIED, FOLLOWED -> true;
            case ROD, NONE -> false;
        };
    }

    private static LinkedTruth truth(Trace trace, LinkReading link, Kit kit) {
        return LinkedTruth.of(
                trace,
                link.carrier(),
                kit,
                link.kind() == LinkKind.CARRIED ? link.offset() : Vector3D.ZERO,
                link.followed().map(LinkReading.Following::lag).orElse(0.0),
                link.tolerance());
    }

    public Worked<List<Neighbour>> neighbours(Side side) {
        return side == Side.LEFT ? left : right;
    }
}
