package deferent.search.transition;

import deferent.motion.pairing.Jet;

/**
 * The share of the next pattern over a passage,
 *
 * <pre>  s(x) = x⁵·(126 − 420x + 540x² − 315x³ + 70x⁴), </pre>
 *
 * the polynomial of least degree that goes from 0 to 1 with four derivatives that vanish at both
 * ends. On a cord the hand follows the head's acceleration, so a head that is smooth to its fourth
 * derivative gives a hand that is smooth to its acceleration.
 */
final class Ease {
    private Ease() {}

    static double share(double x) {
        double x2 = x * x;
        return x2 * x2 * x * (126 - 420 * x + 540 * x2 - 315 * x2 * x + 70 * x2 * x2);
    }

    static double slope(double x) {
        double y = x * (1 - x);
        return 630 * y * y * y * y;
    }

    static double bend(double x) {
        double y = x * (1 - x);
        return 2520 * y * y * y * (1 - 2 * x);
    }

    /** The share with its derivatives; 0 before a passage and 1 after it. */
    static Jet share(Jet x) {
        double v = Math.max(0, Math.min(1, x.value()));
        double y = v * (1 - v);
        // d/dv of y³(1 − 2v), y = v(1 − v)
        double twist = 2520 * y * y * (3 * (1 - 2 * v) * (1 - 2 * v) - 2 * y);
        return x.into(share(v), slope(v), bend(v), twist);
    }
}
