package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.link.LinkReading;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/** What the studio answers about seeks, all in one. */
class SeekAskTest {
    @TempDir static Path shelf;
    private static Visitor visitor;

    @BeforeAll
    static void open() {
        visitor = Visitor.to(shelf);
    }

    @AfterAll
    static void close() {
        visitor.close();
    }

    private static JsonNode seek(String more) {
        return visitor.ask("{\"id\":1,\"ask\":\"seek\",\"motions\":10000,\"limit\":8" + more + "}");
    }

    @Test
    void withoutAnswersFromElsewhereThereAreNoPages() {
        assertThat(seek(",\"page\":1").get("pages").intValue()).isZero();
    }

    @Test
    void whatIsFoundOpensAsAPatternThatTies() {
        JsonNode answer = seek(",\"filter\":{\"exact\":true,\"reachable\":false}");
        assertThat(answer.get("answers")).hasSize(8);
        for (JsonNode found : answer.get("answers")) {
            PatternDocument document = PatternJson.readPattern(found.get("pattern"));
            LinkReading link = LinkReading.of(Trace.of(document.pairing()), Side.LEFT);
            assertThat(link.inPlaneGap()).as(found.get("said").asString()).isLessThan(1e-3);
            JsonNode read =
                    visitor.ask(
                            "{\"id\":2,\"ask\":\"pairing\",\"pattern\":"
                                    + found.get("pattern")
                                    + "}");
            assertThat(read.get("scene")).isNotNull();
            assertThat(found.at("/moves/count").asInt()).isEqualTo(96);
        }
    }

    @Test
    void filtersLeaveOutWhatDoesNotPass() {
        for (JsonNode found : seek(",\"filter\":{\"contrast\":2,\"symmetry\":3}").get("answers")) {
            assertThat(found.at("/merit/contrast").asDouble()).isGreaterThanOrEqualTo(2);
            assertThat(found.at("/merit/symmetry").asInt()).isGreaterThanOrEqualTo(3);
        }
    }

    @Test
    void unlessToldOtherwiseAllThatIsFoundIsReached() {
        assertThat(seek("").get("answers")).isNotEmpty();
        for (JsonNode found : seek("").get("answers")) {
            assertThat(found.at("/merit/missing_m").asDouble()).isCloseTo(0, within(1e-4));
        }
        double missing = 0;
        for (JsonNode found : seek(",\"filter\":{\"reachable\":false}").get("answers")) {
            missing = Math.max(missing, found.at("/merit/missing_m").asDouble());
        }
        assertThat(missing).isGreaterThan(0.1);
    }

    @Test
    void moreLikeAPairingFindsThatPairingFirstWhereItIsInTheSpace() {
        JsonNode answer = seek(",\"phrase\":\"static spin vs triquetra\"");
        JsonNode first = answer.get("answers").get(0);
        assertThat(first.at("/told/text").asString()).startsWith("The very same.");
        assertThat(answer.get("ordered").asString())
                .isEqualTo("most like static spin vs triquetra first");
    }

    @Test
    void theSteadiestCanBeAskedFor() {
        JsonNode answer =
                visitor.ask(
                        "{\"id\":1,\"ask\":\"seek\",\"motions\":10000,\"limit\":3,\"order\":\"steadiness\"}");
        double before = 0;
        for (JsonNode key : answer.get("order_of_keys")) {
            for (JsonNode found : answer.get("answers")) {
                if (found.get("key").equals(key)) {
                    double growth = found.at("/merit/growth_in_reaction").asDouble(1e300);
                    assertThat(growth).isGreaterThanOrEqualTo(before);
                    before = growth;
                }
            }
        }
        assertThat(before).isPositive();
    }
}
