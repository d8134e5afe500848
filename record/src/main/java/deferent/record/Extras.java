package deferent.record;

import deferent.motion.pairing.Refusal;
import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * What other programs wrote into a document under keys of their own, which begin with {@value
 * #PREFIX}: kept as it came, and never looked into. Numbers are kept as doubles.
 *
 * @param byPointer each key's JSON text by its JSON pointer in the document
 */
public record Extras(Map<String, String> byPointer) {
    static final String PREFIX = "x_";

    /** Together no longer than this, characters. */
    static final int MOST = 20_000;

    private static final int DEEPEST = 16;

    public static final Extras NONE = new Extras(Map.of());

    public Extras {
        byPointer = Collections.unmodifiableMap(new TreeMap<>(byPointer));
        int all = 0;
        for (Map.Entry<String, String> entry : byPointer.entrySet()) {
            all += entry.getKey().length() + entry.getValue().length();
        }
        if (all > MOST) {
            throw new Refusal(
                    "have " + all + " characters",
                    "keys that begin with " + PREFIX,
                    "give at most " + MOST + " together");
        }
    }

    /** A value's text. */
    static String text(JsonNode value) {
        bounded(value, 1);
        StringBuilder text = new StringBuilder();
        PrettyJson.flat(value, text);
        return text.toString();
    }

    private static void bounded(JsonNode value, int depth) {
        if (depth > DEEPEST) {
            throw new Refusal(
                    "is nested deeper than " + DEEPEST, "what it holds", "keep it flatter");
        }
        if (value.isFloatingPointNumber() && !Double.isFinite(value.doubleValue())) {
            throw new Refusal("is too large a number", "what it holds", "write it in quotes");
        }
        value.forEach(inner -> bounded(inner, depth + 1));
    }

    /** Puts them where they stood; where their object is no longer there, into the one above it. */
    void putInto(ObjectNode document) {
        byPointer.forEach(
                (pointer, text) -> {
                    String[] keys = pointer.substring(1).split("/", -1);
                    ObjectNode at = document;
                    for (int i = 0; i < keys.length - 1; i++) {
                        if (at.get(plain(keys[i])) instanceof ObjectNode inner) {
                            at = inner;
                        }
                    }
                    at.set(plain(keys[keys.length - 1]), Text.tree(text, MOST));
                });
    }

    // RFC 6901, section 4.
    private static String plain(String key) {
        return key.replace("~1", "/").replace("~0", "~");
    }
}
