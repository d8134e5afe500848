package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Weeks of practice beside a shelf. */
class PracticeLogTest {
    @TempDir private Path folder;
    private PracticeLog log = PracticeLog.of(Shelf.at(Path.of("")));

    @BeforeEach
    void atAShelf() {
        log = PracticeLog.of(Shelf.at(folder));
    }

    private static Practice week(int week) {
        return PracticeJsonTest.practice(
                "Week " + week,
                "2026-11-0" + week,
                String.valueOf((char) ('a' + week)),
                0.15 - 0.03 * week);
    }

    @Test
    void anEmptyLogHasNothingInIt() {
        assertThat(log.look().entries()).isEmpty();
        assertThat(log.look().others()).isEmpty();
        assertThat(log.look().find("Week 1")).isEmpty();
    }

    @Test
    void weeksOfOnePatternStandInOrder() {
        log.keep(week(3), false);
        log.keep(week(1), false);
        assertThat(log.look().of(PracticeJsonTest.PATTERN))
                .extracting(e -> e.practice().name())
                .containsExactly("Week 1", "Week 3");
        assertThat(log.look().of("isolation vs isolation")).isEmpty();
        assertThat(log.look().find("week 3").orElseThrow().id()).isEqualTo("2026-11-03-week-3");
        // The shelf beside it does not take it for something that went astray.
        assertThat(Shelf.at(folder).look().notListed()).isEmpty();
    }

    @Test
    void oneFilmIsKeptOnceUnlessItIsSaidToReplace() {
        log.keep(week(1), false);
        Practice again = PracticeJsonTest.practice("Week one", "2026-11-01", "b", 0.11);
        assertThatThrownBy(() -> log.keep(again, false))
                .isInstanceOf(ShelfError.class)
                .hasMessageContaining("is kept already, as \"2026-11-01-week-1\"");
        assertThat(log.look().entries().get(0).practice()).isEqualTo(week(1));
        assertThat(log.keep(again, true).id()).isEqualTo("2026-11-01-week-1");
        assertThat(log.look().entries()).extracting(e -> e.practice()).containsExactly(again);
    }

    @Test
    void oneThatCannotBeReadAndOneOfANewerFormatAreToldAndLeft() throws IOException {
        String id = log.keep(week(1), false).id();
        Path file = folder.resolve("practice").resolve(id + ".json");
        String newer = Files.readString(file).replace("\"format\": 1", "\"format\": 2");
        Files.writeString(file, newer);
        Files.writeString(folder.resolve("practice/broken.json"), "{\"format\": 1,");
        PracticeLog.Listing listing = log.look();
        assertThat(listing.entries()).isEmpty();
        assertThat(listing.others())
                .extracting(NotListed::file)
                .containsExactly(id + ".json", "broken.json");
        assertThat(listing.others().get(0).why()).contains("newer than this deferent");
        assertThat(listing.others().get(1).why()).contains("is not JSON");
        // The same film is not known to be there, so that it gets a place of its own.
        assertThat(log.keep(week(1), true).id()).isEqualTo(id + "-2");
        assertThat(Files.readString(file)).isEqualTo(newer);
    }

    @Test
    void aDiskThatIsFullLeavesWhatStoodThere() {
        log.keep(week(1), false);
        PracticeLog full =
                PracticeLog.at(
                        folder,
                        file -> {
                            Files.writeString(file, "{ half of");
                            throw new FileSystemException(
                                    file.toString(), null, "No space left on device");
                        });
        Practice again = PracticeJsonTest.practice("Week one", "2026-11-01", "b", 0.11);
        assertThatThrownBy(() -> full.keep(again, true))
                .isInstanceOf(ShelfError.class)
                .hasMessageContaining("No space left on device");
        assertThat(log.look().entries()).extracting(e -> e.practice()).containsExactly(week(1));
    }

    @Test
    void theFilmIsKeptOnlyWhereItIsAskedFor() throws IOException {
        Path film = Files.write(folder.resolve("lanterns.mp4"), new byte[5_000_000]);
        log.keep(week(1), false);
        assertThat(folder.resolve("practice/films")).doesNotExist();
        PracticeLog.Entry kept = log.keep(week(1), true, film);
        assertThat(log.look().entries()).containsExactly(kept);
        assertThat(kept.practice().clip().kept()).isTrue();
        assertThat(log.film(kept.practice())).hasSameBinaryContentAs(film);
        assertThat(log.look().others()).isEmpty();
    }

    @Test
    void demoWeeksAreAddedOnce() {
        assertThat(log.addAll(List.of(week(1), week(2)))).hasSize(2);
        assertThat(log.addAll(List.of(week(1), week(2), week(3)))).hasSize(3);
        assertThat(log.look().entries()).hasSize(3);
    }

    @Test
    void noRecordNamesAFolderOfThisMachine() throws IOException {
        String id = log.keep(week(1), false).id();
        assertThat(Files.readString(folder.resolve("practice/" + id + ".json")))
                .doesNotContain(folder.toString());
    }
}
