package deferent.record;

import deferent.motion.song.Beats;
import deferent.search.set.ToSong;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The song of a set as it is found now.
 *
 * @param asked as the set keeps it
 * @param name what it is called now, or was when it was there
 * @param document empty where the song is gone
 * @param was what it was called when the set was kept, where it has another name now
 * @param unread why its file cannot be read, where that is why it is gone
 */
public record SongPlace(
        SetSong asked,
        String name,
        Optional<SongDocument> document,
        Optional<String> was,
        Optional<String> unread) {
    /** Finds it on a shelf: what has its file and its name, or its name, or else its file. */
    public static SongPlace on(Shelf.Listing listing, SetSong asked) {
        Optional<Kept> there =
                songs(listing).filter(kept -> kept.id().equals(asked.id())).findFirst();
        Optional<Kept> found =
                there.filter(kept -> named(kept, asked))
                        .or(() -> songs(listing).filter(kept -> named(kept, asked)).findFirst())
                        .or(() -> there);
        Optional<String> unread =
                listing.entries().stream()
                        .filter(entry -> entry.id().equals(asked.id()))
                        .flatMap(entry -> entry.error().stream())
                        .findFirst();
        return new SongPlace(
                asked,
                found.map(kept -> kept.document().name()).orElse(asked.name()),
                found.map(kept -> (SongDocument) kept.document()),
                found.filter(kept -> !named(kept, asked)).map(kept -> asked.name()),
                found.isPresent() ? Optional.empty() : unread);
    }

    private static Stream<Kept> songs(Shelf.Listing listing) {
        return listing.kept().stream().filter(kept -> kept.document() instanceof SongDocument);
    }

    private static boolean named(Kept kept, SetSong asked) {
        return kept.document().name().equalsIgnoreCase(asked.name());
    }

    /** The file that it is heard from; empty where it is gone, or is another now. */
    public Optional<Path> sound(Path shelf) {
        return document.flatMap(song -> song.sound().find(shelf).file());
    }

    /** When its beats fall; empty where it is gone. */
    public Optional<Beats> beats() {
        return document.map(SongDocument::beats);
    }

    /** What the set is spun to; empty where the song is gone. */
    public Optional<ToSong> song() {
        return beats().map(b -> new ToSong(b, asked.fromBeat()));
    }
}
