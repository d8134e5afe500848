package deferent.bundle;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.jar.Attributes;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/**
 * The jars of the program in one folder, and one more that only names them all: so the class path
 * is one file's name, and all the rest is relative to it.
 *
 * @param folder where they are
 * @param all of them, the command line's own first
 */
record Jars(Path folder, List<Path> all) {
    /** What starts the program. */
    static final String START = "deferent-start.jar";

    private static final String SOURCES = "-sources.jar";

    /**
     * Copies them, and compiles the command line's library anew: its jar holds classes in the
     * format of Java 5, which Java keeps out of its caches.
     *
     * @param video whether the natives of video come along
     */
    static Jars gathered(Path from, Path folder, boolean video) throws IOException {
        Files.createDirectories(folder);
        List<Path> all = new ArrayList<>();
        for (Path jar : list(from)) {
            String name = name(jar);
            if (video || !natives(jar)) {
                all.add(Files.copy(jar, folder.resolve(name)));
            }
        }
        for (Path source : sources()) {
            Path jar = folder.resolve(name(source).replace(SOURCES, ".jar"));
            Files.delete(jar);
            compiled(source, jar);
        }
        all.sort(Comparator.comparing((Path jar) -> !name(jar).startsWith("deferent-app")));
        start(all, folder.resolve(START));
        return new Jars(folder, List.copyOf(all));
    }

    /** What this runs with but the program does not. */
    private static List<Path> sources() {
        return Stream.of(System.getProperty("java.class.path").split(File.pathSeparator))
                .filter(entry -> entry.endsWith(SOURCES))
                .map(Path::of)
                .toList();
    }

    private static List<Path> list(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> name(file).endsWith(".jar")).sorted().toList();
        }
    }

    static String name(Path file) {
        return String.valueOf(file.getFileName());
    }

    /** Whether it holds libraries of FFmpeg for one system. */
    private static boolean natives(Path jar) throws IOException {
        if (!name(jar).startsWith("ffmpeg-")) {
            return false;
        }
        try (ZipFile zip = new ZipFile(jar.toFile())) {
            return zip.stream()
                    .map(ZipEntry::getName)
                    .anyMatch(n -> n.matches(".*(\\.so(\\.\\d+)*|\\.dll|\\.dylib)"));
        }
    }

    private static void compiled(Path source, Path jar) throws IOException {
        Path work = Files.createTempDirectory("deferent-bundle");
        Path classes = Files.createDirectories(work.resolve("classes"));
        List<String> words =
                new ArrayList<>(
                        List.of("--release", "17", "-nowarn", "-proc:none", "-d", "" + classes));
        try (ZipFile zip = new ZipFile(source.toFile())) {
            for (ZipEntry entry :
                    zip.stream().filter(e -> e.getName().endsWith(".java")).toList()) {
                Path to = work.resolve(entry.getName()).normalize();
                if (!to.startsWith(work) || entry.getName().endsWith("module-info.java")) {
                    continue;
                }
                Files.createDirectories(to.resolveSibling(""));
                Files.copy(zip.getInputStream(entry), to);
                words.add(to.toString());
            }
        }
        Packed.ran("javac", words);
        Packed.ran("jar", List.of("--create", "--file", "" + jar, "-C", "" + classes, "."));
        Packed.anew(work);
        Files.delete(work);
    }

    private static void start(List<Path> all, Path jar) throws IOException {
        Manifest manifest = new Manifest();
        Attributes says = manifest.getMainAttributes();
        says.put(Attributes.Name.MANIFEST_VERSION, "1.0");
        says.put(Attributes.Name.MAIN_CLASS, "deferent.app.Deferent");
        says.put(
                Attributes.Name.CLASS_PATH,
                String.join(" ", all.stream().map(Jars::name).toList()));
        says.put(new Attributes.Name("Enable-Native-Access"), "ALL-UNNAMED");
        try (OutputStream out = Files.newOutputStream(jar);
                JarOutputStream empty = new JarOutputStream(out, manifest)) {
            empty.flush();
        }
    }

    /** A tool of the JDK that runs this. */
    static ToolProvider tool(String name) {
        return ToolProvider.findFirst(name)
                .orElseThrow(
                        () ->
                                new IllegalStateException(
                                        "no "
                                                + name
                                                + " in this Java: bundling needs a whole JDK, set"
                                                + " JAVA_HOME to one"));
    }
}
