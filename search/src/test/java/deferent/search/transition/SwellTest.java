package deferent.search.transition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import deferent.motion.pairing.Jet;
import java.util.Random;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

class SwellTest {
    private static final int PIECES = 14;

    private static Swell any(Random random) {
        return new Swell(PIECES, random.doubles(2L * Swell.within(PIECES), -0.1, 0.1).toArray());
    }

    /** Cox's and de Boor's recursion on even knots (de Boor, A Practical Guide to Splines). */
    private static double spline(int i, int degree, double x) {
        if (degree == 0) {
            return i <= x && x < i + 1 ? 1 : 0;
        }
        return (x - i) / degree * spline(i, degree - 1, x)
                + (i + degree + 1 - x) / degree * spline(i + 1, degree - 1, x);
    }

    @Test
    void aSwellIsTheSumOfTheSplinesThatDeBoorsRecursionGives() {
        Random random = new Random(5);
        Swell swell = any(random);
        for (int n = 0; n < 200; n++) {
            double x = random.nextDouble();
            for (int k = 0; k < 2; k++) {
                double sum = 0;
                for (int i = 0; i < Swell.within(PIECES); i++) {
                    sum += swell.size()[2 * i + k] * spline(i, Swell.DEGREE, x * PIECES);
                }
                assertEquals(sum, swell.along(k, Jet.line(x, 1)).value(), 1e-12);
            }
        }
    }

    @Test
    void itsDerivativesAreThoseOfItsValue() {
        Random random = new Random(6);
        Swell swell = any(random);
        double h = 1e-4;
        for (int n = 0; n < 100; n++) {
            double x = 0.01 + 0.98 * random.nextDouble();
            Jet here = swell.along(0, Jet.line(x, 1));
            Jet before = swell.along(0, Jet.line(x - h, 1));
            Jet after = swell.along(0, Jet.line(x + h, 1));
            assertEquals((after.value() - before.value()) / (2 * h), here.d1(), 1e-4);
            assertEquals((after.d1() - before.d1()) / (2 * h), here.d2(), 1e-2);
            assertEquals((after.d2() - before.d2()) / (2 * h), here.d3(), 2);
        }
    }

    @Test
    void bothJoinsStayAsTheyAre() {
        Swell swell = any(new Random(7));
        for (double end : new double[] {0, 1}) {
            Jet at = swell.along(1, Jet.line(end, 1));
            assertEquals(0, at.value(), 1e-15);
            assertEquals(0, at.d1(), 1e-12);
            assertEquals(0, at.d2(), 1e-10);
            assertEquals(0, at.d3(), 1e-8);
            // The fourth vanishes too: the third leaves 0 with a slope of 0.
            double h = 1e-6;
            double near = swell.along(1, Jet.line(Math.abs(end - h), 1)).d3();
            assertTrue(Math.abs(near / h) < 10, "fourth derivative " + near / h);
        }
    }

    @Test
    void bandedEquationsHaveTheSolutionOfFullOnes() {
        Random random = new Random(8);
        int size = 30;
        int width = 6;
        NormalEquations banded = new NormalEquations(size, width);
        RealMatrix full = new Array2DRowRealMatrix(size, size);
        RealVector right = new ArrayRealVector(size);
        banded.clear(size);
        for (int n = 0; n < 90; n++) {
            int first = random.nextInt(size - width + 1);
            double[] row = random.doubles(width, -1, 1).toArray();
            double value = random.nextDouble();
            banded.add(first, row, width, value);
            RealVector whole = new ArrayRealVector(size);
            whole.setSubVector(first, new ArrayRealVector(row));
            full = full.add(whole.outerProduct(whole));
            right = right.subtract(whole.mapMultiply(value));
        }
        double damping = 0.3;
        for (int i = 0; i < size; i++) {
            full.addToEntry(i, i, damping * (full.getEntry(i, i) + 1e-9));
        }
        double[] step = new double[size];
        assertTrue(banded.solve(damping, step));
        RealVector expected = new LUDecomposition(full).getSolver().solve(right);
        for (int i = 0; i < size; i++) {
            assertEquals(expected.getEntry(i), step[i], 1e-9);
        }
    }
}
