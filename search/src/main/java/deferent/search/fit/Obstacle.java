package deferent.search.fit;

import deferent.reading.link.PathKind;

/** What stands in the way of closing a link. */
public enum Obstacle {
    NONE,
    /**
     * An extension's head circle is always larger than its tether, so the carrier's hand radius
     * alone does not close it; have the tether, need the hand circle.
     */
    HEAD_CIRCLE_NEVER_SMALLER_THAN_TETHER,
    /** One path is an arc and the other a circle; have the arc's radius, need the circle's. */
    ARC_IS_NO_CIRCLE,
    /**
     * The paths are of two other kinds, such as a circle and a line; both numbers 0.
     *
     * @see PathKind
     */
    OTHER_KIND,
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
    /** The paths are of one kind and differ all the same; both numbers 0. */
    OTHER_FIGURE;

    /** Whether the two paths differ, as curves or in time, which a hand that rides gets over. */
    boolean ofPaths() {
        return switch (this) {
            case ARC_IS_NO_CIRCLE, OTHER_KIND, OTHER_FIGURE, NOT_IN_TIME -> true;
            default -> false;
        };
    }
}
