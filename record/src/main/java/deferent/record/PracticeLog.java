package deferent.record;

import deferent.record.landing.Landing;
import deferent.record.landing.Litter;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What films told of practice, beside a shelf: in its folder "practice" one JSON file a record, and
 * in "practice/films" the films that were asked to be kept. What whoever spun says of it themselves
 * is {@link Log}. Each is written whole or not at all. A file that cannot be read is listed with
 * its error, and never written over.
 */
public final class PracticeLog {
    static final String FOLDER = "practice";
    static final String FILMS = "films";
    private static final int PIECE = 1 << 22; // bytes

    private final Folder folder;

    private PracticeLog(Folder folder) {
        this.folder = folder;
    }

    /** That of a shelf; its folder is made when the first record is kept. */
    public static PracticeLog of(Shelf shelf) {
        return at(shelf.folder(), Landing.NEW);
    }

    static PracticeLog at(Path shelf, Landing.Opening opening) {
        return new PracticeLog(new Folder(shelf.resolve(FOLDER), opening));
    }

    /**
     * One record.
     *
     * @param id its file's name without ".json"
     */
    public record Entry(String id, Practice practice) {}

    /**
     * All records, the eldest first.
     *
     * @param others files that cannot be read, each with why
     */
    public record Listing(List<Entry> entries, List<NotListed> others) {
        public Listing {
            entries = List.copyOf(entries);
            others = List.copyOf(others);
        }

        /** Those of one pattern, the eldest first. */
        public List<Entry> of(String pattern) {
            return entries.stream().filter(e -> e.practice().pattern().equals(pattern)).toList();
        }

        /** That of an id or a name, in any case of letters; of equal names the latest. */
        public Optional<Entry> find(String idOrName) {
            return entries.stream()
                    .filter(
                            e ->
                                    e.id().equals(idOrName)
                                            || e.practice().name().equalsIgnoreCase(idOrName))
                    .reduce((elder, later) -> later);
        }
    }

    /** What is in the log. */
    public Listing look() {
        Folder.Contents contents = folder.contents();
        List<Entry> entries = new ArrayList<>();
        List<NotListed> others = new ArrayList<>(contents.others());
        for (String id : contents.ids()) {
            try {
                entries.add(new Entry(id, read(id)));
            } catch (DocumentError broken) {
                others.add(new NotListed(id + ".json", String.valueOf(broken.in("").getMessage())));
            } catch (ShelfError broken) {
                if (folder.has(id)) {
                    others.add(new NotListed(id + ".json", broken.what() + "; " + broken.right()));
                }
            }
        }
        entries.sort(
                Comparator.comparing((Entry e) -> e.practice().date()).thenComparing(Entry::id));
        others.sort(Comparator.comparing(NotListed::file));
        return new Listing(entries, others);
    }

    private Practice read(String id) {
        try {
            return PracticeJson.read(
                    StandardCharsets.UTF_8
                            .newDecoder()
                            .decode(ByteBuffer.wrap(folder.bytes(id)))
                            .toString());
        } catch (CharacterCodingException notUtf8) {
            throw DocumentError.at("", "is not UTF-8 text", "save it as UTF-8");
        }
    }

    /** The record of the same film held against the same pattern, where there is one. */
    public Optional<Entry> twin(Practice practice) {
        return look().of(practice.pattern()).stream()
                .filter(e -> e.practice().clip().sha256().equals(practice.clip().sha256()))
                .findFirst();
    }

    /**
     * Keeps a record. One of the same film and pattern is replaced where that is asked for, else
     * the new one is refused.
     */
    public Entry keep(Practice practice, boolean replace) {
        return folder.locked(
                () -> {
                    Optional<Entry> twin = twin(practice);
                    if (twin.isPresent() && !replace) {
                        throw new ShelfError(
                                ShelfError.Kind.CHANGED,
                                "is kept already, as \"" + twin.get().id() + "\"",
                                "practice from " + practice.clip().name(),
                                "say that it shall be replaced to put this in its place");
                    }
                    String id = twin.map(Entry::id).orElseGet(() -> freeId(practice));
                    String text = PracticeJson.write(practice);
                    // What could not be read again is no record.
                    PracticeJson.read(text);
                    folder.put(id, text.getBytes(StandardCharsets.UTF_8));
                    return new Entry(id, practice);
                });
    }

    /** Keeps a record and a copy of its film. */
    public Entry keep(Practice practice, boolean replace, Path film) {
        Entry entry = keep(practice.withFilm(), replace);
        folder.locked(
                () -> {
                    copy(film, film(entry.practice()));
                    return entry;
                });
        return entry;
    }

    /** Where the film of a record stands that was kept with it. */
    public Path film(Practice practice) {
        String name = practice.clip().name();
        int dot = name.lastIndexOf('.');
        String ending = dot < 0 ? "" : name.substring(dot).toLowerCase(Locale.ROOT);
        String plain = ending.matches("\\.[a-z0-9]{1,5}") ? ending : "";
        return folder.path().resolve(FILMS).resolve(practice.clip().sha256() + plain);
    }

    private static void copy(Path from, Path to) {
        try {
            Files.createDirectories(to.resolveSibling("."));
            try (InputStream in = Files.newInputStream(from);
                    Landing landing = Landing.at(to)) {
                byte[] piece = new byte[PIECE];
                for (int read = in.read(piece); read >= 0; read = in.read(piece)) {
                    landing.write(Arrays.copyOf(piece, read));
                }
                landing.land();
            }
        } catch (IOException failed) {
            throw Landing.cannot(to, failed);
        }
    }

    /** Puts records in the log that are not there yet; those that are stay. */
    public List<Entry> addAll(List<Practice> records) {
        List<Entry> all = new ArrayList<>();
        for (Practice practice : records) {
            all.add(twin(practice).orElseGet(() -> keep(practice, false)));
        }
        return List.copyOf(all);
    }

    /** Clears away what a run that was killed left in the folder; what to tell of it. */
    public Optional<String> sweep() {
        return Litter.sweep(folder.path()).told();
    }

    private String freeId(Practice practice) {
        String day = practice.date().atZone(ZoneOffset.UTC).toLocalDate().toString();
        String wanted = day + "-" + Shelf.slug(practice.name());
        String id = wanted;
        for (int i = 2; folder.has(id); i++) {
            id = wanted + "-" + i;
        }
        return id;
    }
}
