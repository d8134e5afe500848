package deferent.search.path;

import java.util.Optional;

/**
 * How far one drill is.
 *
 * @param minutes practised of it so far
 * @param spacing how it is spaced once it is known; empty while it is being learnt
 * @param due the day on which it comes back, once it is known
 */
public record Standing(double minutes, Optional<Spacing> spacing, long due) {
    private static final int AGAIN = 5;

    static final Standing NOTHING = new Standing(0, Optional.empty(), 0);

    /** Whether it is learnt, and only kept up from now on. */
    public boolean known() {
        return spacing.isPresent();
    }

    /**
     * After some practice. It is known once it has had its minutes and did not go badly; from then
     * on it is a repetition when it is due. Before that it changes nothing unless it went badly
     * (our choice: the method has nobody repeat what is not due).
     *
     * @param needed minutes until it is known
     */
    Standing after(long day, double more, int quality, int needed) {
        double all = minutes + more;
        boolean learnt = known() || all >= needed - 1e-9 && quality >= 3;
        if (!learnt) {
            return new Standing(all, Optional.empty(), 0);
        }
        if (known() && day < due && quality >= 3) {
            return new Standing(all, spacing, due);
        }
        Spacing next = spacing.orElse(Spacing.NEW).after(quality);
        return new Standing(all, Optional.of(next), day + next.interval());
    }

    /** Minutes that are still to do until it is known; what went badly at last takes five more. */
    int left(int needed) {
        int lacking = (int) Math.ceil(needed - minutes - 1e-9);
        return known() ? 0 : lacking > 0 ? lacking : AGAIN;
    }
}
