package deferent.page;

import java.util.Locale;

/** What a thing on the stage is, from the back of the picture to the front. */
public enum Role {
    /** The performer's outline. */
    BODY("body"),
    /** The point a motion is placed about. */
    CENTRE("centre"),
    /** Where a hand goes over the cycle. */
    HAND_PATH("hand's path"),
    /** The figure a head draws. */
    HEAD_TRAIL("head's trail"),
    /** Where a cord does not pull. */
    SLACK("slack stretch"),
    /** From carrier's head to rider's hand. */
    LINK("link"),
    /** The cord from hand to head. */
    TETHER("tether"),
    HAND("hand"),
    HEAD("head");

    private final String words;

    Role(String words) {
        this.words = words;
    }

    /** As a side's belonging is called: "head's trail" of the left. */
    public String words() {
        return words;
    }

    /** As requests and pictures spell it: "head-trail". */
    public String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
