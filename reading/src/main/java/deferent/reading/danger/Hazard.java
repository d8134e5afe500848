package deferent.reading.danger;

/** What can hurt, in the order in which it is told. */
public enum Hazard {
    /** A head, cord or hand through the body: how near they come, metres. */
    BODY(Ends.FORWARD),
    /** How near head, cord or hand come to the face, metres. */
    FACE(Ends.FORWARD),
    /** How near they come to the throat, metres. */
    THROAT(Ends.FORWARD),
    /** How near they come to the groin, metres. */
    GROIN(Ends.FORWARD),
    /** Heads that run into each other: how fast they pass, m/s. */
    HEADS_MEET(Ends.APART),
    /** A head that runs into the other hand: how fast they pass, m/s. */
    HAND_STRUCK(Ends.APART),
    /** Cords through one another: how near they come between fists and heads, metres. */
    CORDS(Ends.APART),
    /** How far a head comes from the breastbone, toward whoever stands about, metres. */
    AUDIENCE(Ends.SIZE),
    /** Greatest force on the hand, newtons. */
    PULL(Ends.TEMPO),
    /** Mean pull, which the grip holds all the time, newtons. */
    GRIP(Ends.TEMPO),
    /** Greatest force on the shoulder, that of the arm's own mass included, newtons. */
    SHOULDER(Ends.TEMPO),
    /** Greatest speed of a head, m/s. */
    HEAD_SPEED(Ends.TEMPO),
    /** Greatest kinetic energy of a head, joules. */
    HEAD_ENERGY(Ends.TEMPO),
    /** How often the poi goes round, turns a second. */
    POI_TURNS(Ends.TEMPO);

    /** What has to change for a hazard to end. */
    public enum Ends {
        /** A slower tempo. */
        TEMPO,
        /** All of it further forward. */
        FORWARD,
        /** The two hands' planes further apart in depth. */
        APART,
        /** Tethers and hand paths smaller. */
        SIZE
    }

    private final Ends ends;

    Hazard(Ends ends) {
        this.ends = ends;
    }

    Ends ends() {
        return ends;
    }

    /** Whether less of it is worse: it is a distance that ought to be kept. */
    public boolean keptAway() {
        return ends == Ends.FORWARD || this == CORDS;
    }

    /** Whether it is of one side, or of both together. */
    public boolean ofASide() {
        return this != HEADS_MEET && this != CORDS;
    }
}
