package deferent.search.whole;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.ArmThrough;
import deferent.reading.body.Passes;
import deferent.reading.body.PoseOver;
import deferent.reading.body.Reach;
import deferent.reading.link.LinkReading;
import deferent.reading.shared.LinkKind;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.KeepTheHandPath;
import deferent.reading.tether.Kit;
import deferent.reading.tether.LinkedTruth;
import deferent.reading.worked.CordReading;
import deferent.reading.worked.Worked;
import deferent.search.fit.Cost;
import deferent.search.fit.Fit;
import deferent.search.fit.FitReading;
import deferent.search.fit.Neighbour;
import deferent.search.fit.Neighbours;
import deferent.search.fit.Remedy;
import deferent.search.fit.Sensitivity;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What to do about the leading link, worked out when everything else is.
 *
 * @param carrier whose head leads it
 * @param fit what would close it; unasked where it touches already or was not searched
 * @param within of its ways those that take no hand further beyond the arms' reach than it is
 * @param costs what a missed size costs, dearest first
 * @param left what the left motion falls into
 * @param right what the right motion falls into
 * @param truth whether a link survives real cords; unasked where none links and where it was not
 *     searched
 * @param helps what would bring the hands within reach; unasked where they are, or where reach
 *     could not be worked out
 * @param arms what arms pass through however their elbows are held; unasked where reach could not
 *     be worked out
 * @param passes what passes before or over what; likewise
 */
public record Advice(
        Side carrier,
        Worked<FitReading> fit,
        List<Remedy> within,
        Worked<List<Cost>> costs,
        Worked<List<Neighbour>> left,
        Worked<List<Neighbour>> right,
        Worked<LinkedTruth> truth,
        Worked<ReachHelps> helps,
        Worked<List<ArmThrough>> arms,
        Worked<Passes> passes) {

    /**
     * Worked out for a leading link.
     *
     * @param leading the carrier's cord
     * @param riding the rider's
     */
    public static Advice of(
            Trace trace,
            Worked<LinkReading> link,
            CordReading leading,
            CordReading riding,
            Worked<Reach> reach,
            boolean searched) {
        Side carrier = leading.side();
        Pairing pairing = trace.pairing();
        String fit = "the fit that would close it";
        String truth = "whether it links on real cords";
        // Nobody sizes a weave so that a head leads a hand: its hands are bound to each other.
        Worked<FitReading> closing =
                !searched || pairing.weaves()
                        ? Worked.unasked()
                        : link.then(
                                fit,
                                known ->
                                        known.kind() == LinkKind.TOUCHING
                                                ? Worked.unasked()
                                                : Worked.of(fit, () -> Fit.of(pairing, known)));
        List<Remedy> within =
                closing.reading().stream()
                        .flatMap(f -> f.answers().stream())
                        .filter(
                                answer ->
                                        reach.reading().stream()
                                                .allMatch(r -> noFurther(answer, r)))
                        .toList();
        Worked<PoseOver> pose =
                reach.reading()
                        .map(r -> Worked.of(POSE, () -> PoseOver.surely(trace, r)))
                        .orElseGet(Worked::unasked);
        return new Advice(
                carrier,
                closing,
                within,
                pairing.weaves()
                        ? Worked.unasked()
                        : Worked.of(
                                "what a missed size costs", () -> Sensitivity.of(pairing, carrier)),
                neighbours(pairing, Side.LEFT),
                neighbours(pairing, Side.RIGHT),
                !searched
                        ? Worked.unasked()
                        : link.then(
                                truth,
                                known ->
                                        survives(known)
                                                ? truth(truth, trace, known, leading, riding)
                                                : Worked.unasked()),
                reach.reading()
                        .filter(r -> !r.reached())
                        .map(
                                r ->
                                        Worked.of(
                                                "what would bring it within reach",
                                                () -> ReachHelps.of(pairing, r.performer(), r)))
                        .orElseGet(Worked::unasked),
                pose.as(
                        "what the arms pass through",
                        held -> ArmThrough.of(held, reach.reading().orElseThrow())),
                pose.as("what passes before what", held -> Passes.of(trace, held)));
    }

    private static final String POSE = "how the body is held";

    /** Whether no hand is further beyond the arms' reach than now, by a centimetre or more. */
    private static boolean noFurther(Remedy answer, Reach now) {
        Reach then = Reach.of(Trace.of(answer.pairing()), now.performer());
        return then.worst() <= now.worst() + 0.01;
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

    private static Worked<LinkedTruth> truth(
            String what, Trace trace, LinkReading link, CordReading leading, CordReading riding) {
        return leading.handPathKept()
                .then(
                        what,
                        hand ->
                                figure(trace, riding, hand.cord().kit())
                                        .then(what, kept -> truth(what, trace, link, hand, kept)));
    }

    private static Worked<LinkedTruth> truth(
            String what, Trace trace, LinkReading link, KeepTheHandPath hand, KeepTheFigure kept) {
        Vector3D offset = link.kind() == LinkKind.CARRIED ? link.offset() : Vector3D.ZERO;
        double lag = link.followed().map(LinkReading.Following::lag).orElse(0.0);
        return Worked.of(
                what, () -> LinkedTruth.of(trace, hand, kept, offset, lag, link.tolerance()));
    }

    /** The rider's figure kept; of an undriven pendulum it was not asked for. */
    private static Worked<KeepTheFigure> figure(Trace trace, CordReading riding, Kit kit) {
        Side side = riding.side();
        return riding.figureKept()
                .orNow(CordReading.keepingFigure(side), () -> KeepTheFigure.of(trace, side, kit));
    }

    public Worked<List<Neighbour>> neighbours(Side side) {
        return side == Side.LEFT ? left : right;
    }
}
