package deferent.motion.pairing;

import deferent.motion.shared.Refused;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Contents that cannot be: says what is wrong, where it stands, and what would be right. */
public final class Refusal extends Refused {
    private static final long serialVersionUID = 1L;

    /** About a thousand turns, radians; documents hold no greater angle. */
    public static final double LARGEST_ANGLE = 6283;

    private final transient @Nullable Range range;

    /**
     * @param what what is wrong, a clause without a full stop
     * @param where the size, word or key it stands at
     * @param right what would be right
     */
    public Refusal(String what, String where, String right) {
        this(what, where, right, null);
    }

    private Refusal(String what, String where, String right, @Nullable Range range) {
        super(what, where, right);
        this.range = range;
    }

    /** The range a number fell out of; empty for other refusals. */
    public Optional<Range> range() {
        return Optional.ofNullable(range);
    }

    /** The same, said in the unit that was typed; {@code size} in the unit it has now. */
    public Refusal in(String unit, double size) {
        return range == null ? this : said(range.in(unit, size), where(), range);
    }

    /** The value itself when it is a finite number above zero and at most {@code most}. */
    public static double positive(double value, double most, String where, String unit) {
        if (!(value > 0 && value <= most)) {
            throw of(new Range(value, 0, most, true, unit), where);
        }
        return value;
    }

    /** The value itself when it is a finite number from {@code least} to {@code most}. */
    public static double within(
            double value, double least, double most, String where, String unit) {
        if (!(value >= least && value <= most)) {
            throw of(new Range(value, least, most, false, unit), where);
        }
        return value;
    }

    /** The value itself when it is an angle of at most a thousand turns, radians. */
    public static double angle(double value, String where) {
        return within(value, -LARGEST_ANGLE, LARGEST_ANGLE, where, "rad");
    }

    private static Refusal of(Range range, String where) {
        return said(range.said(), where, range);
    }

    private static Refusal said(Range said, String where, Range range) {
        return new Refusal(said.what(), where, said.right(), range);
    }

    /** Refuses a reading among whose numbers one is none: what it claims would mean nothing. */
    public static void numbers(String where, double... values) {
        for (double value : values) {
            if (!Double.isFinite(value)) {
                throw new Refusal(
                        "comes out past all numbers", where, "take other sizes or another tempo");
            }
        }
    }

    /** The value itself when it is finite. */
    public static double finite(double value, String where) {
        if (!Double.isFinite(value)) {
            throw new Refusal("is not a number", where, "give a finite number");
        }
        return value;
    }
}
