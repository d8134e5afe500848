package deferent.app;

import deferent.motion.phrase.PhraseError;
import java.util.List;

/** Words that are neither a phrase nor a name on the shelf. */
final class NotNamed extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient PhraseError phrase;
    private final transient List<String> near;

    /**
     * @param phrase why it is no phrase
     * @param near names on the shelf that are spelt nearly so
     */
    NotNamed(PhraseError phrase, List<String> near) {
        super(phrase);
        this.phrase = phrase;
        this.near = List.copyOf(near);
    }

    PhraseError phrase() {
        return phrase;
    }

    List<String> near() {
        return near;
    }
}
