package deferent.reading.link;

import java.util.Arrays;

/**
 * Discrete Fréchet distance: the shortest lead that lets two walkers go along their point sequences
 * from start to end, each stepping on or waiting. By the dynamic programme of Eiter and Mannila,
 * Computing discrete Fréchet distance (1994).
 *
 * <p>Our own because the one in JTS is for the plane and a search over rigid motions asks for it
 * thousands of times: this one works in space, on squared distances, in contiguous arrays, and may
 * keep to a corridor. Tests hold it equal to the definition on any points, and to JTS's on the
 * trade's paths; JTS's shortcut is above the definition on a few random ones.
 */
final class Frechet {
    // Squares are never below zero, so their bits as whole numbers stand in the same order; a
    // processor finds the lesser of two whole numbers several times sooner.
    private static final long FAR = Double.doubleToRawLongBits(Double.POSITIVE_INFINITY);

    private Frechet() {}

    /** Metres; points as x, y, z, x, …. */
    static double distance(double[] p, double[] h) {
        return Math.sqrt(
                squared(
                        p,
                        h,
                        Corridor.whole(p.length / 3, h.length / 3),
                        new long[h.length / 3],
                        Double.MAX_VALUE));
    }

    /**
     * Square of the distance.
     *
     * @param corridor which steps may go together
     * @param row room for one number a point of {@code h}
     * @param enough give up, with infinity, once the result cannot come below this
     */
    static double squared(double[] p, double[] h, Corridor corridor, long[] row, double enough) {
        int n = p.length / 3;
        int m = h.length / 3;
        long stop = Double.doubleToRawLongBits(enough);
        Arrays.fill(row, 0, m, FAR);
        for (int i = 0; i < n; i++) {
            double px = p[3 * i];
            double py = p[3 * i + 1];
            double pz = p[3 * i + 2];
            int from = corridor.low()[i];
            int to = corridor.high()[i];
            long corner = i == 0 ? 0 : from > 0 ? row[from - 1] : FAR;
            long left = FAR;
            long least = FAR;
            for (int j = i == 0 ? 0 : corridor.low()[i - 1]; j < from; j++) {
                row[j] = FAR;
            }
            for (int j = from; j <= to; j++) {
                double dx = px - h[3 * j];
                double dy = py - h[3 * j + 1];
                double dz = pz - h[3 * j + 2];
                long d = Double.doubleToRawLongBits(dx * dx + dy * dy + dz * dz);
                long up = row[j];
                left = Math.max(d, Math.min(left, Math.min(up, corner)));
                corner = up;
                row[j] = left;
                least = Math.min(least, left);
            }
            if (least >= stop) {
                return Double.POSITIVE_INFINITY;
            }
        }
        return Double.longBitsToDouble(row[m - 1]);
    }

    /**
     * Whether two walkers can go along the two open polygons, at any paces and without a step back,
     * never more than {@code lead} apart: the decision of Alt and Godau, Computing the Fréchet
     * distance between two polygonal curves (1995). No points are left out between the steps, so it
     * is of the polygons' own distance, not of their points'.
     *
     * <p>Cell by cell of the diagram of both lengths, the reachable part of a cell's lower and left
     * side is kept; a cell is convex, so what can be entered can be left by the whole of a far
     * side, or from a like side on.
     */
    static boolean within(double lead, double[] p, double[] h) {
        int n = p.length / 3 - 1;
        int m = h.length / 3 - 1;
        double most = lead * lead;
        double[] side = new double[2];
        // Of each piece of h the part that can be reached from where p's walker stands; empty where
        // from is above to.
        double[] from = new double[m];
        double[] to = new double[m];
        boolean on = apart(p, 0, h, 0) <= most;
        for (int j = 0; j < m; j++) {
            near(p, 0, h, j, most, side);
            boolean starts = on && side[0] == 0;
            from[j] = starts ? 0 : 2;
            to[j] = starts ? side[1] : 1;
            on = starts && side[1] == 1;
        }
        boolean waits = apart(p, 0, h, 0) <= most;
        for (int i = 0; i < n; i++) {
            near(h, 0, p, i, most, side);
            boolean starts = waits && side[0] == 0;
            double low = starts ? 0 : 2;
            double high = starts ? side[1] : 1;
            waits = starts && side[1] == 1;
            boolean any = starts;
            for (int j = 0; j < m; j++) {
                boolean below = from[j] <= to[j];
                boolean left = low <= high;
                if (!below && !left) {
                    continue;
                }
                double entered = from[j];
                near(p, i + 1, h, j, most, side);
                from[j] = left ? side[0] : Math.max(side[0], entered);
                to[j] = side[1];
                near(h, j + 1, p, i, most, side);
                low = below ? side[0] : Math.max(side[0], low);
                high = side[1];
                any |= from[j] <= to[j];
            }
            if (!any && !waits) {
                return false;
            }
        }
        return from[m - 1] <= to[m - 1] && to[m - 1] == 1;
    }

