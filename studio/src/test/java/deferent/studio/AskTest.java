package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.record.PatternJson;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.FloatBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

class AskTest {
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

    @Test
    void thePackedPointsAreTheTracesPoints() {
        JsonNode scene = visitor.pairing("isolation vs triquetra").get("scene");
        Trace trace = Trace.of(Phrase.parse("isolation vs triquetra").pairing());
        assertThat(scene.get("count").asInt()).isEqualTo(720);
        for (Side side : Side.values()) {
            FloatBuffer head = floats(scene.at("/samples/" + side.word() + "/head").asString());
            FloatBuffer hand = floats(scene.at("/samples/" + side.word() + "/hand").asString());
            assertThat(head.limit()).isEqualTo(3 * 720);
            for (int i = 0; i < 720; i++) {
                double time = scene.get("period_s").asDouble() * i / 720;
                assertThat(point(head, i).distance(trace.head(side).at(time).position()))
                        .isLessThan(1e-6);
                assertThat(point(hand, i).distance(trace.hand(side).at(time).position()))
                        .isLessThan(1e-6);
            }
        }
    }

    @Test
    void aPhraseIsAnsweredWithEverythingThePageShows() {
        JsonNode answer = visitor.pairing("static spin vs triquetra");
        assertThat(answer.get("id").asInt()).isEqualTo(1);
        assertThat(answer.at("/readings/links/0/kind").asString()).isEqualTo("touching");
        assertThat(answer.at("/readings/told").size()).isGreaterThan(2);
        assertThat(texts(answer.get("numbers"), "caption"))
                .containsExactly("Links", "Hands and figures");
        assertThat(answer.at("/numbers/0/lines/0").toString())
                .isEqualTo("[\"kind\",\"touching\",\"none\"]");
        assertThat(answer.at("/strip/carrier").asString()).isEqualTo("left");
        for (JsonNode gap : answer.at("/strip/gap_m")) {
            assertThat(gap.asDouble()).isCloseTo(0, within(1e-3));
        }
        assertThat(texts(answer.get("handles"), "key"))
                .contains("left.poi", "right.circle", "right.tilt")
                .doesNotContain("left.circle");
        assertThat(texts(answer.get("sizes"), "key"))
                .contains("right.hand_radius_m", "left.tether_m", "tempo_cycles_per_min")
                .doesNotContain("left.hand_radius_m");
        assertThat(answer.get("begin").size()).isEqualTo(4);
    }

    @Test
    void whatIsDrawnIsTheSameWhetherItIsToldOfOrNot() {
        for (String show : List.of("ideal", "figure")) {
            String question =
                    """
                    {"ask":"pairing","phrase":"isolation vs triquetra","samples":120,"show":"%s",
                     "change":[{"set":"right.hand_radius_m","to":0.45}],"told":%s}
                    """;
            ObjectNode told = (ObjectNode) visitor.ask(question.formatted(show, true));
            JsonNode untold = visitor.ask(question.formatted(show, false));
            assertThat(told.remove(List.of("readings", "numbers", "begin"))).isNotNull();
            assertThat(untold).isEqualTo(told);
        }
    }

    @Test
    void theLinkIsDrawnFromTheHeadThatIsAskedFor() {
        for (Side side : Side.values()) {
            JsonNode answer =
                    visitor.ask(
                            """
                            {"ask":"pairing","phrase":"isolation vs triquetra","told":false,
                             "carrier":"%s"}
                            """
                                    .formatted(side.word()));
            assertThat(answer.at("/strip/carrier").asString()).isEqualTo(side.word());
            assertThat(answer.at("/strip/gap_m"))
                    .isEqualTo(answer.at("/strip/links/" + side.ordinal() + "/gap_m"));
        }
    }

    @Test
    void thePatternOfAnAnswerAsksForTheSameAgain() {
        JsonNode first = visitor.pairing("isolation vs four-petal antispin, split time");
        ObjectNode question = Desk.JSON.createObjectNode();
        question.put("ask", "pairing");
        question.set("pattern", first.get("pattern"));
        JsonNode second = visitor.ask(question.toString());
        assertThat(second.at("/scene/samples")).isEqualTo(first.at("/scene/samples"));
        assertThat(second.get("pattern")).isEqualTo(first.get("pattern"));
        assertThat(PatternJson.readPattern(first.get("pattern")).pairing())
                .isEqualTo(Phrase.parse("isolation vs four-petal antispin, split time").pairing());
    }

    @Test
    void aSizeThatIsSetIsReadBackAndSaid() {
        JsonNode answer =
                visitor.ask(
                        """
                        {"ask":"pairing","phrase":"isolation vs triquetra",
                         "change":[{"set":"right.hand_radius_m","to":0.45},{"set":"right.tilt_deg","to":30}]}
                        """);
        assertThat(size(answer, "right.hand_radius_m")).isEqualTo(0.45);
        assertThat(size(answer, "right.tilt_deg")).isCloseTo(30, within(1e-9));
        assertThat(Phrase.parse(answer.get("phrase").asString()).pairing())
                .isEqualTo(PatternJson.readPattern(answer.get("pattern")).pairing());
    }

