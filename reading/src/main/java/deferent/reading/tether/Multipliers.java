package deferent.reading.tether;

import java.util.Arrays;
import java.util.function.UnaryOperator;
import org.hipparchus.complex.Complex;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.linear.EigenDecompositionNonSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * The greatest multipliers of a linear map that is known only by what it does, by Arnoldi's method
 * (Saad, Numerical Methods for Large Eigenvalue Problems, 2011, section 6.2). A delay smooths what
 * it carries, so that of a delayed system's multipliers all but a few are near nought, and a few of
 * Arnoldi's vectors tell the greatest.
 */
final class Multipliers {
    /** Vectors enough to tell several multipliers to many digits. */
    static final int ALL = 16;

    /** Enough for the greatest one, where it is asked for often. */
    static final int FEW = 6;

    /** So little of a vector's image, against the greatest, is rounding's. */
    private static final double NOTHING = 1e-11;

    private Multipliers() {}

    /**
     * The greatest of them, greatest first.
     *
     * @param size of the map's vectors
     * @return one that is infinite where the map leads past all numbers
     */
    static Complex[] of(UnaryOperator<double[]> map, int size, int vectors) {
        int most = Math.min(vectors, size);
        double[][] basis = new double[most][];
        double[][] h = new double[most][most];
        double[] v = new double[size];
        for (int i = 0; i < size; i++) {
            // Any start that no direction is missing from.
            v[i] = Math.cos(1 + 2.3 * i);
        }
        scale(v, 1 / Math.sqrt(dot(v, v)));
        int found = 0;
        double great = 0;
        while (found < most) {
            basis[found] = v;
            double[] w = map.apply(v);
            double before = Math.sqrt(dot(w, w));
            if (!Double.isFinite(before)) {
                return new Complex[] {Complex.INF};
            }
            great = Math.max(great, before);
            for (int twice = 0; twice < 2; twice++) {
                for (int i = 0; i <= found; i++) {
                    double part = dot(basis[i], w);
                    h[i][found] += part;
                    add(w, basis[i], -part);
                }
            }
            found++;
            double rest = Math.sqrt(dot(w, w));
            if (rest <= NOTHING * great) {
                break;
            }
            if (found < most) {
                h[found][found - 1] = rest;
                scale(w, 1 / rest);
                v = w;
            }
        }
        if (great == 0) {
            return new Complex[] {Complex.ZERO};
        }
        Complex[] values = eigenvalues(MatrixUtils.createRealMatrix(h), found, 1 / great);
        for (int i = 0; i < values.length; i++) {
            values[i] = values[i].multiply(great);
        }
        Arrays.sort(values, (a, b) -> Double.compare(b.norm(), a.norm()));
        return values;
    }

    // The library's search does not end on some matrices; fewer vectors then tell as well.
    private static Complex[] eigenvalues(RealMatrix h, int found, double by) {
        for (int n = found; ; n--) {
            try {
                RealMatrix part = h.getSubMatrix(0, n - 1, 0, n - 1).scalarMultiply(by);
                return new EigenDecompositionNonSymmetric(part).getEigenvalues();
            } catch (MathIllegalStateException noEnd) {
                if (n == 1) {
                    throw noEnd;
                }
            }
        }
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    private static void scale(double[] v, double by) {
        for (int i = 0; i < v.length; i++) {
            v[i] *= by;
        }
    }

    private static void add(double[] v, double[] other, double by) {
        for (int i = 0; i < v.length; i++) {
            v[i] += by * other[i];
        }
    }
}
