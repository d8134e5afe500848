package deferent.motion.pairing;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers as people write them, for messages: without exponents, and not longer than they help. */
public final class Plain {
    private static final MathContext FIGURES = new MathContext(10);
    private static final double LARGE = 1e15;
    private static final double SMALL = 1e-9;

    private Plain() {}

    /** "9000", "0.001", "-2.5"; what is beyond all measure is said so. */
    public static String number(double value) {
        if (Double.isNaN(value)) {
            return "no number";
        }
        double size = Math.abs(value);
        String sign = value < 0 ? "-" : "";
        if (size >= LARGE) {
            return "beyond " + sign + plain(LARGE);
        }
        if (size != 0 && size < SMALL) {
            return "within " + sign + plain(SMALL);
        }
        return plain(value);
    }

    private static String plain(double value) {
        return value == 0
                ? "0"
                : new BigDecimal(value).round(FIGURES).stripTrailingZeros().toPlainString();
    }

    /** A number with its unit; signs such as ° stand close. */
    static String number(double value, String unit) {
        return number(value) + (unit.isEmpty() || unit.equals("°") ? unit : " " + unit);
    }
}
