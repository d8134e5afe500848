package deferent.film.hand;

import deferent.film.cycle.Wave;
import deferent.reading.tether.Kit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * A hand that keeps still, by which gravity shows how large the picture is and how it is turned: at
 * one size of a pixel and one roll alone does the cord hang from one place all through the cycle.
 * Found over a grid of sizes, then by Gauss and Newton's steps on the logarithm of the size and on
 * the roll; of what is left over each, their errors.
 *
 * @param metres a pixel
 * @param metresError standard deviation, as a share
 * @param roll radians by which what is upright is turned counter-clockwise in the picture
 * @param rollError standard deviation, radians
 * @param moves how far the hand moves, root mean square, as a share of what its head does
 */
public record StillHand(
        double metres, double metresError, double roll, double rollError, double moves) {
    // Of a pixel at the performer: from a close-up at 4K to a far and small film.
    private static final double FINEST = 2e-4;
    private static final double COARSEST = 2e-2;
    private static final double STEP = 1.02;
    private static final int MOMENTS = 60;
    private static final double NEARLY_ALL = 0.75; // of the cycle, in which it must be told
    private static final int STEPS = 8;
    private static final double NUDGE = 1e-3; // of the size, and radians
    private static final double LARGEST = Math.toRadians(12); // roll of a camera meant to be level
    private static final double SCALED = 0.02; // by which a given size of a pixel may be off

    /**
     * Of a head's mean cycle, nothing known but its tether.
     *
     * @param pixels mean cycle, downward
     * @param tether metres
     * @return empty where the cord is slack for long at any size
     */
    public static Optional<StillHand> of(Wave pixels, double tether, Kit kit) {
        double least = Double.POSITIVE_INFINITY;
        double best = Double.NaN;
        for (double s = FINEST; s < COARSEST; s *= STEP) {
            double moves = moves(pixels, hands(pixels, s, 0, tether, kit), s);
            if (moves < least) {
                least = moves;
                best = s;
            }
        }
        return Double.isNaN(best)
                ? Optional.empty()
                : Optional.of(new Search(pixels, tether, kit).from(best, Double.POSITIVE_INFINITY));
    }

    /** The same where the size of a pixel is known but for a share of some hundredths. */
    public static Optional<StillHand> of(Wave pixels, double tether, Kit kit, double metres) {
        return hands(pixels, metres, 0, tether, kit).size() < NEARLY_ALL * MOMENTS
                ? Optional.empty()
                : Optional.of(new Search(pixels, tether, kit).from(metres, SCALED));
    }

    private static Map<Double, Vector2D> hands(
            Wave pixels, double metres, double roll, double tether, Kit kit) {
        Wave wave = pixels.turned(0, 0, roll).through(0, metres, 0, -metres);
        Map<Double, Vector2D> hands = new HashMap<>();
        for (HandSight sight : HandFinder.of(wave, tether, kit, MOMENTS)) {
            hands.put(sight.time(), new Vector2D(sight.x(), sight.y()));
        }
        return hands;
    }

    private static double moves(Wave pixels, Map<Double, Vector2D> hands, double metres) {
        if (hands.size() < NEARLY_ALL * MOMENTS) {
            return Double.POSITIVE_INFINITY;
        }
        double head = 0;
        for (int k = 1; k < pixels.x().length; k++) {
            head += (pixels.x()[k] * pixels.x()[k] + pixels.y()[k] * pixels.y()[k]) / 2;
        }
        Vector2D mean = mean(hands.values().stream().toList());
        double spread = hands.values().stream().mapToDouble(mean::distanceSq).average().orElse(0);
        return Math.sqrt(spread / Math.max(1e-12, head)) / metres;
    }

    private static Vector2D mean(List<Vector2D> places) {
        Vector2D sum = Vector2D.ZERO;
        for (Vector2D place : places) {
            sum = sum.add(place);
        }
        return sum.scalarMultiply(1.0 / places.size());
    }

    /** Steps toward the size and the roll at which the hand moves least. */
    private record Search(Wave pixels, double tether, Kit kit) {
        StillHand from(double metres, double sure) {
            double log = Math.log(metres);
            double roll = 0;
            double[] last = {0, 0, 0};
            for (int i = 0; i < STEPS; i++) {
                double[] step = step(log, roll, Math.log(metres), sure);
                log += Math.max(-0.05, Math.min(0.05, step[0]));
                roll = Math.max(-LARGEST, Math.min(LARGEST, roll + step[1]));
                last = step;
            }
            double size = Math.exp(log);
            double moves = moves(pixels, hands(pixels, size, roll, tether, kit), size);
            return new StillHand(size, last[2], roll, last[3], moves);
        }

        // By how much size and roll should change, and their standard deviations.
        private double[] step(double log, double roll, double given, double sure) {
            Map<Double, Vector2D> here = at(log, roll);
            Map<Double, Vector2D> larger = at(log + NUDGE, roll);
            Map<Double, Vector2D> turned = at(log, roll + NUDGE);
            List<Double> times = new ArrayList<>(here.keySet());
            times.retainAll(larger.keySet());
            times.retainAll(turned.keySet());
            if (times.size() < NEARLY_ALL * MOMENTS) {
                return new double[] {0, 0, 1, Math.PI};
            }
            Vector2D m0 = mean(times.stream().map(here::get).toList());
            Vector2D m1 = mean(times.stream().map(larger::get).toList());
            Vector2D m2 = mean(times.stream().map(turned::get).toList());
            double ss = 0;
            double sr = 0;
            double rr = 0;
            double so = 0;
            double ro = 0;
            double oo = 0;
            for (double t : times) {
                Vector2D off = here.getOrDefault(t, m0).subtract(m0);
                Vector2D ds =
                        larger.getOrDefault(t, m1)
                                .subtract(m1)
                                .subtract(off)
                                .scalarMultiply(1 / NUDGE);
                Vector2D dr =
                        turned.getOrDefault(t, m2)
                                .subtract(m2)
                                .subtract(off)
                                .scalarMultiply(1 / NUDGE);
                ss += ds.dotProduct(ds);
                sr += ds.dotProduct(dr);
                rr += dr.dotProduct(dr);
                so += ds.dotProduct(off);
                ro += dr.dotProduct(off);
                oo += off.dotProduct(off);
            }
            // As many moments tell something of their own as the mean cycle has coefficients.
            double own = Math.min(1, (2 * pixels.order() + 1.0) / times.size());
            double variance = Math.max(oo / (2 * times.size() - 4), 1e-8) / own;
            if (sure < Double.POSITIVE_INFINITY) {
                ss += variance / (sure * sure);
                so += variance / (sure * sure) * (log - given);
            }
            double det = Math.max(1e-12, ss * rr - sr * sr);
            return new double[] {
                -(rr * so - sr * ro) / det,
                -(ss * ro - sr * so) / det,
                Math.min(1, Math.sqrt(variance * rr / det)),
                Math.min(Math.PI, Math.sqrt(variance * ss / det))
            };
        }

        private Map<Double, Vector2D> at(double log, double roll) {
            return hands(pixels, Math.exp(log), roll, tether, kit);
        }
    }
}
