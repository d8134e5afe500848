package deferent.motion.tether;

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
    private static final double[] B = new double[STAGES];

    static {
        DormandPrince853Integrator source = new DormandPrince853Integrator(1e-6, 1, 1e-9, 1e-9);
        double[] c = source.getC();
        double[][] a = source.getA();
        FROM[0] = new int[0];
        A[0] = new double[0];
        for (int s = 1; s < STAGES; s++) {
            C[s] = c[s - 1];
            int count = 0;
            for (double value : a[s - 1]) {
                count += value == 0 ? 0 : 1;
            }
            FROM[s] = new int[count];
            A[s] = new double[count];
            int k = 0;
            for (int j = 0; j < a[s - 1].length; j++) {
                if (a[s - 1][j] != 0) {
                    FROM[s][k] = j;
                    A[s][k++] = a[s - 1][j];
                }
            }
        }
        System.arraycopy(source.getB(), 0, B, 0, STAGES);
    }

    /** Rates of change at stage {@code stage} of a step. */
    interface Slope {
        void at(int stage, double[] y, double[] rate);
    }

    private final int size;
    private final double[][] rates;
    private final double[] trial;

    EighthOrder(int size) {
        this.size = size;
        this.rates = new double[STAGES][size];
        this.trial = new double[size];
    }

    /** Moves {@code y} on by a step of {@code h} seconds. */
    void step(Slope slope, double h, double[] y) {
        slope.at(0, y, rates[0]);
        for (int s = 1; s < STAGES; s++) {
            int[] from = FROM[s];
            double[] a = A[s];
            System.arraycopy(y, 0, trial, 0, size);
            for (int k = 0; k < from.length; k++) {
                double w = h * a[k];
                double[] rate = rates[from[k]];
                for (int i = 0; i < size; i++) {
                    trial[i] += w * rate[i];
                }
            }
            slope.at(s, trial, rates[s]);
        }
        for (int s = 0; s < STAGES; s++) {
            if (B[s] != 0) {
                double w = h * B[s];
                double[] rate = rates[s];
                for (int i = 0; i < size; i++) {
                    y[i] += w * rate[i];
                }
            }
        }
    }
}