    @Test
    void aTempoCanBeSaidAndUnsaid() {
        JsonNode said =
                visitor.ask(
                        """
                        {"ask":"pairing","phrase":"isolation vs triquetra","change":[{"set":"tempo_cycles_per_min","to":90}]}
                        """);
        assertThat(said.at("/readings/tempo_cycles_per_min").asDouble()).isEqualTo(90);
        JsonNode unsaid =
                visitor.ask(
                        """
                        {"ask":"pairing","phrase":"isolation vs triquetra",
                         "change":[{"set":"tempo_cycles_per_min","to":90},{"set":"tempo_cycles_per_min","to":null}]}
                        """);
        assertThat(unsaid.at("/readings/tempo_cycles_per_min").asDouble()).isEqualTo(60);
    }

    @Test
    void aSettledAnswerCertifiesWhatALiveOneEstimates() {
        JsonNode live = visitor.pairing("isolation vs triquetra");
        JsonNode settled =
                visitor.ask(
                        """
                        {"ask":"pairing","phrase":"isolation vs triquetra","detail":"settled"}
                        """);
        assertThat(live.at("/readings/links/0/shape_gap_is_estimate").asBoolean()).isTrue();
        assertThat(settled.at("/readings/links/0/shape_gap_is_estimate").asBoolean()).isFalse();
        assertThat(settled.at("/readings/links/0/shape_gap_m").asDouble())
                .isCloseTo(live.at("/readings/links/0/shape_gap_m").asDouble(), within(0.02));
    }

    @Test
    void thePerformersStatureReachesTheReadings() {
        JsonNode answer =
                visitor.ask(
                        """
                        {"ask":"pairing","phrase":"isolation vs triquetra","performer":{"stature_m":1.9}}
                        """);
        assertThat(answer.at("/readings/reach/performer/stature_m").asDouble()).isEqualTo(1.9);
        assertThat(answer.at("/pattern/performer/stature_m").asDouble()).isEqualTo(1.9);
    }

    @Test
    void aTradeWordIsExplained() {
        JsonNode answer = visitor.ask("{\"ask\":\"words\",\"word\":\"CAP\"}");
        assertThat(answer.at("/words/0/means").asString()).contains("arc");
        assertThat(visitor.ask("{\"ask\":\"words\"}").get("words").size()).isGreaterThan(15);
    }

    @Test
    void aWordNobodyKnowsIsUnderlinedAndTheNearestOffered() {
        HttpResponse<String> response =
                visitor.post(
                        "/api/ask",
                        "{\"id\":5,\"ask\":\"pairing\",\"phrase\":\"isolation vs triquatra\"}");
        assertThat(response.statusCode()).isEqualTo(422);
        JsonNode error = Visitor.json(response).get("error");
        assertThat(error.get("start").asInt()).isEqualTo(13);
        assertThat(error.get("end").asInt()).isEqualTo(22);
        assertThat(error.at("/nearest/0").asString()).isEqualTo("triquetra");
        assertThat(error.get("underlined").asString()).contains("^^^^^^^^^");
    }

    @Test
    void whatIsNotJsonIsToldWithItsPlace() {
        HttpResponse<String> response = visitor.post("/api/ask", "{\"ask\": \n pairing}");
        assertThat(response.statusCode()).isEqualTo(400);
        assertThat(error(response, "what")).startsWith("is not JSON");
        assertThat(error(response, "where")).startsWith("line 2");
    }

    @Test
    void aKeyGivenTwiceIsRefused() {
        HttpResponse<String> response =
                visitor.post("/api/ask", "{\"ask\":\"words\",\"ask\":\"pairing\"}");
        assertThat(response.statusCode()).isEqualTo(400);
    }

    @Test
    void anEmptyBodyAndAListAreNoQuestion() {
        assertThat(visitor.post("/api/ask", "").statusCode()).isEqualTo(400);
        assertThat(visitor.post("/api/ask", "[1,2]").statusCode()).isEqualTo(400);
        assertThat(visitor.post("/api/ask", "{}").statusCode()).isEqualTo(400);
    }

    @Test
    void aSlipInAKeyDoesNotPassInSilence() {
        HttpResponse<String> response =
                visitor.post(
                        "/api/ask",
                        "{\"ask\":\"pairing\",\"phrase\":\"isolation vs triquetra\",\"detial\":\"live\"}");
        assertThat(response.statusCode()).isEqualTo(400);
        assertThat(error(response, "where")).isEqualTo("detial");
        assertThat(error(response, "right")).contains("detail");
    }

