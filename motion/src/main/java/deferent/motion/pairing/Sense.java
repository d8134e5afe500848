package deferent.motion.pairing;

/**
 * Which way the left hand's cycle goes round, as the performer sees it. In the wall plane the
 * performer, looking toward +z, sees the turn from x (left) to y (up) as clockwise; that is the
 * positive turn.
 */
public enum Sense {
    CLOCKWISE,
    COUNTER_CLOCKWISE;

    public Sense reversed() {
        return this == CLOCKWISE ? COUNTER_CLOCKWISE : CLOCKWISE;
    }
}
