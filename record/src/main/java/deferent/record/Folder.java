package deferent.record;

import deferent.motion.pairing.Refusal;
import deferent.record.landing.FolderLock;
import deferent.record.landing.Landing;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Pattern;

/**
 * A folder of files with one ending, each written whole or not at all, and locked while it is
 * looked at and changed.
 */
final class Folder {
    private static final String JSON = ".json";
    static final long MOST_BYTES = 4L * PatternJson.MOST_CHARACTERS;

    private static final Set<String> OURS =
            Set.of(PracticeLog.FOLDER, PracticeLog.FILMS, Log.FOLDER);

    // No folders, no hidden files, nothing that some file system cannot hold.
    private static final Pattern PLACE =
            Pattern.compile("[^./\\\\:*?\"<>|\\p{Cntrl}][^/\\\\:*?\"<>|\\p{Cntrl}]{0,99}");

    private final Path path;
    private final Landing.Opening opening;
    private final String suffix;

    Folder(Path path, Landing.Opening opening) {
        this(path, opening, JSON);
    }

    Folder(Path path, Landing.Opening opening, String suffix) {
        this.path = path.toAbsolutePath().normalize();
        this.opening = opening;
        this.suffix = suffix;
    }

    /**
     * What is in the folder.
     *
     * @param ids of the files that may hold documents, in order
     * @param others files and folders that cannot, in order; hidden ones that are nobody's document
     *     are left out
     */
    record Contents(List<String> ids, List<NotListed> others) {}

    Path path() {
        return path;
    }

    static boolean canBe(String id) {
        return PLACE.matcher(id).matches();
    }

    Path file(String id) {
        if (!canBe(id)) {
            throw new ShelfError(
                    ShelfError.Kind.NAME,
                    "is no name on the shelf",
                    "\"" + id + "\"",
                    "give a name as shelf list shows it, without folders");
        }
        try {
            return path.resolve(id + suffix);
        } catch (InvalidPathException noLetters) {
            throw new ShelfError(
                    ShelfError.Kind.NAME,
                    "cannot be spelt in the encoding of this machine's file names",
                    "\"" + id + "\"",
                    "give another name, or set LANG to one that ends in UTF-8");
        }
    }

    boolean has(String id) {
        try {
            return Files.exists(file(id), LinkOption.NOFOLLOW_LINKS);
        } catch (ShelfError noName) {
            return false;
        }
    }

    Contents contents() {
        List<String> ids = new ArrayList<>();
        List<NotListed> others = new ArrayList<>();
        try (DirectoryStream<Path> files = Files.newDirectoryStream(path)) {
            for (Path file : files) {
                String name = String.valueOf(file.getFileName());
                Optional<String> why = why(file, name);
                if (why.isPresent()) {
                    others.add(new NotListed(name, why.get()));
                } else if (name.endsWith(suffix)) {
                    ids.add(name.substring(0, name.length() - suffix.length()));
                }
            }
        } catch (NoSuchFileException none) {
            return new Contents(List.of(), List.of());
        } catch (NotDirectoryException file) {
            throw noFolder();
        } catch (DirectoryIteratorException broken) {
            throw trouble("cannot be listed", Objects.requireNonNull(broken.getCause()));
        } catch (IOException unreadable) {
            throw trouble("cannot be listed", unreadable);
        }
        ids.sort(Comparator.naturalOrder());
        others.sort(Comparator.comparing(NotListed::file));
        return new Contents(ids, others);
    }

