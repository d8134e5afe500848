package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The log of practice on the command line: written, shown, and taken in from a hall file. */
class LogCommandTest {
    private static final String HALL =
            """
            {"format": "deferent-log", "version": 1, "app": "a page", "entries": [
              {"id": "k3f9a2c4e1", "date": "2026-11-26", "pattern": "isolation vs triquetra, split time",
               "part": "left hand", "minutes": 12.5, "tempo_cycles_per_min": 60, "went": "so-so", "wind": 3},
              {"id": "m4a0b1d5f2", "date": "2026-11-28", "pattern": "isolation vs triquetra, split time",
               "minutes": 20, "went": "well", "note": "dry grass"}]}
            """;

    @TempDir private Path folder;

    private Desk.Answer run(String... args) {
        return new Desk(folder).run(args);
    }

    private Desk.Answer taken(String text) throws IOException {
        Path file = Files.writeString(folder.resolve("hall.json"), text);
        return run("shelf", "import", file.toString());
    }

    private String day(String day) throws IOException {
        return Files.readString(folder.resolve("shelf/log/" + day + ".jsonl"));
    }

    @Test
    void whatWasPractisedIsWrittenDown() throws IOException {
        Desk.Answer written =
                run(
                        "practice",
                        "log",
                        "isolation vs triquetra, split time, tempo 50",
                        "--minutes",
                        "12",
                        "--went",
                        "So-so",
                        "--part",
                        "left hand",
                        "--note",
                        "wet grass",
                        "--date",
                        "2026-11-28");
        assertThat(written.err()).isEmpty();
        assertThat(written.out())
                .startsWith(
                        "In the log: 2026-11-28  isolation vs triquetra, split time (left hand)")
                .contains("12 min, at 50 a minute, it went so-so. wet grass");
        assertThat(day("2026-11-28"))
                .hasLineCount(1)
                .containsPattern(
                        "\\{\"id\": \"[0-9a-z]{12}\", \"date\": \"2026-11-28\", \"pattern\": \"isolation"
                                + " vs triquetra, split time\", \"part\": \"left hand\", \"minutes\": 12,"
                                + " \"tempo_cycles_per_min\": 50, \"went\": \"so-so\", \"note\": \"wet"
                                + " grass\"\\}");
        run("practice", "log", "weave", "--minutes", "5", "--date", "2026-11-27");
        assertThat(run("practice", "log").out().lines())
                .satisfiesExactly(
                        line -> assertThat(line).startsWith("2026-11-27  ").contains(", 5 min."),
                        line -> assertThat(line).startsWith("2026-11-28  isolation"),
                        line -> assertThat(line).startsWith("            went so-so."));
    }

    @Test
    void unsaidTheDayIsToday() throws IOException {
        run("practice", "log", "weave", "--minutes", "5");
        try (var files = Files.list(folder.resolve("shelf/log"))) {
            String today = LocalDate.now(ZoneId.systemDefault()).toString();
            String yesterday = LocalDate.now(ZoneId.systemDefault()).minusDays(1).toString();
            assertThat(files.map(f -> String.valueOf(f.getFileName())).filter(f -> f.endsWith("l")))
                    .hasSize(1)
                    .allMatch(f -> f.equals(today + ".jsonl") || f.equals(yesterday + ".jsonl"));
        }
    }

    @Test
    void whatCannotBeIsRefusedInOneSentenceAndNothingIsWritten() {
        assertThat(run("practice", "log", "weave").err())
                .contains("--minutes: is not said; say for how long")
                .hasLineCount(1);
        assertThat(run("practice", "log", "--minutes", "5").err()).contains("what was practised");
        assertThat(run("practice", "log", "weave", "--minutes", "0").err())
                .contains("minutes", "more than 0")
                .hasLineCount(1);
        assertThat(run("practice", "log", "weave", "--minutes", "5", "--went", "fine").err())
                .contains("give well, so-so or badly");
        assertThat(run("practice", "log", "weave", "--minutes", "5", "--date", "28.11.").err())
                .contains("is \"28.11.\"; give a day such as 2026-11-28");
        assertThat(run("practice", "log", "no such thing", "--minutes", "5").code())
                .isEqualTo(Exit.WRONG_WORDS.code());
        assertThat(folder.resolve("shelf/log")).doesNotExist();
    }

    @Test
    void aHallFilesLogIsTakenInOnce() throws IOException {
        Desk.Answer taken = taken(HALL);
        assertThat(taken.err()).isEmpty();
        assertThat(taken.out()).endsWith("hall.json: 2 new entries in the log.\n");
        assertThat(day("2026-11-26")).contains("\"wind\": 3").hasLineCount(1);
        String before = day("2026-11-26") + day("2026-11-28");
        assertThat(taken(HALL).out()).contains("nothing new, all 2 were there already.");
        assertThat(day("2026-11-26") + day("2026-11-28")).isEqualTo(before);
        // And goes out again as a log that another shelf takes.
        String out = run("practice", "log", "--json").out();
        assertThat(taken(out).out()).contains("nothing new, all 2 were there already.");
    }

