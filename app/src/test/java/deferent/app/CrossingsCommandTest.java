package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.record.DemoShelf;
import deferent.record.PatternJson;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

class CrossingsCommandTest {
    private static final String LONG = "extension vs extension, split time";
    private static final String SHORTER = "extension vs extension, hand radius 56 cm, split time";

    @TempDir Path folder;
    private Desk desk = new Desk(Path.of("."));

    @BeforeEach
    void ask() {
        desk = new Desk(folder);
    }

    @Test
    void eachMomentIsSaidWithWhatChangesAndWhetherACordCanDoIt() {
        Desk.Answer answer = desk.good("crossings", LONG, SHORTER);
        assertThat(answer.out())
                .startsWith("From extension vs extension, split time\nto   extension");
        assertThat(answer.text())
                .contains("The first can go straight over into the second at one moment.")
                .contains("split time, same direction")
                .contains("both hands go on as they are")
                .contains("Through the smoothest")
                .containsAnyOf("A cord can do it", "No cord can do it")
                .doesNotContain("why: ");
        assertThat(answer.out().lines()).allMatch(line -> line.length() <= 100);
        assertThat(desk.good("crossings", LONG, SHORTER, "--why").out())
                .contains("why: Every moment");
    }

    /** Two points 4 cm of hand circle apart on one ray, at 2π a second: 0.04 m and 0.04·2π m/s. */
    @Test
    void jsonHasTheNumbersOfTheMoment() {
        JsonNode found = desk.good("crossings", LONG, SHORTER, "--json").json();
        JsonNode one = found.at("/crossings/0");
        assertThat(found.get("crossings")).hasSize(1);
        assertThat(one.get("place_gap_m").doubleValue()).isCloseTo(0.04, within(1e-6));
        assertThat(one.get("speed_gap_m_s").doubleValue())
                .isCloseTo(0.04 * 2 * Math.PI, within(1e-6));
        assertThat(one.at("/before/direction").stringValue()).isEqualTo("same");
        assertThat(one.at("/before/ahead_turns").doubleValue()).isCloseTo(0.5, within(1e-6));
        assertThat(one.at("/told/text").stringValue()).contains("split time");
        assertThat(found.at("/request/tolerance_m").doubleValue()).isEqualTo(0.08);
        assertThat(found.at("/passage/told/key").stringValue()).isEqualTo("passage");
        assertThat(found.has("nearest")).isFalse();
    }

    @Test
    void noneAtAllIsAnAnswerThatSaysHowNearTheyCome() {
        String[] asked = {"crossings", "triquetra vs triquetra", LONG};
        assertThat(desk.good(asked).text())
                .contains("cannot go straight over")
                .contains("m/s apart")
                .doesNotContain("Through the smoothest");
        JsonNode found = desk.good("crossings", "triquetra vs triquetra", LONG, "--json").json();
        assertThat(found.get("crossings")).isEmpty();
        assertThat(found.at("/nearest/speed_gap_m_s").doubleValue()).isGreaterThan(1);
    }

    @Test
    void toleranceSpeedAndFreedomsOpenWhatWasShut() {
        String far = "extension vs extension, hand radius 40 cm, split time";
        assertThat(desk.good("crossings", LONG, far, "--json").json().get("crossings")).isEmpty();
        JsonNode wide =
                desk.good("crossings", LONG, far, "--tolerance", "21cm", "--speed", "any", "--json")
                        .json();
        assertThat(wide.get("crossings")).isNotEmpty();
        assertThat(wide.get("request").has("speed_tolerance_m_s")).isFalse();
        String together = "isolation vs isolation, together";
        String split = "isolation vs isolation, split time";
        assertThat(desk.good("crossings", together, split, "--timing").text())
                .contains("the timing between the hands changes by half a cycle");
    }

    @Test
    void aMirrorAndOneHandAloneAreAskedFor() {
        JsonNode mirrored =
                desk.good(
                                "crossings",
                                "extension vs extension, clockwise",
                                "extension vs extension, counter-clockwise",
                                "--mirror",
                                "--who",
                                "left",
                                "--json")
                        .json();
        assertThat(mirrored.at("/request/who").stringValue()).isEqualTo("left");
        assertThat(mirrored.get("crossings"))
                .anySatisfy(c -> assertThat(c.at("/adjustment/mirrored").booleanValue()).isTrue());
    }

    @Test
    void filesAndNamesOnTheShelfAreTakenAsWell() throws IOException {
        desk.good("shelf", "add", LONG, "--name", "Wide lanterns");
        Path file = folder.resolve("pattern.json");
        Files.writeString(file, PatternJson.write(DemoShelf.documents().get(0)));
        assertThat(desk.good("crossings", "wide lanterns", SHORTER).out())
                .startsWith("From Wide lanterns");
        assertThat(desk.good("crossings", file.toString(), "wide-lanterns").out())
                .contains("to   Wide lanterns");
    }

    @Test
    void whatCannotBeAskedIsRefused() {
        assertThat(desk.bad("crossings", LONG).err()).contains("TO");
        assertThat(desk.bad("crossings", LONG, "extenshun vs extension").err())
                .startsWith("extenshun vs extension\n^^^^^^^^^\n")
                .contains("Nearest: extension");
        assertThat(desk.bad("crossings", LONG, "").err()).contains("is empty");
        assertThat(desk.bad("crossings", LONG, SHORTER, "--tolerance", "8").err())
                .contains("has no unit");
        assertThat(desk.bad("crossings", LONG, SHORTER, "--tolerance", "0cm").err())
                .contains("tolerance of place");
        assertThat(desk.bad("crossings", LONG, SHORTER, "--speed", "0m/s").err())
                .contains("tolerance of speed");
        assertThat(desk.bad("crossings", LONG, SHORTER, "--turn", "200deg").err())
                .contains("turn allowed");
        assertThat(desk.bad("crossings", LONG, SHORTER, "--who", "feet").err()).contains("--who");
        assertThat(desk.bad("crossings", LONG, SHORTER, "--who", "left", "--timing").err())
                .contains("leave their timing alone");
        assertThat(desk.bad("crossings", LONG, SHORTER, "--limit", "0").err()).contains("limit");
    }
}
