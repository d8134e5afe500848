package deferent.motion.trace;

import deferent.motion.pairing.Refusal;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/**
 * How many samples or frames a second, exactly: {@code num / den}, in lowest terms. So the time of
 * the millionth is as exact as that of the first: nothing is added up, nothing drifts.
 */
public record Rate(long num, long den) {
    public static final Rate FILM_NTSC = new Rate(24_000, 1001);
    public static final Rate FILM = new Rate(24, 1);
    public static final Rate PAL = new Rate(25, 1);
    public static final Rate NTSC = new Rate(30_000, 1001);
    public static final Rate THIRTY = new Rate(30, 1);
    public static final Rate FIFTY = new Rate(50, 1);
    public static final Rate NTSC_DOUBLE = new Rate(60_000, 1001);
    public static final Rate SIXTY = new Rate(60, 1);

    /** Frames a second that cameras and editing programs know (common practice, no source). */
    public static final List<Rate> FRAMES =
            List.of(FILM_NTSC, FILM, PAL, NTSC, THIRTY, FIFTY, NTSC_DOUBLE, SIXTY);

    /** The rates of film and broadcast that a decimal cannot say (common practice, no source). */
    private static final Map<String, Rate> BROADCAST =
            Map.of(
                    "23.976", FILM_NTSC,
                    "23.98", FILM_NTSC,
                    "29.97", NTSC,
                    "59.94", NTSC_DOUBLE,
                    "119.88", new Rate(120_000, 1001));

    private static final long MOST = 1_000_000;

    public Rate {
        if (num < 1 || den < 1) {
            throw new Refusal("is " + num + "/" + den + " a second", "rate", "give one above 0");
        }
        long shared = BigInteger.valueOf(num).gcd(BigInteger.valueOf(den)).longValueExact();
        num /= shared;
        den /= shared;
        if (num > MOST * den || den > MOST * num || den > MOST || num > MOST * MOST) {
            throw new Refusal(
                    "is " + num + "/" + den + " a second",
                    "rate",
                    "give from one a million seconds to a million a second");
        }
    }

    /** A whole number a second. */
    public static Rate of(long aSecond) {
        return new Rate(aSecond, 1);
    }

    /**
     * From "60", "12.5", "30000/1001", or one of the names that film and broadcast use for
     * n·1000/1001: 23.976, 29.97, 59.94, 119.88.
     */
    public static Rate of(String said) {
        String text = said.strip();
        Rate broadcast = BROADCAST.get(text);
        if (broadcast != null) {
            return broadcast;
        }
        if (text.matches("[0-9]{1,12}/[0-9]{1,7}")) {
            int bar = text.indexOf('/');
            return new Rate(
                    Long.parseLong(text.substring(0, bar)),
                    Long.parseLong(text.substring(bar + 1)));
        }
        if (!text.matches("[0-9]{1,12}(\\.[0-9]{1,6})?")) {
            throw new Refusal(
                    "is \"" + said + "\"",
                    "rate",
                    "give a number a second such as 60, 12.5, 29.97 or 30000/1001");
        }
        BigDecimal number = new BigDecimal(text);
        return new Rate(
                number.movePointRight(number.scale()).longValueExact(),
                BigInteger.TEN.pow(number.scale()).longValueExact());
    }

    /** When the {@code i}th comes, seconds after the one numbered 0: the nearest double to it. */
    public double time(long i) {
        // Both products are whole doubles below 2^53 for any i that a list could hold.
        return (double) (i * den) / num;
    }

    /** A second's worth, rounded to a double. */
    public double perSecond() {
        return (double) num / den;
    }

    /** As people call it: "29.97", "25", "100/3". */
    public String said() {
        return BROADCAST.entrySet().stream()
                .filter(known -> known.getValue().equals(this))
                .map(Map.Entry::getKey)
                .max(Comparator.comparingInt(String::length))
                .orElseGet(this::toString);
    }

    /** "60", "30000/1001". */
    @Override
    public String toString() {
        return den == 1 ? Long.toString(num) : num + "/" + den;
    }
}
