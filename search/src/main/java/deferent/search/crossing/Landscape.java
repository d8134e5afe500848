package deferent.search.crossing;

/**
 * The distance of two pairings' states over their times: two coordinates, the time in each cycle,
 * or three where the second pairing's hands may keep another timing; all in cycles. Going down it
 * is a least squares problem in the states' 24 differences.
 */
final class Landscape {
    private static final double STEP = 1e-4;
    private static final double ARRIVED = 1e-11;

    private final States from;
    private final States to;
    private final Gauge gauge;
    private final int size;
    private final double[] a = new double[State24.SIZE];
    private final double[] b = new double[State24.SIZE];
    private final double[] late = new double[State24.SIZE];

    Landscape(States from, States to, Gauge gauge, boolean timing) {
        this.from = from;
        this.to = to;
        this.gauge = gauge;
        this.size = timing ? 3 : 2;
    }

    int size() {
        return size;
    }

    Gauge gauge() {
        return gauge;
    }

    /** The first pairing's state as it was measured last. */
    double[] first() {
        return a;
    }

    /** Measures at {@code x}; the gauge then holds the answer, whose square is returned. */
    double at(double[] x) {
        from.at(x[0] * from.period(), a);
        to.at(x[1] * to.period(), b);
        return measured(x, false);
    }

    /** As {@link #at}, from the traces themselves. */
    double exactly(double[] x) {
        from.exact(x[0] * from.period(), a);
        to.exact(x[1] * to.period(), b);
        return measured(x, true);
    }

    private double measured(double[] x, boolean exact) {
        if (size == 3) {
            if (exact) {
                to.exact(x[2] * to.period(), late);
            } else {
                to.at(x[2] * to.period(), late);
            }
            takeRight(late, b);
        }
        gauge.measure(a, 0, b, 0);
        return gauge.square();
    }

    /** Puts the right hand and head of one state into another. */
    static void takeRight(double[] right, double[] into) {
        for (int p = 1; p < 2 * State24.POINTS; p += 2) {
            System.arraycopy(right, 3 * p, into, 3 * p, 3);
        }
    }

    /**
     * Goes down from {@code start} to the nearest low point of the square: Levenberg's and
     * Marquardt's damped least squares (Marquardt, 1963), slopes by central differences.
     */
    double[] descend(double[] start) {
        double[] x = start.clone();
        double best = at(x);
        double[] r = new double[State24.SIZE];
        double[][] slopes = new double[size][State24.SIZE];
        double damping = 1e-4;
        for (int i = 0; i < 60 && best > 1e-24; i++) {
            at(x);
            gauge.residuals(a, r);
            for (int k = 0; k < size; k++) {
                slope(x, k, slopes[k]);
            }
            double went = 0;
            boolean lower = false;
            while (!lower && damping < 1e9) {
                double[] next = step(x, slopes, r, damping);
                double there = at(next);
                lower = there < best;
                if (lower) {
                    went = 0;
                    for (int k = 0; k < size; k++) {
                        went = Math.max(went, Math.abs(next[k] - x[k]));
                    }
                    x = next;
                    best = there;
                    damping = Math.max(1e-12, damping / 8);
                } else {
                    damping *= 6;
                }
            }
            if (!lower || went < ARRIVED) {
                break;
            }
        }
        return x;
    }

    private void slope(double[] x, int k, double[] out) {
        double[] beside = x.clone();
        double[] before = new double[State24.SIZE];
        beside[k] = x[k] - STEP;
        at(beside);
        gauge.residuals(a, before);
        beside[k] = x[k] + STEP;
        at(beside);
        gauge.residuals(a, out);
        for (int i = 0; i < State24.SIZE; i++) {
            out[i] = (out[i] - before[i]) / (2 * STEP);
        }
    }

    private double[] step(double[] x, double[][] slopes, double[] r, double damping) {
        double[][] m = new double[size][size + 1];
        double scale = 0;
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                m[i][j] = dot(slopes[i], slopes[j]);
            }
            m[i][size] = -dot(slopes[i], r);
            scale = Math.max(scale, m[i][i]);
        }
        for (int i = 0; i < size; i++) {
            m[i][i] += damping * (m[i][i] + 1e-6 * scale) + 1e-12 * scale + Double.MIN_NORMAL;
        }
        double[] by = solved(m);
        double longest = 0;
        for (double d : by) {
            longest = Math.max(longest, Math.abs(d));
        }
        // No step longer than a twentieth of a cycle: further away the slopes say nothing.
        double share = longest > 0.05 ? 0.05 / longest : 1;
        double[] next = x.clone();
        for (int i = 0; i < size; i++) {
            next[i] += share * by[i];
        }
        return next;
    }

    private static double dot(double[] p, double[] q) {
        double sum = 0;
        for (int i = 0; i < p.length; i++) {
            sum += p[i] * q[i];
        }
        return sum;
    }

    // Positive definite by its damping, so elimination needs no pivots.
    private static double[] solved(double[][] m) {
        int n = m.length;
        for (int i = 0; i < n; i++) {
            for (int k = i + 1; k < n; k++) {
                double f = m[k][i] / m[i][i];
                for (int j = i; j <= n; j++) {
                    m[k][j] -= f * m[i][j];
                }
            }
        }
        double[] x = new double[n];
        for (int i = n - 1; i >= 0; i--) {
            double sum = m[i][n];
            for (int j = i + 1; j < n; j++) {
                sum -= m[i][j] * x[j];
            }
            x[i] = sum / m[i][i];
        }
        return x;
    }

    /**
     * Goes down the greatest of the differences instead of their sum, by a compass search (Hooke
     * and Jeeves, 1961): sure never to end higher than it began, which is all that is asked of it.
     */
    double[] descendWorst(double[] start, double reach) {
        double[] x = start.clone();
        at(x);
        double best = gauge.worst();
        double by = reach;
        while (by > 1e-7) {
            boolean lower = false;
            for (int k = 0; k < 2 * size && !lower; k++) {
                double[] next = x.clone();
                next[k / 2] += k % 2 == 0 ? by : -by;
                at(next);
                if (gauge.worst() < best) {
                    best = gauge.worst();
                    x = next;
                    lower = true;
                }
            }
            if (!lower) {
                by /= 2;
            }
        }
        return x;
    }

    /**
     * Whether the way straight from {@code x} to {@code y} over the torus stays within tolerance
     * and about as low as the higher of the two: then both lie in one valley.
     */
    boolean sameValley(double[] x, double[] y, double ridge) {
        double top = Math.sqrt(Math.max(at(x), at(y))) + ridge;
        double[] between = new double[size];
        int[] order = {4, 2, 6, 1, 3, 5, 7};
        for (int i : order) {
            for (int k = 0; k < size; k++) {
                double apart = y[k] - x[k];
                between[k] = x[k] + (apart - Math.rint(apart)) * i / 8;
            }
            if (Math.sqrt(at(between)) > top || gauge.worst() > 1) {
                return false;
            }
        }
        return true;
    }
}
