package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

class RouteCommandTest {
    private static final String LONG_ARMS = "extension vs extension, tether 40 cm, tempo 60";
    private static final String ONE_STILL = "extension vs static spin, tether 40 cm, tempo 60";
    private static final String BOTH_STILL = "static spin vs static spin, tether 40 cm, tempo 60";

    @TempDir Path folder;
    private Desk desk = new Desk(Path.of("."));

    @BeforeEach
    void shelve() {
        desk = new Desk(folder);
        desk.good("shelf", "add", LONG_ARMS, "--name", "Two lanterns");
        desk.good("shelf", "add", ONE_STILL, "--name", "One lamp");
        desk.good(
                "shelf", "add", "static spin vs static spin, tether 20 cm", "--name", "Elsewhere");
    }

    @Test
    void eachStepIsSaidAsATransitionIsThenTheWhole() {
        Desk.Answer answer = desk.good("route", "Two lanterns", "One lamp");
        assertThat(answer.text())
                .startsWith("Two lanterns, then One lamp: ")
                .contains("1. Two lanterns into One lamp")
                .contains("the right hand, its poi ")
                .contains("All together: It takes ")
                .doesNotContain("why: ");
        assertThat(answer.out().lines()).allMatch(line -> line.length() <= 100);
        assertThat(desk.good("route", "Two lanterns", "One lamp", "--why").text())
                .contains("why: The route of which all steps together are gentlest");
    }

    @Test
    void jsonHasTheRouteAsTheSetItIs() {
        JsonNode found = desk.good("route", "Two lanterns", BOTH_STILL, "--json").json();
        assertThat(found.get("complete").booleanValue()).isTrue();
        assertThat(found.get("hardest").stringValue()).isEqualTo("practised");
        int steps = found.at("/set/steps").size();
        assertThat(steps).isGreaterThanOrEqualTo(2);
        assertThat(found.at("/set/steps/0/name").stringValue()).isEqualTo("Two lanterns");
        assertThat(found.at("/set/steps/" + (steps - 1) + "/name").stringValue())
                .isEqualTo(BOTH_STILL);
        assertThat(found.at("/set/transitions")).hasSize(steps - 1);
        assertThat(found.at("/set/flows").booleanValue()).isTrue();
        assertThat(found.get("pairs_compared").intValue())
                .as("of three patterns of one tether")
                .isBetween(1, 6);
    }

    @Test
    void noRouteIsAnAnswer() {
        assertThat(desk.none("route", "Two lanterns", "Elsewhere").text())
                .startsWith("Nothing leads from Two lanterns to Elsewhere")
                .contains("the tethers differ");
        JsonNode none = desk.none("route", "Two lanterns", "Elsewhere", "--json").json();
        assertThat(none.has("set")).isFalse();
        assertThat(none.at("/told/0/key").stringValue()).isEqualTo("route");
        assertThat(desk.good("route", "Two lanterns", "Two lanterns").text())
                .startsWith("Two lanterns: you are there already.");
    }

    @Test
    void noStepIsHarderThanWasAsked() {
        JsonNode found =
                desk.good("route", "Two lanterns", "One lamp", "--hardest", "easy", "--json")
                        .json();
        for (JsonNode step : found.at("/set/transitions")) {
            assertThat(step.get("grade").stringValue()).isEqualTo("easy");
        }
    }

    @Test
    void progressIsToldWhereItIsAskedFor() {
        Desk.Answer answer = desk.run("route", "Two lanterns", "One lamp", "--progress");
        assertThat(answer.code()).isZero();
        assertThat(answer.err()).contains("1 pair of patterns compared");
    }

    @Test
    void whatCannotBeAskedIsRefused() {
        assertThat(desk.bad("route").err()).contains("FROM");
        assertThat(desk.bad("route", "Two lanterns").err()).contains("TO");
        assertThat(desk.bad("route", "Two lanterns", "Arms 99").err()).contains("Arms 99");
        assertThat(desk.bad("route", "Two lanterns", "One lamp", "--set", "4").err())
                .contains("--set");
        assertThat(desk.bad("route", "Two lanterns", "One lamp", "--hardest", "mad").err())
                .contains("--hardest");
    }
}
