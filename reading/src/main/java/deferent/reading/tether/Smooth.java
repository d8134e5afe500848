package deferent.reading.tether;

import java.util.ArrayList;
import java.util.List;

/**
 * A vector function of time stood in for by Chebyshev series, piece by piece: exact to rounding
 * where the function is smooth within its pieces, and then its derivatives come with it. A piece
 * whose last coefficients have not died away is halved.
 *
 * <p>Interpolation in the Chebyshev points of the second kind and the recurrence for derivatives:
 * Mason and Handscomb, Chebyshev Polynomials (2003), sections 6.3 and 2.4.
 */
final class Smooth {
    private static final int DEGREE = 20;
    private static final double DEAD = 1e-13;
    private static final double[][] COSINES = cosines();

    /** A function to stand in for; writes its three components at {@code time}. */
    interface Source {
        /**
         * Writes what stands at one time.
         *
         * @param last whether {@code time} ends a piece, so that the value just before it is meant
         */
        void at(double time, boolean last, double[] out);
    }

    private final double[] starts;
    private final double[][][] pieces;
    private final double end;

    private Smooth(List<Double> starts, List<double[][]> pieces, double end) {
        this.starts = starts.stream().mapToDouble(Double::doubleValue).toArray();
        this.pieces = pieces.toArray(new double[0][][]);
        this.end = end;
    }

    /**
     * @param cuts start, the breaks between, end
     * @param about how many pieces to begin with over the whole
     */
    static Smooth of(Source source, double[] cuts, int about) {
        List<Double> starts = new ArrayList<>();
        List<double[][]> pieces = new ArrayList<>();
        double[] joints = parted(cuts, about);
        double shortest = (cuts[cuts.length - 1] - cuts[0]) / about / 1024;
        for (int i = 0; i + 1 < joints.length; i++) {
            split(source, joints[i], joints[i + 1], shortest, starts, pieces);
        }
        return new Smooth(starts, pieces, cuts[cuts.length - 1]);
    }

    /** Start, the breaks between, end, and what parts the stretches between them evenly. */
    static double[] parted(double[] cuts, int about) {
        List<Double> joints = new ArrayList<>(List.of(cuts[0]));
        double whole = cuts[cuts.length - 1] - cuts[0];
        for (int c = 0; c + 1 < cuts.length; c++) {
            double length = cuts[c + 1] - cuts[c];
            int n = Math.max(1, (int) Math.round(about * length / whole));
            for (int i = 1; i < n; i++) {
                joints.add(cuts[c] + length * i / n);
            }
            joints.add(cuts[c + 1]);
        }
        return joints.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static void split(
            Source source,
            double from,
            double to,
            double shortest,
            List<Double> starts,
            List<double[][]> pieces) {
        double[][] c = fit(source, from, to);
        if (to - from > shortest && !settled(c)) {
            double middle = (from + to) / 2;
            split(source, from, middle, shortest, starts, pieces);
            split(source, middle, to, shortest, starts, pieces);
            return;
        }
        double[][] d = derivative(c, to - from);
        starts.add(from);
        double[][] d2 = derivative(d, to - from);
        pieces.add(join(c, d, d2, derivative(d2, to - from)));
    }

    private static double[][] join(double[][]... parts) {
        double[][] all = new double[3 * parts.length][];
        for (int i = 0; i < all.length; i++) {
            all[i] = parts[i / 3][i % 3];
        }
        return all;
    }

    private static boolean settled(double[][] c) {
        double scale = 0;
        double tail = 0;
        for (double[] component : c) {
            for (int k = 0; k <= DEGREE; k++) {
                scale = Math.max(scale, Math.abs(component[k]));
                if (k > DEGREE - 3) {
                    tail = Math.max(tail, Math.abs(component[k]));
                }
            }
        }
        return tail <= DEAD * scale;
    }

    private static double[][] fit(Source source, double from, double to) {
        double[][] values = new double[DEGREE + 1][3];
        for (int j = 0; j <= DEGREE; j++) {
            double time = j == 0 ? to : j == DEGREE ? from : middle(from, to, COSINES[1][j]);
            source.at(time, j == 0, values[j]);
        }
        double[][] c = new double[3][DEGREE + 1];
        for (int k = 0; k <= DEGREE; k++) {
            for (int j = 0; j <= DEGREE; j++) {
                double w =
                        COSINES[k][j]
                                * (j == 0 || j == DEGREE ? 1.0 : 2.0)
                                / DEGREE
                                / (k == 0 || k == DEGREE ? 2 : 1);
                for (int i = 0; i < 3; i++) {
                    c[i][k] += w * values[j][i];
                }
            }
        }
        return c;
    }

    private static double middle(double from, double to, double cos) {
        return (from + to) / 2 + (to - from) / 2 * cos;
    }

    private static double[][] cosines() {
        double[][] all = new double[DEGREE + 1][DEGREE + 1];
        for (int k = 0; k <= DEGREE; k++) {
            for (int j = 0; j <= DEGREE; j++) {
                all[k][j] = Math.cos(Math.PI * k * j / DEGREE);
            }
        }
        return all;
    }

    private static double[][] derivative(double[][] c, double length) {
        double[][] d = new double[3][DEGREE + 1];
        for (int i = 0; i < 3; i++) {
            double[] a = c[i];
            double[] b = d[i];
            for (int k = DEGREE; k >= 1; k--) {
                b[k - 1] = (k + 1 <= DEGREE ? b[k + 1] : 0) + 2 * k * a[k];
            }
            b[0] /= 2;
            for (int k = 0; k <= DEGREE; k++) {
                b[k] *= 2 / length;
            }
        }
        return d;
    }

    int count() {
        return starts.length;
    }

    /** The times half-way between those at which the source was asked. */
    double[] between() {
        double[] times = new double[DEGREE * count()];
        for (int p = 0; p < count(); p++) {
            double to = p + 1 < starts.length ? starts[p + 1] : end;
            for (int j = 0; j < DEGREE; j++) {
                double cos = Math.cos(Math.PI * (j + 0.5) / DEGREE);
                times[p * DEGREE + j] = middle(starts[p], to, cos);
            }
        }
        return times;
    }

    /**
     * Writes value and as many derivatives, up to the third, as {@code out} has room for, three
     * components each.
     *
     * @param before at a joint, those just before it
     */
    void at(double time, boolean before, double[] out) {
        int p = 0;
        int high = starts.length - 1;
        while (p < high) {
            int m = (p + high + 1) >>> 1;
            if (before ? starts[m] < time : starts[m] <= time) {
                p = m;
            } else {
                high = m - 1;
            }
        }
        double to = p + 1 < starts.length ? starts[p + 1] : end;
        double x = (2 * time - starts[p] - to) / (to - starts[p]);
        double[][] c = pieces[p];
        for (int i = 0; i < out.length; i++) {
            out[i] = clenshaw(c[i], x);
        }
    }

    private static double clenshaw(double[] c, double x) {
        double b1 = 0;
        double b2 = 0;
        for (int k = DEGREE; k >= 1; k--) {
            double b = c[k] + 2 * x * b1 - b2;
            b2 = b1;
            b1 = b;
        }
        return c[0] + x * b1 - b2;
    }
}
