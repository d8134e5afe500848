package deferent.motion.pairing;

/**
 * A step from 0 to 1 that begins and ends softly,
 *
 * <pre>  s(x) = x⁵·(126 − 420x + 540x² − 315x³ + 70x⁴), </pre>
 *
 * the polynomial of least degree that goes from 0 to 1 with four derivatives that vanish at both
 * ends. On a cord the hand follows the head's acceleration, so a head that is smooth to its fourth
 * derivative gives a hand that is smooth to its acceleration.
 */
public final class SmoothStep {
    private SmoothStep() {}

    /** The step at {@code x}, 0 to 1. */
    public static double share(double x) {
        double x2 = x * x;
        return x2 * x2 * x * (126 - 420 * x + 540 * x2 - 315 * x2 * x + 70 * x2 * x2);
    }

    /** Its first derivative. */
    public static double slope(double x) {
        double y = x * (1 - x);
        return 630 * y * y * y * y;
    }

    /** Its second derivative. */
    public static double bend(double x) {
        double y = x * (1 - x);
        return 2520 * y * y * y * (1 - 2 * x);
    }

    /** The step with its derivatives; 0 before it and 1 after it. */
    public static Jet share(Jet x) {
        double v = Math.max(0, Math.min(1, x.value()));
        double y = v * (1 - v);
        // d/dv of y³(1 − 2v), y = v(1 − v)
        double twist = 2520 * y * y * (3 * (1 - 2 * v) * (1 - 2 * v) - 2 * y);
        return x.into(share(v), slope(v), bend(v), twist);
    }
}
