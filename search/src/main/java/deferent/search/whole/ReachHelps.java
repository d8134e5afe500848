package deferent.search.whole;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.search.fit.ArmsFit;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What would bring a pairing that is out of reach into it, or nearer. Nothing is offered that has
 * not been read: each help is the pairing changed so, with its reach worked out.
 *
 * @param smaller the same pairing made smaller, tethers and all, where tethers that are long enough
 *     bring it within reach
 * @param still a still hand brought before its own shoulder, likewise; the trunk is then free to
 *     turn for the other
 * @param move of the moves that were tried the one that leaves least, where it takes off enough to
 *     be worth saying
 */
public record ReachHelps(
        Optional<ArmsFit> smaller, Optional<StillHand> still, Optional<Move> move) {
    /**
     * Where more than this share of what is missing is left, a move is not worth it (our choice).
     */
    private static final double LEFT = 0.5;

    /** How far the centres are moved, metres: one step, tried each way (our choice). */
    private static final double STEP = 0.10;

    /** Where both centres are moved to together, so that what links goes on linking. */
    public enum Way {
        NEARER(0, 0, -1),
        LOWER(0, -1, 0),
        HIGHER(0, 1, 0),
        LEFT(1, 0, 0),
        RIGHT(-1, 0, 0);

        private final Vector3D toward;

        Way(double x, double y, double z) {
            this.toward = new Vector3D(x, y, z);
        }
    }

    /**
     * Both centres moved.
     *
     * @param by how far, metres
     * @param left by how much it is out of reach then, metres; 0 where it is not
     */
    public record Move(Way way, double by, double left) {}

    /**
     * A still hand held before its own shoulder, as far in front and in its own plane as before.
     *
     * @param side whose
     * @param left by how much the pairing is out of reach then, metres; 0 where it is not
     */
    public record StillHand(Side side, double left) {}

    /**
     * Sought for a pairing that is out of reach.
     *
     * @param reach its reading
     */
    public static ReachHelps of(Pairing pairing, Performer performer, Reach reach) {
        double now = lacking(reach);
        return new ReachHelps(
                ArmsFit.sized(pairing, performer),
                Stream.of(Side.values())
                        .filter(side -> pairing.part(side).still())
                        .map(side -> beforeShoulder(pairing, performer, side))
                        .filter(still -> still.left <= LEFT * now)
                        .min(Comparator.comparingDouble(StillHand::left)),
                Stream.of(Way.values())
                        .map(way -> moved(pairing, performer, way))
                        .filter(move -> move.left <= LEFT * now)
                        .min(Comparator.comparingDouble(Move::left)));
    }

    private static StillHand beforeShoulder(Pairing pairing, Performer performer, Side side) {
        Place place = pairing.part(side).place();
        Vector3D off = performer.shoulder(side).subtract(place.centre());
        Vector3D across = place.plane().normal();
        Vector3D inPlane = off.subtract(off.dotProduct(across), across);
        Pairing made = about(pairing, side, place.centre().add(inPlane));
        return new StillHand(side, lacking(Reach.of(Trace.of(made), performer)));
    }

    private static Pairing about(Pairing pairing, Side side, Vector3D centre) {
        Part part = pairing.part(side);
        return pairing.with(
                side,
                new Part(
                        part.motion(),
                        part.tether(),
                        part.place().withCentre(centre),
                        part.cycles()));
    }

    private static Move moved(Pairing pairing, Performer performer, Way way) {
        Pairing made = pairing;
        for (Side side : Side.values()) {
            Vector3D centre = pairing.part(side).place().centre();
            made = about(made, side, centre.add(STEP, way.toward));
        }
        return new Move(way, STEP, lacking(Reach.of(Trace.of(made), performer)));
    }

    private static double lacking(Reach reach) {
        return reach.reached() ? 0 : Math.max(reach.tooNear(), reach.turned().tooFar());
    }
}
