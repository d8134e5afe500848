package deferent.record;

import deferent.motion.pairing.Refusal;
import java.util.List;

/** Bounds on the free text of documents, the same here, in the schema and at reading. */
final class Wording {
    static final int NAME = 120;
    static final int NOTE = 4000;
    static final int PHRASE = 400;
    static final int TAG = 40;
    static final int TAGS = 20;

    private Wording() {}

    static String line(String text, int most, String where) {
        if (text.isBlank() || text.length() > most) {
            throw new Refusal(
                    text.isBlank() ? "is empty" : "has " + text.length() + " characters",
                    where,
                    "give 1 to " + most + " characters");
        }
        if (text.chars().anyMatch(Character::isISOControl)) {
            throw new Refusal("has a control character", where, "keep it on one line of text");
        }
        return text;
    }

    static String note(String text) {
        if (text.length() > NOTE) {
            throw new Refusal(
                    "has " + text.length() + " characters", "note", "give at most " + NOTE);
        }
        return text;
    }

    static List<String> tags(List<String> tags) {
        if (tags.size() > TAGS) {
            throw new Refusal("are " + tags.size(), "tags", "give at most " + TAGS);
        }
        tags.forEach(t -> line(t, TAG, "tag"));
        return List.copyOf(tags);
    }
}
