package deferent.motion.trade;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * Numbers and sizes as they are said. What these write is read back as the very same double: first
 * a round number in the trade's unit is tried, then a unit that loses nothing.
 */
public final class Amounts {
    private static final int LONGEST_FRACTION = 24;

    // Nearer to nought a number is written with its power of ten.
    private static final double PLAIN = 1e-9;

    private Amounts() {}

    /** "4", "0.25", "0.00004", "1.0E-12". */
    public static String number(double value) {
        if (value == Math.rint(value) && Math.abs(value) < 1e9) {
            return value == 0 && 1 / value < 0 ? "-0" : Long.toString((long) value);
        }
        return plain(value) ? decimal(value, 0) : Double.toString(value);
    }

    private static boolean plain(double value) {
        return Double.isFinite(value) && Math.abs(value) >= PLAIN && Math.abs(value) < 1e7;
    }

    private static String decimal(double value, int places) {
        return new BigDecimal(Double.toString(value))
                .movePointRight(places)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** A share: a fraction of small numbers where that is the very value, else a decimal number. */
    public static String share(double value) {
        String plain = number(value);
        if (plain.length() <= 6) {
            return plain;
        }
        return fraction(value, 1).orElse(plain);
    }

    private static Optional<String> fraction(double value, double unit) {
        for (int below = 2; below <= LONGEST_FRACTION; below++) {
            double above = Math.rint(value / unit * below);
            if (above != 0 && Math.abs(above) < 1000 && unit * (above / below) == value) {
                return Optional.of(number(above) + "/" + below);
            }
        }
        return Optional.empty();
    }

    /** "60 cm", "27.5 cm", "1.0E-12 m". */
    public static String length(double metres) {
        if (same(metres, 0.0)) {
            return "0 cm";
        }
        return plain(metres) ? decimal(metres, 2) + " cm" : metres + " m";
    }

    /** "30°", "1/7 turns", "0.1234567 rad". */
    public static String angle(double radians) {
        double degrees = Math.rint(Math.toDegrees(radians) * 1000) / 1000;
        if (same(Math.toRadians(degrees), radians)) {
            return number(degrees) + "°";
        }
        return fraction(radians, 2 * Math.PI)
                .map(f -> f + " turns")
                .orElseGet(() -> number(radians) + " rad");
    }

    private static boolean same(double a, double b) {
        return Double.compare(a, b) == 0;
    }
}
