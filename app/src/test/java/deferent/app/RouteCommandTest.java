package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/** Extensions whose hand circles grow by 6 cm a step: neighbours meet, others are too far apart. */
class RouteCommandTest {
    @TempDir Path folder;
    private Desk desk = new Desk(Path.of("."));

    @BeforeEach
    void ask() {
        desk = new Desk(folder);
    }

    private static String arms(int centimetres) {
        return "extension vs extension, hand radius " + centimetres + " cm, split time";
    }

    private void shelve(int... radii) {
        for (int radius : radii) {
            desk.good("shelf", "add", arms(radius), "--name", "Arms " + radius);
        }
    }

    @Test
    void aWayLeadsThroughThePatternsOfTheShelf() {
        shelve(48, 54, 60);
        Desk.Answer answer = desk.good("route", "Arms 48", "Arms 60");
        assertThat(answer.text())
                .startsWith("Arms 48, then Arms 54, then Arms 60.")
                .contains("1. Arms 48 into Arms 54")
                .contains("2. Arms 54 into Arms 60")
                .contains("split time, same direction")
                .contains("All together: ")
                .doesNotContain("why: ");
        assertThat(answer.out().lines()).allMatch(line -> line.length() <= 100);
        assertThat(desk.good("route", "Arms 48", "Arms 60", "--why").text())
                .contains("why: Extra acceleration at each crossing, in turn: ");
    }

    /** Two hand circles 6 cm apart are crossed at 0.06 m and 0.06·2π m/s. */
    @Test
    void jsonHasThePatternsAndTheCrossings() {
        shelve(48, 54, 60);
        JsonNode found = desk.good("route", "Arms 48", arms(60), "--json").json();
        assertThat(found.get("complete").booleanValue()).isTrue();
        assertThat(found.get("patterns_compared").intValue()).isEqualTo(3);
        assertThat(found.at("/route/patterns")).hasSize(3);
        assertThat(found.at("/route/patterns/1/name").stringValue()).isEqualTo("Arms 54");
        assertThat(found.at("/route/crossings")).hasSize(2);
        for (JsonNode crossing : found.at("/route/crossings")) {
            assertThat(crossing.get("place_gap_m").doubleValue()).isCloseTo(0.06, within(1e-6));
            assertThat(crossing.get("speed_gap_m_s").doubleValue())
                    .isCloseTo(0.06 * 2 * Math.PI, within(1e-6));
        }
        assertThat(found.at("/route/passage/joints_s")).hasSize(2);
    }

    @Test
    void noWayIsAnAnswer() {
        shelve(48, 60);
        assertThat(desk.good("route", "Arms 48", "Arms 60").text())
                .startsWith("No crossings lead from Arms 48 to Arms 60");
        JsonNode none = desk.good("route", "Arms 48", "Arms 60", "--json").json();
        assertThat(none.has("route")).isFalse();
        assertThat(none.at("/told/0/key").stringValue()).isEqualTo("route");
        assertThat(desk.good("route", "Arms 48", "Arms 60", "--tolerance", "13cm").text())
                .startsWith("Arms 48, then Arms 60.");
        assertThat(desk.good("route", "Arms 48", "Arms 48").text()).startsWith("Arms 48.");
    }

    @Test
    void startAndEndNeedNotBeOnTheShelf() {
        shelve(54);
        assertThat(desk.good("route", arms(48), arms(60)).text())
                .startsWith(arms(48) + ", then Arms 54, then " + arms(60) + ".");
    }

    @Test
    void aSetComesBackToItsStartWithNoPatternTwice() {
        shelve(55, 57, 59, 61);
        assertThat(desk.good("route", "Arms 57", "--set", "4").text())
                .startsWith("Arms 57, then Arms ")
                .contains(", then Arms 57.");
        JsonNode set = desk.good("route", "Arms 57", "--set", "4", "--json").json();
        assertThat(set.at("/set/outcome").stringValue()).isEqualTo("best");
        assertThat(set.at("/route/patterns")).hasSize(5);
        assertThat(set.at("/route/patterns/0/name").stringValue())
                .isEqualTo(set.at("/route/patterns/4/name").stringValue());
        assertThat(desk.good("route", "Arms 57", "--set", "8").text())
                .startsWith("There is no set of 8 patterns");
    }

    /** Going round by 57 takes two changes; straight on takes one that is twice as rough. */
    @Test
    void aHardPatternAndARoughCrossingAreGoneRound() {
        shelve(54, 57, 60);
        assertThat(desk.good("route", "Arms 54", "Arms 60", "--hard", "Arms 57=2").text())
                .startsWith("Arms 54, then Arms 60.");
        assertThat(desk.good("route", "Arms 54", "Arms 60", "--roughest", "0.3").text())
                .startsWith("Arms 54, then Arms 57, then Arms 60.");
        assertThat(desk.good("route", "Arms 54", "Arms 60", "--roughest", "0.01").text())
                .startsWith("No crossings lead");
    }

    @Test
    void progressIsToldWhereItIsAskedFor() {
        shelve(54, 57, 60);
        Desk.Answer answer = desk.run("route", "Arms 54", "Arms 60", "--progress");
        assertThat(answer.code()).isZero();
        assertThat(answer.err()).contains("3 of 3 pairs of patterns compared");
    }

    @Test
    void whatCannotBeAskedIsRefused() {
        shelve(54, 60);
        assertThat(desk.bad("route").err()).contains("FROM");
        assertThat(desk.bad("route", "Arms 54").err()).contains("says no place to go");
        assertThat(desk.bad("route", "Arms 54", "Arms 99").err()).contains("Arms 99");
        assertThat(desk.bad("route", "Arms 54", "--set", "1").err()).contains("--set");
        assertThat(desk.bad("route", "Arms 54", "--set", "eight").err()).contains("--set");
        assertThat(desk.bad("route", "Arms 54", "Arms 60", "--set", "2").err())
                .contains("comes back to its start");
        assertThat(desk.bad("route", "Arms 54", "Arms 60", "--hard", "Nothing=2").err())
                .contains("is not among the patterns");
        assertThat(desk.bad("route", "Arms 54", "Arms 60", "--hard", "Arms 60=-1").err())
                .contains("difficulty");
        assertThat(desk.bad("route", "Arms 54", "Arms 60", "--roughest", "-1").err())
                .contains("--roughest");
    }
}
