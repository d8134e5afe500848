package deferent.film.cycle;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * Fits what comes back once a cycle to where a head was seen.
 *
 * <p>Sights far off are given less weight (Tukey's biweight: Beaton and Tukey, Technometrics 16
 * (1974)), as a wrong light is no noise. As many turns are taken freely as pay for themselves
 * (Schwarz, Annals of Statistics 6 (1978)); one factorisation answers for all orders, as the
 * leading part of a Cholesky factor is the factor of the leading part. Orders above are not taken
 * as nought: they are expected about as large as what is left of them lets them be, falling off by
 * a share from one to the next, both taken where they explain the sights best (empirical Bayes:
 * Morris, Journal of the American Statistical Association 78 (1983)). So what a cut series would
 * hide of the acceleration stands in the error.
 *
 * <p>Errors that stay alike from frame to frame, or from cycle to cycle at the same place, make
 * fewer sights of many: the variance is raised by the sum of their correlations.
 */
final class WaveFit {
    /** Highest order of a turn asked for. */
    static final int MOST = 26;

    private static final int FREE = 20;
    private static final int TAIL = 10;
    private static final int ROUNDS = 6;
    private static final double FAR = 4.685; // Tukey's, in standard deviations
    private static final double SAME = 0.003; // of a cycle, between phases that count as one
    private static final double GAP = 1.2; // turns in the widest gap
    private static final int LAGS = 12;
    // Pixels to which a light's middle is known at best: how pixels lie under it and rows are read
    // while it goes comes back each cycle as its path does (our choice, by rendered films).
    private static final double FLOOR = 0.1;
    private static final double BROAD = 1e8; // variance of a coefficient of which nothing is known

    private final Sights sights;
    private final double[] at;
    private final double period;
    private final int most;
    private final double[][] rows;
    private final double[] weights;
    private final int free;
    private double alike = 1;

    private WaveFit(Sights sights, double[] shift, double period) {
        this.sights = sights;
        this.period = period;
        int n = sights.count();
        most = Math.max(1, Math.min(MOST, (n - 3) / 4));
        double rate = 2 * Math.PI / period;
        at = new double[n];
        rows = new double[n][];
        for (int i = 0; i < n; i++) {
            at[i] = sights.times()[i] + shift[i];
            rows[i] = Wave.row(rate * at[i], rate, 2 * most + 1, 0);
        }
        weights = new double[n];
        Arrays.fill(weights, 1);
        free = Math.max(1, Math.min(Math.min(FREE, most), resolved(at, period)));
    }

    // What the phases at which a head was seen can tell: no more turns than two thirds of the
    // different ones leave room for, and none much shorter than the widest gap between them.
    private static int resolved(double[] at, double period) {
        double[] phases = new double[at.length];
        for (int i = 0; i < at.length; i++) {
            phases[i] = at[i] / period - Math.floor(at[i] / period);
        }
        Arrays.sort(phases);
        int different = 0;
        double last = Double.NEGATIVE_INFINITY;
        double widest = 0;
        for (int i = 0; i < phases.length; i++) {
            double next = i + 1 < phases.length ? phases[i + 1] : phases[0] + 1;
            if (phases[i] - last > SAME) {
                different++;
                last = phases[i];
            }
            widest = Math.max(widest, next - phases[i]);
        }
        return (int) Math.min(different / 3.0, GAP / Math.max(widest, SAME));
    }

    /** The mean cycle, each sight's phase shifted by a time. */
    static Wave of(Sights sights, double[] shift, double period) {
        return new WaveFit(sights, shift, period).wave();
    }

    private Wave wave() {
        double[][] c = free();
        double variance = variance(c);
        return settled((c[0].length - 1) / 2, variance * alike, Math.sqrt(variance));
    }

    private double[][] free() {
        int order = 1;
        double[][] c = new double[2][2 * order + 1];
        for (int round = 0; round < ROUNDS; round++) {
            Normal normal = Normal.of(rows, weights, sights, 2 * most + 1);
            order = order(normal);
            c = normal.coefficients(2 * order + 1);
            if (round == ROUNDS - 1) {
                break;
            }
            weigh(off(c));
            alike = alike(c);
        }
        return c;
    }

    private int order(Normal normal) {
        double[] left = normal.left(2 * free + 1);
        double n = Math.max(4, 2 * normal.all() / alike);
        int best = 1;
        double least = Double.POSITIVE_INFINITY;
        for (int order = 1; 2 * order < left.length; order++) {
            double mean = Math.max(left[2 * order], 0) / (2 * normal.all()) + FLOOR * FLOOR;
            double paid = n * Math.log(mean) + 2 * (2 * order + 1) * Math.log(n);
            if (paid < least) {
                least = paid;
                best = order;
            }
        }
        return best;
    }

