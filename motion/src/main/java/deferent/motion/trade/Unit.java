package deferent.motion.trade;

import deferent.motion.pairing.Range;
import deferent.motion.pairing.Refusal;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Units a phrase can use, and how a figure in them becomes metres or radians. */
public enum Unit {
    METRES(0, "m", "metre", "meter"),
    CENTIMETRES(2, "cm", "centimetre", "centimeter"),
    MILLIMETRES(3, "mm", "millimetre", "millimeter"),
    /** Shares of the hand's own tether. */
    TETHERS(0, "tether"),
    DEGREES(0, "°", "º", "deg", "degree"),
    RADIANS(0, "rad", "radian"),
    TURNS(0, "turn"),
    A_MINUTE(0, "bpm");

    /**
     * A number as it was said.
     *
     * @param value its double
     * @param figures its decimal figures; empty for a fraction and for words
     */
    public record Figure(double value, Optional<BigDecimal> figures) {}

    private final int places;
    private final List<String> spellings;

    /** Places: how far the decimal point moves on the way to metres. */
    Unit(int places, String... spellings) {
        this.places = places;
        this.spellings = List.of(spellings);
    }

    /** The unit spelt so, a plural forgiven. */
    public static Optional<Unit> spelt(String text) {
        String key = text.toLowerCase(Locale.ROOT);
        String one =
                key.length() > 2 && key.endsWith("s") ? key.substring(0, key.length() - 1) : key;
        return Arrays.stream(values()).filter(u -> u.spellings.contains(one)).findFirst();
    }

    /** Whether it measures lengths in metres. */
    public boolean length() {
        return this == METRES || this == CENTIMETRES || this == MILLIMETRES;
    }

    /** Metres, exact to the last figure said. */
    public double metres(Figure figure) {
        return places == 0 || figure.figures().isEmpty()
                ? figure.value() / Math.pow(10, places)
                : figure.figures().get().movePointLeft(places).doubleValue();
    }

    /**
     * A refusal in this unit, where it is about a length or an angle that this unit measures.
     *
     * @param tether metres
     */
    public Refusal said(Refusal refusal, double tether) {
        String of = refusal.range().map(Range::unit).orElse("");
        if (of.equals("m") && (length() || this == TETHERS)) {
            return refusal.in(
                    this == TETHERS ? "tethers" : spellings.get(0),
                    this == TETHERS ? tether : 1 / Math.pow(10, places));
        }
        OptionalDouble radians = radians(1);
        return of.equals("rad") && radians.isPresent()
                ? refusal.in(this == TURNS ? "turns" : spellings.get(0), radians.getAsDouble())
                : refusal;
    }

    /** Radians; empty for a unit that measures no angle. */
    public OptionalDouble radians(double value) {
        return switch (this) {
            case DEGREES -> OptionalDouble.of(Math.toRadians(value));
            case RADIANS -> OptionalDouble.of(value);
            case TURNS -> OptionalDouble.of(2 * Math.PI * value);
            default -> OptionalDouble.empty();
        };
    }
}
