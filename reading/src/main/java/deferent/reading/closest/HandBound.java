package deferent.reading.closest;

/** What can stop a hand from drawing a figure more closely. */
public enum HandBound {
    /** Its greatest speed. */
    SPEED,
    /** Its greatest acceleration. */
    ACCELERATION,
    /** Its greatest jerk. */
    JERK,
    /** The least pull that keeps the cord taut. */
    PULL,
    /** The arm's length. */
    REACH,
    /** How far it may leave its own path. */
    LEAVE
}
