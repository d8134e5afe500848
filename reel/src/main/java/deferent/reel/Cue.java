package deferent.reel;

/**
 * One caption.
 *
 * @param from when it comes, seconds of the clip
 * @param to when it goes
 * @param text what it says, one line
 */
public record Cue(double from, double to, String text) {
    /** Whole milliseconds: what captions are timed in. */
    long fromMillis() {
        return Math.round(1000 * from);
    }

    long toMillis() {
        return Math.max(fromMillis() + 1, Math.round(1000 * to));
    }
}
