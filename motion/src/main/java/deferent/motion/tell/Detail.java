package deferent.motion.tell;

/** How much to work out. */
public enum Detail {
    /** What follows the pointer while something is dragged: milliseconds, shape gaps estimated. */
    LIVE,
    /** Everything, once the hand rests. */
    SETTLED
}
