package deferent.record;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;
import java.util.regex.Pattern;

/**
 * The saved patterns and the user's own motions: a folder that the user can see and keep in git,
 * one readable JSON file a document, named after it.
 *
 * <p>A document is written whole or not at all: to a hidden file beside its place, forced to the
 * disk, then moved there in one step. Whoever saves says which revision they had seen; where
 * another tab, process or hand has changed the file since, the save is refused and both versions
 * stay, one on the shelf, one with the caller. Looking and moving happen under a lock on the file
 * {@value #LOCK}, so two processes cannot pass each other in between.
 *
 * <p>Files that cannot be read are listed with their error, and never written over or hidden.
 */
public final class Shelf {
    /** No shelf holds more files. */
    public static final int MOST_FILES = 5000;

    private static final String LOCK = ".lock";
    private static final String SUFFIX = ".json";
    private static final Pattern PLACE =
            Pattern.compile("[^./\\\\:*?\"<>|\\p{Cntrl}][^/\\\\:*?\"<>|\\p{Cntrl}]{0,99}");
    private static final Pattern RESERVED = Pattern.compile("con|prn|aux|nul|(com|lpt)[0-9]");

    // A file lock belongs to the whole process; threads of one process queue here first.
    private static final Map<Path, ReentrantLock> IN_PROCESS = new ConcurrentHashMap<>();

    private final Path folder;

    private Shelf(Path folder) {
        this.folder = folder.toAbsolutePath().normalize();
    }

    /** The shelf in a folder, which is made when the first document is saved. */
    public static Shelf at(Path folder) {
        return new Shelf(folder);
    }

    /** The folder in $DEFERENT_SHELF, else deferent-shelf in the user's home. */
    public static Path usualFolder() {
        String said = System.getenv("DEFERENT_SHELF");
        return said == null || said.isBlank()
                ? Path.of(System.getProperty("user.home"), "deferent-shelf")
                : Path.of(said);
    }

    public Path folder() {
        return folder;
    }

    /** The file of a place, whether it is there or not. */
    public Path file(String id) {
        if (!PLACE.matcher(id).matches()) {
            throw new ShelfError(
                    ShelfError.Kind.NAME,
                    "is no name on the shelf",
                    "\"" + id + "\"",
                    "give a name as shelf list shows it, without folders");
        }
        return folder.resolve(id + SUFFIX);
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
        for (String id : ids()) {
            try {
                byte[] bytes = bytes(id);
                String revision = revision(bytes);
                try {
                    entries.add(
                            new Entry(
                                    id,
                                    revision,
                                    Optional.of(parsed(id, bytes)),
                                    Optional.empty()));
                } catch (DocumentError broken) {
                    entries.add(
                            new Entry(
                                    id,
                                    revision,
                                    Optional.empty(),
                                    Optional.of(String.valueOf(broken.getMessage()))));
                }
            } catch (ShelfError gone) {
                if (gone.kind() != ShelfError.Kind.MISSING) {
                    entries.add(
                            new Entry(
                                    id,
                                    "",
                                    Optional.empty(),
                                    Optional.of(String.valueOf(gone.getMessage()))));
                }
            }
        }
        return List.copyOf(entries);
    }

