package deferent.reel;

import deferent.motion.pairing.Refusal;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Frames a second, as an exact fraction: what is called 29.97 is 30000/1001, and a clip of an hour
 * that took it for 29.97 would be off by a tenth of a second.
 *
 * @param num frames
 * @param den in so many seconds; with {@code num} in lowest terms
 */
public record Rate(int num, int den) {
    public static final Rate FILM_NTSC = new Rate(24000, 1001);
    public static final Rate FILM = new Rate(24, 1);
    public static final Rate PAL = new Rate(25, 1);
    public static final Rate NTSC = new Rate(30000, 1001);
    public static final Rate THIRTY = new Rate(30, 1);
    public static final Rate FIFTY = new Rate(50, 1);
    public static final Rate NTSC_DOUBLE = new Rate(60000, 1001);
    public static final Rate SIXTY = new Rate(60, 1);

    /** Those that cameras and editing programs know. */
    public static final List<Rate> USUAL =
            List.of(FILM_NTSC, FILM, PAL, NTSC, THIRTY, FIFTY, NTSC_DOUBLE, SIXTY);

    private static final int LEAST = 1;
    private static final int MOST = 120;

    private static final Map<String, Rate> SAID =
            Map.of(
                    "23.976", FILM_NTSC,
                    "23.98", FILM_NTSC,
                    "29.97", NTSC,
                    "59.94", NTSC_DOUBLE);

    private static final String WHERE = "frame rate";
    private static final String RIGHT =
            "give 23.976, 24, 25, 29.97, 30, 50, 59.94 or 60, another whole number up to 120, or a"
                    + " fraction such as 30000/1001";

    public Rate {
        if (num <= 0
                || den <= 0
                || num < (long) LEAST * den
                || num > (long) MOST * den
                || greatestCommonDivisor(num, den) != 1) {
            throw new Refusal("is " + num + "/" + den, WHERE, RIGHT);
        }
    }

    private static int greatestCommonDivisor(int a, int b) {
        return b == 0 ? a : greatestCommonDivisor(b, a % b);
    }

    /** From what people call it: "29.97", "25", "30000/1001". */
    public static Rate of(String said) {
        String text = said.strip();
        Rate known = SAID.get(text);
        if (known != null) {
            return known;
        }
        String[] parts = text.split("/", -1);
        try {
            int num = Integer.parseInt(parts[0].strip());
            int den = parts.length == 2 ? Integer.parseInt(parts[1].strip()) : 1;
            if (parts.length <= 2 && num > 0 && den > 0) {
                int shared = greatestCommonDivisor(num, den);
                return new Rate(num / shared, den / shared);
            }
        } catch (NumberFormatException notWhole) {
            throw new Refusal("is \"" + said + "\"", WHERE, RIGHT);
        }
        throw new Refusal("is \"" + said + "\"", WHERE, RIGHT);
    }

    /** Frames a second, rounded to a double; for comparing and saying, never for adding up. */
    public double perSecond() {
        return (double) num / den;
    }

    /** When a frame begins, seconds from the first: always from its number, so nothing drifts. */
    public double time(long frame) {
        return (double) (frame * den) / num;
    }

    /** "29.97", "25". */
    public String said() {
        return SAID.entrySet().stream()
                .filter(e -> e.getValue().equals(this))
                .map(Map.Entry::getKey)
                .max((a, b) -> Integer.compare(a.length(), b.length()))
                .orElseGet(
                        () ->
                                den == 1
                                        ? Integer.toString(num)
                                        : String.format(Locale.ROOT, "%d/%d", num, den));
    }
}
