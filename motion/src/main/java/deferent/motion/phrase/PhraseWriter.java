package deferent.motion.phrase;

import deferent.motion.pairing.Pairing;
import java.util.Optional;

/** Says a pairing. */
final class PhraseWriter {
    PhraseWriter(Pairing pairing, Lexicon lexicon) {}

    Optional<String> phrase() {
        return Optional.empty();
    }
}
