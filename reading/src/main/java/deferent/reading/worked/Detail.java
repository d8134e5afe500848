package deferent.reading.worked;

/** How much to work out. */
public enum Detail {
    /** What follows the pointer while something is dragged: milliseconds, shape gaps estimated. */
    LIVE,
    /**
     * What a printed page tells: as exact as can be, but without the searches for a fit and for the
     * slowest tempo, and without what becomes of a link on real cords.
     */
    PRINTED,
    /** Everything, once the hand rests. */
    SETTLED
}
