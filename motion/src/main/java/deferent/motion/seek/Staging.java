package deferent.motion.seek;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Sense;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Puts a root and a rider together in the wall plane, root in the left hand, so that the rider's
 * hand goes where the root's head goes: turned, mirrored and timed as the best alignment of the two
 * paths says, its centre moved by the difference of their means. Of several alignments the one that
 * turns the rider least is taken, so that motions stay as the trade says them. A rider on a
 * pendulum's own arc rides, as no short series is that arc.
 *
 * @param space whose keys are meant
 * @param tethers equal, or the rider's as long as the tie asks
 * @param tether the root's, metres
 */
record Staging(Space space, Tethers tethers, double tether) {
    /** Factors on the root's hand path, the root's tether and the rider's hand path. */
    record Sizes(double rootHand, double rootTether, double riderHand) {
        static final Sizes AS_THEY_ARE = new Sizes(1, 1, 1);
    }

    Pairing pairing(int root, int rider) {
        return pairing(root, rider, Sizes.AS_THEY_ARE);
    }

    Pairing pairing(int root, int rider, Sizes sizes) {
        Curve head = space.head(root, sizes.rootHand, sizes.rootTether);
        Curve hand = space.hand(space.path(rider)).scaled(sizes.riderHand);
        double ratio = tethers == Tethers.FREE ? head.size() / hand.size() : 1;
        hand = ratio == 1 ? hand : hand.scaled(ratio);
        HandShape shape = space.handShape(rider);
        boolean rides =
                shape.kind() == HandShape.Kind.PENDULUM_ARC
                        && space.law(root) instanceof Swing
                        && Alignment.gap(head, hand) <= HeadClasses.SAME;
        Alignment laid = rides ? Alignment.calmest(head, hand, false) : Alignment.best(head, hand);
        double turn = laid.mirrored() ? Math.PI - laid.turn() : laid.turn();
        turn = snapped(Math.IEEEremainder(turn, 2 * Math.PI), 2 * Math.PI);
        int common = Curve.gcd(head.rounds(), hand.rounds());
        int rootCycles = hand.rounds() / common;
        int riderCycles = head.rounds() / common;
        double ahead = snapped(laid.lag() / hand.rounds(), 1);
        Motion lead =
                new Motion(
                        space.handShape(root).path(tether * sizes.rootHand),
                        space.spin(root, space.startOf(root)));
        SpinLaw spin = space.spin(rider, space.startOf(rider)).turned(turn);
        Motion follow =
                rides
                        ? new Motion(new Riding(), spin.turned(2 * Math.PI * spin.turns() * ahead))
                        : new Motion(
                                shape.path(tether * ratio * sizes.riderHand).turned(turn), spin);
        Place usual = Place.usual(Side.RIGHT, Plane.WALL);
        double[] from = space.headMean(root, sizes.rootHand, sizes.rootTether);
        double[] mean = space.handMean(rider);
        double c = Math.cos(turn) * ratio * sizes.riderHand;
        double s = Math.sin(turn) * ratio * sizes.riderHand;
        double u = c * mean[0] - s * mean[1];
        double v = s * mean[0] + c * mean[1];
        double right = from[0] - (laid.mirrored() ? -u : u);
        double up = from[1] - v;
        Place place =
                rides
                        ? usual
                        : usual.withCentre(
                                usual.centre()
                                        .add(
                                                new Vector3D(
                                                        settled(right * tether),
                                                        settled(up * tether),
                                                        0)));
        return new Pairing(
                new Part(
                        lead,
                        Tether.of(tether * sizes.rootTether),
                        Place.usual(Side.LEFT, Plane.WALL),
                        rootCycles),
                new Part(follow, Tether.of(tether * ratio), place, riderCycles),
                Timing.of(rides ? 0 : ahead),
                laid.mirrored() ? Direction.OPPOSITE : Direction.SAME,
                Sense.CLOCKWISE,
                OptionalDouble.empty());
    }

    private static double settled(double metres) {
        return Math.abs(metres) < 1e-9 ? 0 : metres;
    }

    // Angles and lags that are a 240th of a round but for rounding are that.
    private static double snapped(double value, double round) {
        double steps = value / round * 240;
        double whole = Math.rint(steps);
        return Math.abs(steps - whole) < 1e-6 ? whole / 240 * round : value;
    }
}
