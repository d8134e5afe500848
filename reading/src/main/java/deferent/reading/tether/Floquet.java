package deferent.reading.tether;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.complex.Complex;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.EigenDecompositionNonSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * What a cycle does to small slips about a periodic motion: the monodromy of the slips' own
 * equations and its eigenvalues, the Floquet multipliers, largest first.
 *
 * <p>The cycle is gone through in legs, each begun on the motion itself where that is known, and
 * the monodromy is their product (multiple shooting; Ascher, Mattheij and Russell, Numerical
 * Solution of Boundary Value Problems for Ordinary Differential Equations, chapter 4). Gone through
 * in one, a motion from which a slip grows past 1e15 in a cycle is left before the cycle ends, and
 * what is found then belongs to some other motion.
 *
 * @param legs in order, from the cycle's start to its end
 * @param monodromy in coordinates c (radians aside, two axes) and d (q, in {@code unit}s), 4 by 4
 * @param unit metres a second
 * @param multipliers four of them
 */
record Floquet(List<Leg> legs, RealMatrix monodromy, double unit, List<Complex> multipliers) {
    private static final int LEGS = 48;

    /**
     * A part of the cycle.
     *
     * @param from the table's step it begins with
     * @param start e and q there
     * @param slips what it does to them, from the axes at its start to those at its end
     */
    record Leg(int from, double[] start, RealMatrix slips) {}

    static Floquet of(Orbit orbit) {
        double unit = orbit.cord().swingLength() * 2 * Math.PI / orbit.period();
        int steps = orbit.table().steps();
        int every = Math.max(1, steps / LEGS);
        Marching marching = new Marching(orbit.cord(), 4);
        List<Leg> legs = new ArrayList<>();
        RealMatrix whole = MatrixUtils.createRealIdentityMatrix(4);
        double[] start = orbit.start();
        for (int from = 0; from < steps; from += every) {
            int to = Math.min(from + every, steps);
            double[] y = Slips.about(start, axes(orbit, start), 2, unit);
            for (int i = from; i < to; i++) {
                marching.closely(orbit.table(), i, y);
            }
            double[] end = to == steps ? orbit.start() : orbit.at(to, y);
            RealMatrix slips =
                    MatrixUtils.createRealMatrix(Slips.matrix(y, axes(orbit, end), 2, unit));
            legs.add(new Leg(from, start, slips));
            whole = slips.multiply(whole);
            start = end;
        }
        return new Floquet(List.copyOf(legs), whole, unit, multipliers(orbit, legs, whole));
    }

    static Vector3D[] axes(Orbit orbit, double[] y) {
        Vector3D e = new Vector3D(y[0], y[1], y[2]);
        return orbit.planar() ? Slips.axes(e, orbit.normal()) : Slips.axes(e);
    }

    /** Slips within a plane and across it do not mix, so their multipliers are found apart. */
    private static List<Complex> multipliers(Orbit orbit, List<Leg> legs, RealMatrix m) {
        Complex[] all;
        if (orbit.planar()) {
            Complex[] within = pair(legs, m, 0);
            Complex[] across = pair(legs, m, 1);
            all = new Complex[] {within[0], within[1], across[0], across[1]};
        } else {
            all = eigenvalues(m);
        }
        Arrays.sort(all, Comparator.comparingDouble(Complex::norm).reversed());
        return List.of(all);
    }

    private static Complex[] eigenvalues(RealMatrix m) {
        try {
            return new EigenDecompositionNonSymmetric(m).getEigenvalues();
        } catch (ArrayIndexOutOfBoundsException pastItsEnd) {
            // Hipparchus's Schur form runs past its end on matrices whose numbers are no numbers.
            throw new ArithmeticException("the slips of a cycle grow past all numbers");
        }
    }

    /**
     * Eigenvalues of the 2 by 2 matrix of one axis. Its determinant is the legs' multiplied, for
     * its own difference says nothing where its numbers are past 1e8.
     */
    private static Complex[] pair(List<Leg> legs, RealMatrix m, int axis) {
        double product = 1;
        for (Leg leg : legs) {
            product *= determinant(leg.slips(), axis);
        }
        double a = m.getEntry(axis, axis);
        double d = m.getEntry(2 + axis, 2 + axis);
        double half = (a + d) / 2;
        double square =
                (a - d) * (a - d) / 4 + m.getEntry(axis, 2 + axis) * m.getEntry(2 + axis, axis);
        if (square >= 0) {
            double root = Math.sqrt(square);
            double large = half + Math.copySign(root, half);
            double small = large == 0 ? half - Math.copySign(root, half) : product / large;
            return new Complex[] {new Complex(large), new Complex(small)};
        }
        double root = Math.sqrt(-square);
        return new Complex[] {new Complex(half, root), new Complex(half, -root)};
    }

    private static double determinant(RealMatrix m, int axis) {
        return m.getEntry(axis, axis) * m.getEntry(2 + axis, 2 + axis)
                - m.getEntry(axis, 2 + axis) * m.getEntry(2 + axis, axis);
    }

    /** Logarithm of how many times their volume slips fill after a cycle. */
    double volume() {
        return multipliers.stream().mapToDouble(m -> Math.log(m.norm())).sum();
    }

    double growth() {
        return multipliers.get(0).norm();
    }
}
