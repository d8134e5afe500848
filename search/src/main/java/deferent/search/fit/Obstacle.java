package deferent.search.fit;

/**
 * What stands in the way of closing a link by the carrier's own sizes or, at all, of its timing.
 */
public enum Obstacle {
    NONE,
    /**
     * An extension's head circle is never smaller than its tether; have the tether, need the hand
     * circle.
     */
    HEAD_CIRCLE_NEVER_SMALLER_THAN_TETHER,
    /**
     * A pendulum's arc, or any path that goes back the way it came, is no circle; have the arc's
     * radius, need the circle's.
     */
    ARC_IS_NO_CIRCLE,
    /** A figure drawn by two circles is not one circle; have the lesser circle's radius, need 0. */
    TWO_CIRCLES_ARE_NO_ONE,
    /**
     * The rider's hand stands still while the head goes round; have the head path's radius, need 0.
     */
    HAND_STANDS_STILL,
    /**
     * The carrier's head stands still while the rider's hand goes round; have 0, need the hand
     * path's radius.
     */
    HEAD_STANDS_STILL,
    /**
     * Same shape, but the head and the hand go along it at different paces; have the clock gap,
     * need 0.
     */
    NOT_IN_TIME,
    /** Same shape and pace, but head and hand go round it opposite ways; have the gap, need 0. */
    OPPOSITE_WAYS,
    /** The planes stand at an angle; have that angle in radians, need 0. */
    PLANES_DIFFER,
    /** No free size bears on the gap. */
    NOTHING_FREE,
    /** It would close, but only beyond a limit; have the limit, need the value beyond it. */
    BEYOND_A_LIMIT,
    /** The figures are of different kinds; have the least gap found, need 0. */
    OTHER_FIGURE
}
