package deferent.motion.trace;

import java.util.function.DoubleUnaryOperator;

/**
 * The low point of a function on an interval in which it falls and then rises, by golden section:
 * every step takes one value and keeps 0.618 of the interval (Kiefer, Proceedings of the American
 * Mathematical Society 4, 1953, from memory). Our own, because most functions here are distances
 * with a corner at their low point, for which Brent's parabolas promise nothing, and because a drag
 * counts on a fixed number of values.
 *
 * @param at where the lowest value was met
 * @param value that value
 */
public record Lowest(double at, double value) {
    private static final double KEPT = (Math.sqrt(5) - 1) / 2;

    /**
     * The least value that golden sections find between two places.
     *
     * @param steps how many times the interval is narrowed: 24 leave a hundred-thousandth of it, 40
     *     four billionths
     */
    public static Lowest within(DoubleUnaryOperator f, double from, double to, int steps) {
        double a = from;
        double b = to;
        double x = b - KEPT * (b - a);
        double y = a + KEPT * (b - a);
        double atX = f.applyAsDouble(x);
        double atY = f.applyAsDouble(y);
        for (int i = 0; i < steps; i++) {
            if (atX <= atY) {
                b = y;
                y = x;
                atY = atX;
                x = b - KEPT * (b - a);
                atX = f.applyAsDouble(x);
            } else {
                a = x;
                x = y;
                atX = atY;
                y = a + KEPT * (b - a);
                atY = f.applyAsDouble(y);
            }
        }
        return atX <= atY ? new Lowest(x, atX) : new Lowest(y, atY);
    }
}
