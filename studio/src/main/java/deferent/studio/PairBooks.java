package deferent.studio;

import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.search.set.PairBook;
import deferent.search.transition.Grade;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What is known of patterns and of what leads from one to another, kept for as long as the desk is:
 * sets, what could come next and transitions ask about the same few again and again. One book for
 * each who spins with what; the last few are kept.
 */
final class PairBooks {
    private static final int MOST = 4;

    private record Spinner(Grade hardest, Performer performer, Kit kit) {}

    private final Map<Spinner, PairBook> books =
            new LinkedHashMap<>(8, 0.75f, true) {
                private static final long serialVersionUID = 1L;

                @Override
                protected boolean removeEldestEntry(Map.Entry<Spinner, PairBook> eldest) {
                    return size() > MOST;
                }
            };

    PairBook of(Grade hardest, Performer performer, Kit kit) {
        synchronized (books) {
            return books.computeIfAbsent(
                    new Spinner(hardest, performer, kit),
                    s -> new PairBook(s.hardest(), s.performer(), s.kit()));
        }
    }
}
