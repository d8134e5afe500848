package deferent.search.seek;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.shared.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The toroids of a linked pairing: both whole figures carried by planes that turn alike.
 *
 * <p>Where rider's hand and carrier's head are in one place of the plane at every instant, they
 * stay together when the plane turns, as long as both planes are at one angle at every instant. So
 * a planar link gives a toroid link if both figures have one centre in the plane, the planes turn
 * equally often in the common cycle (the other way for a mirrored figure), and the rider's head
 * start is a whole number of plane turns. A pendulum's plane keeps still. No new comparison is
 * needed: a toroid of a link gaps by what its link gaps, or less.
 *
 * <p>Toroids in which the poi's plane alone turns while the hand keeps to its own draw figures of
 * their own; they are not sought here.
 */
public final class Toroids {
    private static final double SAME = 1e-9;

    private Toroids() {}

    /**
     * A linked pairing whose planes turn with it.
     *
     * @param linked a pairing placed by a seek
     * @param turns whole turns of the carrier's plane a carrier cycle, not 0
     * @param axis what it turns about
     * @return the toroid, or empty where the planes cannot turn alike
     */
    public static Optional<Pairing> of(Pairing linked, int turns, PlaneTurn.Axis axis) {
        Place left = linked.left().place();
        Place right = linked.right().place();
        Vector3D apart = right.centre().subtract(left.centre());
        boolean oneCentre =
                Math.abs(apart.dotProduct(left.plane().u())) < SAME
                        && Math.abs(apart.dotProduct(left.plane().v())) < SAME;
        int both = turns * linked.left().cycles();
        if (turns == 0
                || !oneCentre
                || linked.rider().isPresent()
                || linked.setsOwnTempo()
                || both % linked.right().cycles() != 0) {
            return Optional.empty();
        }
        int other = both / linked.right().cycles();
        double early = other * linked.startPhase(Side.RIGHT);
        if (Math.abs(early - Math.rint(early)) > SAME
                || Math.abs(other) > 12
                || Math.abs(turns) > 12) {
            return Optional.empty();
        }
        // the mirror swaps left and right, so it turns a plane about its upright axis the other way
        boolean alike = linked.mirrored(Side.LEFT) == linked.mirrored(Side.RIGHT);
        int way = alike || axis == PlaneTurn.Axis.LEVEL ? 1 : -1;
        return Optional.of(
                linked.with(Side.LEFT, linked.left().with(left.withTurn(turning(turns, axis))))
                        .with(
                                Side.RIGHT,
                                linked.right().with(right.withTurn(turning(way * other, axis)))));
    }

    /** All that turn up to {@code most} times either way about either axis. */
    public static List<Pairing> of(Pairing linked, int most) {
        List<Pairing> found = new ArrayList<>();
        for (PlaneTurn.Axis axis : PlaneTurn.Axis.values()) {
            for (int turns = -most; turns <= most; turns++) {
                of(linked, turns, axis).ifPresent(found::add);
            }
        }
        return List.copyOf(found);
    }

    private static PlaneTurn turning(int turns, PlaneTurn.Axis axis) {
        return new PlaneTurn(turns, axis, PlaneTurn.Carries.FIGURE);
    }
}
