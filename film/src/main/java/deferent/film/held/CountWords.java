package deferent.film.held;

import deferent.motion.trace.Count;
import deferent.motion.trace.Counts;
import deferent.motion.trace.Trace;
import java.util.List;

/** Moments of the meant cycle by the count that the phrase uses. */
record CountWords(List<Count> counts, double cycle) {
    private static final double ON = 0.12; // of the way to the next count
    private static final double JUST = 0.35;

    static CountWords of(Trace meant) {
        return new CountWords(Counts.of(meant), meant.pairing().period());
    }

    /**
     * "on 3", "just after 3", "between 3 and 4".
     *
     * @param time seconds of the meant cycle
     */
    String at(double time) {
        int n = counts.size();
        double within = time - cycle * Math.floor(time / cycle);
        int i = n - 1;
        while (i > 0 && counts.get(i).time() > within) {
            i--;
        }
        double from = counts.get(i).time();
        double to = i + 1 < n ? counts.get(i + 1).time() : counts.get(0).time() + cycle;
        double share = (within - from) / (to - from);
        String here = counts.get(i).said();
        String next = (i + 1 < n ? "" : "the next ") + counts.get((i + 1) % n).said();
        if (share < ON) {
            return "on " + here;
        }
        if (share > 1 - ON) {
            return "on " + counts.get((i + 1) % n).said();
        }
        if (n == 1) {
            return share < JUST
                    ? "just after " + here
                    : share > 1 - JUST ? "just before " + next : "half way to " + next;
        }
        return share < JUST
                ? "just after " + here
                : share > 1 - JUST ? "just before " + next : "between " + here + " and " + next;
    }
}
