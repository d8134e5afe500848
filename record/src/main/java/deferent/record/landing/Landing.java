package deferent.record.landing;

import deferent.motion.pairing.Refusal;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Where a file will land: written beside its place under a name of our own and moved there when it
 * is whole, so that what stood there before is either untouched or replaced, never half
 * overwritten. A link is followed: it stays, and what it leads to is replaced.
 */
public final class Landing implements AutoCloseable {
    static final String BEFORE = ".";
    static final String PART = ".part";
    static final String OLD = ".old";

    private static final int MOST_TRIES = 3;

    /** How a file is opened for writing; tests open one that is full. */
    public interface Opening {
        FileChannel open(Path file) throws IOException;
    }

    /** A new file as the user's files are, or as the one was that it replaces. */
    public static final Opening NEW =
            file ->
                    FileChannel.open(
                            file,
                            StandardOpenOption.CREATE_NEW,
                            StandardOpenOption.READ,
                            StandardOpenOption.WRITE);

    /** A new file for its owner's eyes alone, where the file system knows owners. */
    public static final Opening PRIVATE =
            file ->
                    file.getFileSystem().supportedFileAttributeViews().contains("posix")
                            ? FileChannel.open(
                                    file,
                                    Set.of(
                                            StandardOpenOption.CREATE_NEW,
                                            StandardOpenOption.READ,
                                            StandardOpenOption.WRITE),
                                    PosixFilePermissions.asFileAttribute(
                                            PosixFilePermissions.fromString("rw-------")))
                            : NEW.open(file);

    private final Path target;
    private final Claim claim;
    private final Path beside;
    private final FileChannel channel;
    private boolean landed;

    private Landing(Path target, Claim claim, Path beside, FileChannel channel) {
        this.target = target;
        this.claim = claim;
        this.beside = beside;
        this.channel = channel;
    }

    /** A new file beside its place. */
    public static Landing at(Path target) {
        return at(target, NEW);
    }

    public static Landing at(Path target, Opening opening) {
        try {
            return open(target, opening);
        } catch (IOException e) {
            throw cannot(target, e);
        }
    }

    /** As {@link #at}, for callers with words of their own for what goes wrong. */
    public static Landing open(Path target, Opening opening) throws IOException {
        Path place = place(target);
        Landing landing = begun(place, opening);
        // A sweeper may have come between the file and its lock, before the name says enough.
        for (int i = 1; i < MOST_TRIES && !Files.exists(landing.beside); i++) {
            landing.close();
            landing = begun(place, opening);
        }
        return landing;
    }

    private static Landing begun(Path place, Opening opening) throws IOException {
        Claim claim = Claim.held();
        Path beside = place.resolveSibling(BEFORE + claim.name() + PART);
        try {
            Landing landing = new Landing(place, claim, beside, opening.open(beside));
            Claim.lock(landing.channel);
            if (opening == NEW && Files.exists(place)) {
                likeBefore(place, beside);
            }
            return landing;
        } catch (IOException | RuntimeException e) {
            delete(beside);
            claim.letGo();
            throw e;
        }
    }

    // Whoever keeps a file to themselves finds its successor no more open than it was.
    private static void likeBefore(Path place, Path beside) throws IOException {
        if (place.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(beside, Files.getPosixFilePermissions(place));
        }
    }

    private static Path place(Path target) throws IOException {
        Path whole = target.toAbsolutePath();
        if (whole.getParent() == null || Files.isDirectory(whole)) {
            throw new Refusal("is a folder", target.toString(), "give the name of a file");
        }
        if (!Files.isDirectory(whole.getParent())) {
            throw new Refusal(
                    "there is no folder " + whole.getParent(),
                    target.toString(),
                    "make that folder first, or give another");
        }
        if (Files.exists(whole) && !Files.isRegularFile(whole)) {
            throw new Refusal(
                    "is a device or a pipe", target.toString(), "give the name of a plain file");
        }
        if (Files.exists(whole) && !Files.isWritable(whole)) {
            throw new Refusal(
                    "may not be written over", target.toString(), "give the name of another file");
        }
        if (Files.isSymbolicLink(whole)) {
            if (!Files.exists(whole)) {
                throw new Refusal(
                        "is a link that leads nowhere", target.toString(), "give another name");
            }
            return whole.toRealPath();
        }
        return whole;
    }

