package deferent.motion.tether;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.complex.Complex;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.EigenDecompositionNonSymmetric;
import org.hipparchus.linear.MatrixUtils;

/**
 * What a cycle does to small slips about a periodic motion: the monodromy of the slips' own
 * equations and its eigenvalues, the Floquet multipliers, largest first.
 *
 * @param monodromy in coordinates c (radians aside, two axes) and d (q, in {@code unit}s), 4 by 4
 * @param unit metres a second
 * @param multipliers four of them
 */
record Floquet(double[][] monodromy, double unit, List<Complex> multipliers) {
    static Floquet of(Orbit orbit) {
        double unit = orbit.cord().swingLength() * 2 * Math.PI / orbit.period();
        double[] start = orbit.start();
        Vector3D[] axes = axes(orbit, start);
        double[] y = Slips.about(start, axes, 2, unit);
        new Marching(orbit.cord(), 4).cycle(orbit.table(), y);
        double[][] m = Slips.matrix(y, axes, 2, unit);
        return new Floquet(m, unit, multipliers(orbit, m));
    }

    static Vector3D[] axes(Orbit orbit, double[] y) {
        Vector3D e = new Vector3D(y[0], y[1], y[2]);
        return orbit.planar() ? Slips.axes(e, orbit.normal()) : Slips.axes(e);
    }

    /** Slips within a plane and across it do not mix, so their multipliers are found apart. */
    private static List<Complex> multipliers(Orbit orbit, double[][] m) {
        Complex[] all;
        if (orbit.planar()) {
            Complex[] within = pair(m[0][0], m[0][2], m[2][0], m[2][2]);
            Complex[] across = pair(m[1][1], m[1][3], m[3][1], m[3][3]);
            all = new Complex[] {within[0], within[1], across[0], across[1]};
        } else {
            all =
                    new EigenDecompositionNonSymmetric(MatrixUtils.createRealMatrix(m))
                            .getEigenvalues();
        }
        Arrays.sort(all, Comparator.comparingDouble(Complex::norm).reversed());
        return List.of(all);
    }

    /** Eigenvalues of a 2 by 2 matrix. */
    static Complex[] pair(double a, double b, double c, double d) {
        double half = (a + d) / 2;
        double square = (a - d) * (a - d) / 4 + b * c;
        if (square >= 0) {
            double root = Math.sqrt(square);
            double large = half + Math.copySign(root, half);
            double product = a * d - b * c;
            double small = large == 0 ? half - Math.copySign(root, half) : product / large;
            return new Complex[] {new Complex(large), new Complex(small)};
        }
        double root = Math.sqrt(-square);
        return new Complex[] {new Complex(half, root), new Complex(half, -root)};
    }

    double growth() {
        return multipliers.get(0).norm();
    }
}
