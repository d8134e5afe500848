package deferent.search.set;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Counts;
import java.util.Optional;

/**
 * A pattern and for how long it is wanted.
 *
 * <p>Counted as the stage counts ({@link Counts}): a count is a poi beat on the mean, of the poi
 * that turns more often.
 *
 * @param counts how many, 1 to {@value #MOST_COUNTS}
 * @param turn of the body, on one of them; empty for none
 */
public record Wanted(Pairing pairing, int counts, Optional<BodyTurn> turn) {
    /** Nothing is kept longer. */
    public static final int MOST_COUNTS = 1000;

    public Wanted {
        if (counts < 1 || counts > MOST_COUNTS) {
            throw new Refusal(
                    "are " + counts, "the counts of a pattern", "give 1 to " + MOST_COUNTS);
        }
        turn.ifPresent(t -> t.within(counts));
    }

    /** With no turn of the body. */
    public Wanted(Pairing pairing, int counts) {
        this(pairing, counts, Optional.empty());
    }

    /** Seconds of one count of a pairing. */
    public static double count(Pairing pairing) {
        return pairing.period() / Counts.aCycle(pairing);
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