    /** What is said of a file that cannot be written. */
    public static Refusal cannot(Path target, IOException why) {
        String told = why.getMessage();
        Refusal refusal =
                new Refusal(
                        "cannot be written"
                                + (told == null || why instanceof FileSystemException
                                        ? because(why)
                                        : ": " + told),
                        target.toString(),
                        "make room there or give another place"
                                + (why instanceof NotPutBack
                                        ? ""
                                        : "; what stood there before is untouched"));
        refusal.initCause(why);
        return refusal;
    }

    private static String because(IOException why) {
        if (why instanceof AccessDeniedException) {
            return ": the folder may not be written to";
        }
        if (why instanceof FileSystemException system && system.getReason() != null) {
            return ": " + system.getReason();
        }
        return "";
    }

    /** Writes a whole file. */
    public static void write(Path target, byte[] bytes) {
        try (Landing landing = at(target)) {
            landing.write(bytes);
            landing.land();
        } catch (IOException e) {
            throw cannot(target, e);
        }
    }

    public FileChannel channel() {
        return channel;
    }

    /** Writes more of the file. */
    public void write(byte[] bytes) throws IOException {
        ByteBuffer left = ByteBuffer.wrap(bytes);
        while (left.hasRemaining()) {
            channel.write(left);
        }
    }

    public long size() throws IOException {
        return channel.size();
    }

    /** Moves the whole file to its place. */
    public void land() throws IOException {
        channel.force(true);
        // Still locked, so that nobody sweeps it on its way.
        move(beside, target);
        landed = true;
        settle(target.resolveSibling("."));
    }

    /**
     * Moves files to their places, all or none: where one cannot be moved, what stood in the places
     * of those before it is put back. A process killed between two moves leaves the first new and
     * the second old, and beside them what the first replaced.
     */
    public static void landTogether(List<Landing> files) throws IOException {
        for (Landing file : files) {
            file.channel.force(true);
        }
        List<Replaced> done = new ArrayList<>();
        try {
            for (Landing file : files) {
                done.add(file.landOver());
            }
        } catch (IOException failed) {
            for (Replaced replaced : done) {
                replaced.putBack(failed);
            }
            throw failed;
        }
        done.forEach(Replaced::forget);
    }

    private Replaced landOver() throws IOException {
        Replaced replaced = Replaced.of(target);
        try {
            land();
            return replaced;
        } catch (IOException failed) {
            replaced.forget();
            throw failed;
        }
    }

    /**
     * What stood in a place, under a name of its own until it is known whether it will be wanted.
     */
    private record Replaced(Path place, Claim claim, Optional<Path> old) {
        static Replaced of(Path place) throws IOException {
            Claim claim = Claim.held();
            if (!Files.isRegularFile(place)) {
                return new Replaced(place, claim, Optional.empty());
            }
            Path old = place.resolveSibling(BEFORE + claim.name() + OLD);
            try {
                Files.createLink(old, place);
            } catch (FileSystemException | UnsupportedOperationException noLinks) {
                Files.copy(place, old, StandardCopyOption.COPY_ATTRIBUTES);
            }
            return new Replaced(place, claim, Optional.of(old));
        }

        void putBack(IOException failed) throws IOException {
            try {
                if (old.isPresent()) {
                    move(old.get(), place);
                } else {
                    Files.deleteIfExists(place);
                }
                claim.letGo();
            } catch (IOException stays) {
                stays.addSuppressed(failed);
                throw new NotPutBack(place, old, stays);
            }
        }

        void forget() {
            old.ifPresent(Landing::delete);
            claim.letGo();
        }
    }

    private static final class NotPutBack extends IOException {
        private static final long serialVersionUID = 1L;

        NotPutBack(Path place, Optional<Path> old, IOException why) {
            super(
                    old.map(
                                    kept ->
                                            "what stood at "
                                                    + place
                                                    + " before is kept at "
                                                    + kept
                                                    + ", and could not be put back")
                            .orElse(place + " is new, and could not be taken away again"),
                    why);
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException plain) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** Makes a folder's moves and removals last through a power cut, where it can be opened. */
    public static void settle(Path folder) {
        try (FileChannel opened = FileChannel.open(folder, StandardOpenOption.READ)) {
            opened.force(true);
        } catch (IOException notHere) {
            // The file's own bytes are already forced.
        }
    }

    @Override
    public void close() {
        try {
            channel.close();
        } catch (IOException e) {
            // Whatever could not be written any more is thrown away below.
        }
        if (!landed) {
            delete(beside);
        }
        claim.letGo();
    }

    private static void delete(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            file.toFile().deleteOnExit();
        }
    }
}