    private double[][] residuals(double[][] c) {
        int n = rows.length;
        double[][] r = new double[2][n];
        for (int i = 0; i < n; i++) {
            double x = sights.x()[i];
            double y = sights.y()[i];
            for (int a = 0; a < c[0].length; a++) {
                x -= rows[i][a] * c[0][a];
                y -= rows[i][a] * c[1][a];
            }
            r[0][i] = x;
            r[1][i] = y;
        }
        return r;
    }

    private double[] off(double[][] c) {
        double[][] r = residuals(c);
        double[] off = new double[r[0].length];
        for (int i = 0; i < off.length; i++) {
            off[i] = Math.hypot(r[0][i], r[1][i]);
        }
        return off;
    }

    private void weigh(double[] off) {
        double scale = Math.max(1e-3, median(off) / 1.1774); // of a plane's normal scatter
        for (int i = 0; i < off.length; i++) {
            double u = off[i] / (FAR * scale);
            weights[i] = u < 1 ? (1 - u * u) * (1 - u * u) : 0;
        }
    }

    private double variance(double[][] c) {
        double[] off = off(c);
        double sum = 0;
        double all = 0;
        for (int i = 0; i < off.length; i++) {
            sum += weights[i] * off[i] * off[i];
            all += weights[i];
        }
        return sum / Math.max(1, 2 * (all - c[0].length)) + 1e-8;
    }

    /** How many sights say no more than one, as their errors are alike. */
    private double alike(double[][] c) {
        double[][] r = residuals(c);
        int n = weights.length;
        double none = 0;
        for (int i = 0; i < n; i++) {
            none += weights[i] * (r[0][i] * r[0][i] + r[1][i] * r[1][i]);
        }
        if (none <= 0) {
            return 1;
        }
        double sum = 1;
        for (int lag = 1; lag <= Math.min(LAGS, n / 8); lag++) {
            double share = 0;
            for (int i = lag; i < n; i++) {
                share += together(r, i, i - lag);
            }
            share /= none;
            if (share < 0.05) {
                break;
            }
            sum += 2 * share;
        }
        return Math.max(1, sum) * again(r, none);
    }

    private double again(double[][] r, double none) {
        int n = at.length;
        double step = (at[n - 1] - at[0]) / Math.max(1, n - 1);
        double cycles = (at[n - 1] - at[0]) / period;
        double share = 0;
        double all = 0;
        int k = 0;
        for (int i = 0; i < n; i++) {
            while (k + 1 < n
                    && Math.abs(at[k + 1] - at[i] - period) <= Math.abs(at[k] - at[i] - period)) {
                k++;
            }
            if (Math.abs(at[k] - at[i] - period) < 0.6 * step) {
                share += together(r, i, k);
                all++;
            }
        }
        double mean = all > 20 ? share / all / (none / n) : 0;
        return 1
                + Math.max(0, cycles - 1) * Math.max(0, mean - 2 / Math.sqrt(Math.max(1, 2 * all)));
    }

    private double together(double[][] r, int i, int k) {
        return Math.sqrt(weights[i] * weights[k]) * (r[0][i] * r[0][k] + r[1][i] * r[1][k]);
    }

    private Wave settled(int order, double variance, double scatter) {
        int high = Math.min(most, order + TAIL);
        int m = 2 * high + 1;
        Normal normal = Normal.of(rows, weights, sights, m);
        double[] expected = new double[high + 1];
        Arrays.fill(expected, 0, order + 1, BROAD);
        if (high > order) {
            tail(normal, order, variance, expected);
        }
        double[][] matrix = normal.expecting(variance, expected);
        RealMatrix spread = solver(matrix).getInverse();
        double[] x = spread.operate(new ArrayRealVector(normal.bx())).toArray();
        double[] y = spread.operate(new ArrayRealVector(normal.by())).toArray();
        for (int a = 0; a < m; a++) {
            x[a] /= variance;
            y[a] /= variance;
        }
        return new Wave(period, x, y, spread, scatter);
    }

    // What orders above may be: variance first·share^(2(k − order)), the likeliest of a grid.
    private static void tail(Normal normal, int order, double variance, double[] expected) {
        int high = expected.length - 1;
        double noise = variance / Math.max(1, normal.all() / 2);
        double best = Double.POSITIVE_INFINITY;
        double[] kept = expected.clone();
        double[] tried = expected.clone();
        for (double share = 0.35; share < 0.95; share += 0.15) {
            for (double first = noise / 16; first < noise * 1e5; first *= 3) {
                double expect = first;
                double sum = Math.log(first / noise) / 4; // small ones are likelier beforehand
                for (int k = order + 1; k <= high; k++) {
                    tried[k] = expect;
                    sum += 4 * Math.log(expect);
                    expect *= share * share;
                }
                sum += unlikely(normal, variance, tried);
                if (sum < best) {
                    best = sum;
                    kept = tried.clone();
                }
            }
        }
        System.arraycopy(kept, 0, expected, 0, kept.length);
    }

