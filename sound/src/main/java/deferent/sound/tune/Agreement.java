package deferent.sound.tune;

import java.util.List;

/**
 * How well beats that were found agree with those that are known: each counts where one of the
 * others, not yet taken, is within {@value #WINDOW} s of it.
 *
 * <p>The F-measure with that window is the usual one of the literature: Davies, Degara and
 * Plumbley, Evaluation methods for musical audio beat tracking algorithms (2009). They leave out
 * the first five seconds; here all counts unless {@code after} says otherwise.
 *
 * @param hit how many were found within the window
 * @param found how many were found at all
 * @param known how many there are
 */
public record Agreement(int hit, int found, int known) {
    /** Seconds either way. */
    public static final double WINDOW = 0.07;

    /** Of all beats. */
    public static Agreement of(List<Double> found, List<Double> known) {
        return of(found, known, 0);
    }

    /** Of beats after a time, seconds; both lists go up. */
    public static Agreement of(List<Double> found, List<Double> known, double after) {
        List<Double> theirs = found.stream().filter(t -> t >= after).toList();
        List<Double> ours = known.stream().filter(t -> t >= after).toList();
        int hit = 0;
        int i = 0;
        for (double time : ours) {
            while (i < theirs.size() && theirs.get(i) < time - WINDOW) {
                i++;
            }
            if (i < theirs.size() && theirs.get(i) <= time + WINDOW) {
                hit++;
                i++;
            }
        }
        return new Agreement(hit, theirs.size(), ours.size());
    }

    /** The F-measure: twice the hits over what was found and what is known, 0 to 1. */
    public double f() {
        return found + known == 0 ? 1 : 2.0 * hit / (found + known);
    }
}
