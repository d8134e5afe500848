package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.record.PatternDocument;
import deferent.record.Shelf;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/** The shelf as a map, and routes over it. */
class MapAskTest {
    @TempDir Path shelf;
    private Visitor visitor;

    @BeforeEach
    void open() {
        // Three of one tether, and one that is of another.
        save("Long arms", "extension vs extension, tether 40 cm, tempo 60");
        save("One still", "extension vs static spin, tether 40 cm, tempo 60");
        save("Both still", "static spin vs static spin, tether 40 cm, tempo 60");
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

    private JsonNode map() {
        return visitor.ask("{\"id\":1,\"ask\":\"map\"}");
    }

    private JsonNode route(String from, String to, String more) {
        return visitor.ask(
                "{\"id\":1,\"ask\":\"route\",\"from\":\"%s\",\"to\":\"%s\"%s}"
                        .formatted(from, to, more));
    }

    private String document(String id) {
        return visitor.get("/api/shelf/" + id).body();
    }

    private static List<JsonNode> led(JsonNode map) {
        List<JsonNode> all = new ArrayList<>();
        map.get("answers").forEach(part -> part.path("transitions").forEach(all::add));
        return all;
    }

    @Test
    void patternsArePlacesAndTheGentlestTransitionsWays() {
        JsonNode map = map();
        assertThat(map.at("/answers/0/patterns")).hasSize(4);
        assertThat(map.get("complete").asBoolean()).isTrue();
        assertThat(map.get("pairs_compared").asInt()).isEqualTo(12);
        List<JsonNode> led = led(map);
        assertThat(led).isNotEmpty();
        for (JsonNode one : led) {
            assertThat(one.toString()).doesNotContain("elsewhere");
            JsonNode found =
                    visitor.ask(
                            "{\"ask\":\"transitions\",\"pattern\":%s,\"to\":{\"pattern\":%s}}"
                                    .formatted(
                                            document(one.get("from").asString()),
                                            document(one.get("to").asString())));
            assertThat(one.get("grade")).isEqualTo(found.at("/transitions/0/grade"));
        }
        assertThat(map.at("/told/0/text").asString())
                .contains("Nothing leads into or out of Elsewhere.");
    }

    @Test
    void aRouteIsASetOfThePatternsOnIt() {
        JsonNode route = route("long-arms", "both-still", "");
        int patterns = route.get("places").size();
        assertThat(patterns).isGreaterThanOrEqualTo(2);
        assertThat(route.get("places").get(0).asString()).isEqualTo("long-arms");
        assertThat(route.get("places").get(patterns - 1).asString()).isEqualTo("both-still");
        assertThat(route.at("/set/steps")).hasSize(patterns);
        assertThat(route.at("/set/transitions")).hasSize(patterns - 1);
        assertThat(route.at("/set/flows").asBoolean()).isTrue();
        for (JsonNode step : route.at("/set/steps")) {
            assertThat(step.get("counts").asDouble()).as("a cycle").isGreaterThanOrEqualTo(0.99);
        }
        assertThat(route.at("/told/0/text").asString())
                .startsWith("Long arms, then ")
                .contains("Both still");
    }

    @Test
    void whereNoRouteLeadsItIsToldAndThereIsNoSet() {
        JsonNode route = route("long-arms", "elsewhere", ",\"hardest\":\"hard\"");
        assertThat(route.has("set")).isFalse();
        assertThat(route.at("/told/0/text").asString())
                .startsWith("Nothing leads from Long arms to Elsewhere")
                .contains("the tethers differ");
        assertThat(route.get("pairs_compared").asInt()).as("of forty centimetres").isPositive();
        assertThat(
                        visitor.post("/api/ask", "{\"ask\":\"route\",\"from\":\"x\",\"to\":\"y\"}")
                                .body())
                .contains("is on no map");
    }

    @Test
    void theMapFollowsTheShelf() {
        map();
        save("Another", "isolation vs isolation, tether 20 cm");
        JsonNode map = map();
        assertThat(map.at("/answers/0/patterns")).hasSize(5);
        assertThat(map.get("pairs_compared").asInt()).isEqualTo(20);
    }
}
