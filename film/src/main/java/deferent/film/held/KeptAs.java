package deferent.film.held;

/** What of a motion a spinner kept: that which the film lies nearer to. */
public enum KeptAs {
    /** The head draws the meant figure; the hand goes where the cord asks. */
    FIGURE,
    /** The hand goes its meant path; the head goes where the cord takes it. */
    HAND_PATH
}