    // Minus twice the logarithm of how likely the sights are, but for what is the same for all.
    private static double unlikely(Normal normal, double variance, double[] expected) {
        RealMatrix factor =
                new CholeskyDecomposition(
                                new Array2DRowRealMatrix(
                                        normal.expecting(variance, expected), false),
                                1e-6,
                                0)
                        .getL();
        int m = normal.bx().length;
        double[] u = new double[m];
        double[] v = new double[m];
        double sum = 0;
        for (int a = 0; a < m; a++) {
            double su = normal.bx()[a] / variance;
            double sv = normal.by()[a] / variance;
            for (int b = 0; b < a; b++) {
                su -= factor.getEntry(a, b) * u[b];
                sv -= factor.getEntry(a, b) * v[b];
            }
            double d = factor.getEntry(a, a);
            u[a] = su / d;
            v[a] = sv / d;
            sum += 4 * Math.log(d) - u[a] * u[a] - v[a] * v[a];
        }
        return sum;
    }

    static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted.length == 0 ? 0 : sorted[sorted.length / 2];
    }

    private static DecompositionSolver solver(double[][] matrix) {
        return new CholeskyDecomposition(new Array2DRowRealMatrix(matrix, false), 1e-6, 0)
                .getSolver();
    }

    /**
     * Normal equations.
     *
     * @param matrix of the functions with each other
     * @param bx of the functions with x
     * @param by with y
     * @param squares of x and y about nought, added up
     * @param all the weights' sum
     */
    record Normal(double[][] matrix, double[] bx, double[] by, double squares, double all) {
        static Normal of(double[][] rows, double[] weights, Sights sights, int m) {
            double[][] matrix = new double[m][m];
            double[] bx = new double[m];
            double[] by = new double[m];
            double squares = 0;
            double all = 0;
            for (int i = 0; i < weights.length; i++) {
                double w = weights[i];
                if (w == 0) {
                    continue;
                }
                double x = sights.x()[i];
                double y = sights.y()[i];
                all += w;
                squares += w * (x * x + y * y);
                double[] row = rows[i];
                for (int a = 0; a < m; a++) {
                    double wa = w * row[a];
                    bx[a] += wa * x;
                    by[a] += wa * y;
                    double[] to = matrix[a];
                    for (int b = 0; b <= a; b++) {
                        to[b] += wa * row[b];
                    }
                }
            }
            for (int a = 0; a < m; a++) {
                matrix[a][a] += 1e-9 * (1 + all);
                for (int b = 0; b < a; b++) {
                    matrix[b][a] = matrix[a][b];
                }
            }
            return new Normal(matrix, bx, by, squares, all);
        }

        /** What the first so many functions leave, added up, for each number of them up to most. */
        double[] left(int most) {
            int m = Math.min(most, bx.length);
            RealMatrix factor = factor(m).getL();
            double[] left = new double[m];
            double[] u = new double[m];
            double[] v = new double[m];
            double rest = squares;
            for (int a = 0; a < m; a++) {
                double su = bx[a];
                double sv = by[a];
                for (int b = 0; b < a; b++) {
                    su -= factor.getEntry(a, b) * u[b];
                    sv -= factor.getEntry(a, b) * v[b];
                }
                u[a] = su / factor.getEntry(a, a);
                v[a] = sv / factor.getEntry(a, a);
                rest -= u[a] * u[a] + v[a] * v[a];
                left[a] = rest;
            }
            return left;
        }

        /** The equations where coefficients are expected of a variance, order by order. */
        double[][] expecting(double variance, double[] expected) {
            int m = bx.length;
            double[][] sum = new double[m][m];
            for (int a = 0; a < m; a++) {
                for (int b = 0; b < m; b++) {
                    sum[a][b] = matrix[a][b] / variance;
                }
                sum[a][a] += 1 / expected[(a + 1) / 2];
            }
            return sum;
        }

        double[][] coefficients(int m) {
            DecompositionSolver solver = factor(m).getSolver();
            return new double[][] {
                solver.solve(new ArrayRealVector(Arrays.copyOf(bx, m), false)).toArray(),
                solver.solve(new ArrayRealVector(Arrays.copyOf(by, m), false)).toArray()
            };
        }

        CholeskyDecomposition factor(int m) {
            RealMatrix all = MatrixUtils.createRealMatrix(matrix);
            RealMatrix part = m == bx.length ? all : all.getSubMatrix(0, m - 1, 0, m - 1);
            return new CholeskyDecomposition(part, 1e-6, 0);
        }
    }
}