    /** Why a file cannot be a document; empty where it may be one, or is hidden from everybody. */
    private Optional<String> why(Path file, String name) {
        boolean ours = name.endsWith(suffix);
        if (name.startsWith(".")) {
            return ours ? Optional.of("its name begins with a dot") : Optional.empty();
        }
        if (Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS)) {
            return OURS.contains(name) ? Optional.empty() : Optional.of("is a folder");
        }
        if (!ours) {
            return Optional.of("its name does not end in " + suffix);
        }
        String id = name.substring(0, name.length() - suffix.length());
        if (!canBe(id)) {
            return Optional.of(
                    id.length() > 100
                            ? "its name is longer than 100 letters"
                            : "its name has a letter that not every system allows");
        }
        if (!found(id, file)) {
            return Optional.of("its name is not spelt in the encoding of this machine's names");
        }
        return plain(file)
                ? Optional.empty()
                : Optional.of(
                        Files.isSymbolicLink(file)
                                ? "is a link out of the folder"
                                : "is no plain file");
    }

    // Bytes that spell no letters here are shown somehow, but do not lead back to the file.
    private boolean found(String id, Path file) {
        try {
            return file(id).equals(file);
        } catch (ShelfError noName) {
            return false;
        }
    }

    /** Whether it is a file of this very folder, and no link to one elsewhere. */
    private boolean plain(Path file) {
        try {
            return Files.isRegularFile(file)
                    && path.toRealPath().equals(file.toRealPath().getParent());
        } catch (IOException leadsNowhere) {
            return false;
        }
    }

    /** How many files may hold documents. */
    int count() {
        return contents().ids().size();
    }

    /** When it was last written, as the file system has it; empty where it is gone. */
    Optional<Instant> changed(String id) {
        try {
            return Optional.of(Files.getLastModifiedTime(file(id)).toInstant());
        } catch (IOException gone) {
            return Optional.empty();
        }
    }

    byte[] bytes(String id) {
        Path file = file(id);
        try {
            if (!plain(file)) {
                throw missing(id);
            }
            if (Files.size(file) > MOST_BYTES) {
                throw new ShelfError(
                        ShelfError.Kind.SIZE,
                        "is " + Files.size(file) + " bytes long",
                        file.toString(),
                        "no file on the shelf has more than " + MOST_BYTES);
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

    /** Puts a file in its place in one step; call it under the lock. */
    void put(String id, byte[] bytes) {
        try (Landing landing = Landing.open(file(id), opening)) {
            landing.write(bytes);
            landing.land();
        } catch (IOException failed) {
            throw trouble("cannot save " + id, failed);
        } catch (Refusal refused) {
            throw new ShelfError(
                    ShelfError.Kind.FOLDER, refused.what(), refused.where(), refused.right());
        }
    }

    void delete(String id) {
        try {
            Files.delete(file(id));
            Landing.settle(path);
        } catch (NoSuchFileException gone) {
            throw missing(id);
        } catch (IOException stays) {
            throw trouble("cannot remove " + id, stays);
        }
    }

    /** Does the work while nobody else, in this process or another, changes the folder. */
    @SuppressWarnings("try") // the lock is held, not used
    <T> T locked(Supplier<T> work) {
        make();
        try (FolderLock lock = FolderLock.of(path)) {
            return work.get();
        } catch (IOException cannot) {
            throw trouble("cannot be locked", cannot);
        }
    }

    private void make() {
        try {
            Files.createDirectories(path);
        } catch (FileAlreadyExistsException file) {
            throw noFolder();
        } catch (IOException cannot) {
            throw trouble("cannot be made", cannot);
        }
    }

    private ShelfError noFolder() {
        return new ShelfError(
                ShelfError.Kind.FOLDER,
                "is a file",
                path.toString(),
                "name a folder for the shelf");
    }

    private ShelfError trouble(String what, IOException cause) {
        ShelfError error =
                new ShelfError(
                        ShelfError.Kind.FOLDER,
                        what + ": " + because(cause),
                        "shelf " + path,
                        "see that the folder is there and yours to write, or name another");
        error.initCause(cause);
        return error;
    }

    private static String because(IOException cause) {
        if (cause instanceof AccessDeniedException) {
            return "it may not be read or written";
        }
        if (cause instanceof FileSystemException system && system.getReason() != null) {
            return system.getReason();
        }
        return cause.getClass().getSimpleName() + ", " + cause.getMessage();
    }
}
