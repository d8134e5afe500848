package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import deferent.motion.song.Beats;
import deferent.record.Shelf;
import deferent.record.SongDocument;
import deferent.record.SongSound;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/**
 * Long arms of two sizes, which lead into each other, and one of another tether, which does not.
 */
class SetCommandTest {
    private static final String SMALL =
            "extension hand radius 10 cm vs extension hand radius 10 cm";
    private static final String LARGER =
            "extension hand radius 16 cm vs extension hand radius 16 cm";

    @TempDir Path folder;
    private Desk desk = new Desk(Path.of("."));

    @BeforeEach
    void shelve() {
        desk = new Desk(folder);
        desk.good("shelf", "add", SMALL, "--name", "Small arms");
        desk.good("shelf", "add", LARGER, "--name", "Larger arms");
        desk.good("shelf", "add", "static spin vs static spin, tether 40 cm", "--name", "Rings");
    }

    private void keep() {
        desk.good("set", "Small arms, 8", "Larger arms, 8", "Small arms, 4", "--keep", "Evening");
    }

    private Path file(String id) {
        return folder.resolve("shelf").resolve(id + ".json");
    }

    @Test
    void aSetIsToldInOrderWithItsCountsAndWhatLeadsOn() {
        keep();
        Desk.Answer answer = desk.good("set", "evening");
        assertThat(answer.out()).startsWith("It takes ");
        assertThat(answer.text())
                .contains("3 patterns, each leading into the next.")
                .contains("1. Small arms, from 0 s")
                .contains("2. Larger arms, from ")
                .contains("3. Small arms, from ")
                .contains("4 counts at 60 a minute.")
                .contains("The left hand holds ")
                .contains("rest between runs")
                .doesNotContain("why: ");
        assertThat(answer.out().lines()).allMatch(line -> line.length() <= 100);
        assertThat(desk.good("set", "Evening", "--why").text()).contains("why: ");
    }

    @Test
    void jsonHasStepsTransitionsAndTheWorkOverTime() {
        keep();
        JsonNode set = desk.good("set", "Evening", "--json").json();
        assertThat(set.get("name").stringValue()).isEqualTo("Evening");
        assertThat(set.get("steps")).hasSize(3);
        assertThat(set.get("transitions")).hasSize(2);
        assertThat(set.get("faults")).isEmpty();
        JsonNode second = set.at("/steps/1");
        assertThat(second.get("id").stringValue()).isEqualTo("larger-arms");
        assertThat(second.get("counts_asked").intValue()).isEqualTo(8);
        assertThat(second.get("reached").booleanValue()).isTrue();
        assertThat(second.get("danger").stringValue()).isIn("calm", "care", "danger");
        JsonNode led = set.at("/transitions/0");
        assertThat(led.get("grade").stringValue()).isIn("easy", "practised");
        double ends =
                set.at("/steps/0/starts_s").doubleValue()
                        + set.at("/steps/0/seconds").doubleValue();
        assertThat(led.get("starts_s").doubleValue())
                .isCloseTo(ends, org.assertj.core.data.Offset.offset(1e-3));
        assertThat(second.get("starts_s").doubleValue())
                .isCloseTo(
                        ends + led.get("seconds").doubleValue(),
                        org.assertj.core.data.Offset.offset(2e-3));
        assertThat(set.at("/work/left/grip")).hasSameSizeAs(set.at("/work/times_s"));
        assertThat(set.at("/work/right/shoulder")).hasSize(6);
    }

    @Test
    void aRemovedPatternIsNamedAndTheRestIsStillTold() {
        keep();
        desk.good("shelf", "remove", "Larger arms");
        Desk.Answer answer = desk.run("set", "Evening");
        assertThat(answer.code()).isEqualTo(Exit.NOT_FOUND.code());
        assertThat(answer.text())
                .contains("\"Larger arms\" is no longer on the shelf: put it back")
                .contains("2. Larger arms (gone)")
                .contains("3. Small arms, from 8 s");
        JsonNode set = desk.run("set", "Evening", "--json").json();
        assertThat(set.at("/steps/1/missing").booleanValue()).isTrue();
        assertThat(set.get("faults")).hasSize(1);
    }

