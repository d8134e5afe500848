package deferent.studio;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.AclEntry;
import java.nio.file.attribute.AclEntryPermission;
import java.nio.file.attribute.AclEntryType;
import java.nio.file.attribute.AclFileAttributeView;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * The files that lead a browser into the studio, in a folder of their own which only its owner may
 * enter. A browser is told to open such a file rather than an address, since what stands on a
 * command line can be read by every user of the machine.
 */
final class OpeningFolder implements AutoCloseable {
    private static final FileAttribute<?> OWNERS_FOLDER =
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------"));

    private static final FileAttribute<?> OWNERS_FILE =
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"));

    private Optional<Path> folder = Optional.empty();
    private int count;

    /** Writes a file that leads to an address. */
    synchronized Path write(URI address) {
        try {
            if (folder.isEmpty() || !Files.isDirectory(folder.get())) {
                folder = Optional.of(ownersFolder());
            }
            count++;
            Path file = folder.get().resolve("open-" + count + ".html");
            boolean posix =
                    Files.getFileAttributeView(folder.get(), PosixFileAttributeView.class) != null;
            // Made for its owner alone from the first moment, then written.
            try (var out =
                    Files.newByteChannel(
                            file,
                            Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE),
                            posix
                                    ? new FileAttribute<?>[] {OWNERS_FILE}
                                    : new FileAttribute<?>[0])) {
                out.write(java.nio.charset.StandardCharsets.UTF_8.encode(leading(address)));
            }
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Named after this process, so that what a killed one leaves can be told from what is in use.
     */
    private static Path ownersFolder() throws IOException {
        Path root = Path.of(System.getProperty("java.io.tmpdir"));
        Path folder =
                root.resolve("deferent-" + ProcessHandle.current().pid() + "-" + UUID.randomUUID());
        Path made =
                root.getFileSystem().supportedFileAttributeViews().contains("posix")
                        ? Files.createDirectory(folder, OWNERS_FOLDER)
                        : Files.createDirectory(folder);
        AclFileAttributeView list = Files.getFileAttributeView(made, AclFileAttributeView.class);
        if (list != null) {
            list.setAcl(
                    List.of(
                            AclEntry.newBuilder()
                                    .setType(AclEntryType.ALLOW)
                                    .setPrincipal(Files.getOwner(made))
                                    .setPermissions(EnumSet.allOf(AclEntryPermission.class))
                                    .setFlags(
                                            java.nio.file.attribute.AclEntryFlag.FILE_INHERIT,
                                            java.nio.file.attribute.AclEntryFlag.DIRECTORY_INHERIT)
                                    .build()));
        }
        return made;
    }

    private static String leading(URI address) {
        return """
               <!doctype html>
               <html lang="en">
               <meta charset="utf-8">
               <meta name="referrer" content="no-referrer">
               <title>Opening the Deferent studio</title>
               <meta http-equiv="refresh" content="0;url=%1$s">
               <p><a href="%1$s">Open the studio</a>. This file opens it once, within a minute.</p>
               """
                .formatted(address);
    }

    /** Takes a file away. */
    synchronized void remove(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // Its key has died; what is left of it opens nothing, and goes with the folder.
            file.toFile().deleteOnExit();
        }
    }

    @Override
    public synchronized void close() {
        folder.ifPresent(
                made -> {
                    for (int i = 1; i <= count; i++) {
                        remove(made.resolve("open-" + i + ".html"));
                    }
                    remove(made);
                });
        folder = Optional.empty();
    }
}
