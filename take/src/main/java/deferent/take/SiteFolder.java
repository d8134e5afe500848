package deferent.take;

import deferent.motion.pairing.Refusal;
import deferent.record.landing.Landing;
import deferent.record.landing.Litter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A folder with a site, and a list of the files that were written there ({@value #LIST}, as {@code
 * sha256sum} writes and checks it). Files whose bytes are the same are left as they are; of those
 * that are no longer wanted, only what the list names and nobody has changed since is removed.
 * Whatever else lies there is somebody's.
 */
record SiteFolder(Path folder, SortedMap<String, String> before) {
    /** The list of what was written. */
    static final String LIST = "deferent-site.sha256";

    private static final String BETWEEN = "  ";

    /**
     * What came of writing it.
     *
     * @param written pages
     * @param kept pages whose bytes were the same
     * @param removed pages
     * @param files written, of any kind
     * @param left old files that somebody has changed, and that are theirs now
     */
    record Put(int written, int kept, int removed, int files, List<String> left) {
        String told() {
            return (written == 1 ? "one page" : written + " pages")
                    + " written, "
                    + kept
                    + " kept, "
                    + removed
                    + " removed"
                    + (left.isEmpty()
                            ? ""
                            : "; left as changed by hand: " + String.join(", ", left));
        }
    }

    /** A folder that is empty, not there yet, or a site. */
    static SiteFolder at(Path folder) {
        try {
            if (Files.exists(folder) && !Files.isDirectory(folder)) {
                throw new Refusal("is a file", folder.toString(), "give the name of a folder");
            }
            Litter.sweep(folder);
            Path list = folder.resolve(LIST);
            if (Files.isRegularFile(list)) {
                return new SiteFolder(folder, read(Files.readString(list), folder));
            }
            if (Files.isDirectory(folder) && !empty(folder)) {
                throw new Refusal(
                        "has files in it that are not of a site",
                        "the folder " + folder,
                        "give an empty folder, a new name, or a site's folder");
            }
            return new SiteFolder(folder, new TreeMap<>());
        } catch (IOException cannot) {
            throw Landing.cannot(folder, cannot);
        }
    }

    private static boolean empty(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.findAny().isEmpty();
        }
    }

    private static SortedMap<String, String> read(String list, Path folder) {
        SortedMap<String, String> read = new TreeMap<>();
        for (String line : list.lines().toList()) {
            int at = line.indexOf(BETWEEN);
            String path = at < 0 ? "" : line.substring(at + BETWEEN.length());
            // A list that somebody has written in leads nowhere out of the folder.
            if (!path.matches("(?:[a-z]+/)?[a-z0-9-]+\\.[a-z0-9]+")) {
                throw new Refusal(
                        "has a line that is no file of a site: \"" + line + "\"",
                        folder.resolve(LIST).toString(),
                        "take that line out");
            }
            read.put(path, line.substring(0, at));
        }
        return read;
    }

    /** Makes the folder hold these files. */
    Put put(SortedMap<String, byte[]> files) {
        Optional<String> foreign =
                files.keySet().stream()
                        .filter(path -> !before.containsKey(path))
                        .filter(path -> Files.exists(there(path), LinkOption.NOFOLLOW_LINKS))
                        .findFirst();
        if (foreign.isPresent()) {
            throw new Refusal(
                    "is in the way and not of the site",
                    there(foreign.get()).toString(),
                    "move it away, or give another folder");
        }
        try {
            return write(files);
        } catch (IOException cannot) {
            throw Landing.cannot(folder, cannot);
        }
    }

    private Put write(SortedMap<String, byte[]> files) throws IOException {
        SortedMap<String, String> sums = new TreeMap<>();
        files.forEach((path, bytes) -> sums.put(path, sum(bytes)));
        SortedMap<String, String> both = new TreeMap<>(before);
        both.putAll(sums);
        // Cut short, the next run still knows whose everything is.
        if (!both.equals(before)) {
            Files.createDirectories(folder);
            Landing.write(folder.resolve(LIST), listed(both));
        }
        List<String> written = new ArrayList<>();
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            Path there = there(file.getKey());
            if (!Files.isRegularFile(there)
                    || !Arrays.equals(Files.readAllBytes(there), file.getValue())) {
                Files.createDirectories(there.resolveSibling("."));
                Landing.write(there, file.getValue());
                written.add(file.getKey());
            }
        }
        List<String> removed = new ArrayList<>();
        List<String> left = new ArrayList<>();
        for (Map.Entry<String, String> old : before.entrySet()) {
            Path there = there(old.getKey());
            if (!files.containsKey(old.getKey())
                    && Files.isRegularFile(there, LinkOption.NOFOLLOW_LINKS)) {
                if (sum(Files.readAllBytes(there)).equals(old.getValue())) {
                    Files.delete(there);
                    removed.add(old.getKey());
                } else {
                    left.add(old.getKey());
                }
            }
        }
        if (!both.equals(sums)) {
            Landing.write(folder.resolve(LIST), listed(sums));
        }
        return new Put(
                pages(written),
                pages(files.keySet()) - pages(written),
                pages(removed),
                written.size(),
                left);
    }

    private Path there(String path) {
        return folder.resolve(path);
    }

    private static int pages(Collection<String> paths) {
        return (int) paths.stream().filter(path -> path.endsWith(".html")).count();
    }

    private static byte[] listed(SortedMap<String, String> sums) {
        return sums.entrySet().stream()
                .map(file -> file.getValue() + BETWEEN + file.getKey() + "\n")
                .collect(Collectors.joining())
                .getBytes(StandardCharsets.UTF_8);
    }

    private static String sum(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every JDK has SHA-256", e);
        }
    }
}