    @Test
    void aSavedSetGoesOnAtTheHardestGradeItWasPlannedAt() throws IOException {
        String same = "extension hand radius 10 cm vs extension hand radius 10 cm, 8";
        String against =
                "extension hand radius 10 cm vs extension hand radius 10 cm, opposite direction, 8";
        desk.good("set", same, against, "--hardest", "hard", "--keep", "Bold");
        assertThat(Files.readString(file("bold"))).contains("\"hardest\": \"hard\"");
        JsonNode usual = desk.good("set", same, against, "--json").json().get("transitions");
        JsonNode bold = desk.good("set", "Bold", "--json").json().get("transitions");
        assertThat(bold.at("/0/grade").stringValue()).isEqualTo("hard");
        assertThat(usual).isNotEqualTo(bold);
        assertThat(
                        desk.good("set", "Bold", "--hardest", "practised", "--json")
                                .json()
                                .get("transitions"))
                .isEqualTo(usual);
    }

    @Test
    void aRenamedPatternIsFoundAndToldByItsNewName() throws IOException {
        keep();
        Path larger = file("larger-arms");
        Files.writeString(larger, Files.readString(larger).replace("Larger arms", "Wide arms"));
        assertThat(desk.good("set", "Evening").text())
                .contains("\"Larger arms\" is called \"Wide arms\" now.");
    }

    @Test
    void whereNothingLeadsOnThatIsSaidAndTheSetStillTold() {
        Desk.Answer answer = desk.good("set", "Small arms, 8", "Rings, 8");
        assertThat(answer.text())
                .contains("but nothing leads from \"Small arms\" into \"Rings\".")
                .contains("2. Rings, from 8 s");
    }

    /** When a beat falls of a song that goes at 120 a minute, and from the 20th on at 132. */
    private static double beat(int beat) {
        return 1 + 0.5 * Math.min(beat, 20) + 60.0 / 132 * Math.max(0, beat - 20);
    }

    private void sing() {
        List<Double> times = IntStream.range(0, 200).mapToObj(SetCommandTest::beat).toList();
        Shelf.at(folder.resolve("shelf"))
                .saveNew(
                        SongDocument.of(
                                "Snow",
                                new SongSound("snow.wav", "0".repeat(64), 120),
                                new Beats(times, 4, 0)));
    }

    @Test
    void aSetToASongBeginsItsCountsOnBeatsAndTellsBothTempi() {
        sing();
        String[] said = {
            "set",
            "Small arms, 16",
            "Larger arms, 8",
            "--song",
            "snow",
            "--from-beat",
            "5",
            "--beats",
            "2,0"
        };
        String told = desk.good(said).text();
        assertThat(told)
                .contains(
                        "To \"Snow\", 132 beats a minute, from beat 1 of bar 2 on, 0:03.0 into the song.")
                .contains("the first on beat 1 of bar 2, 0:03.0 into the song.")
                .doesNotContain("from 0 s")
                // It leaps from 120 to 132; who follows goes a little over either before the leap.
                .contains("2 beats: 60 to 66 cycles a minute at 119 to 133 beats a minute.")
                .contains("A cycle lasts 2 beats: 66 cycles a minute at 132 beats a minute.");
        JsonNode set = desk.good(with(said, "--json")).json();
        assertThat(set.at("/flows").booleanValue()).isTrue();
        assertThat(set.at("/song/from_beat").intValue()).isEqualTo(4);
        for (int i = 0; i < 2; i++) {
            JsonNode at = set.at("/steps/" + i + "/in_song");
            assertThat(at.get("starts_s").doubleValue())
                    .isCloseTo(beat(at.get("beat").intValue()), offset(0.02));
            assertThat(at.get("beats_a_cycle").doubleValue()).isEqualTo(2);
        }
        desk.good(with(said, "--keep", "Snowy"));
        JsonNode kept = desk.good("set", "Snowy", "--json").json();
        assertThat(kept.get("song")).isEqualTo(set.get("song"));
        assertThat(kept.at("/steps/0/beats_a_cycle_asked").intValue()).isEqualTo(2);
        assertThat(desk.good("set", "Snowy", "--loop", "1-2").text())
                .contains("Round and round it goes without \"Snow\"");
        desk.good("shelf", "remove", "Snow");
        assertThat(desk.run("set", "Snowy").text())
                .contains("The song \"Snow\" is no longer on the shelf")
                .contains("16 counts at 60 a minute.");
    }

