package deferent.bundle;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/** A Java of just those modules that the program's classes ask for. */
final class OwnJava {
    private OwnJava() {}

    /**
     * Links it from the JDK that runs this.
     *
     * @return what starts it
     */
    static Path linked(Jars jars, Path to, Path work) throws IOException {
        Packed.ran(
                "jlink",
                List.of(
                        "--add-modules",
                        modules(jars, Packed.anew(work.resolve("classes-of-all"))),
                        "--strip-debug",
                        "--no-header-files",
                        "--no-man-pages",
                        "--compress",
                        // Classes are packed once, by the archive: what is packed twice starts
                        // slowly.
                        Runtime.version().feature() >= 21 ? "zip-0" : "0",
                        "--output",
                        to.toString()));
        return to.resolve("bin").resolve(Bundle.windows() ? "java.exe" : "java");
    }

    // jdeps wants either modules alone or none, and the jars are of both kinds: their classes are
    // laid side by side.
    private static String modules(Jars jars, Path classes) throws IOException {
        for (Path jar : jars.all()) {
            try (ZipFile zip = new ZipFile(jar.toFile())) {
                for (ZipEntry entry : zip.stream().filter(OwnJava::used).toList()) {
                    Path to = classes.resolve(entry.getName()).normalize();
                    if (to.startsWith(classes) && !Files.exists(to)) {
                        Files.createDirectories(to.resolveSibling(""));
                        Files.copy(zip.getInputStream(entry), to);
                    }
                }
            }
        }
        StringWriter told = new StringWriter();
        List<String> words = new ArrayList<>();
        words.addAll(List.of("--ignore-missing-deps", "--multi-release", "base"));
        words.addAll(List.of("--print-module-deps", classes.toString()));
        PrintWriter out = new PrintWriter(told, true);
        if (Jars.tool("jdeps").run(out, out, words.toArray(String[]::new)) != 0) {
            throw new IllegalStateException("jdeps: " + told);
        }
        return told.toString().strip();
    }

    private static boolean used(ZipEntry entry) {
        String name = entry.getName();
        return name.endsWith(".class")
                && !name.startsWith("META-INF/")
                && !name.endsWith("module-info.class");
    }
}