    private List<String> ids() {
        List<String> ids = new ArrayList<>();
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*" + SUFFIX)) {
            for (Path file : files) {
                String name = file.getFileName().toString();
                String id = name.substring(0, name.length() - SUFFIX.length());
                if (PLACE.matcher(id).matches()) {
                    ids.add(id);
                }
            }
        } catch (NoSuchFileException none) {
            return List.of();
        } catch (IOException unreadable) {
            throw trouble("cannot be listed", unreadable);
        }
        if (ids.size() > MOST_FILES) {
            throw new ShelfError(
                    ShelfError.Kind.SIZE,
                    "holds " + ids.size() + " files",
                    folder.toString(),
                    "keep at most " + MOST_FILES + ", in several folders if need be");
        }
        ids.sort(Comparator.naturalOrder());
        return ids;
    }

    /** The document of that place. */
    public Kept load(String id) {
        byte[] bytes = bytes(id);
        return new Kept(id, revision(bytes), parsed(id, bytes));
    }

    /** The document of that id, or else the one of that name. */
    public Optional<Kept> find(String idOrName) {
        if (PLACE.matcher(idOrName).matches() && Files.isRegularFile(file(idOrName))) {
            return Optional.of(load(idOrName));
        }
        return list().stream()
                .filter(
                        e ->
                                e.document()
                                        .filter(d -> d.name().equalsIgnoreCase(idOrName))
                                        .isPresent())
                .findFirst()
                .map(e -> load(e.id()));
    }

    /** Saves as a new document, under a free place named after it. */
    public Kept saveNew(Document document) {
        return locked(
                () -> {
                    String id = freeId(slug(document.name()));
                    return put(id, document);
                });
    }

    /** Saves at a place of the caller's choice that must be free. */
    public Kept saveNew(String id, Document document) {
        Path file = file(slug(id));
        return locked(
                () -> {
                    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
                        throw changed(stem(file), "is taken", "save under another name");
                    }
                    return put(stem(file), document);
                });
    }

    /**
     * Saves over the revision that the caller had seen; refused where the file is no longer that
     * one, or holds something this deferent cannot read.
     */
    public Kept save(String id, Document document, String seenRevision) {
        return locked(
                () -> {
                    checkSeen(id, seenRevision);
                    return put(id, document);
                });
    }

    /** Removes the revision that the caller had seen. */
    public void remove(String id, String seenRevision) {
        locked(
                () -> {
                    checkSeen(id, seenRevision);
                    try {
                        Files.delete(file(id));
                        forceFolder();
                    } catch (IOException stays) {
                        throw trouble("cannot remove " + id, stays);
                    }
                    return id;
                });
    }

    private void checkSeen(String id, String seenRevision) {
        byte[] there;
        try {
            there = bytes(id);
        } catch (ShelfError error) {
            if (error.kind() == ShelfError.Kind.MISSING) {
                throw changed(
                        id,
                        "has been removed since you opened it",
                        "save it as a new one to keep yours");
            }
            throw error;
        }
        if (!revision(there).equals(seenRevision)) {
            throw changed(
                    id,
                    "has been changed since you opened it",
                    "open it again, or save yours under another name to keep both");
        }
        parsed(id, there);
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
        return locked(
                () -> {
                    List<Entry> there = list();
                    if (there.size() + documents.size() > MOST_FILES) {
                        throw new ShelfError(
                                ShelfError.Kind.SIZE,
                                "would hold more than " + MOST_FILES + " files",
                                folder.toString(),
                                "import into a folder of its own");
                    }
                    List<Kept> kept = new ArrayList<>();
                    for (Document document : documents) {
                        Optional<Entry> same =
                                there.stream()
                                        .filter(
                                                e ->
                                                        e.document()
                                                                .filter(document::equals)
                                                                .isPresent())
                                        .findFirst();
                        kept.add(
                                same.isPresent()
                                        ? new Kept(same.get().id(), same.get().revision(), document)
                                        : put(freeId(slug(document.name())), document));
                    }
                    return List.copyOf(kept);
                });
    }

    /** The user's own named motions that can be read. */
    public List<MotionDocument> motionDocuments() {
        return list().stream()
                .flatMap(entry -> entry.document().stream())
                .filter(MotionDocument.class::isInstance)
                .map(MotionDocument.class::cast)
                .toList();
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
        for (int i = 2; Files.exists(file(id), LinkOption.NOFOLLOW_LINKS); i++) {
            id = wanted + "-" + i;
        }
        return id;
    }

    private static String stem(Path file) {
        String name = file.getFileName().toString();
        return name.substring(0, name.length() - SUFFIX.length());
    }

    private byte[] bytes(String id) {
        Path file = file(id);
        try {
            if (!Files.isRegularFile(file)
                    || !file.toRealPath().getParent().equals(folder.toRealPath())) {
                throw missing(id);
            }
            if (Files.size(file) > 4L * PatternJson.MOST_CHARACTERS) {
                throw new ShelfError(
                        ShelfError.Kind.SIZE,
                        "is " + Files.size(file) + " bytes long",
                        file.toString(),
                        "a document has at most " + PatternJson.MOST_CHARACTERS + " characters");
            }
            return Files.readAllBytes(file);
        } catch (NoSuchFileException gone) {
            throw missing(id);
        } catch (IOException unreadable) {
            throw trouble("cannot read " + id, unreadable);
        }
    }

    private static ShelfError missing(String id) {
        return new ShelfError(
                ShelfError.Kind.MISSING,
                "is not on the shelf",
                "\"" + id + "\"",
                "give a name that shelf list shows");
    }

    private Document parsed(String id, byte[] bytes) {
        String source = file(id).getFileName().toString();
        try {
            String text =
                    StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
            return PatternJson.read(text);
        } catch (CharacterCodingException notUtf8) {
            throw DocumentError.at("", "is not UTF-8 text", "save it as UTF-8").from(source);
        } catch (DocumentError error) {
            throw error.from(source);
        }
    }

    private Kept put(String id, Document document) {
        byte[] bytes = PatternJson.write(document).getBytes(StandardCharsets.UTF_8);
        Path file = file(id);
        Path beside = folder.resolve("." + id + ".tmp");
        try {
            try (FileChannel channel =
                    FileChannel.open(
                            beside,
                            StandardOpenOption.CREATE,
                            StandardOpenOption.TRUNCATE_EXISTING,
                            StandardOpenOption.WRITE)) {
                ByteBuffer left = ByteBuffer.wrap(bytes);
                while (left.hasRemaining()) {
                    channel.write(left);
                }
                channel.force(true);
            }
            Files.move(
                    beside,
                    file,
                    StandardCopyOption.ATOMIC_MOVE,
                    StandardCopyOption.REPLACE_EXISTING);
            forceFolder();
        } catch (AtomicMoveNotSupportedException cannot) {
            throw trouble("cannot move a file in one step", cannot);
        } catch (IOException failed) {
            throw trouble("cannot save " + id, failed);
        }
        return new Kept(id, revision(bytes), document);
    }

    // Makes the move itself last through a power cut; some systems cannot open a folder.
    private void forceFolder() {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException notHere) {
            // The file's own bytes are already forced.
        }
    }

    private <T> T locked(Supplier<T> work) {
        try {
            Files.createDirectories(folder);
        } catch (FileAlreadyExistsException file) {
            throw new ShelfError(
                    ShelfError.Kind.FOLDER,
                    "is a file",
                    folder.toString(),
                    "name a folder for the shelf");
        } catch (IOException cannot) {
            throw trouble("cannot be made", cannot);
        }
        ReentrantLock inProcess =
                IN_PROCESS.computeIfAbsent(realFolder(), f -> new ReentrantLock());
        inProcess.lock();
        try {
            if (inProcess.getHoldCount() > 1) {
                return work.get();
            }
            try (FileChannel channel =
                            FileChannel.open(
                                    folder.resolve(LOCK),
                                    StandardOpenOption.CREATE,
                                    StandardOpenOption.WRITE);
                    FileLock lock = channel.lock()) {
                return lock.isValid() ? work.get() : lost();
            } catch (IOException cannot) {
                throw trouble("cannot be locked", cannot);
            }
        } finally {
            inProcess.unlock();
        }
    }

    private <T> T lost() {
        throw trouble("cannot be locked", new IOException("the lock is not valid"));
    }

    private Path realFolder() {
        try {
            return folder.toRealPath();
        } catch (IOException gone) {
            throw trouble("cannot be found", gone);
        }
    }

    private ShelfError trouble(String what, IOException cause) {
        ShelfError error =
                new ShelfError(
                        ShelfError.Kind.FOLDER,
                        what
                                + " ("
                                + cause.getClass().getSimpleName()
                                + ": "
                                + cause.getMessage()
                                + ")",
                        "shelf " + folder,
                        "see that the folder is there and yours to write, or name another");
        error.initCause(cause);
        return error;
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
