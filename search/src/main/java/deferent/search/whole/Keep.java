package deferent.search.whole;

import java.util.Arrays;
import java.util.List;

/** What a cord is asked to leave as it is. */
public enum Keep {
    /** The pairing as it was said, on rods. */
    IDEAL("ideal"),
    /** The head's figure: the hand moves as it must. */
    FIGURE("figure"),
    /** The hand's path: the head goes where the cord lets it. */
    HAND_PATH("hand-path"),
    /** As much of the figure as a practised hand can: hand and head give both. */
    CLOSEST("closest");

    public static final List<String> WORDS = Arrays.stream(values()).map(Keep::word).toList();

    private final String word;

    Keep(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    /** By one of {@link #WORDS}. */
    public static Keep named(String word) {
        return values()[WORDS.indexOf(word)];
    }
}
