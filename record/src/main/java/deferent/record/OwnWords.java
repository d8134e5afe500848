package deferent.record;

import deferent.motion.phrase.Lexicon;
import java.util.Optional;

/**
 * The user's own words for phrases, as far as the shelf could be read.
 *
 * @param trouble why some or all of them are not known, in one line; empty where all are
 */
public record OwnWords(Lexicon lexicon, Optional<String> trouble) {}
