package deferent.record;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;
import java.util.regex.Pattern;

/**
 * A folder of JSON files that is written whole or not at all, and locked while it is looked at and
 * changed: a lock on the file {@value #LOCK} between processes, a queue within one.
 */
final class Folder {
    private static final String LOCK = ".lock";
    private static final String SUFFIX = ".json";
    private static final long MOST_BYTES = 4L * PatternJson.MOST_CHARACTERS;

    // No folders, no hidden files, nothing that some file system cannot hold.
    private static final Pattern PLACE =
            Pattern.compile("[^./\\\\:*?\"<>|\\p{Cntrl}][^/\\\\:*?\"<>|\\p{Cntrl}]{0,99}");

    // A file lock belongs to the whole process; threads of one process queue here first.
    private static final Map<Path, ReentrantLock> IN_PROCESS = new ConcurrentHashMap<>();

    private final Path path;

    Folder(Path path) {
        this.path = path.toAbsolutePath().normalize();
    }

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
        return path.resolve(id + SUFFIX);
    }

    boolean has(String id) {
        return canBe(id) && Files.exists(file(id), LinkOption.NOFOLLOW_LINKS);
    }

    List<String> ids() {
        List<String> ids = new ArrayList<>();
        try (DirectoryStream<Path> files = Files.newDirectoryStream(path, "*" + SUFFIX)) {
            for (Path file : files) {
                String name = String.valueOf(file.getFileName());
                String id = name.substring(0, name.length() - SUFFIX.length());
                if (canBe(id)) {
                    ids.add(id);
                }
            }
        } catch (NoSuchFileException none) {
            return List.of();
        } catch (NotDirectoryException file) {
            throw noFolder();
        } catch (IOException unreadable) {
            throw trouble("cannot be listed", unreadable);
        }
        ids.sort(Comparator.naturalOrder());
        return ids;
    }

    byte[] bytes(String id) {
        Path file = file(id);
        try {
            if (!Files.isRegularFile(file)
                    || !path.toRealPath().equals(file.toRealPath().getParent())) {
                throw missing(id);
            }
            if (Files.size(file) > MOST_BYTES) {
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

    /** Puts a file in its place in one step; call it under the lock. */
    void put(String id, byte[] bytes) {
        Path file = file(id);
        Path beside = path.resolve("." + id + ".tmp");
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
            force();
        } catch (IOException failed) {
            throw trouble("cannot save " + id, failed);
        }
    }

    void delete(String id) {
        try {
            Files.delete(file(id));
            force();
        } catch (NoSuchFileException gone) {
            throw missing(id);
        } catch (IOException stays) {
            throw trouble("cannot remove " + id, stays);
        }
    }

    // Makes the move itself last through a power cut; some systems cannot open a folder.
    private void force() {
        try (FileChannel channel = FileChannel.open(path, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException notHere) {
            // The file's own bytes are already forced.
        }
    }

    /** Does the work while nobody else, in this process or another, changes the folder. */
    <T> T locked(Supplier<T> work) {
        make();
        ReentrantLock inProcess = IN_PROCESS.computeIfAbsent(real(), p -> new ReentrantLock());
        inProcess.lock();
        try (FileChannel channel =
                        FileChannel.open(
                                path.resolve(LOCK),
                                StandardOpenOption.CREATE,
                                StandardOpenOption.WRITE);
                FileLock lock = channel.lock()) {
            if (!lock.isValid()) {
                throw new IOException("the lock is not valid");
            }
            return work.get();
        } catch (IOException cannot) {
            throw trouble("cannot be locked", cannot);
        } finally {
            inProcess.unlock();
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

    private Path real() {
        try {
            return path.toRealPath();
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
                        "shelf " + path,
                        "see that the folder is there and yours to write, or name another");
        error.initCause(cause);
        return error;
    }
}
