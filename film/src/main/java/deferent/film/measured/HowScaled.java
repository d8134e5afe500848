package deferent.film.measured;

/** How it is known how large a pixel is at the performer. */
public enum HowScaled {
    /** It was given, or follows from two places whose distance was. */
    GIVEN("as given", 0.005),
    /** The heads draw the figure of the phrase, whose tethers are known. */
    FIGURE("from the tether, the figure being the one meant", 0.02),
    /** At this size, and no other, the cord hangs from a hand that keeps still. */
    STILL_HAND("from gravity and the tether, one hand keeping still", 0.03);

    private final String words;
    private final double error;

    HowScaled(String words, double error) {
        this.words = words;
        this.error = error;
    }

    /** For people. */
    public String words() {
        return words;
    }

    /**
     * How far off it may be, a share of itself, one standard deviation: of what is given, two
     * clicks a few pixels off (our choice); of the others, what rendered films have shown.
     */
    public double error() {
        return error;
    }
}
