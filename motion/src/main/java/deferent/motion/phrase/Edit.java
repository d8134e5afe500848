package deferent.motion.phrase;

/**
 * A change that might mend a phrase: other words in the place of some.
 *
 * @param spot the words that go
 * @param words what stands there instead; empty leaves the place out
 * @param cost how much of what was meant it may lose, to be weighed against other changes
 */
record Edit(Spot spot, String words, int cost) {
    /** A word in the place of one that is spelt much the same. */
    static final int RESPELT = 1;

    /** What an explanation offers. */
    static final int OFFERED = 2;

    /** Something put in that was not said. */
    static final int ADDED = 4;

    /** Something that was said left out. */
    static final int DROPPED = 6;

    String in(String text) {
        String before = text.substring(0, spot.start()).stripTrailing();
        String after = text.substring(Math.min(spot.end(), text.length())).stripLeading();
        return String.join(" ", before, words, after).strip().replace(" ,", ",");
    }
}
