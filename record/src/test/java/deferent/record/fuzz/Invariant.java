package deferent.record.fuzz;

import java.util.ArrayList;
import java.util.List;

/**
 * One thing that holds of every reading.
 *
 * @param name in a few words
 * @param why it holds
 * @param every asked of one phrase in so many, which are others for each; some ask for a second
 *     reading, and all together should take far less time than the readings themselves
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
        private int questions;

        void when(boolean wrong, String format, Object... values) {
            questions++;
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

        /**
         * Whether anything was asked at all: not where the invariant says nothing of the motion.
         */
        boolean asked() {
            return questions > 0;
        }
    }

    /** Not all that are seldom asked are asked of the same phrases. */
    boolean askedOf(int number) {
        return Math.floorMod(number + name.hashCode(), every) == 0;
    }

    /** What breaks it, and whether it says anything of this answer. */
    Broken of(Whole whole) {
        Broken broken = new Broken();
        try {
            check.of(whole, broken);
        } catch (Whole.NotWorkedOut missing) {
            // It says so itself; the fuzz counts it.
        }
        return broken;
    }
}
