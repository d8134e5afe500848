package deferent.search.set;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;

/**
 * A pattern and for how long it is wanted.
 *
 * <p>Four counts go once round: a count is a quarter of a hand cycle, or of a poi beat where both
 * hands are still (our choice: a hand that goes once round in two seconds is counted at 120 a
 * minute).
 *
 * @param counts how many, 1 to {@value #MOST_COUNTS}
 */
public record Wanted(Pairing pairing, int counts) {
    /** Counts in one cycle of a hand. */
    public static final int COUNTS_A_CYCLE = 4;

    /** Nothing is kept longer. */
    public static final int MOST_COUNTS = 1000;

    public Wanted {
        if (counts < 1 || counts > MOST_COUNTS) {
            throw new Refusal(
                    "are " + counts, "the counts of a pattern", "give 1 to " + MOST_COUNTS);
        }
    }

    /** Seconds of one count of a pairing. */
    public static double count(Pairing pairing) {
        return 60 / pairing.tempo() / COUNTS_A_CYCLE;
    }

    /** Seconds of one count. */
    public double count() {
        return count(pairing);
    }

    /** Seconds of all counts. */
    public double seconds() {
        return counts * count();
    }
}
