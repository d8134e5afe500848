package deferent.record;

import deferent.motion.phrase.Lexicon;
import deferent.record.landing.Landing;
import deferent.record.landing.Litter;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.text.Normalizer;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The saved patterns, sets, songs and the user's own motions: a folder that the user can see and
 * keep in git, one readable JSON file a document, named after it.
 *
 * <p>Whoever saves says which revision they had seen; where another tab, process or hand has
 * changed the file since, the save is refused and both versions stay, one on the shelf, one with
 * the caller. A crash in the middle of a save leaves the old file.
 *
 * <p>Files that cannot be read, those of a newer format among them, are listed with their error,
 * and never hidden, written over or removed.
 */
public final class Shelf {
    private static final Pattern RESERVED = Pattern.compile("con|prn|aux|nul|(com|lpt)[0-9]");

    private final Folder folder;

    private Shelf(Folder folder) {
        this.folder = folder;
    }

    /** The shelf in a folder, which is made when the first document is saved. */
    public static Shelf at(Path folder) {
        return at(folder, Landing.NEW);
    }

    static Shelf at(Path folder, Landing.Opening opening) {
        return new Shelf(new Folder(folder, opening));
    }

    /** The folder in $DEFERENT_SHELF, else deferent-shelf in the user's home. */
    public static Path usualFolder() {
        String said = System.getenv("DEFERENT_SHELF");
        return said == null || said.isBlank()
                ? Path.of(System.getProperty("user.home"), "deferent-shelf")
                : Path.of(said);
    }

    public Path folder() {
        return folder.path();
    }

    /** The file of a place, whether it is there or not. */
    public Path file(String id) {
        return folder.file(id);
    }

    /**
     * One file on the shelf.
     *
     * @param revision hash of its bytes, empty where they cannot be read
     * @param document what it holds; empty where that cannot be read, then error says why
     */
    public record Entry(
            String id, String revision, Optional<Document> document, Optional<String> error) {}

    /**
     * What is in the shelf's folder.
     *
     * @param entries the documents by id, those that cannot be read among them
     * @param others files that cannot be documents, or are too many
     * @param beyond how many files may be documents, but are too many
     */
    public record Listing(List<Entry> entries, List<NotListed> others, int beyond) {
        public Listing {
            entries = List.copyOf(entries);
            others = List.copyOf(others);
        }

        /** The documents that can be read. */
        public List<Kept> kept() {
            return entries.stream()
                    .flatMap(e -> e.document().stream().map(d -> new Kept(e.id(), e.revision(), d)))
                    .toList();
        }

        public List<PatternDocument> patterns() {
            return PatternDocument.among(kept().stream().map(Kept::document).toList());
        }

        /** Every file that is not on the shelf, with the reason. */
        public List<NotListed> notListed() {
            List<NotListed> all = new ArrayList<>(others);
            for (Entry entry : entries) {
                entry.error().ifPresent(why -> all.add(new NotListed(entry.id() + ".json", why)));
            }
            all.sort(Comparator.comparing(NotListed::file));
            return List.copyOf(all);
        }

        /** The user's own words, every motion that could be read. */
        public OwnWords words() {
            Lexicon lexicon = Lexicon.EMPTY;
            for (Entry entry : entries) {
                if (entry.document().orElse(null) instanceof MotionDocument motion) {
                    lexicon = motion.in(lexicon);
                }
            }
            return new OwnWords(
                    lexicon,
                    beyond == 0
                            ? Optional.empty()
                            : Optional.of(
                                    "The shelf's own names are not all known: it has "
                                            + beyond
                                            + " documents more than the "
                                            + PatternJson.MOST_DOCUMENTS
                                            + " that are read."));
        }
    }

    /**
     * Reads the folder. No more than {@link PatternJson#MOST_DOCUMENTS} documents are listed, the
     * first by id; one of any other id can still be loaded.
     */
    public Listing look() {
        Folder.Contents contents = folder.contents();
        List<String> ids = contents.ids();
        List<NotListed> others = new ArrayList<>(contents.others());
        int beyond = Math.max(0, ids.size() - PatternJson.MOST_DOCUMENTS);
        if (beyond > 0) {
            others.add(
                    new NotListed(
                            ids.get(PatternJson.MOST_DOCUMENTS) + ".json",
                            "and every file after it, "
                                    + beyond
                                    + " in all, are beyond the "
                                    + PatternJson.MOST_DOCUMENTS
                                    + " documents that a shelf lists"));
            ids = ids.subList(0, PatternJson.MOST_DOCUMENTS);
        }
        List<Entry> entries = new ArrayList<>();
        ids.forEach(id -> entry(id, Lexicon.EMPTY).ifPresent(entries::add));
        // A pattern that gives its phrase alone may say a motion that stands further down.
        Lexicon words = new Listing(entries, List.of(), 0).words().lexicon();
        if (!words.motions().isEmpty()) {
            entries.replaceAll(e -> e.document().isPresent() ? e : entry(e.id(), words).orElse(e));
        }
        return new Listing(entries, others, beyond);
    }

