package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

class ReadingsJsonTest {
    private static JsonNode read(String phrase, Detail detail) {
        return Text.tree(
                ReadingsJson.write(
                        Readings.of(Phrase.parse(phrase).pairing(), Performer.USUAL, detail)),
                1_000_000);
    }

    @Test
    void aStaticSpinWithATriquetraReadsAsTheTradeKnowsIt() {
        JsonNode read = read("static spin vs triquetra", Detail.SETTLED);
        assertThat(read.get("tempo_cycles_per_min").doubleValue()).isEqualTo(60);
        assertThat(read.get("period_s").doubleValue()).isEqualTo(1);
        JsonNode left = read.at("/hands/left");
        assertThat(left.get("motion").stringValue()).contains("static spin");
        assertThat(left.get("tether_m").doubleValue()).isEqualTo(0.6);
        assertThat(left.get("hand_radius_m").doubleValue()).isZero();
        // A circle of radius 0.6 m: width 2r, area πr², length 2πr.
        assertThat(left.at("/figure/width_m").doubleValue()).isCloseTo(1.2, within(1e-5));
        assertThat(left.at("/figure/signed_area_m2").doubleValue())
                .isCloseTo(Math.PI * 0.36, within(1e-5));
        assertThat(left.at("/figure/union_area_m2").doubleValue())
                .isCloseTo(Math.PI * 0.36, within(1e-4));
        assertThat(left.at("/figure/length_m").doubleValue())
                .isCloseTo(2 * Math.PI * 0.6, within(1e-5));
        assertThat(read.at("/hands/right/figure/petals").intValue()).isEqualTo(3);
        assertThat(read.at("/hands/right/figure/outer_radius_m").doubleValue())
                .isCloseTo(1.2, within(1e-5));
        JsonNode link = read.at("/links/0");
        assertThat(link.get("head").stringValue()).isEqualTo("left");
        assertThat(link.get("hand").stringValue()).isEqualTo("right");
        assertThat(link.get("kind").stringValue()).isEqualTo("touching");
        assertThat(link.get("tolerance_m").doubleValue()).isEqualTo(0.08);
        for (String gap : List.of("shape_gap_m", "clock_gap_m", "inplane_gap_m")) {
            assertThat(link.get(gap).doubleValue()).as(gap).isCloseTo(0, within(1e-3));
        }
        assertThat(link.get("depth_gap_m").doubleValue()).isCloseTo(0.08, within(1e-9));
        assertThat(link.get("offset_m")).hasSize(3);
        assertThat(read.at("/links/1/head").stringValue()).isEqualTo("right");
        assertThat(read.get("cautions")).isNotEmpty();
        assertThat(read.get("told")).isNotEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "isolation vs four-petal antispin",
                "pendulum vs CAP",
                "CAP riding pendulum",
                "toroid vs static spin",
                "extension vs horizontal cat-eye, opposite, quarter time"
            })
    void everyNumberIsFiniteAndPlain(String phrase) {
        for (Detail detail : Detail.values()) {
            List<JsonNode> numbers = new ArrayList<>();
            gather(read(phrase, detail), numbers);
            assertThat(numbers).hasSizeGreaterThan(60);
            assertThat(numbers)
                    .allMatch(n -> n.isNumber() && Double.isFinite(n.doubleValue()))
                    .noneMatch(n -> n.toString().startsWith("-0.0") && n.doubleValue() == 0);
        }
    }

    @Test
    void anEstimateMakesNoPromiseOfItsError() {
        JsonNode link = read("extension vs triquetra", Detail.LIVE).at("/links/0");
        assertThat(link.get("shape_gap_is_estimate").booleanValue()).isTrue();
        assertThat(link.has("shape_gap_error_m")).isFalse();
        JsonNode settled = read("extension vs triquetra", Detail.SETTLED).at("/links/0");
        assertThat(settled.get("shape_gap_error_m").doubleValue()).isBetween(0.0, 0.01);
    }

    private static void gather(JsonNode node, List<JsonNode> numbers) {
        if (node.isNumber()) {
            numbers.add(node);
        }
        node.forEach(child -> gather(child, numbers));
    }
}
