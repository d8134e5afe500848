package deferent.film.follow;

import deferent.film.light.LitSpot;
import java.util.List;

/**
 * Which of two colours a spot has, where the heads have two: the spots' colours are put into two
 * heaps (k-means: MacQueen 1967), and these count where they lie far apart and both are large.
 *
 * @param blue of the middle between both
 * @param red of it
 * @param toBlue a spot's colour against the middle times this, and
 * @param toRed that times this, is −1 for one head and 1 for the other
 * @param spread standard deviation about either
 */
public record Tint(double blue, double red, double toBlue, double toRed, double spread) {
    private static final double NONE = 1e6;
    private static final double APART = 5; // standard deviations between two colours that count
    private static final double LEAST = 0.2; // share of all spots in the smaller heap
    private static final double MOST = 14; // greatest cost

    /** Of the spots of each frame, lamps left out. */
    public static Tint of(List<List<LitSpot>> frames) {
        List<LitSpot> spots = frames.stream().flatMap(List::stream).toList();
        Tint none = new Tint(0, 0, 0, 0, NONE);
        if (spots.size() < 20) {
            return none;
        }
        double[] one = colour(spots.get(0));
        double[] other = one;
        for (LitSpot s : spots) {
            other = far(s, one) > far(other, one) ? colour(s) : other;
        }
        double square = 0;
        int count = 0;
        for (int round = 0; round < 12; round++) {
            double[][] sums = new double[2][3];
            square = 0;
            for (LitSpot s : spots) {
                boolean first = far(s, one) < far(s, other);
                square += Math.pow(far(s, first ? one : other), 2);
                double[] sum = sums[first ? 0 : 1];
                sum[0] += s.blue();
                sum[1] += s.red();
                sum[2]++;
            }
            count = (int) Math.min(sums[0][2], sums[1][2]);
            if (count == 0) {
                return none;
            }
            one = new double[] {sums[0][0] / sums[0][2], sums[0][1] / sums[0][2]};
            other = new double[] {sums[1][0] / sums[1][2], sums[1][1] / sums[1][2]};
        }
        double apart = far(other, one);
        double spread = Math.sqrt(square / (2 * spots.size())) + 0.5;
        if (apart < APART * spread || count < LEAST * spots.size()) {
            return none;
        }
        double scale = 2 / (apart * apart);
        return new Tint(
                (one[0] + other[0]) / 2,
                (one[1] + other[1]) / 2,
                (other[0] - one[0]) * scale,
                (other[1] - one[1]) * scale,
                2 * spread / apart);
    }

    /** Whether colours tell the heads apart. */
    public boolean tells() {
        return spread < NONE;
    }

    /** The same with its sides so that one spot lies before the other. */
    Tint turned(LitSpot one, LitSpot other) {
        return side(one) <= side(other) ? this : new Tint(blue, red, -toBlue, -toRed, spread);
    }

    double side(LitSpot spot) {
        return (spot.blue() - blue) * toBlue + (spot.red() - red) * toRed;
    }

    /** What it costs to take a spot for the head on that side, −1 or 1. */
    double cost(LitSpot spot, int head) {
        if (!tells()) {
            return 0;
        }
        double off = (side(spot) - head) / Math.max(spread, 0.25);
        return Math.min(MOST, off * off);
    }

    private static double[] colour(LitSpot s) {
        return new double[] {s.blue(), s.red()};
    }

    private static double far(LitSpot s, double[] to) {
        return Math.hypot(s.blue() - to[0], s.red() - to[1]);
    }

    private static double far(double[] a, double[] b) {
        return Math.hypot(a[0] - b[0], a[1] - b[1]);
    }
}
