package deferent.record.landing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a killed process leaves is swept; what anybody else left is not. */
class LitterTest {
    @TempDir Path folder = Path.of("");

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.map(f -> f.getFileName().toString()).sorted().toList();
        }
    }

    /** A process that begins a file and a scratch folder, says so, and never ends by itself. */
    static final class Unfinished {
        public static void main(String[] args) throws IOException {
            Path file = Path.of(args[0]);
            try (Landing landing = Landing.at(file);
                    Scratch scratch = Scratch.open()) {
                landing.write(new byte[1000]);
                Files.writeString(scratch.folder().resolve("clip.webp"), "half");
                System.out.println("begun");
                System.out.flush();
                // Until the reader hangs up, which it does by killing.
                System.in.read();
            }
        }
    }

    private Process begin(Path temp) throws IOException {
        Process process =
                new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-XX:TieredStopAtLevel=1",
                                "-Djava.io.tmpdir=" + temp,
                                "-cp",
                                System.getProperty("java.class.path"),
                                Unfinished.class.getName(),
                                folder.resolve("clip.mp4").toString())
                        .redirectError(ProcessBuilder.Redirect.INHERIT)
                        .start();
        assertThat(process.inputReader().readLine()).isEqualTo("begun");
        return process;
    }

    @Test
    void aKilledProcessesFilesAreSweptAndALivingOnesAreNot() throws Exception {
        Path temp = Files.createDirectory(folder.resolve("temp"));
        String usual = System.getProperty("java.io.tmpdir");
        Process dying = begin(temp);
        Process living = begin(temp);
        try {
            System.setProperty("java.io.tmpdir", temp.toString());
            dying.destroyForcibly();
            assertThat(dying.waitFor(20, TimeUnit.SECONDS)).isTrue();
            assertThat(names(folder)).hasSize(3).filteredOn(n -> n.endsWith(".part")).hasSize(2);

            Litter litter = Litter.sweep(folder);
            assertThat(litter.swept()).isEqualTo(1);
            assertThat(litter.told().orElseThrow())
                    .isEqualTo(
                            "Swept from "
                                    + folder
                                    + ": one unfinished file of a run that was cut short.");
            assertThat(names(folder))
                    .filteredOn(n -> n.startsWith(".deferent-" + living.pid() + "-"))
                    .hasSize(1);
            assertThat(Litter.sweep(folder).told()).isEmpty();

            assertThat(names(temp)).hasSize(2);
            assertThat(Scratch.sweep().orElseThrow()).contains("one folder");
            assertThat(names(temp))
                    .singleElement()
                    .satisfies(n -> assertThat(n).startsWith("deferent-" + living.pid() + "-"));
        } finally {
            System.setProperty("java.io.tmpdir", usual);
            living.destroyForcibly().waitFor();
        }
    }

    @Test
    void whatThisProcessIsWritingIsNotSwept() throws IOException {
        try (Landing landing = Landing.at(folder.resolve("clip.mp4"))) {
            assertThat(Litter.sweep(folder).swept()).isZero();
            landing.write(new byte[10]);
            landing.land();
        }
        assertThat(names(folder)).containsExactly("clip.mp4");
    }

    /** A container may give a process the number that its killed forerunner had. */
    @Test
    void aForerunnersFilesUnderTheSameNumberAreSwept() throws IOException {
        Files.writeString(folder.resolve(part(ProcessHandle.current().pid())), "half");
        assertThat(Litter.sweep(folder).swept()).isEqualTo(1);
    }

    @Test
    void aUsersFilesOfSuchNamesAreNeverSwept() throws IOException {
        long dead = dead();
        String uuid = UUID.randomUUID().toString();
        List<String> theirs = new ArrayList<>();
        for (String name :
                List.of(
                        "movie.part",
                        ".movie.part",
                        "notes.tmp",
                        "x.json.tmp",
                        ".x.tmp",
                        ".deferent",
                        ".deferent-notes.part",
                        ".deferent-" + dead + ".part",
                        ".deferent-" + dead + "-" + uuid,
                        ".deferent-" + dead + "-" + uuid + ".part.bak",
                        ".deferent-"
                                + dead
                                + "-"
                                + uuid.toUpperCase(java.util.Locale.ROOT)
                                + ".part",
                        "deferent-" + dead + "-" + uuid + ".part",
                        ".deferent-0-" + uuid + ".part",
                        ".deferent--5-" + uuid + ".part",
                        ".clip.mp4." + uuid + ".part")) {
            Files.writeString(folder.resolve(name), "mine");
            theirs.add(name);
        }
        Path elsewhere = Files.writeString(folder.resolve("elsewhere"), "mine");
        Path link = folder.resolve(part(dead));
        Files.createSymbolicLink(link, elsewhere);
        Path directory = Files.createDirectory(folder.resolve(part(dead)));
        assertThat(Litter.sweep(folder).swept()).isZero();
        assertThat(names(folder)).containsAll(theirs);
        assertThat(link).isSymbolicLink();
        assertThat(directory).isDirectory();
        assertThat(elsewhere).hasContent("mine");
    }

    @Test
    void whatStoodThereBeforeIsToldAndLeft() throws IOException {
        Path old = folder.resolve(part(dead()).replace(".part", ".old"));
        Files.writeString(old, "the older clip");
        Litter litter = Litter.sweep(folder);
        assertThat(litter.saved()).containsExactly(old);
        assertThat(litter.told().orElseThrow()).contains(old + " holds what");
        assertThat(old).hasContent("the older clip");
    }

    @Test
    void aFolderThatIsNotThereIsClean() {
        assertThat(Litter.sweep(folder.resolve("no")).told()).isEmpty();
    }

    private static String part(long pid) {
        return ".deferent-" + pid + "-" + UUID.randomUUID() + ".part";
    }

    /** The number of a process that has ended. */
    private static long dead() throws IOException {
        Process process =
                new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-version")
                        .redirectError(ProcessBuilder.Redirect.DISCARD)
                        .start();
        try {
            process.waitFor();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return process.pid();
    }
}