    /** One that went away since the folder was listed is simply not there. */
    private Optional<Entry> entry(String id, Lexicon words) {
        String revision = "";
        try {
            byte[] bytes = folder.bytes(id);
            revision = revision(bytes);
            Document document = parsed(id, bytes, words);
            return Optional.of(new Entry(id, revision, Optional.of(document), Optional.empty()));
        } catch (DocumentError broken) {
            return unread(id, revision, broken.in("").getMessage());
        } catch (ShelfError broken) {
            return folder.has(id)
                    ? unread(id, revision, broken.what() + "; " + broken.right())
                    : Optional.empty();
        }
    }

    private static Optional<Entry> unread(String id, String revision, @Nullable String why) {
        return Optional.of(
                new Entry(id, revision, Optional.empty(), Optional.of(String.valueOf(why))));
    }

    /** The documents on the shelf by id, the unreadable included. */
    public List<Entry> list() {
        return look().entries();
    }

    /**
     * When a document was last changed, as the file system says it; empty where it is gone. A copy
     * of the folder may have other times than the folder.
     */
    public Optional<Instant> changed(String id) {
        return folder.changed(id);
    }

    private void room(int more) {
        int there = folder.count();
        if (more > 0 && there + more > PatternJson.MOST_DOCUMENTS) {
            throw new ShelfError(
                    ShelfError.Kind.SIZE,
                    "is full: it holds "
                            + there
                            + " documents, and "
                            + (more == 1 ? "one" : more)
                            + " more would be beyond "
                            + PatternJson.MOST_DOCUMENTS,
                    "shelf " + folder.path(),
                    "remove some, or keep another shelf in a folder of its own");
        }
    }

    /** The document of that place. */
    public Kept load(String id) {
        byte[] bytes = folder.bytes(id);
        try {
            return new Kept(id, revision(bytes), parsed(id, bytes, Lexicon.EMPTY));
        } catch (DocumentError phraseOrBroken) {
            return new Kept(id, revision(bytes), parsed(id, bytes, words().lexicon()));
        }
    }

    /** The document of that id, or else of that name in any case of letters. */
    public Optional<Kept> find(String idOrName) {
        if (folder.has(idOrName)) {
            return Optional.of(load(idOrName));
        }
        return list().stream()
                .filter(e -> e.document().filter(d -> named(d, idOrName)).isPresent())
                .findFirst()
                .map(e -> load(e.id()));
    }

    private static boolean named(Document document, String name) {
        return document.name().equalsIgnoreCase(name);
    }

    /** Saves as a new document, at a free place named after it. */
    public Kept saveNew(Document document) {
        return folder.locked(() -> putNew(freeId(slug(document.name())), document));
    }

    /** Saves at a place of the caller's choice, which must be free. */
    public Kept saveNew(String id, Document document) {
        String place = slug(id);
        return folder.locked(
                () -> {
                    if (folder.has(place)) {
                        throw changed(place, "is taken", "save it under another name");
                    }
                    return putNew(place, document);
                });
    }

    private Kept putNew(String id, Document document) {
        room(1);
        return put(id, document);
    }

    /**
     * Saves over the revision that the caller had seen; refused where the file is no longer that
     * one, or holds something that cannot be read here.
     */
    public Kept save(String id, Document document, String seenRevision) {
        return folder.locked(
                () -> {
                    checkSeen(id, seenRevision);
                    return put(id, document);
                });
    }

    /** Removes the revision that the caller had seen. */
    public void remove(String id, String seenRevision) {
        folder.locked(
                () -> {
                    checkSeen(id, seenRevision);
                    folder.delete(id);
                    return id;
                });
    }

    private void checkSeen(String id, String seenRevision) {
        if (!folder.has(id) && Folder.canBe(id)) {
            throw changed(
                    id, "is not on the shelf, or no longer", "save it as a new one to keep yours");
        }
        byte[] there = folder.bytes(id);
        load(id);
        if (!revision(there).equals(seenRevision)) {
            throw changed(
                    id,
                    "has been changed since you opened it",
                    "open it again, or save yours under another name to keep both");
        }
    }

    private static ShelfError changed(String id, String what, String right) {
        return new ShelfError(ShelfError.Kind.CHANGED, what, "\"" + id + "\"", right);
    }

    /**
     * Every readable document as one text, which {@link #importAll} takes; refused where it would
     * not.
     */
    public String exportAll() {
        return PatternJson.writeBundle(
                look().kept().stream().map(kept -> kept.document().shared()).toList());
    }

    /**
     * Puts the documents of a bundle, or a single document, on the shelf. One that stands there
     * already, the same to the last key, is left; one whose name is taken gets a place of its own.
     */
    public List<Kept> importAll(String text) {
        return putAll(PatternJson.readBundle(text, words().lexicon()));
    }

