package deferent.search.seek;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Sense;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Puts a carrier and a rider together in the wall plane, carrier in the left hand, so that the
 * rider's hand goes where the carrier's head goes: turned, mirrored and timed as the best alignment
 * of the two paths says, its centre moved by the difference of their means. Of several alignments
 * the one that turns the rider least is taken, so that motions stay as the trade says them. A rider
 * on a pendulum's own arc rides, as no short series is that arc.
 *
 * @param space whose keys are meant
 * @param tethers equal, or the rider's as long as the link asks
 * @param tether the carrier's, metres
 */
record Staging(Space space, Tethers tethers, double tether) {
    /** Factors on the carrier's hand path, the carrier's tether and the rider's hand path. */
    record Sizes(double carrierHand, double carrierTether, double riderHand) {
        static final Sizes AS_THEY_ARE = new Sizes(1, 1, 1);
    }

    Pairing pairing(long carrier, long rider) {
        return pairing(carrier, rider, Sizes.AS_THEY_ARE);
    }

    Pairing pairing(long carrier, long rider, Sizes sizes) {
        SeriesCurve head =
                space.head(carrier, sizes.carrierHand, sizes.carrierTether).scaled(tether);
        double factor = tether * sizes.riderHand;
        SeriesCurve hand = space.hand(space.path(rider)).scaled(factor);
        double ratio = tethers == Tethers.FREE ? head.size() / hand.size() : 1;
        if (ratio != 1) {
            factor *= ratio;
            hand = hand.scaled(ratio);
        }
        boolean rides =
                space.handShape(rider).kind() == HandShape.Kind.PENDULUM_ARC
                        && space.law(carrier).swings()
                        && Alignment.gap(head, hand) <= HeadClasses.SAME;
        double[] headMean = space.headMean(carrier, sizes.carrierHand, sizes.carrierTether);
        double[] handMean = space.handMean(rider);
        return link(
                new Leading(
                        new Motion(
                                space.handShape(carrier).path(tether * sizes.carrierHand),
                                space.spin(carrier, space.startOf(carrier))),
                        Tether.of(tether * sizes.carrierTether),
                        head,
                        new double[] {tether * headMean[0], tether * headMean[1]}),
                new Following(
                        new Motion(
                                rides ? new Riding() : space.handShape(rider).path(factor),
                                space.spin(rider, space.startOf(rider))),
                        Tether.of(tether * ratio),
                        hand,
                        new double[] {factor * handMean[0], factor * handMean[1]}));
    }

    /** A carrier with its head's path about its mean, all in metres. */
    record Leading(Motion motion, Tether tether, SeriesCurve head, double[] mean) {}

    /** A rider with its hand's path about its mean, all in metres. */
    record Following(Motion motion, Tether tether, SeriesCurve hand, double[] mean) {}

    static Pairing link(Leading carrier, Following rider) {
        boolean rides = rider.motion.riding();
        Alignment laid =
                rides
                        ? Alignment.calmest(carrier.head, rider.hand, false)
                        : Alignment.best(carrier.head, rider.hand);
        double turn = laid.mirrored() ? Math.PI - laid.turn() : laid.turn();
        turn = snapped(Math.IEEEremainder(turn, 2 * Math.PI), 2 * Math.PI);
        if (rider.motion.undriven()) {
            // A still hand is a point however it is turned, and gravity says how its poi hangs.
            turn = 0;
        }
        int common = SeriesCurve.gcd(carrier.head.rounds(), rider.hand.rounds());
        int carrierCycles = rider.hand.rounds() / common;
        int riderCycles = carrier.head.rounds() / common;
        double ahead = snapped(laid.lag() / rider.hand.rounds(), 1);
        Motion follow = turn == 0 ? rider.motion : rider.motion.turned(turn);
        Place place = Place.usual(Side.RIGHT, Plane.WALL);
        if (rides) {
            SpinLaw spin = follow.spin();
            follow = follow.withSpin(hung(spin.turned(2 * Math.PI * spin.turns() * ahead)));
        } else {
            double c = Math.cos(turn);
            double s = Math.sin(turn);
            double u = c * rider.mean[0] - s * rider.mean[1];
            double v = s * rider.mean[0] + c * rider.mean[1];
            double right = settled(carrier.mean[0] - (laid.mirrored() ? -u : u));
            double up = settled(carrier.mean[1] - v);
            place = place.withCentre(place.centre().add(new Vector3D(right, up, 0)));
        }
        return new Pairing(
                new Part(
                        carrier.motion,
                        carrier.tether,
                        Place.usual(Side.LEFT, Plane.WALL),
                        carrierCycles),
                new Part(follow, rider.tether, place, riderCycles),
                Timing.of(rides ? 0 : ahead),
                laid.mirrored() ? Direction.OPPOSITE : Direction.SAME,
                Sense.CLOCKWISE,
                OptionalDouble.empty());
    }

    /**
     * As the trade's own riders of one and two turns start, where it is that: down in mid-swing.
     */
    private static SpinLaw hung(SpinLaw spin) {
        double down = Swing.DOWN - spin.turns() * Math.PI / 2;
        double off = Math.IEEEremainder(spin.starts().orElse(0) - down, 2 * Math.PI);
        boolean own = spin.even().isPresent() && spin.turns() >= 1 && spin.turns() <= 2;
        return own && Math.abs(off) < 1e-9 ? new Turns(spin.turns(), down) : spin;
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
