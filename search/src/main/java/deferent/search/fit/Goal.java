package deferent.search.fit;

/** What is to close. */
public enum Goal {
    /** The shape gap: the sizes are right, wherever and whenever. */
    SHAPE,
    /** The placed gap in the carrier's plane: head and hand together at every instant. */
    PLACED
}
