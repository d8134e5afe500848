package deferent.motion.link;

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
    private Frechet() {}

    /** Metres; points as x, y, z, x, …. */
    static double distance(double[] p, double[] h) {
        return Math.sqrt(
                squared(
                        p,
                        h,
                        Corridor.whole(p.length / 3, h.length / 3),
                        new double[h.length / 3],
                        Double.MAX_VALUE));
    }

    /**
     * Square of the distance.
     *
     * @param corridor which steps may go together
     * @param row room for one number a point of {@code h}
     * @param enough give up, with infinity, once the result cannot come below this
     */
    static double squared(double[] p, double[] h, Corridor corridor, double[] row, double enough) {
        int n = p.length / 3;
        int m = h.length / 3;
        Arrays.fill(row, 0, m, Double.POSITIVE_INFINITY);
        for (int i = 0; i < n; i++) {
            double px = p[3 * i];
            double py = p[3 * i + 1];
            double pz = p[3 * i + 2];
            int from = corridor.low()[i];
            int to = corridor.high()[i];
            double corner = from > 0 ? row[from - 1] : Double.POSITIVE_INFINITY;
            double left = Double.POSITIVE_INFINITY;
            double least = Double.POSITIVE_INFINITY;
            for (int j = i == 0 ? 0 : corridor.low()[i - 1]; j < from; j++) {
                row[j] = Double.POSITIVE_INFINITY;
            }
            for (int j = from; j <= to; j++) {
                double dx = px - h[3 * j];
                double dy = py - h[3 * j + 1];
                double dz = pz - h[3 * j + 2];
                double d = dx * dx + dy * dy + dz * dz;
                double up = row[j];
                double before = i == 0 && j == 0 ? 0 : Math.min(Math.min(up, left), corner);
                left = Math.max(d, before);
                corner = up;
                row[j] = left;
                least = Math.min(least, left);
            }
            if (least >= enough) {
                return Double.POSITIVE_INFINITY;
            }
        }
        return row[m - 1];
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
