package deferent.record;

import deferent.motion.phrase.Lexicon;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The saved patterns and the user's own motions: a folder that the user can see and keep in git,
 * one readable JSON file a document, named after it.
 *
 * <p>Whoever saves says which revision they had seen; where another tab, process or hand has
 * changed the file since, the save is refused and both versions stay, one on the shelf, one with
 * the caller. A crash in the middle of a save leaves the old file.
 *
 * <p>Files that cannot be read, those of a newer format among them, are listed with their error,
 * and never hidden, written over or removed.
 */
public final class Shelf {
    /** No shelf holds more documents. */
    public static final int MOST_FILES = 5000;

    private static final Pattern RESERVED = Pattern.compile("con|prn|aux|nul|(com|lpt)[0-9]");

    private final Folder folder;

    private Shelf(Folder folder) {
        this.folder = folder;
    }

    /** The shelf in a folder, which is made when the first document is saved. */
    public static Shelf at(Path folder) {
        return new Shelf(new Folder(folder));
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

    /** Everything on the shelf by id, the unreadable included. */
    public List<Entry> list() {
        List<Entry> entries = new ArrayList<>();
        List<String> ids = folder.ids();
        bounded(ids.size());
        for (String id : ids) {
            String revision = "";
            try {
                byte[] bytes = folder.bytes(id);
                revision = revision(bytes);
                Document document = parsed(id, bytes);
                entries.add(new Entry(id, revision, Optional.of(document), Optional.empty()));
            } catch (DocumentError | ShelfError broken) {
                // One that went away since the folder was listed is simply not there.
                if (folder.has(id)) {
                    Optional<String> why = Optional.of(String.valueOf(broken.getMessage()));
                    entries.add(new Entry(id, revision, Optional.empty(), why));
                }
            }
        }
        return List.copyOf(entries);
    }

    private void bounded(int files) {
        if (files > MOST_FILES) {
            throw new ShelfError(
                    ShelfError.Kind.SIZE,
                    "would hold " + files + " documents",
                    folder.path().toString(),
                    "keep at most " + MOST_FILES + " in one folder");
        }
    }

    /** The document of that place. */
    public Kept load(String id) {
        byte[] bytes = folder.bytes(id);
        return new Kept(id, revision(bytes), parsed(id, bytes));
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
        return folder.locked(() -> put(freeId(slug(document.name())), document));
    }

    /** Saves at a place of the caller's choice, which must be free. */
    public Kept saveNew(String id, Document document) {
        String place = slug(id);
        return folder.locked(
                () -> {
                    if (folder.has(place)) {
                        throw changed(place, "is taken", "save it under another name");
                    }
                    return put(place, document);
                });
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
        parsed(id, there);
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

    /** Every readable document as one text. */
    public String exportAll() {
        return PatternJson.writeBundle(
                list().stream().flatMap(entry -> entry.document().stream()).toList());
    }

    /**
     * Puts the documents of a bundle, or a single document, on the shelf. One that stands there
     * already, the same to the last key, is left; one whose name is taken gets a place of its own.
     */
    public List<Kept> importAll(String text) {
        return putAll(PatternJson.readBundle(text));
    }

    /** As {@link #importAll}, of documents already read. */
    public List<Kept> putAll(List<? extends Document> documents) {
        return folder.locked(
                () -> {
                    List<Entry> there = list();
                    bounded(there.size() + documents.size());
                    List<Kept> kept = new ArrayList<>();
                    for (Document document : documents) {
                        kept.add(
                                there.stream()
                                        .filter(e -> e.document().equals(Optional.of(document)))
                                        .findFirst()
                                        .map(e -> new Kept(e.id(), e.revision(), document))
                                        .orElseGet(
                                                () ->
                                                        put(
                                                                freeId(slug(document.name())),
                                                                document)));
                    }
                    return List.copyOf(kept);
                });
    }

    /** The named motions on the shelf that can be read. */
    public List<MotionDocument> motionDocuments() {
        return list().stream()
                .flatMap(entry -> entry.document().stream())
                .filter(MotionDocument.class::isInstance)
                .map(MotionDocument.class::cast)
                .toList();
    }

    /** The user's own words for phrases: every named motion on the shelf. */
    public Lexicon motions() {
        Lexicon lexicon = Lexicon.EMPTY;
        for (MotionDocument motion : motionDocuments()) {
            lexicon = motion.in(lexicon);
        }
        return lexicon;
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

    private Document parsed(String id, byte[] bytes) {
        String source = String.valueOf(file(id).getFileName());
        try {
            return PatternJson.read(
                    StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString());
        } catch (CharacterCodingException notUtf8) {
            throw DocumentError.at("", "is not UTF-8 text", "save it as UTF-8").in(source);
        } catch (DocumentError error) {
            throw error.in(source);
        }
    }

    private Kept put(String id, Document document) {
        byte[] bytes = PatternJson.write(document).getBytes(StandardCharsets.UTF_8);
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
