package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

class TransitionsCommandTest {
    private static final String LONG_ARMS = "extension vs extension, tether 40 cm, tempo 60";
    private static final String ONE_STILL = "extension vs static spin, tether 40 cm, tempo 60";

    private static final String OPEN = "extension vs extension, tether 40 cm, opposites, tempo 45";
    private static final String RING = "static spin vs triquetra, tether 40 cm, tempo 55";

    private Desk desk = new Desk(Path.of("."));

    @BeforeEach
    void anEmptyShelf(@TempDir Path folder) {
        desk = new Desk(folder);
    }

    @Test
    void oneHandGoesOverWhileTheOtherGoesOn() {
        String told = desk.good("transitions", LONG_ARMS, ONE_STILL).text();
        assertThat(told).contains("while the left hand goes on");
    }

    @Test
    void everyWayIsAsHardAsWasAskedAtMostAndSaysWhenEitherHandLeaves() {
        JsonNode found = desk.good("transitions", OPEN, RING, "--hardest", "easy", "--json").json();
        assertThat(found.get("transitions")).isNotEmpty();
        for (JsonNode one : found.get("transitions")) {
            assertThat(one.get("grade").asString()).isEqualTo("easy");
            assertThat(one.at("/right/stray_m").asDouble()).isLessThanOrEqualTo(0.15);
            assertThat(one.at("/right/least_pull_weights").asDouble()).isGreaterThanOrEqualTo(0.3);
        }
    }

    @Test
    void whereTethersDifferItSaysSo() {
        assertThat(
                        desk.none("transitions", LONG_ARMS, "extension vs extension, tether 35 cm")
                                .text())
                .contains("Nothing leads from the first into the second: the tethers differ.");
    }

    @Test
    void oneOfThemIsDrawnWithTheCountsOnWhichHandsLeaveAndJoin(@TempDir Path folder)
            throws IOException {
        Path file = folder.resolve("over.svg");
        JsonNode found = desk.good("transitions", LONG_ARMS, ONE_STILL, "--json").json();
        int which = 0;
        while (!found.at("/transitions/" + which + "/told/text").asString().contains("goes on")) {
            which++;
        }
        String said = found.at("/transitions/" + which + "/told/text").asString();
        desk.good(
                "transitions",
                LONG_ARMS,
                ONE_STILL,
                "--out",
                file.toString(),
                "--which",
                String.valueOf(which + 1),
                "--caption",
                "no");
        String drawn = Files.readString(file);
        assertThat(drawn).contains("right passage").doesNotContain("left passage");
        String count = said.substring(0, said.indexOf(" the")).toLowerCase(Locale.ROOT);
        assertThat(drawn).contains("right leaves " + count, "right joins ");
    }

    @Test
    void whereNothingLeadsThereNoFileIsWritten(@TempDir Path folder) {
        Path file = folder.resolve("over.png");
        Desk.Answer answer =
                desk.run(
                        "transitions",
                        LONG_ARMS,
                        "extension vs extension, tether 35 cm",
                        "--out",
                        file.toString());
        assertThat(answer.code()).isEqualTo(Exit.NOT_FOUND.code());
        assertThat(answer.err()).contains("the tethers differ");
        assertThat(file).doesNotExist();
    }
}
