package deferent.search.transition;

/** What one hand does in a transition. */
public enum TransitionKind {
    /** It goes on as it was. */
    KEEPS,
    /** The two patterns meet, so that it goes straight over. */
    STRAIGHT_OVER,
    /**
     * The poi keeps its beat while the hand's path grows, shrinks, shifts or comes in another time.
     */
    SLIDE,
    /** The hand stays (nearly) where it is while the poi goes on round it. */
    HINGE,
    /** The hand turns round: what was in-spin becomes antispin, or the other way. */
    TURN_ROUND,
    /** The head stops for an instant and leaves another way. */
    STALL,
    /** The poi leaves its plane for another. */
    PLANE_BEND
}
