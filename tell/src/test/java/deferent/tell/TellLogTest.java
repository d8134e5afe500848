package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.tell.LoggedPattern.Reached;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** How a log of practice is said. */
class TellLogTest {
    private static String said(
            int times, double minutes, Map<String, Double> parts, Optional<Reached> reached) {
        return TellLog.pattern(
                        new LoggedPattern(
                                "weave",
                                times,
                                minutes,
                                parts,
                                reached,
                                "2026-11-28",
                                Optional.of("so-so")))
                .text();
    }

    @Test
    void aPatternIsSaidInOneSentence() {
        assertThat(said(1, 12.5, Map.of(), Optional.of(new Reached(60, Optional.empty()))))
                .isEqualTo(
                        "Once, 12.5 min, at 60 a minute, on 28 November 2026, and it went so-so.");
        assertThat(
                        said(
                                3,
                                125,
                                Map.of("left hand", 30.0),
                                Optional.of(new Reached(72, Optional.empty()))))
                .isEqualTo(
                        "3 times, 2 h 5 min in all (30 min of it left hand alone), up to 72 a"
                                + " minute; last on 28 November 2026, and it went so-so.");
        assertThat(
                        said(
                                2,
                                20,
                                Map.of("left hand", 20.0),
                                Optional.of(new Reached(72, Optional.of("left hand")))))
                .isEqualTo(
                        "2 times, 20 min in all (left hand alone), up to 72 a minute (left hand);"
                                + " last on 28 November 2026, and it went so-so.");
    }

    @Test
    void takingInAFileSaysHowManyWereNew() {
        assertThat(TellLog.taken(5, 0, List.of())).isEqualTo("5 new entries in the log.");
        assertThat(TellLog.taken(1, 3, List.of()))
                .isEqualTo("1 new entry in the log, 3 were there already.");
        assertThat(TellLog.taken(0, 1, List.of())).isEqualTo("nothing new, it was there already.");
        assertThat(TellLog.taken(0, 4, List.of()))
                .isEqualTo("nothing new, all 4 were there already.");
        assertThat(TellLog.taken(0, 0, List.of())).isEqualTo("no entries in it.");
        assertThat(TellLog.taken(2, 1, List.of("a", "b", "c", "d", "e")))
                .isEqualTo(
                        "2 new entries in the log, 1 was there already. The log says something else"
                                + " under a, b, c and 2 more: of the two, the entry that says more"
                                + " stays.");
    }

    @Test
    void hoursAreSaidFromTwoOn() {
        assertThat(TellLog.minutes(0.5)).isEqualTo("0.5 min");
        assertThat(TellLog.minutes(119)).isEqualTo("119 min");
        assertThat(TellLog.minutes(120)).isEqualTo("2 h");
    }
}
