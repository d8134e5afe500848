package deferent.page;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;

/** What of a picture may be switched on or off. */
public enum Layer {
    /** The performer's outline, where the scene has one. */
    BODY("body"),
    /** The points the motions are placed about. */
    CENTRE("centres"),
    HAND_PATH("hands' paths"),
    /** The figures the heads draw. */
    TRAIL("trails"),
    /** From carrier's head to rider's hand. */
    LINK("link"),
    TETHER("tethers"),
    HAND("hands"),
    HEAD("heads"),
    /** Which side is which, in words beside the heads. Poses bear their numbers anyway. */
    LABELS("labels"),
    /** The counts, and which of them is on. */
    COUNTS("counts");

    private final String words;

    Layer(String words) {
        this.words = words;
    }

    /** As people say it: "hands' paths". */
    public String words() {
        return words;
    }

    /** As requests and options spell it: "hand-path". */
    public String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The layer a role's things lie on. */
    public static Layer of(Role role) {
        return switch (role) {
            case BODY -> BODY;
            case CENTRE -> CENTRE;
            case HAND_PATH -> HAND_PATH;
            case HEAD_TRAIL, SLACK -> TRAIL;
            case LINK -> LINK;
            case TETHER -> TETHER;
            case HAND -> HAND;
            case HEAD -> HEAD;
        };
    }

    /** What is on where nothing is said: everything but labels and counts. */
    public static Set<Layer> usual() {
        return EnumSet.complementOf(EnumSet.of(LABELS, COUNTS));
    }
}
