package deferent.motion.pairing;

/** Contents that cannot be: says what is wrong, where it stands, and what would be right. */
public final class Refusal extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    private final String what;
    private final String where;
    private final String right;

    /**
     * @param what what is wrong, a clause without a full stop
     * @param where the size, word or key it stands at
     * @param right what would be right
     */
    public Refusal(String what, String where, String right) {
        super(where + ": " + what + "; " + right);
        this.what = what;
        this.where = where;
        this.right = right;
    }

    public String what() {
        return what;
    }

    public String where() {
        return where;
    }

    public String right() {
        return right;
    }

    /** The value itself when it is a finite number above zero and at most {@code most}. */
    public static double positive(double value, double most, String where, String unit) {
        if (!(value > 0 && value <= most)) {
            throw new Refusal(
                    "is " + value + " " + unit,
                    where,
                    "give more than 0 and at most " + most + " " + unit);
        }
        return value;
    }

    /** The value itself when it is a finite number from {@code least} to {@code most}. */
    public static double within(
            double value, double least, double most, String where, String unit) {
        if (!(value >= least && value <= most)) {
            throw new Refusal(
                    "is " + value + " " + unit,
                    where,
                    "give from " + least + " to " + most + " " + unit);
        }
        return value;
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
