package deferent.record.number;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Comparator;

/**
 * What a number is measured in. The ending of its key says so; JSON gives SI units and degrees,
 * people read the unit and the decimal places that stand here.
 */
public enum Scale {
    LENGTH("_m", "metres", 100, 1, " cm"),
    AREA("_m2", "square metres", 1, 3, " m²"),
    ANGLE("_deg", "degrees", 1, 2, "°"),
    TIME("_s", "seconds", 1, 2, " s"),
    SPEED("_m_per_s", "metres a second", 1, 2, " m/s"),
    ACCELERATION("_m_per_s2", "metres a second squared", 1, 0, " m/s²"),
    RATE("_per_s", "a second", 1, 1, " a second"),
    TEMPO("_per_min", "a minute", 1, 1, " a minute"),
    FREQUENCY("_hz", "hertz", 1, 1, " Hz"),
    PART_OF_CYCLE("_cycles", "cycles", 1, 3, " of a cycle"),
    SHARE("_share", "a share, 0 to 1", 100, 0, "%"),
    WEIGHT("_weights", "head weights", 1, 2, " head weights"),
    FORCE("_n", "newtons", 1, 2, " N"),
    IMPULSE("_n_s", "newton seconds", 1, 3, " N s"),
    POWER("_w", "watts", 1, 2, " W"),
    WORK("_j", "joules", 1, 2, " J"),
    /** A ratio or a count that need not be whole. */
    PLAIN("", "", 1, 3, "");

    /** Lengths below it are told finer, metres. */
    private static final double FINE = 0.01;

    /** What JSON rounds to zero. */
    private static final double NOTHING = 5e-10;

    private final String ending;
    private final String unit;
    private final double factor;
    private final int places;
    private final String shown;

    Scale(String ending, String unit, double factor, int places, String shown) {
        this.ending = ending;
        this.unit = unit;
        this.factor = factor;
        this.places = places;
        this.shown = shown;
    }

    /** By the longest ending that fits. */
    static Scale of(String key) {
        return Arrays.stream(values())
                .filter(scale -> key.endsWith(scale.ending))
                .max(Comparator.comparingInt(scale -> scale.ending.length()))
                .orElse(PLAIN);
    }

    /** The unit of the JSON in words; empty where there is none. */
    String unit() {
        return unit;
    }

    /**
     * As people read it, without zeros at the end: "60 cm", "0.25 of a cycle". A length under a
     * centimetre has a decimal more; what is not zero is not told as zero.
     *
     * @param value in the unit of the JSON
     */
    public String said(double value) {
        int decimals = this == LENGTH && Math.abs(value) < FINE ? places + 1 : places;
        BigDecimal rounded =
                BigDecimal.valueOf(factor * value).setScale(decimals, RoundingMode.HALF_UP);
        boolean lost = rounded.signum() == 0 && Math.abs(value) > NOTHING;
        BigDecimal told = lost ? BigDecimal.valueOf(1, decimals) : rounded;
        return (lost ? "under " : "") + told.stripTrailingZeros().toPlainString() + shown;
    }
}
