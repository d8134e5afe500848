package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Turns;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ShelfTest {
    @TempDir Path folder;

    private static final PatternDocument RING = PatternJsonTest.linked();

    private Shelf shelf() {
        return Shelf.at(folder.resolve("shelf"));
    }

    @Test
    void aSavedPatternStandsInAFileOfItsNameAndComesBack() throws IOException {
        Kept kept = shelf().saveNew(RING);
        assertThat(kept.id()).isEqualTo("ring-under-the-eaves");
        assertThat(Files.readString(folder.resolve("shelf/ring-under-the-eaves.json")))
                .isEqualTo(PatternJson.write(RING));
        assertThat(shelf().load("ring-under-the-eaves")).isEqualTo(kept);
        assertThat(shelf().find("Ring Under The Eaves")).contains(kept);
        assertThat(shelf().find("another")).isEmpty();
    }

    @Test
    void aShelfThatIsNotThereYetIsEmpty() {
        assertThat(shelf().list()).isEmpty();
        assertThat(folder.resolve("shelf")).doesNotExist();
    }

    @Test
    void theSameNameTwiceStandsInTwoPlaces() {
        shelf().saveNew(RING);
        assertThat(shelf().saveNew(RING.withNote("another")).id())
                .isEqualTo("ring-under-the-eaves-2");
        assertThatThrownBy(() -> shelf().saveNew("ring-under-the-eaves", RING))
                .isInstanceOf(ShelfError.class)
                .hasMessageContaining("is taken");
    }

    @Test
    void aChangeByAnotherIsNotWrittenOver() {
        Kept first = shelf().saveNew(RING);
        Kept second = shelf().save(first.id(), RING.withNote("theirs"), first.revision());
        assertThatThrownBy(() -> shelf().save(first.id(), RING.withNote("mine"), first.revision()))
                .isInstanceOfSatisfying(
                        ShelfError.class,
                        e -> assertThat(e.kind()).isEqualTo(ShelfError.Kind.CHANGED));
        assertThatThrownBy(() -> shelf().remove(first.id(), first.revision()))
                .isInstanceOf(ShelfError.class);
        assertThat(shelf().load(first.id())).isEqualTo(second);
        shelf().remove(first.id(), second.revision());
        assertThat(shelf().list()).isEmpty();
        assertThatThrownBy(() -> shelf().save(first.id(), RING, second.revision()))
                .hasMessageContaining("no longer");
    }

    @Test
    void aChangeByHandIsNotWrittenOver() throws IOException {
        Kept kept = shelf().saveNew(RING);
        String byHand = PatternJson.write(RING).replace("0.61", "0.63");
        Files.writeString(shelf().file(kept.id()), byHand);
        assertThatThrownBy(() -> shelf().save(kept.id(), RING, kept.revision()))
                .isInstanceOf(ShelfError.class);
        assertThat(Files.readString(shelf().file(kept.id()))).isEqualTo(byHand);
    }

    @Test
    void aBrokenFileIsListedWithItsErrorAndLeftAsItIs() throws IOException {
        shelf().saveNew(RING);
        Path broken = folder.resolve("shelf/torn.json");
        Files.writeString(broken, "{\"format\": 1,");
        List<Shelf.Entry> entries = shelf().list();
        assertThat(entries)
                .extracting(Shelf.Entry::id)
                .containsExactly("ring-under-the-eaves", "torn");
        assertThat(entries.get(1).document()).isEmpty();
        assertThat(entries.get(1).error().orElseThrow()).startsWith("line 1, column ");
        assertThatThrownBy(() -> shelf().load("torn")).isInstanceOf(DocumentError.class);
        assertThatThrownBy(() -> shelf().save("torn", RING, entries.get(1).revision()))
                .isInstanceOf(DocumentError.class);
        assertThat(Files.readString(broken)).isEqualTo("{\"format\": 1,");
    }

    @Test
    void aFileOfANewerFormatIsNeverWrittenOver() throws IOException {
        Files.createDirectories(folder.resolve("shelf"));
        Path newer = folder.resolve("shelf/newer.json");
        String text = PatternJson.write(RING).replace("\"format\": 1", "\"format\": 2");
        Files.writeString(newer, text);
        Shelf.Entry entry = shelf().list().get(0);
        assertThat(entry.error().orElseThrow()).contains("newer than this deferent");
        assertThatThrownBy(() -> shelf().save("newer", RING, entry.revision()))
                .hasMessageContaining("newer than this deferent");
        assertThatThrownBy(() -> shelf().remove("newer", entry.revision()))
                .hasMessageContaining("newer than this deferent");
        assertThat(Files.readString(newer)).isEqualTo(text);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "../secret",
                "a/b",
                "a\\b",
                "..",
                ".hidden",
                "",
                "a:b",
                "a\u0000b",
                "/etc/passwd"
            })
    void aNameWithAFolderInItIsRefused(String name) {
        assertThatThrownBy(() -> shelf().load(name))
                .isInstanceOfSatisfying(
                        ShelfError.class,
                        e -> assertThat(e.kind()).isEqualTo(ShelfError.Kind.NAME));
        assertThatThrownBy(() -> shelf().save(name, RING, "x")).isInstanceOf(ShelfError.class);
        assertThatThrownBy(() -> shelf().remove(name, "x")).isInstanceOf(ShelfError.class);
    }

    @Test
    void aLinkOutOfTheFolderIsNotFollowed() throws IOException {
        Path outside = folder.resolve("outside.json");
        Files.writeString(outside, PatternJson.write(RING));
        Files.createDirectories(folder.resolve("shelf"));
        Files.createSymbolicLink(folder.resolve("shelf/link.json"), outside);
        assertThatThrownBy(() -> shelf().load("link"))
                .isInstanceOfSatisfying(
                        ShelfError.class,
                        e -> assertThat(e.kind()).isEqualTo(ShelfError.Kind.MISSING));
    }

    @ParameterizedTest
    @CsvSource({
        "Ring under the eaves,ring-under-the-eaves",
        "  Été / Winter!  ,ete-winter",
        "../../etc,etc",
        "日本,pattern",
        "CON,pattern-con",
        "a--b,a-b"
    })
    void aNameBecomesAFileNameThatEverySystemHolds(String name, String slug) {
        assertThat(Shelf.slug(name)).isEqualTo(slug);
        assertThat(Shelf.slug("x".repeat(200))).hasSize(60);
    }

    @Test
    void aShelfCarriedOverInABundleIsTheSameShelf() {
        shelf().saveNew(RING);
        shelf().saveNew(RING.withName("Second"));
        String bundle = shelf().exportAll();
        Shelf other = Shelf.at(folder.resolve("other"));
        assertThat(other.importAll(bundle)).hasSize(2);
        assertThat(other.list()).isEqualTo(shelf().list());
        other.importAll(bundle);
        assertThat(other.list()).hasSize(2);
        other.importAll(PatternJson.write(RING.withNote("another")));
        assertThat(other.list())
                .extracting(Shelf.Entry::id)
                .containsExactly("ring-under-the-eaves", "ring-under-the-eaves-2", "second");
    }

    @Test
    void aMotionOnTheShelfIsAWordInPhrases() {
        Motion loop = new Motion(SvgPath.parse("M0 0 L2 0 L1 2 Z", 0.3), new Turns(1, 0));
        shelf().saveNew(
                        new MotionDocument(
                                "lantern loop",
                                List.of("lamp loop"),
                                "",
                                Optional.empty(),
                                List.of(),
                                loop,
                                Tether.USUAL,
                                Extras.NONE));
        shelf().saveNew(RING);
        Lexicon own = shelf().words().lexicon();
        for (String name : List.of("lantern loop", "lamp loop")) {
            assertThat(Phrase.parse(name + " vs static spin", own).pairing().left().motion())
                    .isEqualTo(loop);
        }
    }

    @Test
    void aMotionCannotTakeAWordOfTheTrade() {
        assertThatThrownBy(
                        () -> MotionDocument.of("isolation", Motion.staticSpin(1, 0), Tether.USUAL))
                .hasMessageContaining("give it a name of its own");
    }

    @Test
    void aFileInPlaceOfTheFolderIsToldAsSuch() throws IOException {
        Files.writeString(folder.resolve("shelf"), "");
        assertThatThrownBy(() -> shelf().saveNew(RING))
                .isInstanceOf(ShelfError.class)
                .hasMessageContaining("is a file");
    }

    @Test
    void twentyTabsThatSaveAtOnceLoseNothing() throws Exception {
        int tabs = 20;
        ExecutorService threads = Executors.newFixedThreadPool(tabs);
        try {
            CyclicBarrier together = new CyclicBarrier(tabs);
            List<Callable<String>> saves = new ArrayList<>();
            for (int i = 0; i < tabs; i++) {
                String note = "tab " + i;
                saves.add(
                        () -> {
                            together.await();
                            return shelf().saveNew(RING.withNote(note)).id();
                        });
            }
            for (Future<String> save : threads.invokeAll(saves)) {
                save.get();
            }
        } finally {
            threads.shutdown();
        }
        assertThat(notes()).hasSize(tabs).allMatch(note -> note.startsWith("tab "));
    }

    @Test
    void ofTenTabsThatSaveOverOneRevisionExactlyOneDoes() throws Exception {
        Kept kept = shelf().saveNew(RING);
        ExecutorService threads = Executors.newFixedThreadPool(10);
        try {
            CyclicBarrier together = new CyclicBarrier(10);
            List<Callable<Optional<String>>> saves = new ArrayList<>();
            for (int i = 0; i < 10; i++) {
                String note = "tab " + i;
                saves.add(
                        () -> {
                            together.await();
                            try {
                                shelf().save(kept.id(), RING.withNote(note), kept.revision());
                                return Optional.of(note);
                            } catch (ShelfError refused) {
                                assertThat(refused.kind()).isEqualTo(ShelfError.Kind.CHANGED);
                                return Optional.empty();
                            }
                        });
            }
            List<String> saved = new ArrayList<>();
            for (Future<Optional<String>> save : threads.invokeAll(saves)) {
                save.get().ifPresent(saved::add);
            }
            assertThat(saved).hasSize(1);
            assertThat(notes()).containsExactly(saved.get(0));
        } finally {
            threads.shutdown();
        }
    }

    @Test
    void twoProcessesOnOneShelfLoseNothing() throws Exception {
        shelf().saveNew(RING.withNote("0"));
        int each = 40;
        List<Process> processes = new ArrayList<>();
        for (String who : List.of("a", "b")) {
            processes.add(
                    new ProcessBuilder(
                                    Path.of(System.getProperty("java.home"), "bin", "java")
                                            .toString(),
                                    "-XX:TieredStopAtLevel=1",
                                    "-cp",
                                    System.getProperty("java.class.path"),
                                    Counting.class.getName(),
                                    folder.resolve("shelf").toString(),
                                    who,
                                    Integer.toString(each))
                            .redirectErrorStream(true)
                            .redirectOutput(folder.resolve(who + ".log").toFile())
                            .start());
        }
        for (Process process : processes) {
            assertThat(process.waitFor(5, TimeUnit.MINUTES)).isTrue();
        }
        assertThat(processes).extracting(Process::exitValue).containsExactly(0, 0);
        PatternDocument counted = (PatternDocument) shelf().load("ring-under-the-eaves").document();
        assertThat(counted.note()).as("every addition of both counts").isEqualTo("" + 2 * each);
        assertThat(shelf().list()).hasSize(1 + 2 * each);
    }

    /** A process that adds one to a common note so many times, and saves as many new patterns. */
    static final class Counting {
        public static void main(String[] args) {
            Shelf shelf = Shelf.at(Path.of(args[0]));
            for (int i = 0; i < Integer.parseInt(args[2]); i++) {
                shelf.saveNew(RING.withName("by " + args[1]));
                addOne(shelf);
            }
        }

        private static void addOne(Shelf shelf) {
            while (true) {
                Kept kept = shelf.load("ring-under-the-eaves");
                PatternDocument seen = (PatternDocument) kept.document();
                String next = Integer.toString(Integer.parseInt(seen.note()) + 1);
                try {
                    shelf.save(kept.id(), seen.withNote(next), kept.revision());
                    return;
                } catch (ShelfError changed) {
                    if (changed.kind() != ShelfError.Kind.CHANGED) {
                        throw changed;
                    }
                }
            }
        }
    }

    private Set<String> notes() {
        return shelf().list().stream()
                .map(e -> e.document().orElseThrow().note())
                .collect(Collectors.toSet());
    }
}
