package deferent.motion.trade;

import deferent.motion.pairing.Range;
import deferent.motion.pairing.Refusal;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Units of lengths and angles, for phrases and options alike, and how a figure in them becomes
 * metres or radians. An inch is 2.54 cm (international yard and pound agreement, 1959).
 */
public enum Unit {
    METRES("1", "m", "metre", "meter"),
    CENTIMETRES("0.01", "cm", "centimetre", "centimeter"),
    MILLIMETRES("0.001", "mm", "millimetre", "millimeter"),
    INCHES("0.0254", "in", "inch", "inches", "\""),
    FEET("0.3048", "ft", "foot", "feet"),
    /** Shares of the hand's own tether. */
    TETHERS("", "tether"),
    DEGREES("", "°", "º", "deg", "degree"),
    RADIANS("", "rad", "radian"),
    TURNS("", "turn");

    /** The lengths, as an error tells them. */
    public static final String LENGTHS = "cm, m, mm, in or ft";

    /**
     * A number as it was said.
     *
     * @param value its double
     * @param figures its decimal figures; empty for a fraction and for words
     */
    public record Figure(double value, Optional<BigDecimal> figures) {}

    private final Optional<BigDecimal> metres;
    private final List<String> spellings;

    /** Metres: how many there are in one; nothing for what is no length. */
    Unit(String metres, String... spellings) {
        this.metres = metres.isEmpty() ? Optional.empty() : Optional.of(new BigDecimal(metres));
        this.spellings = List.of(spellings);
    }

    /** The unit spelt so, a plural forgiven. */
    public static Optional<Unit> spelt(String text) {
        String key = text.toLowerCase(Locale.ROOT);
        String one =
                key.length() > 2 && key.endsWith("s") ? key.substring(0, key.length() - 1) : key;
        return Arrays.stream(values())
                .filter(u -> u.spellings.contains(key) || u.spellings.contains(one))
                .findFirst();
    }

    /** Whether it measures lengths in metres. */
    public boolean length() {
        return metres.isPresent();
    }

    /** Metres, exact to the last figure said. */
    public double metres(Figure figure) {
        BigDecimal one = metres.orElseThrow();
        return figure.figures()
                .map(said -> said.multiply(one).doubleValue())
                .orElseGet(() -> figure.value() * one.doubleValue());
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
                    this == TETHERS ? tether : metres.orElseThrow().doubleValue());
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
