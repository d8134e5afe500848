package deferent.bundle;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.compress.archivers.ArchiveEntry;
import org.apache.commons.compress.archivers.ArchiveOutputStream;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveOutputStream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.commons.compress.compressors.gzip.GzipCompressorOutputStream;
import org.apache.commons.compress.compressors.gzip.GzipParameters;

/** A folder as one archive. */
final class Packed {
    private static final int RUN = 0755;
    private static final int READ = 0644;
    private static final int BEST = 9;

    private Packed() {}

    /** An empty folder; what was in it is gone. */
    static Path anew(Path folder) throws IOException {
        if (Files.exists(folder)) {
            for (Path each : within(folder).sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(each);
            }
        }
        return Files.createDirectories(folder);
    }

    private static Stream<Path> within(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.toList().stream();
        }
    }

    private static List<Path> files(Path folder) throws IOException {
        return within(folder)
                .filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
                .sorted()
                .toList();
    }

    static long size(Path folder) throws IOException {
        long sum = 0;
        for (Path file : files(folder)) {
            sum += Files.size(file);
        }
        return sum;
    }

    /** Gives every file one time, an even second. */
    static void sameTime(Path folder) throws IOException {
        Instant now = Instant.now().truncatedTo(ChronoUnit.MINUTES);
        for (Path file : within(folder).toList()) {
            Files.setLastModifiedTime(file, FileTime.from(now));
        }
    }

    /** Runs a tool of the JDK, which must do it without an error. */
    static void ran(String tool, List<String> words) {
        StringWriter told = new StringWriter();
        PrintWriter out = new PrintWriter(told, true);
        if (Jars.tool(tool).run(out, out, words.toArray(String[]::new)) != 0) {
            throw new IllegalStateException(tool + ": " + told);
        }
    }

    /** Writes the archive to a temporary name beside its own and moves it there. */
    static Path packed(Path folder, Path target) throws IOException {
        String name = Jars.name(folder);
        Path archive = target.resolve(name + (Bundle.windows() ? ".zip" : ".tar.gz"));
        Path half = Files.createTempFile(target, name, ".part");
        try (OutputStream file = new BufferedOutputStream(Files.newOutputStream(half))) {
            if (Bundle.windows()) {
                try (ZipArchiveOutputStream zip = new ZipArchiveOutputStream(file)) {
                    zip.setLevel(BEST);
                    for (Path each : files(folder)) {
                        ZipArchiveEntry entry = new ZipArchiveEntry(each, named(folder, each));
                        entry.setUnixMode(mode(each));
                        put(zip, entry, each);
                    }
                }
            } else {
                GzipParameters best = new GzipParameters();
                best.setCompressionLevel(BEST);
                try (TarArchiveOutputStream tar =
                        new TarArchiveOutputStream(new GzipCompressorOutputStream(file, best))) {
                    tar.setLongFileMode(TarArchiveOutputStream.LONGFILE_POSIX);
                    for (Path each : files(folder)) {
                        TarArchiveEntry entry = new TarArchiveEntry(each, named(folder, each));
                        entry.setMode(mode(each));
                        // Nobody's name or number of the machine that packed it.
                        entry.setIds(0, 0);
                        entry.setNames("", "");
                        put(tar, entry, each);
                    }
                }
            }
        }
        return Files.move(half, archive, StandardCopyOption.REPLACE_EXISTING);
    }

    private static String named(Path folder, Path file) {
        return Jars.name(folder) + "/" + folder.relativize(file).toString().replace('\\', '/');
    }

    private static int mode(Path file) {
        return Files.isExecutable(file) ? RUN : READ;
    }

    private static <E extends ArchiveEntry> void put(
            ArchiveOutputStream<E> archive, E entry, Path file) throws IOException {
        archive.putArchiveEntry(entry);
        Files.copy(file, archive);
        archive.closeArchiveEntry();
    }
}
