package deferent.app;

import deferent.motion.phrase.Lexicon;
import deferent.record.DemoShelf;
import deferent.record.Document;
import deferent.record.Kept;
import deferent.record.PatternDocument;
import deferent.record.SetDocument;
import deferent.record.Shelf;
import deferent.record.ShelfError;
import deferent.take.HallTake;
import java.nio.file.Path;
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
            return Optional.of(
                    whole(
                            DrawCommand.title(text),
                            listing,
                            Optional.of(folder.get().folder()),
                            listing.words().lexicon()));
        }
        if (text.equals(DrawCommand.SHELF)) {
            return Optional.of(
                    whole(
                            DrawCommand.MINE,
                            asked.shelf().look(),
                            Optional.of(asked.shelf().folder()),
                            asked.words()));
        }
        if (text.equals(DrawCommand.DEMO)) {
            return Optional.of(
                    whole(
                            DrawCommand.MARKET,
                            DemoShelf.listing(),
                            Optional.empty(),
                            Lexicon.EMPTY));
        }
        return set(asked);
    }

    private static HallTake whole(
            String title, Shelf.Listing listing, Optional<Path> shelf, Lexicon lexicon) {
        List<HallTake.Wanted> sets =
                listing.kept().stream()
                        .map(Kept::document)
                        .filter(SetDocument.class::isInstance)
                        .map(SetDocument.class::cast)
                        .filter(set -> !set.steps().isEmpty())
                        .map(set -> HallTake.Wanted.on(listing, set, shelf, false))
                        .toList();
        return new HallTake(title, listing.patterns(), sets, lexicon);
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
        HallTake.Wanted wanted =
                HallTake.Wanted.on(
                        asked.shelf().look(), set, Optional.of(asked.shelf().folder()), true);
        Map<String, PatternDocument> each = new LinkedHashMap<>();
        wanted.places().stream()
                .flatMap(place -> place.pattern().stream())
                .forEach(pattern -> each.putIfAbsent(pattern.name(), pattern));
        return Optional.of(
                new HallTake(
                        set.name(), List.copyOf(each.values()), List.of(wanted), asked.words()));
    }
}
