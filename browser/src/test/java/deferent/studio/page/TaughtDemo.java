package deferent.studio.page;

import deferent.motion.phrase.Lexicon;
import deferent.page.web.TaughtShelf;
import deferent.record.DemoShelf;
import deferent.record.PatternDocument;
import deferent.record.SetDocument;
import deferent.record.Shelf;
import deferent.take.HallTake;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The demo shelf with all that is said of it, worked out once for all tests, since it takes long.
 */
final class TaughtDemo {
    private static final List<TaughtShelf> MADE = new ArrayList<>();

    private TaughtDemo() {}

    // Not as the class is made: the threads that work on it would wait for the class, and it for
    // them.
    static synchronized TaughtShelf shelf() {
        if (MADE.isEmpty()) {
            MADE.add(of(PatternDocument.among(DemoShelf.documents()), sets(), true));
        }
        return MADE.get(0);
    }

    /** One more pattern, taught alone. */
    static TaughtShelf alone(PatternDocument pattern) {
        return of(List.of(pattern), List.of(), false);
    }

    private static TaughtShelf of(
            List<PatternDocument> patterns, List<HallTake.Wanted> sets, boolean compared) {
        return new HallTake("Lanterns at a winter market", patterns, sets, Lexicon.EMPTY, compared)
                .taught(at -> {}, () -> false)
                .orElseThrow();
    }

    private static List<HallTake.Wanted> sets() {
        Shelf.Listing listing = DemoShelf.listing();
        return DemoShelf.documents().stream()
                .filter(SetDocument.class::isInstance)
                .map(SetDocument.class::cast)
                .map(set -> HallTake.Wanted.on(listing, set, Optional.empty(), false))
                .toList();
    }
}
