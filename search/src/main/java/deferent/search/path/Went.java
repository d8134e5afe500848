package deferent.search.path;

/** How a time of practice went, as said by whoever practised. */
public enum Went {
    WELL(5),
    SO_SO(3),
    BADLY(2);

    /**
     * What is taken where it was not said, and of what is yet to come: right, after some hesitation
     * (our choice). It leaves the easiness as it is.
     */
    static final int UNSAID = 4;

    private final int quality;

    Went(int quality) {
        this.quality = quality;
    }

    /** As {@link Spacing} counts it, 0 to 5; which word is which number is our choice. */
    int quality() {
        return quality;
    }
}