    @Test
    void aWrongAnOldANewerAndAHugeLogAreToldAndNothingIsTaken() throws IOException {
        assertThat(taken(HALL.replace("12.5", "-1")).err())
                .contains("hall.json, line 3, column 36, entries.0.minutes: is -1 min; give more");
        assertThat(taken(HALL.replace("\"version\": 1, ", "")).err())
                .contains("hall.json", "has no \"version\", so it is older than all");
        assertThat(taken(HALL.replace("\"version\": 1", "\"version\": 0")).err())
                .contains("version: is 0, older than all");
        assertThat(taken(HALL.replace("\"version\": 1", "\"version\": 2")).err())
                .contains("version: is 2, newer than this deferent");
        Desk.Answer huge = taken(HALL.replace("dry", "dry ".repeat(1_300_000)));
        assertThat(huge.err()).contains("bytes long; a log has at most 5000000").hasLineCount(1);
        assertThat(huge.code()).isEqualTo(Exit.WRONG_WORDS.code());
        assertThat(taken(HALL.substring(0, 300)).err()).contains("is not JSON");
        assertThat(folder.resolve("shelf/log")).doesNotExist();
    }

    @Test
    void practiceShowsACalendarAndEachPattern() throws IOException {
        taken(HALL);
        Desk.Answer shown = run("practice", "--today", "2026-11-28");
        assertThat(shown.err()).isEmpty();
        assertThat(shown.out())
                .isEqualTo(
                        """
                                     Mon   Tue   Wed   Thu   Fri   Sat   Sun
                        2026-11-23     .     .     .  12.5     .    20         32.5 min

                        isolation vs triquetra, split time
                          2 times, 32.5 min in all (12.5 min of it left hand alone), up to 60 a minute (left
                          hand); last on 28 November 2026, and it went well.
                        """);
        assertThat(run("practice", "isolation vs triquetra, split time").out())
                .startsWith("isolation vs triquetra, split time\n  2 times, 32.5 min in all");
        assertThat(run("practice", "--json", "--today", "2026-11-28").out())
                .contains(
                        "\"monday\": \"2026-11-23\"",
                        "\"minutes\": [0, 0, 0, 12.5, 0, 20, 0]",
                        "\"total_told\": \"32.5 min\"")
                .contains("\"reached_cycles_per_min\": 60");
        // A week earlier none of it was yet.
        assertThat(run("practice", "--today", "2026-11-21").out())
                .contains("2 entries are dated after today");
    }

    @Test
    void aBrokenLineIsToldBesideTheOthers() throws IOException {
        taken(HALL);
        Path file = folder.resolve("shelf/log/2026-11-28.jsonl");
        Files.writeString(file, "wet grass\n" + Files.readString(file));
        assertThat(run("practice", "--today", "2026-11-28").out())
                .contains("2 times, 32.5 min")
                .contains("Cannot be read in the log, and left as it is:")
                .contains("  2026-11-28.jsonl, line 1: is not JSON");
        assertThat(run("practice", "log").out()).contains("2026-11-28.jsonl, line 1: ");
        assertThat(run("shelf", "list").out()).doesNotContain("Not on the shelf");
    }

    @Test
    void theDemosLastWeekIsWarnedOfAndItsFilmsAreJoinedIn() {
        run("practice", "demo");
        Desk.Answer shown = run("practice", "--today", "2026-11-22", "--why");
        assertThat(shown.out())
                .containsPattern("2026-10-19 +15 +\\. +\\. +15 +\\. +\\. +20 +50 min")
                .containsPattern(
                        "! In the last seven days (both )?your [a-z ]+ worked [2-5](\\.\\d)? times")
                .contains("no permission")
                .containsPattern("static spin vs triquetra\n  \\d+ times, ")
                .containsPattern("On film, over 4 weeks the right circle came from 1[123] cm too")
                .contains("From films:");
        assertThat(run("practice", "static spin vs triquetra").out())
                .contains("13 times, ", "kept 5 times");
    }

    @Test
    void theSchemaIsPrinted() {
        assertThat(Desk.asked("shelf", "schema", "--log").out()).contains("urn:deferent:log:1");
    }

    @Test
    void theCalendarIsDrawnOnAnyPaperWithTheSameNumbers() throws IOException {
        taken(HALL);
        Path svg = folder.resolve("calendar.svg");
        Path pdf = folder.resolve("calendar.pdf");
        Path png = folder.resolve("calendar.png");
        Desk.Answer drawn =
                run(
                        "practice",
                        "--today",
                        "2026-11-28",
                        "--out",
                        svg.toString(),
                        "--out",
                        pdf.toString(),
                        "--out",
                        png.toString());
        assertThat(drawn.err()).isEmpty();
        assertThat(Files.readString(svg))
                .contains(">12.5<", ">20<", ">32.5 min<", ">isolation vs triquetra, split time<");
        assertThat(Files.readAllBytes(pdf)).startsWith('%', 'P', 'D', 'F');
        assertThat(Files.readAllBytes(png)).startsWith(0x89, 'P', 'N', 'G');
        assertThat(run("practice", "--out", "calendar.csv").err())
                .contains("give one that ends in .pdf, .svg or .png")
                .hasLineCount(1);
    }
}
