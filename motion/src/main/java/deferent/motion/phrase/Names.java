package deferent.motion.phrase;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Swing;
import java.util.List;

/** Names that are worked out rather than listed: by petals, by corners. */
final class Names {
    private static final List<String> COUNTS =
            List.of(
                    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine",
                    "ten", "eleven", "twelve");

    private Names() {}

    /** "four", "13". */
    static String count(int n) {
        return n >= 0 && n < COUNTS.size() ? COUNTS.get(n) : Integer.toString(n);
    }

    /** "once", "twice", "three times". */
    static String times(int n) {
        return n == 1 ? "once" : n == 2 ? "twice" : count(n) + " times";
    }

    /** "four-petal antispin" of n = −3, "one-petal in-spin" of n = 2; n is not 1. */
    static String flower(int n) {
        return count(Math.abs(n - 1)) + "-petal " + (n > 1 ? "in-spin" : "antispin");
    }

    /** "triangle", "square", "7-corner polygon". */
    static String polygon(int corners) {
        return switch (corners) {
            case 3 -> "triangle";
            case 4 -> "square";
            case 5 -> "pentagon";
            case 6 -> "hexagon";
            case 8 -> "octagon";
            default -> corners + "-corner polygon";
        };
    }

    /** Whether a head of this motion goes to and fro along an arc: a pendulum's, a stall's. */
    static boolean headOnArc(Motion motion) {
        return motion.path().still()
                && (motion.spin() instanceof Swing
                        || (motion.spin() instanceof Stretches s && s.turns() == 0));
    }
}
