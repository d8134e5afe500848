package deferent.search.seek;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Size;
import deferent.motion.shared.Side;
import deferent.motion.trace.Lowest;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * A size that closes a link which is nearly linked. The rider's hand path has a closed form: it
 * must be X/|b|² times as large (see {@link Alignment}); the carrier's hand path and its tether
 * change its figure as well, so their least gap is sought along each (golden section, Kiefer 1953,
 * about the best of an even scan).
 *
 * @param size which
 * @param from what it is, metres
 * @param to what closes it, metres
 * @param pairing with that size
 */
public record Closing(Size size, double from, double to, Pairing pairing) {

    /** What closes the link of two motions, least change first. */
    static List<Closing> of(Staging staging, long carrier, long rider) {
        Space space = staging.space();
        SeriesCurve head = space.head(carrier);
        SeriesCurve hand = space.hand(space.path(rider));
        double tether = staging.tether();
        List<Closing> found = new ArrayList<>();
        double factor = Alignment.factor(head, hand);
        if (Alignment.gap(head, hand.scaled(factor)) <= 10 * HeadClasses.SAME) {
            HandShape shape = space.handShape(rider);
            found.add(
                    new Closing(
                            Size.of(Side.RIGHT, Size.Kind.HAND_RADIUS),
                            shape.reach() * tether,
                            factor * shape.reach() * tether,
                            staging.pairing(carrier, rider, new Staging.Sizes(1, 1, factor))));
        }
        HandShape lead = space.handShape(carrier);
        if (lead.kind() != HandShape.Kind.STILL) {
            double best = least(x -> Alignment.gap(space.head(carrier, x, 1), hand));
            if (Alignment.gap(space.head(carrier, best, 1), hand) <= 10 * HeadClasses.SAME) {
                found.add(
                        new Closing(
                                Size.of(Side.LEFT, Size.Kind.HAND_RADIUS),
                                lead.reach() * tether,
                                best * lead.reach() * tether,
                                staging.pairing(carrier, rider, new Staging.Sizes(best, 1, 1))));
            }
        }
        double best = least(x -> Alignment.gap(space.head(carrier, 1, x), hand));
        if (Alignment.gap(space.head(carrier, 1, best), hand) <= 10 * HeadClasses.SAME) {
            found.add(
                    new Closing(
                            Size.of(Side.LEFT, Size.Kind.TETHER),
                            tether,
                            best * tether,
                            staging.pairing(carrier, rider, new Staging.Sizes(1, best, 1))));
        }
        found.sort(Comparator.comparingDouble(c -> Math.abs(c.to - c.from)));
        return List.copyOf(found);
    }

    private static double least(DoubleUnaryOperator gap) {
        double at = 1;
        double least = Double.MAX_VALUE;
        double step = 0.02;
        for (int i = 5; i <= 150; i++) {
            double here = gap.applyAsDouble(i * step);
            if (here < least) {
                least = here;
                at = i * step;
            }
        }
        return narrowed(gap, at - step, at + step);
    }

    /**
     * The least of a function between two places, by golden section; a round number if it is that
     * but for rounding.
     */
    static double narrowed(DoubleUnaryOperator gap, double from, double to) {
        double found = Lowest.within(gap, from, to, 40).at();
        double round = Math.rint(found * 1e6) / 1e6;
        return Math.abs(found - round) < 1e-7 ? round : found;
    }
}
