package deferent.motion.pairing;

import java.util.Locale;

/**
 * A number that lies outside what it may be, so that an edge can say both in the unit that was
 * typed there.
 *
 * @param value what was given, in SI units
 * @param least the least it may be; negative infinity for no bound
 * @param most the most it may be; infinity for no bound
 * @param open whether the least itself is too little
 * @param unit of all three
 */
public record Range(double value, double least, double most, boolean open, String unit) {
    /** The same in another unit, {@code size} of this one's. */
    public Range in(String other, double size) {
        return new Range(value / size, least / size, most / size, open, other);
    }

    /** Angles are typed and read in degrees unless somebody typed them otherwise. */
    Range said() {
        return unit.equals("rad") ? in("°", Math.PI / 180) : this;
    }

    String what() {
        return "is " + Plain.number(value, unit);
    }

    String right() {
        boolean below = bounded(least);
        boolean above = bounded(most);
        if (open) {
            return "give more than "
                    + both(least)
                    + (above ? " and at most " + Plain.number(most, unit) : "");
        }
        if (below && above) {
            return "give from " + both(least) + " to " + Plain.number(most, unit);
        }
        return below
                ? "give " + Plain.number(least, unit) + " or more"
                : above ? "give at most " + Plain.number(most, unit) : "give a finite number";
    }

    private static boolean bounded(double limit) {
        return Math.abs(limit) < 1e15;
    }

    // A unit's sign stands at both ends, its words at the last alone.
    private String both(double first) {
        boolean sign = unit.length() <= 2 || unit.toLowerCase(Locale.ROOT).equals("rad");
        return sign || !bounded(most) ? Plain.number(first, unit) : Plain.number(first);
    }
}
