package deferent.search.crossing;

/** What of a state is compared. */
public enum Compared {
    /** Hands and heads: what a spinner can pass through. */
    HANDS_AND_HEADS,
    /** Heads alone: where the lights cross, as an audience sees it. */
    HEADS
}
