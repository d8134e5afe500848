package deferent.film.cycle;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Fits what comes back once a cycle to where a head was seen, by least squares; sights far off are
 * given less weight (Tukey's biweight: Beaton and Tukey, Technometrics 16 (1974)), as a wrong light
 * is no noise.
 */
final class WaveFit {
    private static final int ROUNDS = 4;
    private static final double FAR = 4.685; // Tukey's, in standard deviations

    private WaveFit() {}

    /** A fit of a given order, each sight's phase shifted by a time. */
    static Wave of(Sights sights, double[] shift, double period, int order) {
        int n = sights.count();
        double[] weights = new double[n];
        Arrays.fill(weights, 1);
        Wave wave = solve(sights, shift, period, order, weights);
        for (int round = 1; round < ROUNDS; round++) {
            double[] off = off(wave, sights, shift);
            double scale = median(off) / 1.1774; // of a plane's normal scatter
            if (scale < 1e-9) {
                break;
            }
            for (int i = 0; i < n; i++) {
                double u = off[i] / (FAR * scale);
                weights[i] = u < 1 ? (1 - u * u) * (1 - u * u) : 0;
            }
            wave = solve(sights, shift, period, order, weights);
        }
        return wave;
    }

    /** A fit in which every sight counts alike. */
    static Wave plain(Sights sights, double[] shift, double period, int order) {
        double[] weights = new double[sights.count()];
        Arrays.fill(weights, 1);
        return solve(sights, shift, period, order, weights);
    }

    static double[] off(Wave wave, Sights sights, double[] shift) {
        double[] off = new double[sights.count()];
        for (int i = 0; i < off.length; i++) {
            double[] at = wave.at(sights.times()[i] + shift[i])[0];
            off[i] = Math.hypot(sights.x()[i] - at[0], sights.y()[i] - at[1]);
        }
        return off;
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted.length == 0 ? 0 : sorted[sorted.length / 2];
    }

    private static Wave solve(
            Sights sights, double[] shift, double period, int order, double[] weights) {
        int m = 2 * order + 1;
        double[][] normal = new double[m][m];
        double[] bx = new double[m];
        double[] by = new double[m];
        double rate = 2 * Math.PI / period;
        double all = 0;
        for (int i = 0; i < weights.length; i++) {
            double w = weights[i];
            if (w == 0) {
                continue;
            }
            all += w;
            double[] row = Wave.row(rate * (sights.times()[i] + shift[i]), rate, m, 0);
            for (int a = 0; a < m; a++) {
                double wa = w * row[a];
                bx[a] += wa * sights.x()[i];
                by[a] += wa * sights.y()[i];
                for (int b = 0; b <= a; b++) {
                    normal[a][b] += wa * row[b];
                }
            }
        }
        for (int a = 0; a < m; a++) {
            normal[a][a] += 1e-9 * (1 + all);
            for (int b = 0; b < a; b++) {
                normal[b][a] = normal[a][b];
            }
        }
        RealMatrix inverse =
                new CholeskyDecomposition(new Array2DRowRealMatrix(normal, false), 1e-9, 0)
                        .getSolver()
                        .getInverse();
        double[] x = inverse.operate(new ArrayRealVector(bx, false)).toArray();
        double[] y = inverse.operate(new ArrayRealVector(by, false)).toArray();
        Wave bare = new Wave(period, x, y, inverse, 0);
        double sum = 0;
        double[] off = off(bare, sights, shift);
        for (int i = 0; i < off.length; i++) {
            sum += weights[i] * off[i] * off[i];
        }
        double free = Math.max(1, 2 * (all - m));
        double variance = sum / free;
        return new Wave(period, x, y, inverse.scalarMultiply(variance), Math.sqrt(variance));
    }
}