    private static String[] with(String[] said, String... more) {
        return Stream.concat(Stream.of(said), Stream.of(more)).toArray(String[]::new);
    }

    @Test
    void aPartCanBeLooped() {
        keep();
        assertThat(desk.good("set", "Evening", "--loop", "1-2").text())
                .startsWith("Once round takes ")
                .contains("the last leads back into the first");
        assertThat(desk.bad("set", "Evening", "--loop", "2-9").err()).contains("from 1 to 3");
        assertThat(desk.bad("set", "Evening", "--loop", "a").err()).contains("such as 2-4");
    }

    @Test
    void whatIsAskedWrongIsSaidInOneSentence() {
        keep();
        for (String[] wrong :
                new String[][] {
                    {"set"},
                    {"set", "Morning"},
                    {"set", "Rings"},
                    {"set", "Rings, 0"},
                    {"set", "Rings, 5000"},
                    {"set", "Rings, 8", "Rings"},
                    {"set", "Evening", "--suggest", "3"},
                    {"set", "--suggest", "3", "--from", "Morning"},
                    {"set", "--suggest", "2"},
                    {"set", "--suggest", "9"},
                    {"set", "--from", "Rings"},
                    {"set", "Evening", "--hardest", "mad"},
                    {"set", "Evening", "--song", "Morning"},
                    {"set", "Evening", "--from-beat", "3"},
                    {"set", "Evening", "--beats", "2"},
                    {"read", "Evening"}
                }) {
            Desk.Answer answer = desk.run(wrong);
            assertThat(answer.code())
                    .as(String.join(" ", wrong))
                    .isIn(Exit.WRONG_WORDS.code(), Exit.NOT_FOUND.code());
            assertThat(answer.err()).as(String.join(" ", wrong)).doesNotContain("inside (");
        }
        assertThat(desk.none("set", "Morning").err().lines()).hasSize(1);
    }

    @Test
    void anEmptySetIsRefusedAndStaysWhereItIs() throws IOException {
        Files.writeString(
                file("empty"),
                "{\"format\": 1, \"kind\": \"set\", \"name\": \"Empty\", \"steps\": []}");
        assertThat(desk.bad("set", "Empty").err())
                .contains("has no patterns")
                .contains("put one in");
        assertThat(desk.good("shelf", "list").text()).contains("Empty: a set with no patterns yet");
        assertThat(file("empty")).exists();
    }

    @Test
    void fiveHundredStepsOfTwoPatternsAreTold() throws IOException {
        String steps =
                IntStream.range(0, 500)
                        .mapToObj(
                                i ->
                                        i % 2 == 0
                                                ? "{\"id\": \"small-arms\", \"name\": \"Small arms\","
                                                        + " \"counts\": 8}"
                                                : "{\"id\": \"larger-arms\", \"name\": \"Larger arms\","
                                                        + " \"counts\": 4}")
                        .collect(Collectors.joining(","));
        Files.writeString(
                file("long"),
                "{\"format\": 1, \"kind\": \"set\", \"name\": \"Long\", \"steps\": ["
                        + steps
                        + "]}");
        assertThat(desk.good("set", "Long").text())
                .contains("500 patterns, each leading into the next");
        Files.writeString(
                file("long"),
                "{\"format\": 1, \"kind\": \"set\", \"name\": \"Long\", \"steps\": ["
                        + steps
                        + ","
                        + steps
                        + ","
                        + steps
                        + "]}");
        assertThat(desk.good("shelf", "list").text()).contains("has 1500 entries; give 0 to 1000");
    }

