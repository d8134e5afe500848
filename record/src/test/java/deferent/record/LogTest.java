package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.search.path.Went;
import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What two devices wrote is one log. */
class LogTest {
    @TempDir private Path folder;
    private Log log = Log.of(Shelf.at(Path.of("")));

    @BeforeEach
    void atAShelf() {
        log = Log.of(Shelf.at(folder));
    }

    private static LogEntry entry(String id, String day) {
        return LogJsonTest.entry(id, day, 12);
    }

    private Path day(String day) {
        return folder.resolve("log").resolve(day + ".jsonl");
    }

    private String written(String day) throws IOException {
        return Files.readString(day(day));
    }

    @Test
    void anEmptyLogHasNothingInItAndMakesNoFolder() {
        assertThat(log.look().entries()).isEmpty();
        assertThat(log.look().others()).isEmpty();
        assertThat(folder.resolve("log")).doesNotExist();
    }

    @Test
    void eachDayHasAFileWhoseLinesAreSorted() throws IOException {
        log.add(
                List.of(
                        entry("bbbbbbbb", "2026-11-28"),
                        entry("cccccccc", "2026-11-27"),
                        entry("aaaaaaaa", "2026-11-28")));
        assertThat(written("2026-11-28"))
                .isEqualTo(
                        """
                        {"id": "aaaaaaaa", "date": "2026-11-28", "pattern": "isolation vs triquetra", \
                        "minutes": 12, "tempo_cycles_per_min": 60, "went": "well"}
                        {"id": "bbbbbbbb", "date": "2026-11-28", "pattern": "isolation vs triquetra", \
                        "minutes": 12, "tempo_cycles_per_min": 60, "went": "well"}
                        """);
        assertThat(log.look().entries())
                .extracting(LogEntry::id)
                .containsExactly("cccccccc", "aaaaaaaa", "bbbbbbbb");
        // The shelf beside it does not take it for something that went astray.
        assertThat(Shelf.at(folder).look().notListed()).isEmpty();
    }

    @Test
    void aSecondTimeChangesNothing() throws IOException {
        List<LogEntry> two =
                List.of(entry("bbbbbbbb", "2026-11-28"), entry("aaaaaaaa", "2026-11-27"));
        assertThat(log.add(two).fresh()).isEqualTo(two);
        Map<String, String> before = files(folder);
        Log.Added again = log.add(two);
        assertThat(again.fresh()).isEmpty();
        assertThat(again.known()).isEqualTo(2);
        assertThat(files(folder)).isEqualTo(before);
    }

    @Test
    void linesThatAMergePutTogetherAreReadAsTheirUnion() throws IOException {
        LogEntry ours = entry("aaaaaaaa", "2026-11-28");
        LogEntry theirs = entry("bbbbbbbb", "2026-11-28");
        Files.createDirectories(folder.resolve("log"));
        Files.writeString(
                day("2026-11-28"),
                "\uFEFF"
                        + LogJson.line(theirs)
                        + "\r\n<<<<<<< ours\n"
                        + LogJson.line(ours)
                        + "\n=======\n\n"
                        + LogJson.line(theirs)
                        + "\n>>>>>>> theirs");
        Log.Listing listing = log.look();
        assertThat(listing.entries()).containsExactly(ours, theirs);
        assertThat(listing.others())
                .extracting(NotListed::file)
                .containsExactly(
                        "2026-11-28.jsonl, line 2",
                        "2026-11-28.jsonl, line 4",
                        "2026-11-28.jsonl, line 7");
        assertThat(listing.others()).allMatch(n -> n.why().contains("a merge left"));
    }

    @Test
    void aBrokenLineIsToldHidesNoOtherAndStays() throws IOException {
        String newer = "{\"version\": 2, \"id\": \"cccccccc\"}";
        String zero = LogJson.line(entry("dddddddd", "2026-11-28")).replace("12", "0");
        LogEntry good = entry("aaaaaaaa", "2026-11-28");
        Files.createDirectories(folder.resolve("log"));
        Files.writeString(
                day("2026-11-28"), "{\"id\":\n" + newer + "\n" + LogJson.line(good) + "\n" + zero);
        Log.Listing listing = log.look();
        assertThat(listing.entries()).containsExactly(good);
        assertThat(listing.others()).hasSize(3);
        assertThat(listing.others().get(0).file()).isEqualTo("2026-11-28.jsonl, line 1");
        assertThat(listing.others().get(0).why()).startsWith("is not JSON");
        assertThat(listing.others().get(1).why()).contains("newer than this deferent");
        assertThat(listing.others().get(2).why()).startsWith("minutes is 0 min; give more than 0");
        log.add(List.of(entry("bbbbbbbb", "2026-11-28")));
        assertThat(written("2026-11-28").lines())
                .hasSize(5)
                .contains("{\"id\":", newer, zero, LogJson.line(good));
    }

    @Test
    void aFileThatIsNoDaysOrNoTextIsToldAndNeverWrittenOver() throws IOException {
        Files.createDirectories(folder.resolve("log"));
        Files.writeString(folder.resolve("log/notes.jsonl"), "buy wicks");
        Files.writeString(folder.resolve("log/README"), "ours");
        byte[] binary = {(byte) 0xff, 0, 1};
        Files.write(day("2026-11-28"), binary);
        assertThat(log.look().others())
                .extracting(NotListed::file)
                .containsExactly("2026-11-28.jsonl", "README", "notes.jsonl");
        List<LogEntry> two =
                List.of(entry("aaaaaaaa", "2026-11-27"), entry("bbbbbbbb", "2026-11-28"));
        assertThatThrownBy(() -> log.add(two))
                .isInstanceOf(ShelfError.class)
                .hasMessageContaining("2026-11-28.jsonl: is not UTF-8 text")
                .hasMessageContaining("nothing is written over it");
        assertThat(Files.readAllBytes(day("2026-11-28"))).isEqualTo(binary);
        assertThat(day("2026-11-27")).doesNotExist();
        assertThat(log.add(two.subList(0, 1)).fresh()).hasSize(1);
    }

