package deferent.motion.shared;

/** The performer's left or right hand. */
public enum Side {
    /** The performer's left. */
    LEFT,
    /** The performer's right. */
    RIGHT;

    /**
     * The other hand.
     *
     * @return left for right, right for left
     */
    public Side other() {
        return this == LEFT ? RIGHT : LEFT;
    }

    /**
     * Lower case, as documents and readings spell it.
     *
     * @return "left" or "right"
     */
    public String word() {
        return this == LEFT ? "left" : "right";
    }

    /**
     * Its poi's head, as in a sentence.
     *
     * @return "the left head" or "the right head"
     */
    public String head() {
        return "the " + word() + " head";
    }

    /**
     * The hand, as in a sentence.
     *
     * @return "the left hand" or "the right hand"
     */
    public String hand() {
        return "the " + word() + " hand";
    }
}
