package deferent.motion.trace;

import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;

/**
 * How often a closed plane path goes over itself within a cycle, and into how many equal turns it
 * can be turned onto itself. Both are read off the Fourier coefficients of the path walked at even
 * speed: if turning by 1/m of a round maps it onto itself, all its frequencies leave one remainder
 * when divided by m; if it goes round p times, all are multiples of p.
 *
 * @param order of the rotation; 0 for a circle
 * @param rounds how many equal, coinciding rounds the cycle holds
 */
record Symmetry(int order, int rounds) {
    private static final int POINTS = 512;
    // Highest flower: 24 terms of the hand against 24 turns of the poi.
    private static final int MOST = 49;
    // A thousandth of the size, squared.
    private static final double REST = 1e-6;

    static Symmetry of(HeadPath path) {
        double[][] z = walkedEvenly(path.u(), path.v());
        FastFourierTransformer.transformInPlace(
                z, DftNormalization.STANDARD, TransformType.FORWARD);
        double[] energy = new double[POINTS];
        double total = 0;
        double most = 0;
        for (int k = 1; k < POINTS; k++) {
            energy[k] = z[0][k] * z[0][k] + z[1][k] * z[1][k];
            total += energy[k];
            most = Math.max(most, energy[k]);
        }
        double enough = (1 - REST) * total;
        // What is too faint to tip the scale, all of it together, is passed over.
        double faint = REST * total / (100 * POINTS);
        int rounds = 1;
        int order = 1;
        for (int m = 2; m <= MOST; m++) {
            double[] byRemainder = new double[m];
            for (int k = 1; k < POINTS; k++) {
                if (energy[k] > faint) {
                    int signed = k < POINTS / 2 ? k : k - POINTS;
                    byRemainder[Math.floorMod(signed, m)] += energy[k];
                }
            }
            rounds = byRemainder[0] >= enough ? m : rounds;
            for (double share : byRemainder) {
                order = share >= enough ? m : order;
            }
        }
        return new Symmetry(most >= enough ? 0 : order / rounds, rounds);
    }

    private static double[][] walkedEvenly(double[] u, double[] v) {
        int count = u.length;
        double[] along = new double[count + 1];
        for (int i = 0; i < count; i++) {
            int j = (i + 1) % count;
            along[i + 1] = along[i] + Math.hypot(u[j] - u[i], v[j] - v[i]);
        }
        double[][] z = new double[2][POINTS];
        int i = 0;
        for (int p = 0; p < POINTS; p++) {
            double target = along[count] * p / POINTS;
            while (i < count - 1 && along[i + 1] < target) {
                i++;
            }
            double chord = along[i + 1] - along[i];
            double share = chord > 0 ? (target - along[i]) / chord : 0;
            int j = (i + 1) % count;
            z[0][p] = u[i] + share * (u[j] - u[i]);
            z[1][p] = v[i] + share * (v[j] - v[i]);
        }
        return z;
    }
}
