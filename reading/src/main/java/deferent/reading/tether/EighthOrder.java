package deferent.reading.tether;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;

/**
 * One step of the eighth-order explicit Runge–Kutta method of Dormand and Prince (Hairer, Nørsett
 * and Wanner, Solving Ordinary Differential Equations I, section II.10), its coefficients taken
 * from Hipparchus.
 *
 * <p>Our own stepping because here the right-hand side is cheap, the times at which the hand is
 * asked for are known beforehand and the same for every try at a periodic solution, and error is
 * kept by choosing and then halving the step. The plain Hipparchus integrator stands beside it as
 * baseline and check.
 */
final class EighthOrder {
    static final int STAGES = 12;

    /** Times of the stages as shares of the step. */
    static final double[] C = new double[STAGES];

    private static final int[][] FROM = new int[STAGES][];
    private static final double[][] A = new double[STAGES][];
    private static final int[] FROM_B;
    private static final double[] B;

    static {
        DormandPrince853Integrator source = new DormandPrince853Integrator(1e-6, 1, 1e-9, 1e-9);
        double[] c = source.getC();
        double[][] a = source.getA();
        for (int s = 1; s < STAGES; s++) {
            C[s] = c[s - 1];
            FROM[s] = weighed(a[s - 1]);
            A[s] = weights(a[s - 1], FROM[s]);
        }
        double[] b = Arrays.copyOf(source.getB(), STAGES);
        FROM_B = weighed(b);
        B = weights(b, FROM_B);
    }

    private static int[] weighed(double[] row) {
        return IntStream.range(0, row.length).filter(j -> row[j] != 0).toArray();
    }

    private static double[] weights(double[] row, int[] from) {
        return Arrays.stream(from).mapToDouble(j -> row[j]).toArray();
    }

    /** Rates of change at stage {@code stage} of a step. */
    interface Slope {
        void at(int stage, double[] y, double[] rate);
    }

    private static final int FEW = 6;

    private final int size;
    private final double[][] rates;
    private final double[] trial;

    /**
     * @param size how many numbers a state has; even
     */
    EighthOrder(int size) {
        this.size = size;
        this.rates = new double[STAGES][size];
        this.trial = new double[size];
    }

    /** Moves {@code y} on by a step of {@code h} seconds. */
    void step(Slope slope, double h, double[] y) {
        slope.at(0, y, rates[0]);
        for (int s = 1; s < STAGES; s++) {
            moved(y, h, A[s], FROM[s], trial);
            slope.at(s, trial, rates[s]);
        }
        moved(y, h, B, FROM_B, y);
    }

    private void moved(double[] y, double h, double[] weights, int[] from, double[] to) {
        if (size <= FEW) {
            byTwos(y, h, weights, from, to);
            return;
        }
        if (to != y) {
            System.arraycopy(y, 0, to, 0, size);
        }
        for (int k = 0; k < from.length; k++) {
            double w = h * weights[k];
            double[] rate = rates[from[k]];
            for (int i = 0; i < size; i++) {
                to[i] += w * rate[i];
            }
        }
    }

    // Their sums stay in registers, which for few numbers is the quicker way round.
    private void byTwos(double[] y, double h, double[] weights, int[] from, double[] to) {
        for (int i = 0; i < size; i += 2) {
            double one = y[i];
            double two = y[i + 1];
            for (int k = 0; k < from.length; k++) {
                double w = h * weights[k];
                double[] rate = rates[from[k]];
                one += w * rate[i];
                two += w * rate[i + 1];
            }
            to[i] = one;
            to[i + 1] = two;
        }
    }
}
