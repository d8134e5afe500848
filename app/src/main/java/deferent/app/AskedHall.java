package deferent.app;

import deferent.motion.phrase.Lexicon;
import deferent.record.DemoShelf;
import deferent.record.Document;
import deferent.record.Kept;
import deferent.record.PatternDocument;
import deferent.record.SetDocument;
import deferent.record.SetPlaces;
import deferent.record.Shelf;
import deferent.record.ShelfError;
import deferent.take.HallTake;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a command line takes to the hall: a shelf, the demo, a folder or a set. */
final class AskedHall {
    private AskedHall() {}

    /**
     * Empty where one pattern is asked for.
     *
     * @param folder the folder that was named, where it was one
     */
    static Optional<HallTake> of(AskedPairing asked, Optional<Shelf> folder) {
        String text = asked.text();
        if (folder.isPresent()) {
            Shelf.Listing listing = folder.get().look();
            return Optional.of(whole(DrawCommand.title(text), listing, listing.words().lexicon()));
        }
        if (text.equals(DrawCommand.SHELF)) {
            return Optional.of(whole(DrawCommand.MINE, asked.shelf().look(), asked.words()));
        }
        if (text.equals(DrawCommand.DEMO)) {
            return Optional.of(whole(DrawCommand.MARKET, demo(), Lexicon.EMPTY));
        }
        return set(asked);
    }

    private static HallTake whole(String title, Shelf.Listing listing, Lexicon lexicon) {
        SetPlaces places = SetPlaces.on(listing);
        List<HallTake.Wanted> sets =
                listing.kept().stream()
                        .map(Kept::document)
                        .filter(SetDocument.class::isInstance)
                        .map(SetDocument.class::cast)
                        .filter(set -> !set.steps().isEmpty())
                        .map(set -> new HallTake.Wanted(set, places.of(set.steps())))
                        .toList();
        return new HallTake(title, listing.patterns(), sets, lexicon);
    }

    /** The demo as a shelf would list it. */
    private static Shelf.Listing demo() {
        List<Shelf.Entry> entries =
                DemoShelf.documents().stream()
                        .map(
                                document ->
                                        new Shelf.Entry(
                                                Shelf.slug(document.name()),
                                                "",
                                                Optional.of(document),
                                                Optional.empty()))
                        .toList();
        return new Shelf.Listing(entries, List.of(), 0);
    }

    /** A set of the shelf by its name, its patterns each once. */
    private static Optional<HallTake> set(AskedPairing asked) {
        Optional<Document> found;
        try {
            found = asked.shelf().find(asked.text()).map(Kept::document);
        } catch (ShelfError unreadable) {
            return Optional.empty();
        }
        if (!(found.orElse(null) instanceof SetDocument set)) {
            return Optional.empty();
        }
        List<SetPlaces.Place> places = SetPlaces.on(asked.shelf().look()).of(set.steps());
        Map<String, PatternDocument> each = new LinkedHashMap<>();
        places.stream()
                .flatMap(place -> place.pattern().stream())
                .forEach(pattern -> each.putIfAbsent(pattern.name(), pattern));
        return Optional.of(
                new HallTake(
                        set.name(),
                        List.copyOf(each.values()),
                        List.of(new HallTake.Wanted(set, places)),
                        asked.words()));
    }
}
