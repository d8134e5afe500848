package deferent.search.path;

/** What a drill is of the pattern that it belongs to. */
public enum DrillKind {
    /** One hand does its share; the other is still, its poi hanging straight down. */
    ALONE,
    /** Both hands do their share where they do not meet. */
    APART,
    /** The whole pattern at a slower tempo. */
    SLOWER,
    /** The whole pattern larger, tethers and all, and as much slower as gravity would have it. */
    LARGER,
    /** The whole pattern on a swing half as wide. */
    SMALLER_SWING,
    /** A hand goes round on half its circle. */
    HALF_CIRCLE,
    /** A hand keeps still while its poi turns on as it will. */
    STILL_HAND,
    /** The pattern itself. */
    WHOLE
}
