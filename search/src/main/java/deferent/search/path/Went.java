package deferent.search.path;

/** How a time of practice went, as said by whoever practised. */
public enum Went {
    WELL("well", 5),
    SO_SO("so-so", 3),
    BADLY("badly", 2);

    /**
     * What is taken where it was not said, and of what is yet to come: right, after some hesitation
     * (our choice). It leaves the easiness as it is.
     */
    static final int UNSAID = 4;

    private final String words;
    private final int quality;

    Went(String words, int quality) {
        this.words = words;
        this.quality = quality;
    }

    /** For people: "it went ...". */
    public String words() {
        return words;
    }

    /** As {@link Spacing} counts it, 0 to 5; which word is which number is our choice. */
    int quality() {
        return quality;
    }
}
