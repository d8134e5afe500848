package deferent.motion.trace;

import java.util.Arrays;
import java.util.Comparator;

/**
 * The area of all that a closed path winds round on balance, where its winding number is not zero.
 *
 * <p>The plane is cut into level slabs at the height of every corner, and again where slabs are
 * high. Across the middle of a slab the edges are met in order, upward ones counted up and downward
 * ones down, and what lies where the count is not zero is added up. In a slab where no edges cross
 * this is exact; in one where they do it is wrong by less than the crossing edges span in it, which
 * falls with the square of the slab's height.
 *
 * <p>Cutting the path into faces needs every crossing exactly, and where a path nearly runs along
 * itself, as many do here, faces get lost; a missed order of two edges in a slab costs only the
 * sliver between them.
 */
final class WoundArea {
    /** No slab is higher than the path's height over this. */
    private static final int SLABS = 1000;

    private final double[] u;
    private final double[] v;

    private WoundArea(double[] u, double[] v) {
        this.u = u;
        this.v = v;
    }

    /**
     * Square metres.
     *
     * @param u, v corners of the closed path, metres; the last is joined to the first
     */
    static double of(double[] u, double[] v) {
        return new WoundArea(u, v).sum();
    }

    private double sum() {
        int n = u.length;
        double[] heights = v.clone();
        Arrays.sort(heights);
        double highest = (heights[n - 1] - heights[0]) / SLABS;
        Integer[] rising = new Integer[n];
        Arrays.setAll(rising, i -> i);
        Arrays.sort(rising, Comparator.comparingDouble(this::foot));
        int[] met = new int[n];
        double[] at = new double[n];
        int count = 0;
        int next = 0;
        double sum = 0;
        for (int i = 0; i + 1 < n; i++) {
            double whole = heights[i + 1] - heights[i];
            int parts = whole > 0 ? (int) Math.ceil(whole / highest) : 0;
            for (int part = 0; part < parts; part++) {
                double y = heights[i] + whole * (part + 0.5) / parts;
                while (next < n && foot(rising[next]) < y) {
                    met[count++] = rising[next++];
                }
                count = stillMet(met, count, y);
                for (int k = 0; k < count; k++) {
                    at[k] = across(met[k], y);
                }
                order(met, at, count);
                sum += within(met, at, count) * whole / parts;
            }
        }
        return sum;
    }

    private int stillMet(int[] met, int count, double y) {
        int kept = 0;
        for (int k = 0; k < count; k++) {
            int edge = met[k];
            if (Math.max(v[edge], v[after(edge)]) > y) {
                met[kept++] = edge;
            }
        }
        return kept;
    }

    // By insertion: the order hardly changes from slab to slab.
    private static void order(int[] met, double[] at, int count) {
        for (int k = 1; k < count; k++) {
            double x = at[k];
            int edge = met[k];
            int j = k;
            for (; j > 0 && at[j - 1] > x; j--) {
                at[j] = at[j - 1];
                met[j] = met[j - 1];
            }
            at[j] = x;
            met[j] = edge;
        }
    }

    private double within(int[] met, double[] at, int count) {
        double sum = 0;
        int windings = 0;
        for (int k = 0; k + 1 < count; k++) {
            windings += v[after(met[k])] > v[met[k]] ? 1 : -1;
            if (windings != 0) {
                sum += at[k + 1] - at[k];
            }
        }
        return sum;
    }

    private double across(int edge, double y) {
        int to = after(edge);
        return u[edge] + (u[to] - u[edge]) * (y - v[edge]) / (v[to] - v[edge]);
    }

    private double foot(int edge) {
        return Math.min(v[edge], v[after(edge)]);
    }

    private int after(int edge) {
        return edge + 1 == u.length ? 0 : edge + 1;
    }
}
