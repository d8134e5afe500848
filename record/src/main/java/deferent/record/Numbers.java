package deferent.record;

import java.math.BigDecimal;

/** Numbers as documents spell them: the shortest decimal that reads back as the same double. */
final class Numbers {
    private Numbers() {}

    static String plain(double value) {
        if (value == Math.rint(value) && Math.abs(value) < 1e15) {
            return Double.compare(value, -0.0) == 0 ? "-0.0" : Long.toString((long) value);
        }
        double size = Math.abs(value);
        return size >= 1e-9 && size < 1e15
                ? new BigDecimal(Double.toString(value)).toPlainString()
                : Double.toString(value);
    }
}
