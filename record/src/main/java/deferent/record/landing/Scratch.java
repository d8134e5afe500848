package deferent.record.landing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.AclEntry;
import java.nio.file.attribute.AclEntryFlag;
import java.nio.file.attribute.AclEntryPermission;
import java.nio.file.attribute.AclEntryType;
import java.nio.file.attribute.AclFileAttributeView;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;

/**
 * A folder among the system's temporary ones for files that nobody keeps, for its owner's eyes
 * alone. It is gone when closed; where the process is killed, the next one sweeps it.
 */
public final class Scratch implements AutoCloseable {
    /** Locked while the folder is in use. */
    private static final String HELD = ".held";

    private static final String FILES = "files";

    private final Claim claim;
    private final Path folder;
    private final FileChannel held;

    private Scratch(Claim claim, Path folder, FileChannel held) {
        this.claim = claim;
        this.folder = folder;
        this.held = held;
    }

    private static Path root() {
        return Path.of(System.getProperty("java.io.tmpdir"));
    }

    /** A new one, empty. */
    public static Scratch open() {
        Claim claim = Claim.held();
        Path folder = root().resolve(claim.name());
        try {
            makePrivate(folder);
            FileChannel held =
                    FileChannel.open(
                            folder.resolve(HELD),
                            StandardOpenOption.CREATE_NEW,
                            StandardOpenOption.WRITE);
            Claim.lock(held);
            Files.createDirectory(folder.resolve(FILES));
            return new Scratch(claim, folder, held);
        } catch (IOException cannot) {
            claim.letGo();
            throw new UncheckedIOException(cannot);
        }
    }

    private static void makePrivate(Path folder) throws IOException {
        if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.createDirectory(
                    folder,
                    PosixFilePermissions.asFileAttribute(
                            PosixFilePermissions.fromString("rwx------")));
        } else {
            Files.createDirectory(folder);
        }
        AclFileAttributeView list = Files.getFileAttributeView(folder, AclFileAttributeView.class);
        if (list != null) {
            list.setAcl(
                    List.of(
                            AclEntry.newBuilder()
                                    .setType(AclEntryType.ALLOW)
                                    .setPrincipal(Files.getOwner(folder))
                                    .setPermissions(EnumSet.allOf(AclEntryPermission.class))
                                    .setFlags(
                                            AclEntryFlag.FILE_INHERIT,
                                            AclEntryFlag.DIRECTORY_INHERIT)
                                    .build()));
        }
    }

    public Path folder() {
        return folder.resolve(FILES);
    }

    @Override
    public void close() {
        try {
            held.close();
            delete(folder);
        } catch (IOException stays) {
            // Somebody still writes or reads there; the next process sweeps what is left.
            folder.toFile().deleteOnExit();
        } finally {
            claim.letGo();
        }
    }

    /** Removes the user's own folders of processes that were killed; what to tell of it. */
    public static Optional<String> sweep() {
        int swept = 0;
        try (DirectoryStream<Path> folders = Files.newDirectoryStream(root(), "deferent-*")) {
            for (Path folder : folders) {
                Optional<Claim> claim = Claim.in(String.valueOf(folder.getFileName()), "", "");
                if (claim.isPresent()
                        && Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)
                        && mine(folder)
                        && claim.get().abandoned(lockOf(folder))) {
                    delete(folder);
                    swept++;
                }
            }
        } catch (IOException | DirectoryIteratorException stays) {
            // What cannot be removed now is met again by the next one.
        }
        return swept == 0
                ? Optional.empty()
                : Optional.of(
                        "Swept from "
                                + root()
                                + ": "
                                + (swept == 1 ? "one folder" : swept + " folders")
                                + " of a run that was cut short.");
    }

    // Killed before it held the folder, the folder's own time stands for it.
    private static Path lockOf(Path folder) {
        Path lock = folder.resolve(HELD);
        return Files.isRegularFile(lock, LinkOption.NOFOLLOW_LINKS) ? lock : folder;
    }

    // Others share the folder for temporary files; the superuser could remove theirs.
    private static boolean mine(Path folder) throws IOException {
        return Files.getOwner(folder, LinkOption.NOFOLLOW_LINKS)
                .equals(
                        folder.getFileSystem()
                                .getUserPrincipalLookupService()
                                .lookupPrincipalByName(System.getProperty("user.name")));
    }

    /** Removes a folder and all that is in it; links are removed, not followed. */
    public static void delete(Path folder) throws IOException {
        if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        Files.walkFileTree(
                folder,
                new SimpleFileVisitor<>() {
                    @Override
                    public FileVisitResult visitFile(Path file, BasicFileAttributes is)
                            throws IOException {
                        Files.deleteIfExists(file);
                        return FileVisitResult.CONTINUE;
                    }

                    @Override
                    public FileVisitResult postVisitDirectory(Path left, IOException broken)
                            throws IOException {
                        if (broken != null) {
                            throw broken;
                        }
                        Files.deleteIfExists(left);
                        return FileVisitResult.CONTINUE;
                    }
                });
    }
}