    @Test
    void phraseAndPatternTogetherAreRefused() {
        assertThat(
                        visitor.post(
                                        "/api/ask",
                                        "{\"ask\":\"pairing\",\"phrase\":\"a\",\"pattern\":{}}")
                                .statusCode())
                .isEqualTo(400);
        assertThat(visitor.post("/api/ask", "{\"ask\":\"pairing\"}").statusCode()).isEqualTo(400);
    }

    @Test
    void aDocumentOfANewerFormatIsRefusedAsSuch() {
        HttpResponse<String> response =
                visitor.post(
                        "/api/ask",
                        "{\"ask\":\"pairing\",\"pattern\":{\"format\":99,\"kind\":\"pattern\",\"name\":\"x\"}}");
        assertThat(response.statusCode()).isEqualTo(422);
        assertThat(error(response, "what")).contains("newer");
        assertThat(error(response, "where")).isEqualTo("format");
    }

    @Test
    void anImpossibleSizeIsRefusedWithItsLimits() {
        HttpResponse<String> response =
                visitor.post(
                        "/api/ask",
                        """
                        {"ask":"pairing","phrase":"isolation vs triquetra","change":[{"set":"left.tether_m","to":-1}]}
                        """);
        assertThat(response.statusCode()).isEqualTo(422);
        assertThat(error(response, "where")).contains("tether");
        assertThat(error(response, "right")).contains("more than 0");
    }

    @Test
    void aSizeThePairingDoesNotHaveIsRefused() {
        HttpResponse<String> response =
                visitor.post(
                        "/api/ask",
                        """
                        {"ask":"pairing","phrase":"static spin vs triquetra","change":[{"set":"left.hand_radius_m","to":0.3}]}
                        """);
        assertThat(response.statusCode()).isEqualTo(422);
    }

    @Test
    void numbersThatAreNoneAreRefused() {
        for (String samples : List.of("1e9", "-5", "\"many\"", "720.5")) {
            HttpResponse<String> response =
                    visitor.post(
                            "/api/ask",
                            "{\"ask\":\"pairing\",\"phrase\":\"isolation vs triquetra\",\"samples\":"
                                    + samples
                                    + "}");
            assertThat(response.statusCode()).as(samples).isEqualTo(400);
            assertThat(error(response, "where")).isEqualTo("samples");
        }
    }

    @RepeatedTest(20)
    void aBodyThatIsTooLargeIsNotTaken() {
        String large = "{\"ask\":\"words\",\"word\":\"" + "x".repeat(300_000) + "\"}";
        assertThat(visitor.post("/api/ask", large).statusCode()).isEqualTo(413);
    }

    @RepeatedTest(20)
    void aBodyThatIsTooLargeIsNotTakenEvenWhenItsLengthIsNotSaid() {
        byte[] large =
                ("{\"word\":\"" + "x".repeat(300_000) + "\"}").getBytes(StandardCharsets.UTF_8);
        HttpResponse<String> response =
                visitor.send(
                        visitor.request("/api/ask")
                                .POST(
                                        BodyPublishers.ofInputStream(
                                                () -> new java.io.ByteArrayInputStream(large)))
                                .build());
        assertThat(response.statusCode()).isEqualTo(413);
    }

    @Test
    void aDeeplyNestedQuestionIsRefused() {
        HttpResponse<String> response =
                visitor.post("/api/ask", "{\"ask\":" + "[".repeat(5000) + "]".repeat(5000) + "}");
        assertThat(response.statusCode()).isEqualTo(400);
    }

    @Test
    void anAddressNobodyKnowsGetsAnErrorToo() {
        HttpResponse<String> response = visitor.get("/api/nothing");
        assertThat(response.statusCode()).isEqualTo(404);
        assertThat(error(response, "what")).isEqualTo("is nothing the studio has");
        assertThat(visitor.get("/api/ask").statusCode()).isIn(404, 405);
    }

    private static String error(HttpResponse<String> response, String key) {
        return Visitor.json(response).at("/error/" + key).asString();
    }

    private static double size(JsonNode answer, String key) {
        for (JsonNode size : answer.get("sizes")) {
            if (size.get("key").asString().equals(key)) {
                return size.get("value").asDouble();
            }
        }
        throw new AssertionError("no size " + key);
    }

    private static List<String> texts(JsonNode list, String key) {
        List<String> all = new ArrayList<>();
        list.forEach(node -> all.add(node.get(key).asString()));
        return all;
    }

    private static FloatBuffer floats(String base64) {
        return ByteBuffer.wrap(Base64.getDecoder().decode(base64))
                .order(ByteOrder.LITTLE_ENDIAN)
                .asFloatBuffer();
    }

    private static Vector3D point(FloatBuffer xyz, int i) {
        return new Vector3D(xyz.get(3 * i), xyz.get(3 * i + 1), xyz.get(3 * i + 2));
    }
}
