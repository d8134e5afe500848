package deferent.search.transition;

/** Why no transition leads from one pattern to another. */
public enum Hindrance {
    /** One does. */
    NONE,
    /** A hand keeps another tether in the one than in the other. */
    TETHERS,
    /** The plane of one of them turns as it goes; passages for that are not worked out. */
    TURNING_PLANE,
    /** No practised hand draws one of the patterns on a cord at its tempo, or nearly so. */
    NOT_DRAWN,
    /** The arms do not reach one of the patterns. */
    REACH,
    /** Nothing within the grade asked for was found on the whole grid. */
    TOO_HARD,
    /** What was found brings cords, heads or body too near each other, or a hand out of reach. */
    IN_THE_WAY,
    /** The pattern that is left keeps a time of its own, which is not the song's. */
    OWN_TIME
}
