package deferent.reading.photo;

/**
 * How long an eye goes on seeing a light that has moved on: visible persistence.
 *
 * <p>About a tenth of a second, and never one number: it grows shorter for brighter lights (the
 * inverse intensity effect) and differs with spacing and with who looks. Coltheart, Perception
 * &amp; Psychophysics 27 (1980), from memory: about 100 ms; Farrell, Journal of Experimental
 * Psychology: Human Perception and Performance 10 (1984), on moving points, from memory; Gauch and
 * Kerzel, Vision Research 49 (2009): at least 60 to 80 ms. So: 60 to 200 ms.
 *
 * @param least share of the figure that is seen at once where it persists shortest, 0 to 1
 * @param usual the same for a tenth of a second
 * @param most where it persists longest
 * @param whole whether all of it is
 */
public record Persistence(double least, double usual, double most, Whole whole) {
    /** Seconds. */
    public static final double SHORTEST = 0.06;

    public static final double ABOUT = 0.1;

    public static final double LONGEST = 0.2;

    /** Whether an eye sees a figure as a whole. */
    public enum Whole {
        /** Even where light persists shortest. */
        ALWAYS,
        /** For some eyes and lights. */
        PERHAPS,
        /** Not even where it persists longest: the light is seen to move. */
        NEVER
    }

    static Persistence of(double figure) {
        return new Persistence(
                Math.min(1, SHORTEST / figure),
                Math.min(1, ABOUT / figure),
                Math.min(1, LONGEST / figure),
                figure <= SHORTEST
                        ? Whole.ALWAYS
                        : figure <= LONGEST ? Whole.PERHAPS : Whole.NEVER);
    }
}
