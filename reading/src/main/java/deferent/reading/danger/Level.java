package deferent.reading.danger;

/** How much to mind something, from the least on. */
public enum Level {
    CALM,
    CARE,
    DANGER;

    /** Whether it is as grave as the other, or graver. */
    public boolean atLeast(Level other) {
        return compareTo(other) >= 0;
    }
}
