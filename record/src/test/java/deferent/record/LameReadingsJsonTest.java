package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import deferent.tell.Lame;
import java.util.List;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** A reading that could not be worked out stands in the JSON with its reason, in its place. */
class LameReadingsJsonTest {
    @Test
    void whatCouldNotBeWorkedOutStandsInItsPlaceWithItsReason() {
        JsonNode read =
                Text.tree(ReadingsJson.write(Lame.wholly("CAP riding pendulum")), 1_000_000);
        for (String place :
                List.of(
                        "/hands/left/figure",
                        "/hands/right/figure",
                        "/hands/left/hand_radius_m",
                        "/room",
                        "/reach",
                        "/pull/left",
                        "/pull/right",
                        "/figure_kept/left",
                        "/hand_path_kept/right",
                        "/steadiness/left/hand_path_kept",
                        "/steadiness/right/figure_kept",
                        "/slowest/left",
                        "/linked")) {
            assertThat(read.at(place).toString())
                    .as(place)
                    .isEqualTo("{\"not_worked_out\":\"its sums run in a ring\"}");
        }
        for (int i = 0; i < 2; i++) {
            assertThat(read.at("/links/" + i).propertyNames())
                    .containsExactlyInAnyOrder("head", "hand", "not_worked_out");
        }
        assertThat(read.at("/hands/left/tether_m").doubleValue()).isEqualTo(0.6);
        assertThat(read.at("/told")).isNotEmpty();
        assertThat(read.at("/cautions")).isNotEmpty();
    }

    /** A square's corners take an infinite force: no cord follows them, and the rest is read. */
    @Test
    void aSquareOnACordIsNotWorkedOutAndItsPullAndTheOtherCordAre() {
        JsonNode read =
                Text.tree(
                        ReadingsJson.write(
                                Readings.of(
                                        Phrase.parse("static spin vs square turns 2").pairing(),
                                        Performer.USUAL,
                                        Detail.SETTLED)),
                        1_000_000);
        for (String place :
                List.of(
                        "/figure_kept/right",
                        "/hand_path_kept/right",
                        "/slowest/right",
                        "/steadiness/right/figure_kept")) {
            assertThat(read.at(place + "/not_worked_out").stringValue())
                    .as(place)
                    .contains("infinite force");
        }
        assertThat(read.at("/pull/right/greatest_n").doubleValue()).isPositive();
        assertThat(read.at("/figure_kept/left/hand_speed_m_per_s").isNumber()).isTrue();
        assertThat(read.at("/figure_kept/left/hand_acceleration_m_per_s2").isNumber()).isTrue();
        assertThat(read.at("/slowest/left/ideal/reason").isString()).isTrue();
    }
}
