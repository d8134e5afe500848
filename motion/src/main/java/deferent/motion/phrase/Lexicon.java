package deferent.motion.phrase;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The user's own names of motions, on top of the trade's words. Immutable. */
public final class Lexicon {
    public static final Lexicon EMPTY = new Lexicon(Map.of());

    /**
     * A motion of the user's own.
     *
     * @param name as the user spells it
     * @param motion at the size it was made
     * @param tether the tether it was made for; with another, and no size said, it is scaled
     */
    public record Own(String name, Motion motion, Tether tether) {}

    private final Map<String, Own> byKey;

    private Lexicon(Map<String, Own> byKey) {
        this.byKey = byKey;
    }

    /** This lexicon and one name more; a name given again takes the newer motion. */
    public Lexicon with(String name, Motion motion, Tether tether) {
        String key = Spelling.key(name);
        if (key.isEmpty() || !Character.isLetter(key.charAt(0)) || !Spelling.sayable(name)) {
            throw new Refusal(
                    "\"" + name + "\" cannot be said in a phrase",
                    "name of a motion",
                    "give letters, figures, spaces and hyphens, a letter first");
        }
        if (Word.spelt(key).isPresent()) {
            throw new Refusal(
                    "\"" + name + "\" is a word of the trade",
                    "name of a motion",
                    "give it a name of its own");
        }
        if (motion.riding()) {
            throw new Refusal(
                    "rides another's head", "\"" + name + "\"", "name a motion of its own path");
        }
        Map<String, Own> more = new LinkedHashMap<>(byKey);
        more.put(key, new Own(name.strip(), motion, tether));
        return new Lexicon(Collections.unmodifiableMap(more));
    }

    /** The motions in it, in the order they were first given. */
    public List<Own> motions() {
        return List.copyOf(byKey.values());
    }

    /** By {@link Spelling#key}, in the order they were given. */
    Map<String, Own> byKey() {
        return byKey;
    }
}
