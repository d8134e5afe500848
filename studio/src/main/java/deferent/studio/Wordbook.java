package deferent.studio;

import deferent.motion.phrase.Lexicon;
import deferent.record.MotionDocument;
import deferent.record.Shelf;
import java.util.logging.Level;
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

    synchronized void changed() {
        stale = true;
    }

    private Lexicon read() {
        Lexicon words = Lexicon.EMPTY;
        try {
            for (MotionDocument motion : shelf.motionDocuments()) {
                words = with(words, motion.name(), motion);
                for (String also : motion.alsoSaid()) {
                    words = with(words, also, motion);
                }
            }
        } catch (RuntimeException e) {
            LOG.log(Level.WARNING, "the shelf''s own words could not be read", e);
        }
        return words;
    }

    private static Lexicon with(Lexicon words, String name, MotionDocument motion) {
        try {
            return words.with(name, motion.motion(), motion.tether());
        } catch (IllegalArgumentException taken) {
            return words;
        }
    }
}
