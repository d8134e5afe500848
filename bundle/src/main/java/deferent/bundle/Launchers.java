package deferent.bundle;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What is started in what is unpacked, and how its Java is told to run. */
final class Launchers {
    /**
     * As {@code ./deferent} has them; no log, since a program's own errors are told in its words.
     */
    private static final List<String> OPTIONS =
            List.of(
                    "-XX:+UseSerialGC",
                    "-Xlog:disable",
                    "-Xlog:all=off",
                    "--enable-native-access=ALL-UNNAMED",
                    "-Djava.awt.headless=true");

    // Where it lies is random otherwise, which is mended at each start and takes a twentieth of a
    // second.
    private static final String PLACED =
            "-XX:+UnlockDiagnosticVMOptions -XX:ArchiveRelocationMode=0 ";

    private static final Map<String, String> CACHE =
            Map.of(
                    "deferent", PLACED + "\"-XX:AOTCache=$home/lib/deferent.cache\" ",
                    "deferent.cmd", PLACED + "\"-XX:AOTCache=%home%lib\\deferent.cache\" ");

    private Launchers() {}

    /**
     * @param caches whether there will be a cache of classes
     */
    static void written(Path from, Path to, boolean caches) throws IOException {
        for (String name : List.of("deferent", "deferent.cmd")) {
            if (name.endsWith(".cmd") == Bundle.windows()) {
                String text =
                        Files.readString(from.resolve(name))
                                .replace("@OPTIONS@", String.join(" ", OPTIONS))
                                .replace("@CACHE@ ", caches ? CACHE.get(name) : "");
                Path launcher = Files.writeString(to.resolve(name), text);
                if (!Bundle.windows() && !launcher.toFile().setExecutable(true, false)) {
                    throw new IOException(launcher + " cannot be made to run");
                }
            }
        }
    }

    /** Runs common command lines for nobody and keeps what they loaded. */
    static void rehearsed(Path java, Path made) throws IOException, InterruptedException {
        Path cache = made.resolve("lib/deferent.cache");
        List<String> words = new ArrayList<>(List.of(java.toString(), "-XX:TieredStopAtLevel=1"));
        words.addAll(OPTIONS);
        words.add("-XX:AOTCacheOutput=" + cache);
        words.addAll(List.of("-cp", made.resolve("lib").resolve(Jars.START).toString()));
        words.add("deferent.app.Rehearsal");
        int ended =
                new ProcessBuilder(words)
                        .redirectErrorStream(true)
                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                        .start()
                        .waitFor();
        if (ended != 0 || !Files.exists(cache)) {
            throw new IllegalStateException("the cache of classes was not made (" + ended + ")");
        }
    }

    /** What is read first by who unpacks it. */
    static String readme(String version) {
        return """
                Deferent VERSION

                Start DEFERENT: the studio opens in your browser. It needs no Java, no network and no installing; put the
                folder where you like, under any name, and remove it to be rid of it. Patterns are kept apart from it, in
                deferent-shelf in your home folder.

                With words it is the command line: DEFERENT read "isolation vs triquetra"; DEFERENT help lists them.

                Spinning can hurt: clear space, soft heads first; fire only with qualified practice and by local rules. No
                number it tells is a permission.

                share/man has a page for each command (man -l share/man/man1/deferent.1), share/ the completions for
                bash, zsh and fish. parts.json lists every part, licences/ has every licence.
                """
                .replace("VERSION", version)
                .replace("DEFERENT", Bundle.windows() ? "deferent" : "./deferent");
    }
}
