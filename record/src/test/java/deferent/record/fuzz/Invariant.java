package deferent.record.fuzz;

import java.util.ArrayList;
import java.util.List;

/**
 * One thing that holds of every reading.
 *
 * @param name in a few words
 * @param why it holds
 * @param every asked of one phrase in so many, since some ask for a second reading
 * @param check what finds where it does not
 */
record Invariant(String name, String why, int every, Check check) {
    /** Looks at one answer and writes down what breaks the invariant. */
    interface Check {
        void of(Whole whole, Broken broken);
    }

    /** What was found, each with its numbers. */
    static final class Broken {
        private final List<String> found = new ArrayList<>();

        void when(boolean wrong, String format, Object... values) {
            if (wrong) {
                found.add(String.format(java.util.Locale.ROOT, format, values));
            }
        }

        /** Where two numbers are further apart than {@code relative} of the greater, or so much. */
        void unlessNear(String what, double a, double b, double relative, double absolute) {
            double most = Math.max(Math.abs(a), Math.abs(b));
            when(
                    !(Math.abs(a - b) <= relative * most + absolute),
                    "%s: %.9g against %.9g",
                    what,
                    a,
                    b);
        }

        List<String> found() {
            return found;
        }
    }

    /** Not all that are seldom asked are asked of the same phrases. */
    boolean askedOf(int number) {
        return Math.floorMod(number + name.hashCode(), every) == 0;
    }

    List<String> broken(Whole whole) {
        Broken broken = new Broken();
        check.of(whole, broken);
        return broken.found();
    }
}
