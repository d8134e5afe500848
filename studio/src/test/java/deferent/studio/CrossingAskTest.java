package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Side;
import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Course;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import deferent.record.PatternJson;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.FloatBuffer;
import java.nio.file.Path;
import java.util.Base64;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/** What the studio answers about crossings and the passages through them. */
class CrossingAskTest {
    private static final String FROM = "four-petal antispin vs four-petal antispin";
    private static final String TO = "triquetra vs triquetra";

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

    private static String question(String ask, String from, String to, String more) {
        return "{\"id\":1,\"ask\":\"%s\",\"phrase\":\"%s\",\"to\":{\"phrase\":\"%s\"}%s}"
                .formatted(ask, from, to, more);
    }

    private static final String LOOSE = ",\"tolerance_m\":0.25,\"speed_tolerance_m_s\":3";

    @Test
    void eachMomentHasBothPatternsWithinTheToleranceThatWasAskedFor() {
        JsonNode answer = visitor.ask(question("crossings", FROM, TO, LOOSE));
        Trace from = Trace.of(Phrase.parse(FROM).pairing());
        Trace to = Trace.of(Phrase.parse(TO).pairing());
        assertThat(answer.get("crossings")).isNotEmpty();
        double before = 0;
        for (JsonNode crossing : answer.get("crossings")) {
            for (Side side : Side.values()) {
                for (boolean hand : new boolean[] {true, false}) {
                    State a = course(from, side, hand).at(crossing.get("from_s").asDouble());
                    State b = course(to, side, hand).at(crossing.get("to_s").asDouble());
                    assertThat(a.position().distance(b.position())).isLessThan(0.25 + 1e-4);
                    assertThat(a.velocity().distance(b.velocity())).isLessThan(3 + 1e-3);
                }
            }
            double rough = crossing.at("/roughness/heads_weights").asDouble();
            rough = Math.max(rough, crossing.at("/roughness/hands_weights").asDouble());
            assertThat(rough).as("smoothest first").isGreaterThanOrEqualTo(before - 1e-9);
            before = rough;
            assertThat(crossing.at("/told/text").asString()).contains("together, same direction");
        }
    }

    private static Course course(Trace trace, Side side, boolean hand) {
        return hand ? trace.hand(side) : trace.head(side);
    }

    @Test
    void wherePatternsDoNotMeetItIsToldHowNearTheyCome() {
        JsonNode answer = visitor.ask(question("crossings", FROM, TO, ""));
        assertThat(answer.get("crossings")).isEmpty();
        assertThat(answer.at("/told/0/text").asString()).contains("where they come nearest");
        assertThat(answer.at("/nearest/place_gap_m").asDouble()).isGreaterThan(0.08);
    }

    @Test
    void aPassageBeginsAsTheOnePatternAndEndsAsTheOther() {
        JsonNode answer = visitor.ask(question("passage", FROM, TO, LOOSE + ",\"crossing\":0"));
        double from = answer.at("/crossing/from_s").asDouble();
        double to = answer.at("/crossing/to_s").asDouble();
        double seconds = answer.get("seconds").asDouble();
        double joint = answer.at("/passage/joints_s/0").asDouble();
        assertThat(answer.at("/scene/period_s").asDouble()).isEqualTo(seconds);
        assertThat(answer.at("/scene/periodic").asBoolean()).isFalse();
        for (Side side : Side.values()) {
            Vector3D[] heads = points(answer, side, "head");
            assertThat(heads[0].distance(head(FROM, side, from - joint))).isLessThan(1e-4);
            assertThat(heads[heads.length - 1].distance(head(TO, side, to + seconds - joint)))
                    .isLessThan(1e-4);
            Vector3D[] hands = points(answer, side, "hand");
            for (int i = 0; i < heads.length; i++) {
                assertThat(heads[i].distance(hands[i]))
                        .as("on a cord the tether keeps its length")
                        .isCloseTo(0.6, within(1e-4));
            }
            assertThat(answer.at("/pull/" + side.word() + "/weights")).isNotEmpty();
        }
        assertThat(answer.at("/passage/corded").asBoolean()).isTrue();
    }

    private static Vector3D head(String phrase, Side side, double time) {
        Trace trace = Trace.of(Phrase.parse(phrase).pairing());
        double cycles = time / trace.period();
        return trace.head(side).at((cycles - Math.floor(cycles)) * trace.period()).position();
    }

    private static Vector3D[] points(JsonNode answer, Side side, String end) {
        byte[] bytes =
                Base64.getDecoder()
                        .decode(answer.at("/scene/samples/" + side.word() + "/" + end).asString());
        FloatBuffer floats = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asFloatBuffer();
        Vector3D[] points = new Vector3D[floats.capacity() / 3];
        for (int i = 0; i < points.length; i++) {
            points[i] =
                    new Vector3D(floats.get(3 * i), floats.get(3 * i + 1), floats.get(3 * i + 2));
        }
        return points;
    }

    @Test
    void whatMayBeDoneToTheSecondPatternOpensWaysAndTheOneThatIsEnteredIsTold() {
        String from = "extension vs extension, split time";
        String to = "extension vs extension";
        assertThat(visitor.ask(question("crossings", from, to, "")).get("crossings")).isEmpty();
        String timed = ",\"freedom\":{\"timing\":true}";
        JsonNode free = visitor.ask(question("crossings", from, to, timed));
        assertThat(free.at("/crossings/0/need").asString()).isEqualTo("timing");
        JsonNode passage = visitor.ask(question("passage", from, to, timed));
        assertThat(PatternJson.readPattern(passage.get("after")).pairing().timing().ahead())
                .as("the second is entered in split time")
                .isCloseTo(0.5, within(1e-6));
    }

    @Test
    void aQuestionThatMakesNoSenseIsRefusedWithWhatWouldBeRight() {
        assertThat(
                        visitor.post(
                                        "/api/ask",
                                        "{\"ask\":\"crossings\",\"phrase\":\"" + FROM + "\"}")
                                .body())
                .contains("\"where\":\"to\"");
        assertThat(
                        visitor.post("/api/ask", question("passage", FROM, TO, ",\"crossing\":3"))
                                .body())
                .contains("ask for the crossings first");
        assertThat(
                        visitor.post(
                                        "/api/ask",
                                        question("crossings", FROM, TO, ",\"freedom\":{\"x\":1}"))
                                .body())
                .contains("is no key known here");
    }
}
