package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.record.PatternDocument;
import deferent.record.Shelf;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/** The shelf as a map, and routes over it. */
class MapAskTest {
    private static final String LOOSE = ",\"tolerance_m\":0.25,\"speed_tolerance_m_s\":3";

    private static final String WIDE = ",\"tolerance_m\":0.6,\"speed_tolerance_m_s\":8";

    @TempDir Path shelf;
    private Visitor visitor;

    @BeforeEach
    void open() {
        // Three flowers of one hand circle, and one pattern that is far from all.
        save("Four leaves", "four-petal antispin vs four-petal antispin");
        save("Three leaves", "triquetra vs triquetra");
        save("Five leaves", "five-petal antispin vs five-petal antispin");
        save("Elsewhere", "static spin vs static spin, tether 20 cm");
        visitor = Visitor.to(shelf);
    }

    private void save(String name, String phrase) {
        Shelf.at(shelf)
                .saveNew(PatternDocument.of(name, Phrase.parse(phrase).pairing(), Performer.USUAL));
    }

    @AfterEach
    void close() {
        visitor.close();
    }

    private JsonNode route(String from, String to, String within) {
        return visitor.ask(
                "{\"id\":1,\"ask\":\"route\",\"from\":\"%s\",\"to\":\"%s\"%s}"
                        .formatted(from, to, within));
    }

    @Test
    void patternsArePlacesAndTheGentlestCrossingsWays() {
        JsonNode map = visitor.ask("{\"id\":1,\"ask\":\"map\"" + LOOSE + "}");
        assertThat(map.get("patterns")).hasSize(4);
        assertThat(map.get("complete").asBoolean()).isTrue();
        boolean found = false;
        for (JsonNode crossing : map.get("crossings")) {
            assertThat(crossing.toString()).doesNotContain("elsewhere");
            JsonNode crossings =
                    visitor.ask(
                            "{\"ask\":\"crossings\",\"pattern\":%s,\"to\":{\"pattern\":%s}%s}"
                                    .formatted(
                                            document(crossing.get("from").asString()),
                                            document(crossing.get("to").asString()),
                                            LOOSE));
            double heads = crossings.at("/crossings/0/roughness/heads_weights").asDouble();
            double hands = crossings.at("/crossings/0/roughness/hands_weights").asDouble();
            assertThat(crossing.get("roughness_weights").asDouble())
                    .isCloseTo(Math.max(heads, hands), within(1e-3));
            found = true;
        }
        assertThat(found).isTrue();
    }

    private String document(String id) {
        return visitor.get("/api/shelf/" + id).body();
    }

    @Test
    void aRouteIsPlayedThroughEveryPatternOnIt() {
        JsonNode route = route("five-leaves", "three-leaves", WIDE);
        int patterns = route.get("places").size();
        assertThat(patterns).isGreaterThanOrEqualTo(2);
        assertThat(route.get("places").get(0).asString()).isEqualTo("five-leaves");
        assertThat(route.get("places").get(patterns - 1).asString()).isEqualTo("three-leaves");
        assertThat(route.get("legs")).hasSize(patterns);
        assertThat(route.at("/passage/joints_s")).hasSize(patterns - 1);
        assertThat(route.get("seconds").asDouble())
                .as("a cycle of each at least")
                .isGreaterThanOrEqualTo(patterns - 0.01);
        assertThat(route.at("/scene/periodic").asBoolean()).isFalse();
        assertThat(route.at("/after/name").asString()).isEqualTo("Three leaves");
    }

    @Test
    void whereNoRouteLeadsItIsToldAndNothingIsPlayed() {
        JsonNode route = route("five-leaves", "elsewhere", LOOSE);
        assertThat(route.has("scene")).isFalse();
        assertThat(route.at("/told/0/text").asString()).startsWith("No crossings lead");
        assertThat(
                        visitor.post("/api/ask", "{\"ask\":\"route\",\"from\":\"x\",\"to\":\"y\"}")
                                .body())
                .contains("is on no map");
    }

    @Test
    void theMapFollowsTheShelf() {
        visitor.ask("{\"ask\":\"map\"" + LOOSE + "}");
        save("Another", "isolation vs isolation");
        JsonNode map = visitor.ask("{\"ask\":\"map\"" + LOOSE + "}");
        assertThat(map.get("patterns")).hasSize(5);
    }
}
