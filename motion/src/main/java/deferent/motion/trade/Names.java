package deferent.motion.trade;

import java.util.List;

/** Names that are worked out rather than listed. */
public final class Names {
    private static final List<String> COUNTS =
            List.of(
                    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine",
                    "ten", "eleven", "twelve");

    private Names() {}

    /** "four", "13". */
    public static String count(int n) {
        return n >= 0 && n < COUNTS.size() ? COUNTS.get(n) : Integer.toString(n);
    }

    /** "once", "twice", "three times". */
    public static String times(int n) {
        return n == 1 ? "once" : n == 2 ? "twice" : count(n) + " times";
    }

    /** "four-petal antispin" of n = −3, "one-petal in-spin" of n = 2; n is not 1. */
    public static String flower(int n) {
        return count(Math.abs(n - 1)) + "-petal " + (n > 1 ? "in-spin" : "antispin");
    }
}
