package deferent.search.transition;

import deferent.motion.pairing.Jet;
import org.hipparchus.analysis.polynomials.PolynomialFunction;

/**
 * What is added to the plain blend of two figures to make a passage smoother: to the head, along
 * the first plane's u and v, a spline of the fifth degree whose knots cut the passage into even
 * pieces, as a sum of those of its B-splines (Schoenberg 1946, on even knots) that lie wholly
 * within. They vanish with four derivatives at both ends, so that nothing of the joins changes, and
 * each reaches over six pieces only.
 *
 * @param pieces of the passage; 0 where nothing is added
 * @param size metres, of each B-spline in turn along u and along v; read, do not write
 */
record Swell(int pieces, double[] size) {
    static final int DEGREE = 5;
    static final Swell NONE = new Swell(0, new double[0]);

    /** What each B-spline that reaches over a piece is there, the one that ends first. */
    private static final PolynomialFunction[][] BASIS = basis();

    private static PolynomialFunction[][] basis() {
        double[][] coefficients = {
            {1, -5, 10, -10, 5, -1},
            {26, -50, 20, 20, -20, 5},
            {66, 0, -60, 0, 30, -10},
            {26, 50, 20, -20, -20, 10},
            {1, 5, 10, 10, 5, -5},
            {0, 0, 0, 0, 0, 1}
        };
        PolynomialFunction[][] made = new PolynomialFunction[DEGREE + 1][4];
        PolynomialFunction share = new PolynomialFunction(1.0 / 120);
        for (int m = 0; m <= DEGREE; m++) {
            made[m][0] = new PolynomialFunction(coefficients[m]).multiply(share);
            for (int k = 1; k < 4; k++) {
                made[m][k] = made[m][k - 1].polynomialDerivative();
            }
        }
        return made;
    }

    /** How many B-splines lie within so many pieces. */
    static int within(int pieces) {
        return Math.max(0, pieces - DEGREE);
    }

    /**
     * A derivative, by pieces, of the {@code m}th of the B-splines that reach over a piece.
     *
     * @param x share of the piece
     */
    static double basis(int m, int order, double x) {
        return BASIS[m][order].value(x);
    }

    /** What is added over a passage: 0 along u, 1 along v. */
    Jet along(int k, Jet x) {
        double v = Math.max(0, Math.min(1, x.value())) * pieces;
        int piece = Math.min(pieces - 1, (int) v);
        double[] sum = new double[4];
        double scale = 1;
        for (int order = 0; order < 4; order++) {
            for (int m = 0; m <= DEGREE; m++) {
                int i = piece - DEGREE + m;
                if (i >= 0 && i < within(pieces)) {
                    sum[order] += scale * size[2 * i + k] * basis(m, order, v - piece);
                }
            }
            scale *= pieces;
        }
        return x.into(sum[0], sum[1], sum[2], sum[3]);
    }
}