    /**
     * As {@link #importAll}, of documents already read. A set among them finds its patterns where
     * they are put, if they come along.
     */
    public List<Kept> putAll(List<? extends Document> documents) {
        return folder.locked(
                () -> {
                    Map<Document, Kept> there = new HashMap<>();
                    for (Kept kept : look().kept()) {
                        there.putIfAbsent(kept.document(), kept);
                        there.putIfAbsent(kept.document().shared(), kept);
                    }
                    Landed landed = new Landed(new HashMap<>());
                    documents.forEach(
                            d -> Optional.ofNullable(there.get(d)).ifPresent(landed::add));
                    room(
                            (int)
                                    documents.stream()
                                            .map(landed::found)
                                            .distinct()
                                            .filter(d -> !there.containsKey(d))
                                            .count());
                    Map<Document, Kept> kept = new HashMap<>();
                    try {
                        for (Document document : setsLast(documents)) {
                            Kept one =
                                    there.computeIfAbsent(
                                            landed.found(document),
                                            d -> put(freeId(slug(d.name())), d));
                            kept.put(document, one);
                            landed.add(one);
                        }
                    } catch (ShelfError failed) {
                        throw failed.after(kept.size(), documents.size());
                    }
                    return documents.stream().map(kept::get).toList();
                });
    }

    private static List<Document> setsLast(List<? extends Document> documents) {
        return documents.stream()
                .<Document>map(d -> d)
                .sorted(Comparator.comparing(SetDocument.class::isInstance))
                .toList();
    }

    /** Where the patterns that came together were put, by name. */
    private record Landed(Map<String, List<String>> ids) {
        void add(Kept kept) {
            if (kept.document() instanceof PatternDocument pattern) {
                ids.computeIfAbsent(pattern.name(), n -> new ArrayList<>()).add(kept.id());
            }
        }

        Document found(Document document) {
            return document instanceof SetDocument set ? set.withEach(this::found) : document;
        }

        private SetStep found(SetStep step) {
            if (step.what() instanceof SetStep.OfShelf said) {
                List<String> places = ids.getOrDefault(said.name(), List.of(said.id()));
                if (!places.contains(said.id())) {
                    return step.with(new SetStep.OfShelf(places.get(0), said.name()));
                }
            }
            return step;
        }
    }

    /**
     * The user's own words for phrases: every named motion on the shelf. A shelf that cannot be
     * read gives none and says why, since a phrase is read without it.
     */
    public OwnWords words() {
        try {
            return look().words();
        } catch (ShelfError unreadable) {
            return new OwnWords(
                    Lexicon.EMPTY,
                    Optional.of(
                            "The shelf's own names are not known: "
                                    + unreadable.where()
                                    + " "
                                    + unreadable.what()
                                    + "."));
        }
    }

    /** Clears away what a run that was killed left in the folder; what to tell of it. */
    public Optional<String> sweep() {
        return Litter.sweep(folder.path()).told();
    }

    /** A name as a file can have it: lower-case letters and digits, joined by hyphens. */
    public static String slug(String name) {
        String plain =
                Normalizer.normalize(name, Normalizer.Form.NFD)
                        .replaceAll("\\p{M}", "")
                        .toLowerCase(Locale.ROOT)
                        .replaceAll("[^a-z0-9]+", "-")
                        .replaceAll("^-+|-+$", "");
        String bounded = plain.substring(0, Math.min(plain.length(), 60)).replaceAll("-+$", "");
        return bounded.isEmpty() || RESERVED.matcher(bounded).matches()
                ? ("pattern-" + bounded).replaceAll("-$", "")
                : bounded;
    }

    private String freeId(String wanted) {
        String id = wanted;
        for (int i = 2; folder.has(id); i++) {
            id = wanted + "-" + i;
        }
        return id;
    }

    private Document parsed(String id, byte[] bytes, Lexicon words) {
        String source = String.valueOf(file(id).getFileName());
        try {
            return PatternJson.read(
                    StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString(),
                    words);
        } catch (CharacterCodingException notUtf8) {
            throw DocumentError.at("", "is not UTF-8 text", "save it as UTF-8").in(source);
        } catch (DocumentError error) {
            throw error.in(source);
        }
    }

    private Kept put(String id, Document document) {
        String text = PatternJson.write(document);
        // What could not be read again is no save; the bounds of values and of documents differ.
        try {
            PatternJson.read(text);
        } catch (DocumentError wrong) {
            throw wrong.in("\"" + document.name() + "\"");
        }
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        folder.put(id, bytes);
        return new Kept(id, revision(bytes), document);
    }

    private static String revision(byte[] bytes) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(bytes);
            return HexFormat.of().formatHex(hash, 0, 16);
        } catch (NoSuchAlgorithmException none) {
            throw new IllegalStateException("every JDK has SHA-256", none);
        }
    }
}