    @Test
    void aSuggestionGoesUpTheHillAndDownAgain() {
        desk.good(
                "shelf",
                "add",
                "extension hand radius 13 cm vs extension hand radius 13 cm",
                "--name",
                "Middling arms");
        Desk.Answer answer = desk.good("set", "--suggest", "3", "--from", "Small arms", "--json");
        JsonNode set = answer.json();
        assertThat(set.at("/steps/0/name").stringValue()).isEqualTo("Small arms");
        assertThat(set.at("/steps/1/name").stringValue()).isEqualTo("Larger arms");
        assertThat(set.at("/steps/2/name").stringValue()).isEqualTo("Middling arms");
        assertThat(set.get("flows").booleanValue()).isTrue();
    }

    @Test
    void aSetIsExportedWithItsPatternsAndFindsThemElsewhere() {
        keep();
        Path bundle = folder.resolve("evening.json");
        desk.good("shelf", "export", "Evening", "--out", bundle.toString());
        Desk other = new Desk(folder.resolve("other"));
        other.good("shelf", "import", bundle.toString());
        assertThat(other.good("shelf", "list").text())
                .contains("Small arms")
                .contains("Larger arms")
                .doesNotContain("Rings");
        assertThat(other.good("set", "Evening", "--json").json().get("flows").booleanValue())
                .isTrue();
    }

    @Test
    void aSetIsPrintedAndKeptAsJson() throws IOException {
        keep();
        Path sheet = folder.resolve("evening.pdf");
        assertThat(desk.good("set", "Evening", "--out", sheet.toString()).text())
                .contains("Drawn: ")
                .contains("sheet of a set");
        try (var pdf = org.apache.pdfbox.Loader.loadPDF(sheet.toFile())) {
            assertThat(pdf.getNumberOfPages()).isEqualTo(1);
            assertThat(new org.apache.pdfbox.text.PDFTextStripper().getText(pdf))
                    .contains(
                            "Evening",
                            "Small arms",
                            "Larger arms",
                            "counts",
                            "one turn of the poi that turns more often");
        }
        Path answer = folder.resolve("evening-plan.json");
        desk.good("set", "Evening", "--out", answer.toString());
        assertThat(Files.readString(answer)).contains("\"transitions\"");
        assertThat(desk.bad("set", "Evening", "--out", "evening.glb").err())
                .contains("which no set is written as");
    }

    @Test
    void aClipPlaysTheSetOnceAndSaysWhereItIs() throws IOException {
        keep();
        Path clip = folder.resolve("evening.zip");
        double seconds = desk.good("set", "Evening", "--json").json().get("seconds").doubleValue();
        desk.good("set", "Evening", "--out", clip.toString(), "--size", "96", "--fps", "10");
        try (var zip = new java.util.zip.ZipFile(clip.toFile())) {
            assertThat((double) zip.stream().filter(e -> e.getName().endsWith(".png")).count())
                    .isCloseTo(10 * seconds, org.assertj.core.data.Offset.offset(1.5));
        }
    }

    @Test
    void aTurnOfTheBodyIsSaidAfterTheCountsAndToldOnItsCount() {
        Desk.Answer told = desk.good("set", "Small arms, 8, half left on 3", "Larger arms, 8");
        assertThat(told.text())
                .contains("On 3 make a half turn to the left, over 4 counts.")
                .contains("While you turn, the poi fall up to ")
                .contains("It ends with your back to where you began.");
        JsonNode turn =
                desk.good("set", "Small arms, 8, quarter right", "--json")
                        .json()
                        .at("/steps/0/turn");
        assertThat(turn.get("turn_deg").asInt()).isEqualTo(-90);
        assertThat(turn.get("count").asInt()).isEqualTo(1);
        assertThat(turn.at("/left/across_weights").asDouble()).isGreaterThan(0.1);
        assertThat(desk.bad("set", "Small arms, 8, half left on 9").err())
                .contains("is on count 9 of 8")
                .contains("give a count from 1 to 8");
        assertThat(desk.bad("set", "Small arms, 8, third left", "Larger arms, 8").err())
                .contains("\"A, 16, half left on 5\"");
    }
}
