package deferent.search.transition;

import java.util.Arrays;

/**
 * The normal equations of a least-squares problem whose rows reach over a few neighbouring unknowns
 * only, and their solution by Cholesky's method within the band.
 */
final class NormalEquations {
    private final int width;
    private final double[][] band;
    private final double[][] root;
    private final double[] right;
    private int size;

    /**
     * @param most unknowns at most
     * @param width over how many unknowns a row reaches at most
     */
    NormalEquations(int most, int width) {
        this.width = width;
        this.band = new double[most][width];
        this.root = new double[most][width];
        this.right = new double[most];
    }

    void clear(int unknowns) {
        size = unknowns;
        for (int i = 0; i < size; i++) {
            Arrays.fill(band[i], 0);
        }
        Arrays.fill(right, 0, size, 0);
    }

    /** A residual with its derivatives by the unknowns from {@code first} on. */
    void add(int first, double[] row, int count, double value) {
        for (int i = 0; i < count; i++) {
            double here = row[i];
            if (here != 0) {
                right[first + i] -= here * value;
                double[] line = band[first + i];
                for (int k = 0; k <= i; k++) {
                    line[i - k] += here * row[k];
                }
            }
        }
    }

    /**
     * Writes the step that damped equations ask for (Marquardt 1963).
     *
     * @return false where they have no solution
     */
    boolean solve(double damping, double[] step) {
        for (int i = 0; i < size; i++) {
            int from = Math.max(0, i - width + 1);
            for (int k = from; k <= i; k++) {
                double sum = band[i][i - k];
                if (i == k) {
                    sum += damping * (sum + 1e-9);
                }
                for (int m = Math.max(from, k - width + 1); m < k; m++) {
                    sum -= root[i][i - m] * root[k][k - m];
                }
                if (i == k) {
                    if (!(sum > 0)) {
                        return false;
                    }
                    root[i][0] = Math.sqrt(sum);
                } else {
                    root[i][i - k] = sum / root[k][0];
                }
            }
        }
        for (int i = 0; i < size; i++) {
            double sum = right[i];
            for (int m = Math.max(0, i - width + 1); m < i; m++) {
                sum -= root[i][i - m] * step[m];
            }
            step[i] = sum / root[i][0];
        }
        for (int i = size - 1; i >= 0; i--) {
            double sum = step[i];
            for (int m = i + 1; m < Math.min(size, i + width); m++) {
                sum -= root[m][m - i] * step[m];
            }
            step[i] = sum / root[i][0];
        }
        return true;
    }
}
