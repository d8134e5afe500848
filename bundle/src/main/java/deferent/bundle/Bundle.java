package deferent.bundle;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Makes the archive, for the machine that it is made on: {@code
 * target/deferent-VERSION-SYSTEM.tar.gz}, or {@code .zip} on Windows, of one folder of that name.
 */
public final class Bundle {
    /** A JDK from which on a cache of classes is made that is used wherever it is unpacked. */
    private static final int CACHING = 25;

    private Bundle() {}

    /**
     * Makes it.
     *
     * @param args the version, the module's folder, and whether video libraries come along: {@code
     *     true} or {@code false}
     */
    public static void main(String[] args) throws IOException, InterruptedException {
        String version = args[0];
        Path target = Path.of(args[1]).resolve("target");
        Path sources = Path.of(args[1]).resolve("src/main");
        boolean video = Boolean.parseBoolean(args[2]);
        String name = "deferent-" + version + "-" + system() + (video ? "" : "-without-video");
        Path made = Packed.anew(target.resolve(name));

        say("the program's jars");
        Jars jars = Jars.gathered(target.resolve("lib"), made.resolve("lib"), video);
        say("a Java of its own");
        Path java = OwnJava.linked(jars, made.resolve("runtime"), target);
        say("man pages and completions");
        Manual.written(made.resolve("share"), target);
        say("licences");
        Licences.gathered(jars, target.resolve("parts.json"), sources, made);
        Launchers.written(sources.resolve("launcher"), made, caches());
        Files.writeString(made.resolve("README.txt"), Launchers.readme(version));
        // Caches remember when a jar was last changed, and archives keep whole seconds.
        Packed.sameTime(made);
        if (caches()) {
            say("a cache of its classes");
            Launchers.rehearsed(java, made);
        }
        say("the archive");
        Path archive = Packed.packed(made, target);
        System.out.printf(
                Locale.ROOT,
                "bundle: %s, %.1f MB; unpacked %.1f MB%n",
                archive,
                Files.size(archive) / 1e6,
                Packed.size(made) / 1e6);
        if (!caches()) {
            System.out.printf(
                    "bundle: this JDK is older than %d, so there is no cache of classes in it and it"
                            + " starts more slowly%n",
                    CACHING);
        }
    }

    private static boolean caches() {
        return Runtime.version().feature() >= CACHING;
    }

    static boolean windows() {
        return System.getProperty("os.name").startsWith("Windows");
    }

    /** As in linux-x86_64. */
    private static String system() {
        String os = System.getProperty("os.name");
        String arch = System.getProperty("os.arch");
        return (windows() ? "windows" : os.startsWith("Mac") ? "macos" : "linux")
                + "-"
                + (arch.equals("amd64") ? "x86_64" : arch.equals("aarch64") ? "arm64" : arch);
    }

    private static void say(String what) {
        System.out.println("bundle: " + what);
    }
}
