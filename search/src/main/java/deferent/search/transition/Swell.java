package deferent.search.transition;

import deferent.motion.pairing.Jet;
import org.hipparchus.analysis.polynomials.PolynomialFunction;
import org.hipparchus.analysis.polynomials.PolynomialsUtils;

/**
 * What is added to the plain blend of two figures to make a passage smoother: to the head, along
 * the first plane's u and v, each a sum of the polynomials
 *
 * <pre>  (4x(1 − x))⁵·Tᵢ(2x − 1), </pre>
 *
 * Tᵢ being Chebyshev's. They vanish with four derivatives at both ends, so that nothing of the
 * joins changes.
 *
 * @param size metres, {@value #ORDERS} along u, then as many along v; read, do not write
 */
record Swell(double[] size) {
    static final int ORDERS = 5;
    static final int FREE = 2 * ORDERS;
    static final Swell NONE = new Swell(new double[FREE]);

    private static final PolynomialFunction[][] BASIS = basis();

    private static PolynomialFunction[][] basis() {
        PolynomialFunction x = new PolynomialFunction(0, 1);
        PolynomialFunction y = new PolynomialFunction(0, 4, -4);
        PolynomialFunction bump = y.multiply(y).multiply(y).multiply(y).multiply(y);
        PolynomialFunction[][] made = new PolynomialFunction[ORDERS][4];
        for (int i = 0; i < ORDERS; i++) {
            made[i][0] = bump.multiply(of(PolynomialsUtils.createChebyshevPolynomial(i), x));
            for (int k = 1; k < 4; k++) {
                made[i][k] = made[i][k - 1].polynomialDerivative();
            }
        }
        return made;
    }

    /** p(2x − 1). */
    private static PolynomialFunction of(PolynomialFunction p, PolynomialFunction x) {
        PolynomialFunction inner = x.add(x).subtract(new PolynomialFunction(1));
        double[] c = p.getCoefficients();
        PolynomialFunction sum = new PolynomialFunction(c[c.length - 1]);
        for (int i = c.length - 2; i >= 0; i--) {
            sum = sum.multiply(inner).add(new PolynomialFunction(c[i]));
        }
        return sum;
    }

    /** One polynomial's derivative of that order at a share of the passage. */
    static double basis(int i, int order, double x) {
        return BASIS[i][order].value(x);
    }

    /** What is added over a passage: 0 along u, 1 along v. */
    Jet along(int k, Jet x) {
        double v = Math.max(0, Math.min(1, x.value()));
        double[] sum = new double[4];
        for (int i = 0; i < ORDERS; i++) {
            for (int order = 0; order < 4; order++) {
                sum[order] += size[k * ORDERS + i] * basis(i, order, v);
            }
        }
        return x.into(sum[0], sum[1], sum[2], sum[3]);
    }
}
