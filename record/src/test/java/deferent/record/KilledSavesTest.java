package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Processes that are killed in the middle of their saves leave a shelf that is whole. */
class KilledSavesTest {
    private static final PatternDocument RING = PatternJsonTest.linked();
    private static final int ROUNDS = 6;

    @TempDir Path folder = Path.of("");

    /** A process that saves over one document and adds others, for ever, and tells of each. */
    static final class Saving {
        public static void main(String[] args) {
            Shelf shelf = Shelf.at(Path.of(args[0]));
            String long1 = "n".repeat(3000);
            for (int i = 0; ; i++) {
                Kept kept = shelf.load("ring-under-the-eaves");
                try {
                    shelf.save(kept.id(), RING.withNote(long1 + i), kept.revision());
                } catch (ShelfError changed) {
                    if (changed.kind() != ShelfError.Kind.CHANGED) {
                        throw changed;
                    }
                }
                if (i % 50 == 0) {
                    shelf.saveNew(RING.withName("by " + args[1]).withNote(long1));
                }
                System.out.println(i);
            }
        }
    }

    private Process begin(String who) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Saving.class.getName(),
                        folder.toString(),
                        who)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }

    @Test
    void aShelfWhoseSavingProcessesAreKilledIsWholeAndSwept() throws Exception {
        Shelf shelf = Shelf.at(folder);
        shelf.saveNew(RING);
        Files.writeString(folder.resolve("notes.part"), "mine");
        Random random = new Random(8);
        int exports = 0;
        for (int round = 0; round < ROUNDS; round++) {
            List<Process> both = new ArrayList<>(List.of(begin("a"), begin("b")));
            try {
                for (Process process : both) {
                    BufferedReader told = process.inputReader();
                    int saves = 3 + random.nextInt(60);
                    for (int i = 0; i < saves; i++) {
                        assertThat(told.readLine()).as("the process saves").isNotNull();
                    }
                    // While the other still saves, the shelf is exported and read again.
                    assertThat(PatternJson.readBundle(shelf.exportAll())).isNotEmpty();
                    exports++;
                    process.destroyForcibly();
                    assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
                }
            } finally {
                both.forEach(Process::destroyForcibly);
            }
            Shelf.Listing listing = shelf.look();
            assertThat(listing.notListed())
                    .extracting(NotListed::file)
                    .containsExactly("notes.part");
            assertThat(listing.kept()).isNotEmpty();
            shelf.sweep();
            try (Stream<Path> files = Files.list(folder)) {
                assertThat(files.map(f -> f.getFileName().toString()))
                        .noneMatch(n -> n.startsWith(".deferent-"))
                        .contains("notes.part", ".lock", "ring-under-the-eaves.json");
            }
            // The lock of the dead is free.
            Kept kept = shelf.load("ring-under-the-eaves");
            shelf.save(kept.id(), RING.withNote("round " + round), kept.revision());
        }
        assertThat(exports).isEqualTo(2 * ROUNDS);
        assertThat(folder.resolve("notes.part")).hasContent("mine");
    }
}
