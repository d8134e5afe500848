package deferent.motion.shared;

/** The performer's left or right hand. */
public enum Side {
    LEFT,
    RIGHT;

    public Side other() {
        return this == LEFT ? RIGHT : LEFT;
    }

    /** Lower case, as documents and readings spell it. */
    public String word() {
        return this == LEFT ? "left" : "right";
    }

    /** "the left head" */
    public String head() {
        return "the " + word() + " head";
    }

    /** "the left hand" */
    public String hand() {
        return "the " + word() + " hand";
    }
}
