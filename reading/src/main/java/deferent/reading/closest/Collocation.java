package deferent.reading.closest;

/**
 * The harmonics 1, cos kτ, sin kτ up to an order and their derivatives by time at even instants of
 * one cycle.
 */
final class Collocation {
    /** The highest derivative: a hand's jerk takes its head's fifth. */
    static final int DERIVATIVES = 5;

    private final int order;
    private final int points;
    private final double[][] values;

    private Collocation(int order, int points, double[][] values) {
        this.order = order;
        this.points = points;
        this.values = values;
    }

    /**
     * @param rate of τ, radians a second
     */
    static Collocation of(int order, int points, double rate) {
        int width = 2 * order + 1;
        double[][] values = new double[DERIVATIVES + 1][points * width];
        for (int i = 0; i < points; i++) {
            row(2 * Math.PI * i / points, order, rate, values, i * width);
        }
        return new Collocation(order, points, values);
    }

    /** Writes all of one instant's, from {@code at} on. */
    static void row(double angle, int order, double rate, double[][] values, int at) {
        values[0][at] = 1;
        for (int k = 1; k <= order; k++) {
            double cos = Math.cos(k * angle);
            double sin = Math.sin(k * angle);
            double power = 1;
            for (int d = 0; d < values.length; d++) {
                values[d][at + 2 * k - 1] = power * cos;
                values[d][at + 2 * k] = power * sin;
                // The derivative turns cos into −sin and sin into cos.
                double was = cos;
                cos = -sin;
                sin = was;
                power *= k * rate;
            }
        }
    }

    int order() {
        return order;
    }

    int points() {
        return points;
    }

    /** Harmonics: 1, cos τ, sin τ, cos 2τ, … */
    int width() {
        return 2 * order + 1;
    }

    /** That derivative of every harmonic at every instant, instant by instant; do not write. */
    double[] derivative(int k) {
        return values[k];
    }

    /** Writes the sum of harmonics, one component after another, in that derivative. */
    void sum(double[] x, int derivative, int instant, double[] out) {
        double[] phi = values[derivative];
        int at = instant * width();
        for (int d = 0; d < out.length; d++) {
            double sum = 0;
            int from = d * width();
            for (int j = 0; j < width(); j++) {
                sum += x[from + j] * phi[at + j];
            }
            out[d] = sum;
        }
    }

    /**
     * The coefficients that come nearest to samples at the instants, one component after another.
     *
     * @param samples [instant][component]
     */
    double[] projected(double[][] samples) {
        int size = samples[0].length;
        double[] x = new double[size * width()];
        for (int d = 0; d < size; d++) {
            for (int j = 0; j < width(); j++) {
                double sum = 0;
                for (int i = 0; i < points; i++) {
                    sum += samples[i][d] * values[0][i * width() + j];
                }
                x[d * width() + j] = sum * (j == 0 ? 1.0 : 2.0) / points;
            }
        }
        return x;
    }

    /** Coefficients of one order as those of another: what is new is 0. */
    static double[] carried(double[] x, int size, int from, int to) {
        double[] y = new double[size * (2 * to + 1)];
        int shared = 2 * Math.min(from, to) + 1;
        for (int d = 0; d < size; d++) {
            System.arraycopy(x, d * (2 * from + 1), y, d * (2 * to + 1), shared);
        }
        return y;
    }
}
