package deferent.studio;

import deferent.motion.phrase.Lexicon;
import deferent.record.OwnWords;
import deferent.record.Shelf;
import java.util.Optional;
import java.util.logging.Logger;

/**
 * The user's own motion names, from the shelf. Looked up for every phrase, so the folder is read at
 * most once in a while, and at once after the studio itself has changed it.
 */
final class Wordbook {
    private static final Logger LOG = Logger.getLogger(Wordbook.class.getName());
    private static final long FRESH_NANOS = 1_500_000_000L;

    private final Shelf shelf;
    private Lexicon lexicon = Lexicon.EMPTY;
    private Optional<String> trouble = Optional.empty();
    private long readAt;
    private boolean stale = true;

    Wordbook(Shelf shelf) {
        this.shelf = shelf;
    }

    synchronized Lexicon lexicon() {
        long now = System.nanoTime();
        if (stale || now - readAt > FRESH_NANOS) {
            lexicon = read();
            readAt = now;
            stale = false;
        }
        return lexicon;
    }

    /** Why some or all of them are not known, as they were looked up last; empty where all are. */
    synchronized Optional<String> trouble() {
        return trouble;
    }

    synchronized void changed() {
        stale = true;
    }

    private Lexicon read() {
        OwnWords own = shelf.words();
        if (!own.trouble().equals(trouble)) {
            own.trouble().ifPresent(LOG::warning);
        }
        trouble = own.trouble();
        return own.lexicon();
    }
}
