package deferent.record;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The demo set: a dozen pairings of an invented amateur duo, the taller one and the shorter one,
 * who prepare lanterns for a winter market, a set of six, three invented tunes and a set to each.
 * Nobody real; each note teaches something the readings show.
 */
public final class DemoShelf {
    private DemoShelf() {}

    /** The demo as a shelf would list it. */
    public static Shelf.Listing listing() {
        List<Shelf.Entry> entries =
                documents().stream()
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

    public static List<Document> documents() {
        try (InputStream in = DemoShelf.class.getResourceAsStream("demo-shelf.json")) {
            byte[] bytes =
                    Objects.requireNonNull(in, "demo-shelf.json is packed with this class")
                            .readAllBytes();
            return PatternJson.readBundle(new String(bytes, StandardCharsets.UTF_8));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
