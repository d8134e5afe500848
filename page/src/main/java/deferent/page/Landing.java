package deferent.page;

import deferent.motion.pairing.Refusal;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/**
 * Where a file will land: written beside its place under another name and moved there when it is
 * whole, so that what stood there before is either untouched or replaced, never half overwritten.
 */
public final class Landing implements AutoCloseable {
    /** How a file is opened for writing; tests open one that is full. */
    public interface Opening {
        FileChannel open(Path file) throws IOException;
    }

    public static final Opening NEW =
            file ->
                    FileChannel.open(
                            file,
                            StandardOpenOption.CREATE_NEW,
                            StandardOpenOption.READ,
                            StandardOpenOption.WRITE);

    private final Path target;
    private final Path beside;
    private final FileChannel channel;
    private boolean landed;

    private Landing(Path target, Path beside, FileChannel channel) {
        this.target = target;
        this.beside = beside;
        this.channel = channel;
    }

    /** A new file beside its place. */
    public static Landing at(Path target) {
        return at(target, NEW);
    }

    public static Landing at(Path target, Opening opening) {
        Path whole = target.toAbsolutePath();
        Path folder = whole.getParent();
        Path name = whole.getFileName();
        if (folder == null || name == null || Files.isDirectory(whole)) {
            throw new Refusal("is a folder", target.toString(), "give the name of a file");
        }
        if (!Files.isDirectory(folder)) {
            throw new Refusal(
                    "there is no folder " + folder,
                    target.toString(),
                    "make that folder first, or give another");
        }
        Path beside = folder.resolve("." + name + "." + UUID.randomUUID() + ".part");
        try {
            return new Landing(whole, beside, opening.open(beside));
        } catch (IOException e) {
            delete(beside);
            throw cannot(target, e);
        }
    }

    /** What is said of a file that cannot be written. */
    public static Refusal cannot(Path target, IOException why) {
        String told = why.getMessage();
        Refusal refusal =
                new Refusal(
                        "cannot be written"
                                + (told == null || why instanceof java.nio.file.FileSystemException
                                        ? because(why)
                                        : ": " + told),
                        target.toString(),
                        "make room there or give another place; what stood there before is"
                                + " untouched");
        refusal.initCause(why);
        return refusal;
    }

    private static String because(IOException why) {
        if (why instanceof java.nio.file.AccessDeniedException) {
            return ": the folder may not be written to";
        }
        if (why instanceof java.nio.file.FileSystemException system && system.getReason() != null) {
            return ": " + system.getReason();
        }
        return "";
    }

    public FileChannel channel() {
        return channel;
    }

    public long size() throws IOException {
        return channel.size();
    }

    /** Moves the whole file to its place. */
    public void land() throws IOException {
        channel.force(true);
        channel.close();
        try {
            Files.move(beside, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException plain) {
            Files.move(beside, target, StandardCopyOption.REPLACE_EXISTING);
        }
        landed = true;
    }

    @Override
    public void close() {
        try {
            channel.close();
        } catch (IOException e) {
            // Whatever could not be written any more is thrown away below.
            landed = false;
        }
        if (!landed) {
            delete(beside);
        }
    }

    private static void delete(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            file.toFile().deleteOnExit();
        }
    }
}
