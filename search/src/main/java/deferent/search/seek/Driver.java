package deferent.search.seek;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Tether;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * A carrier that can drive a given rider's hand, with the sizes at which it does.
 *
 * <p>Asked when the rider's hand path is given and cannot be changed: of every carrier family of a
 * space, the carrier's hand path is tried at all sizes with the rider's own tether, and, where that
 * links at none, its tether at all lengths with its hand path as many tethers of the rider's as the
 * space's unit says. A circle of radius r below the tether L is thus drawn by isolations with hand
 * circles L − r and L + r, and by a static spin on a tether of r.
 *
 * @param carrier the motion, sized
 * @param tether its tether
 * @param sameTether whether that is the rider's own
 * @param said in words
 * @param pairing carrier and rider linked
 */
public record Driver(
        Motion carrier, Tether tether, boolean sameTether, String said, Pairing pairing) {
    private static final double STEP = 0.01;
    private static final double MOST = 3;
    private static final double NEAR = 1e-6;

    /** Every carrier of the space's families that drives this rider, its own tether's first. */
    public static List<Driver> of(Space space, Motion rider, Tether tether) {
        double length = tether.length();
        SeriesTerms path = SeriesTerms.ofPath(rider.path().course(), 720);
        SeriesCurve wanted = path.curve().scaled(1 / length);
        Staging.Following following =
                new Staging.Following(rider, tether, path.curve(), path.mean());
        List<Driver> found = new ArrayList<>();
        if (wanted.size() < Look.POINT) {
            return found;
        }
        for (int at = 0; at < space.paths(); at++) {
            HandShape shape = space.shape(at);
            // an arc has endless terms and no poi cancels them, so no arc draws a short series
            boolean unit =
                    shape.kind() == HandShape.Kind.STILL
                            || shape.size() == 1
                                    && (shape.swept() ? wanted.terms() > 2 : shape.other() <= 1);
            if (!unit) {
                continue;
            }
            for (long key : space.riders(at)) {
                int before = found.size();
                if (shape.kind() != HandShape.Kind.STILL) {
                    for (double x : links(f -> Alignment.leastGap(space.head(key, f, 1), wanted))) {
                        if (Alignment.gap(space.head(key, x, 1), wanted) < NEAR) {
                            found.add(driver(space, key, x, 1, length, following));
                        }
                    }
                }
                if (found.size() == before) {
                    for (double x : links(f -> Alignment.leastGap(space.head(key, 1, f), wanted))) {
                        if (Alignment.gap(space.head(key, 1, x), wanted) < NEAR) {
                            found.add(driver(space, key, 1, x, length, following));
                        }
                    }
                }
            }
        }
        found.sort(
                Comparator.comparing((Driver d) -> !d.sameTether)
                        .thenComparingDouble(d -> d.carrier.path().radius()));
        return List.copyOf(found);
    }

    private static Driver driver(
            Space space,
            long key,
            double hand,
            double tether,
            double length,
            Staging.Following following) {
        double[] mean = space.headMean(key, hand, tether);
        Tether own = Tether.of(length * tether);
        Motion carrier =
                new Motion(
                        space.handShape(key).path(length * hand),
                        space.spin(key, space.startOf(key)));
        Pairing pairing =
                Staging.link(
                        new Staging.Leading(
                                carrier,
                                own,
                                space.head(key, hand, tether).scaled(length),
                                new double[] {length * mean[0], length * mean[1]}),
                        following);
        return new Driver(carrier, own, tether == 1, Saying.of(carrier, own), pairing);
    }

    /**
     * Where a gap that depends on one size comes to nothing: every dip of an even scan, narrowed.
     */
    private static List<Double> links(DoubleUnaryOperator gap) {
        int steps = (int) Math.round(MOST / STEP);
        double[] height = new double[steps + 1];
        for (int i = 1; i <= steps; i++) {
            height[i] = gap.applyAsDouble(i * STEP);
        }
        height[0] = Double.MAX_VALUE;
        List<Double> found = new ArrayList<>();
        for (int i = 1; i < steps; i++) {
            // a gap changes no faster than a size, so one that is closed nearby is no larger than a
            // step
            if (height[i] <= 2 * STEP && height[i] <= height[i - 1] && height[i] <= height[i + 1]) {
                double x = Closing.narrowed(gap, (i - 1) * STEP, (i + 1) * STEP);
                if (gap.applyAsDouble(x) < NEAR) {
                    found.add(x);
                }
            }
        }
        return found;
    }
}