    private static double apart(double[] a, int i, double[] b, int j) {
        double dx = a[3 * i] - b[3 * j];
        double dy = a[3 * i + 1] - b[3 * j + 1];
        double dz = a[3 * i + 2] - b[3 * j + 2];
        return dx * dx + dy * dy + dz * dz;
    }

    // Which shares of the piece from corner j on lie within the square root of most of a corner of
    // the other polygon.
    private static void near(
            double[] point, int i, double[] line, int j, double most, double[] shares) {
        double first = apart(point, i, line, j);
        double last = apart(point, i, line, j + 1);
        if (first <= most && last <= most) {
            shares[0] = 0;
            shares[1] = 1;
            return;
        }
        double length = apart(line, j, line, j + 1);
        double along = (first - last + length) / 2;
        double root = along * along - length * (first - most);
        if (length == 0 || root < 0) {
            shares[0] = 2;
            shares[1] = -1;
            return;
        }
        double half = Math.sqrt(root);
        shares[0] = first <= most ? 0 : Math.max((along - half) / length, 0);
        shares[1] = last <= most ? 1 : Math.min((along + half) / length, 1);
        if ((along + half) < 0 || (along - half) > length) {
            shares[0] = 2;
            shares[1] = -1;
        }
    }

    /**
     * A way to walk, within the corridor, whose leads are short all along, not only at their
     * longest: it minimises the sum of their eighth powers. Fills {@code pairs} with i, j, i, j, …
     * from the end and returns how many pairs there are.
     *
     * @param scale a squared length that the longest lead is near to
     */
    static int walk(double[] p, double[] h, Corridor corridor, double scale, int[] pairs) {
        int n = p.length / 3;
        int m = h.length / 3;
        byte[] came = new byte[n * m];
        double[] row = new double[m];
        Arrays.fill(row, Double.POSITIVE_INFINITY);
        for (int i = 0; i < n; i++) {
            int from = corridor.low()[i];
            int to = corridor.high()[i];
            double corner = from > 0 ? row[from - 1] : Double.POSITIVE_INFINITY;
            double left = Double.POSITIVE_INFINITY;
            for (int j = i == 0 ? 0 : corridor.low()[i - 1]; j < from; j++) {
                row[j] = Double.POSITIVE_INFINITY;
            }
            for (int j = from; j <= to; j++) {
                double dx = p[3 * i] - h[3 * j];
                double dy = p[3 * i + 1] - h[3 * j + 1];
                double dz = p[3 * i + 2] - h[3 * j + 2];
                double q = (dx * dx + dy * dy + dz * dz) / scale;
                double up = row[j];
                double before = corner;
                byte step = 0;
                if (up < before) {
                    before = up;
                    step = 1;
                }
                if (left < before) {
                    before = left;
                    step = 2;
                }
                if (i == 0 && j == 0) {
                    before = 0;
                }
                left = before + q * q * q * q;
                corner = up;
                row[j] = left;
                came[i * m + j] = step;
            }
        }
        int count = 0;
        int i = n - 1;
        int j = m - 1;
        while (true) {
            pairs[2 * count] = i;
            pairs[2 * count + 1] = j;
            count++;
            if (i == 0 && j == 0) {
                return count;
            }
            byte step = i == 0 ? 2 : j == 0 ? 1 : came[i * m + j];
            if (step != 2) {
                i--;
            }
            if (step != 1) {
                j--;
            }
        }
    }
}
