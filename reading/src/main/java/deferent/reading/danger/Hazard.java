package deferent.reading.danger;

/** What can hurt, in the order in which it is told. */
public enum Hazard {
    /** A head, cord or hand through the body: how near they come, metres. */
    BODY(Ends.FORWARD, "nearness to the body", "m"),
    /** How near head, cord or hand come to the face, metres. */
    FACE(Ends.FORWARD, "nearness to the face", "m"),
    /** How near they come to the throat, metres. */
    THROAT(Ends.FORWARD, "nearness to the throat", "m"),
    /** How near they come to the groin, metres. */
    GROIN(Ends.FORWARD, "nearness to the groin", "m"),
    /** Heads that run into each other: how fast they pass, m/s. */
    HEADS_MEET(Ends.APART, "heads that hit each other", "m/s"),
    /** A head that runs into the other hand: how fast they pass, m/s. */
    HAND_STRUCK(Ends.APART, "a head that hits a hand", "m/s"),
    /** Cords through one another: how near they come between fists and heads, metres. */
    CORDS(Ends.APART, "nearness of the cords", "m"),
    /** How far a head comes from the breastbone, toward whoever stands about, metres. */
    AUDIENCE(Ends.SIZE, "how far a head reaches", "m"),
    /** Greatest force on the hand, newtons. */
    PULL(Ends.TEMPO, "force on the hand", "N"),
    /** Mean pull, which the grip holds all the time, newtons. */
    GRIP(Ends.TEMPO, "pull on average", "N"),
    /** Greatest force on the shoulder, that of the arm's own mass included, newtons. */
    SHOULDER(Ends.TEMPO, "force on the shoulder", "N"),
    /** Greatest speed of a head, m/s. */
    HEAD_SPEED(Ends.TEMPO, "speed of a head", "m/s"),
    /** Greatest kinetic energy of a head, joules. */
    HEAD_ENERGY(Ends.TEMPO, "energy of a head", "J"),
    /** How often the poi goes round, turns a second. */
    POI_TURNS(Ends.TEMPO, "turns of the poi", "a second");

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
    private final String words;
    private final String unit;

    Hazard(Ends ends, String words, String unit) {
        this.ends = ends;
        this.words = words;
        this.unit = unit;
    }

    /** What has to change. */
    public Ends ends() {
        return ends;
    }

    /** "force on the hand". */
    public String words() {
        return words;
    }

    /** Its unit's sign: m, m/s, N, J, or "a second". */
    public String unit() {
        return unit;
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