    @Test
    void ofTwoThatSayDifferentThingsUnderOneIdTheFullerStaysWhicheverCameFirst()
            throws IOException {
        LogEntry brief = entry("aaaaaaaa", "2026-11-27");
        LogEntry full =
                new LogEntry(
                        brief.id(),
                        LocalDate.of(2026, 11, 28),
                        brief.pattern(),
                        Optional.of("left hand"),
                        13,
                        OptionalDouble.empty(),
                        Optional.of(Went.BADLY),
                        "wind",
                        Map.of());
        log.add(List.of(brief));
        assertThat(log.add(List.of(full)).different()).containsExactly("aaaaaaaa");
        assertThat(log.look().entries()).containsExactly(full);
        // What moved to another day leaves no empty file behind.
        assertThat(day("2026-11-27")).doesNotExist();
        assertThat(log.add(List.of(brief)).different()).containsExactly("aaaaaaaa");
        assertThat(log.look().entries()).containsExactly(full);
    }

    @Test
    void aDiskThatIsFullLeavesWhatStoodThere() {
        log.add(List.of(entry("aaaaaaaa", "2026-11-28")));
        Log full =
                Log.at(
                        folder,
                        file -> {
                            Files.writeString(file, "{ half of");
                            throw new FileSystemException(
                                    file.toString(), null, "No space left on device");
                        });
        assertThatThrownBy(() -> full.add(List.of(entry("bbbbbbbb", "2026-11-28"))))
                .isInstanceOf(ShelfError.class)
                .hasMessageContaining("No space left on device");
        assertThat(log.look().entries()).extracting(LogEntry::id).containsExactly("aaaaaaaa");
        assertThat(log.look().others()).isEmpty();
    }

    /**
     * Two devices write, hand over what they have now and then, and even correct what they wrote:
     * in whichever order and however often their files are taken in, the folder is the same bytes.
     */
    @Test
    void theFilesAreTheSameBytesInWhicheverOrderTwoDevicesAreTakenIn() throws IOException {
        for (int seed = 0; seed < 60; seed++) {
            Random chance = new Random(seed);
            List<List<LogEntry>> handed = new ArrayList<>();
            for (int device = 0; device < 2; device++) {
                List<LogEntry> all = new ArrayList<>();
                for (int time = 0; time < 3; time++) {
                    for (int i = chance.nextInt(8); i >= 0; i--) {
                        all.add(any(chance));
                    }
                    if (chance.nextInt(3) == 0) {
                        int at = chance.nextInt(all.size());
                        all.set(at, corrected(all.get(at), chance));
                    }
                    handed.add(List.copyOf(all));
                }
            }
            Map<String, String> first = Map.of();
            for (int order = 0; order < 3; order++) {
                Path shelf = Files.createDirectory(folder.resolve(seed + "-" + order));
                Log here = Log.of(Shelf.at(shelf));
                List<List<LogEntry>> files = new ArrayList<>(handed);
                if (order > 0) {
                    files.add(handed.get(chance.nextInt(handed.size())));
                    Collections.shuffle(files, chance);
                }
                for (List<LogEntry> file : files) {
                    here.add(LogJson.read(LogJson.write(file)));
                }
                if (order == 0) {
                    first = files(shelf);
                    assertThat(first).isNotEmpty();
                } else {
                    assertThat(files(shelf)).as("seed " + seed).isEqualTo(first);
                }
            }
        }
    }

    private static LogEntry any(Random chance) {
        return LogEntry.drawn(
                chance,
                LocalDate.of(2026, 11, 1).plusDays(chance.nextInt(6)),
                chance.nextBoolean() ? "isolation vs triquetra" : "weave",
                chance.nextBoolean() ? Optional.of("left hand") : Optional.empty(),
                0.5 + chance.nextInt(60) / 2.0,
                chance.nextBoolean()
                        ? OptionalDouble.of(40 + chance.nextInt(50))
                        : OptionalDouble.empty(),
                chance.nextBoolean()
                        ? Optional.of(Went.values()[chance.nextInt(3)])
                        : Optional.empty(),
                chance.nextBoolean() ? "cold \u2028 hands" : "");
    }

    private static LogEntry corrected(LogEntry entry, Random chance) {
        LogEntry other = any(chance);
        return new LogEntry(
                entry.id(),
                other.date(),
                other.pattern(),
                other.part(),
                other.minutes(),
                other.tempo(),
                other.went(),
                other.note(),
                Map.of("corrected", "true"));
    }

    private static Map<String, String> files(Path shelf) throws IOException {
        Map<String, String> all = new TreeMap<>();
        try (var files = Files.list(shelf.resolve("log"))) {
            for (Path file : files.toList()) {
                if (!String.valueOf(file.getFileName()).equals(".lock")) {
                    all.put(String.valueOf(file.getFileName()), Files.readString(file));
                }
            }
        }
        return all;
    }
}
