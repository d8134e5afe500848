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
