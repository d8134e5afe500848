package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Polygon;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.tether.Cord;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.KeepTheHandPath;
import deferent.reading.tether.Kit;
import deferent.reading.tether.LetGo;
import deferent.reading.tether.Pull;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import java.net.http.HttpResponse;
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
import tools.jackson.databind.node.ObjectNode;

/** What the studio answers about cords. */
class CordAskTest {
    private static final String PHRASE = "static spin vs triquetra";

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
    void theIdealIsShownUnlessACordIsAskedFor() {
        JsonNode answer = visitor.pairing(PHRASE);
        assertThat(answer.at("/shown/left").asString()).isEqualTo("ideal");
        assertThat(answer.get("scene").has("ghost")).isFalse();
    }

    @Test
    void keepingTheFigureMovesTheHandAndLeavesTheIdealAsAGhost() {
        JsonNode answer = shown(PHRASE, "figure");
        Trace ideal = Trace.of(Phrase.parse(PHRASE).pairing());
        for (Side side : Side.values()) {
            assertThat(answer.at("/shown/" + side.word()).asString()).isEqualTo("figure");
            Trace kept = KeepTheFigure.of(ideal, side, Kit.USUAL).in(ideal);
            assertThat(apart(answer, "samples", side, "hand", kept.hand(side))).isLessThan(1e-6);
            assertThat(apart(answer, "samples", side, "head", ideal.head(side))).isLessThan(1e-6);
            assertThat(apart(answer, "ghost", side, "hand", ideal.hand(side))).isLessThan(1e-6);
            assertThat(apart(answer, "samples", side, "hand", ideal.hand(side)))
                    .isGreaterThan(0.05);
        }
        assertThat(answer.at("/scene/items").toString())
                .as("a hand that was still has a path now")
                .contains("left-hand-path");
    }

    @Test
    void keepingTheHandMovesTheHeadWhereThereIsSuchAMotionAndSaysWhyWhereThereIsNone() {
        JsonNode answer = shown(PHRASE, "hand-path");
        Trace ideal = Trace.of(Phrase.parse(PHRASE).pairing());
        for (Side side : Side.values()) {
            KeepTheHandPath hand = KeepTheHandPath.of(ideal, side, Kit.USUAL);
            boolean there = hand.best().isPresent();
            assertThat(answer.at("/shown/" + side.word()).asString())
                    .isEqualTo(there ? "hand-path" : "ideal");
            assertThat(answer.at("/shown/why").has(side.word())).isEqualTo(!there);
            assertThat(answer.at("/scene/ghost").has(side.word())).isEqualTo(there);
            Trace kept = there ? hand.in(ideal, hand.best().orElseThrow()) : ideal;
            assertThat(apart(answer, "samples", side, "head", kept.head(side))).isLessThan(1e-6);
            assertThat(apart(answer, "samples", side, "hand", ideal.hand(side))).isLessThan(1e-6);
        }
        assertThat(answer.at("/shown/right").asString()).isEqualTo("hand-path");
    }

    @Test
    void theClosestFigureStandsBesideTheIdealAndFollowsADrag() {
        JsonNode answer = shown("isolation vs triquetra, tempo 60", "closest");
        Trace ideal = Trace.of(Phrase.parse("isolation vs triquetra, tempo 60").pairing());
        for (Side side : Side.values()) {
            assertThat(answer.at("/shown/" + side.word()).asString()).isEqualTo("closest");
            assertThat(apart(answer, "ghost", side, "head", ideal.head(side))).isLessThan(1e-6);
            assertThat(apart(answer, "samples", side, "head", ideal.head(side)))
                    .isBetween(1e-4, 0.08);
            assertThat(apart(answer, "samples", side, "hand", ideal.hand(side)))
                    .isGreaterThan(0.05);
        }
        JsonNode next = shown("isolation vs triquetra, tempo 61", "closest");
        assertThat(apart(next, "samples", Side.LEFT, "head", ideal.head(Side.LEFT)))
                .isLessThan(0.2);
    }

    @Test
    void aPendulumThatNobodyDrivesStaysAsItIsWhateverIsKept() {
        JsonNode answer = shown("CAP vs pendulum", "figure");
        assertThat(answer.at("/shown/why").isEmpty()).isTrue();
        assertThat(answer.at("/scene/samples/right")).isEqualTo(answer.at("/scene/ghost/right"));
    }

    @Test
    void aHandWithACornerStaysIdealAndTheReasonIsTold() {
        Pairing pairing = Phrase.parse("isolation vs triquetra").pairing();
        Part right = pairing.right();
        Pairing cornered =
                pairing.with(
                        Side.RIGHT,
                        right.with(new Motion(new Polygon(4, 0.3, 0), right.motion().spin())));
        ObjectNode question = Desk.JSON.createObjectNode();
        question.put("ask", "pairing").put("show", "figure");
        question.set(
                "pattern",
                PatternJson.tree(PatternDocument.of("a box", cornered, Performer.USUAL)));
        JsonNode answer = visitor.ask(question.toString());
        assertThat(answer.at("/shown/right").asString()).isEqualTo("ideal");
        assertThat(answer.at("/shown/why/right").asString()).contains("infinite force");
        assertThat(answer.at("/shown/left").asString()).isEqualTo("figure");
    }

    @Test
    void thePullOfTheIdealIsThePullReadingInHeadWeights() {
        JsonNode pull = visitor.pairing(PHRASE).at("/pull/right");
        Trace ideal = Trace.of(Phrase.parse(PHRASE).pairing());
        int count = pull.get("weights").size();
        assertThat(count).isGreaterThan(90);
        Pull reading = Pull.of(ideal, Side.RIGHT, Cord.of(ideal, Side.RIGHT, Kit.USUAL), count);
        for (int i = 0; i < count; i++) {
            assertThat(pull.at("/weights/" + i).asDouble())
                    .isCloseTo(reading.weights(reading.newtons()[i]), within(6e-4));
        }
        assertThat(pull.get("slack").size()).isEqualTo(reading.slack().size());
    }

    @Test
    void aCordIsNeverAskedToPushWhileTheFigureIsKept() {
        JsonNode ideal = visitor.pairing("isolation vs four-petal antispin, tempo 40");
        JsonNode kept = shown("isolation vs four-petal antispin, tempo 40", "figure");
        assertThat(ideal.at("/pull/left/least_weights").asDouble()).isNegative();
        assertThat(ideal.at("/pull/left/slack").size()).isPositive();
        assertThat(kept.at("/pull/left/least_weights").asDouble()).isPositive();
        assertThat(kept.at("/pull/left/slack").size()).isZero();
    }

    @Test
    void aSettledAnswerBringsTheSlowestTempos() {
        JsonNode slowest =
                visitor.ask(
                                "{\"ask\":\"pairing\",\"phrase\":\""
                                        + PHRASE
                                        + "\",\"detail\":\"settled\"}")
                        .at("/readings/slowest/left");
        // The slowest full circle behind a still hand takes 4.0378 √(L/g); DLMF 19.8(i).
        assertThat(slowest.at("/hand_path_kept/tempo_cycles_per_min").asDouble())
                .isCloseTo(60 / (4.037811640 * Math.sqrt(0.6 / 9.80665)), within(0.01));
    }

    @Test
    void anotherKitPullsOtherwise() {
        String heavy =
                """
                {"ask":"pairing","phrase":"%s","kit":{"head_mass_kg":0.24,"head_diameter_m":0.1,
                 "cord_kg_per_m":0.02,"air":true}}
                """
                        .formatted(PHRASE);
        JsonNode usual = visitor.pairing(PHRASE);
        JsonNode other = visitor.ask(heavy);
        assertThat(other.at("/pattern/kit/head_mass_kg").asDouble()).isEqualTo(0.24);
        assertThat(other.at("/readings/pull/left/greatest_n").asDouble())
                .isCloseTo(2 * usual.at("/readings/pull/left/greatest_n").asDouble(), within(0.2));
        assertThat(
                        status(
                                "{\"ask\":\"pairing\",\"phrase\":\"isolation vs triquetra\","
                                        + "\"kit\":{\"head_mass_kg\":0}}"))
                .isEqualTo(422);
        assertThat(
                        status(
                                "{\"ask\":\"pairing\",\"phrase\":\"isolation vs triquetra\","
                                        + "\"kit\":{\"mass\":1}}"))
                .isEqualTo(400);
    }

    @Test
    void aPoiThatIsLetGoGoesWhereTheSimulationSays() {
        JsonNode answer =
                visitor.ask(
                        """
                        {"ask":"letgo","phrase":"isolation vs four-petal antispin","side":"left",
                         "time_s":0.3,"slip_m":0.02,"seconds":3}
                        """);
        Trace ideal = Trace.of(Phrase.parse("isolation vs four-petal antispin").pairing());
        LetGo run =
                LetGo.of(
                        ideal,
                        Side.LEFT,
                        Kit.USUAL,
                        LetGo.Start.slipped(ideal, Side.LEFT, 0.3, 0.02),
                        3);
        assertThat(answer.at("/scene/count").asInt()).isEqualTo(181);
        assertThat(answer.at("/scene/periodic").asBoolean()).isFalse();
        FloatBuffer head = floats(answer.at("/scene/samples/left/head"));
        FloatBuffer hand = floats(answer.at("/scene/samples/left/hand"));
        FloatBuffer other = floats(answer.at("/scene/samples/right/head"));
        for (int i = 0; i <= 180; i++) {
            double time = 0.3 + i / 60.0;
            assertThat(point(head, i).distance(run.trace().head(Side.LEFT).at(time).position()))
                    .isLessThan(1e-5);
            assertThat(point(hand, i).distance(ideal.hand(Side.LEFT).at(time).position()))
                    .isLessThan(1e-6);
            assertThat(point(other, i).distance(ideal.head(Side.RIGHT).at(time).position()))
                    .isLessThan(1e-6);
            assertThat(point(hand, i).distance(point(head, i))).isLessThan(0.6 + 1e-6);
        }
        assertThat(answer.get("events").size()).isEqualTo(run.events().size()).isPositive();
        double snaps = 0;
        for (JsonNode event : answer.get("events")) {
            assertThat(event.get("kind").asString()).isIn("slack", "snap");
            assertThat(event.get("time_s").asDouble()).isBetween(0.0, 3.0);
            snaps += event.get("loss_j").asDouble();
        }
        assertThat(answer.at("/audit/snaps_j").asDouble()).isCloseTo(snaps, within(1e-4));
        assertThat(answer.at("/audit/unaccounted_j").asDouble()).isCloseTo(0, within(1e-6));
        assertThat(answer.get("lost_at_s").asDouble())
                .isCloseTo(run.lostAt().orElseThrow() - 0.3, within(1e-5));
        JsonNode slack = answer.at("/pull/left/slack/0");
        int within = (int) Math.ceil(60 * slack.get("from_s").asDouble());
        assertThat(60 * slack.get("to_s").asDouble()).isGreaterThan(within);
        assertThat(answer.at("/pull/left/weights/" + within).asDouble()).isCloseTo(0, within(1e-3));
    }

    @Test
    void aPoiLetGoWithoutASlipWhileTheFigureIsKeptKeepsIt() {
        JsonNode answer =
                visitor.ask(
                        """
                        {"ask":"letgo","phrase":"static spin vs triquetra","side":"right","show":"figure",
                         "time_s":0.2,"slip_m":0,"seconds":2}
                        """);
        assertThat(answer.get("events").size()).isZero();
        assertThat(answer.get("lost_at_s").isNull()).isTrue();
        assertThat(answer.get("farthest_m").asDouble()).isLessThan(1e-4);
    }

    @Test
    void whatCannotBeLetGoIsRefused() {
        String letGo = "{\"ask\":\"letgo\",\"phrase\":\"isolation vs triquetra\",";
        assertThat(status(letGo + "\"side\":\"middle\"}")).isEqualTo(400);
        assertThat(status(letGo + "\"side\":\"left\",\"seconds\":11}")).isEqualTo(400);
        assertThat(status(letGo + "\"side\":\"left\",\"seconds\":0}")).isEqualTo(400);
        assertThat(status(letGo + "\"side\":\"left\",\"slip_m\":3}")).isEqualTo(422);
        assertThat(status(letGo + "\"slip_m\":0.1}")).isEqualTo(400);
        assertThat(status("{\"ask\":\"pairing\",\"phrase\":\"a\",\"show\":\"both\"}"))
                .isEqualTo(400);
    }

    private static int status(String question) {
        HttpResponse<String> response = visitor.post("/api/ask", question);
        return response.statusCode();
    }

    private static JsonNode shown(String phrase, String keep) {
        return visitor.ask(
                "{\"ask\":\"pairing\",\"phrase\":\"" + phrase + "\",\"show\":\"" + keep + "\"}");
    }

    /** Greatest distance between packed points and a course. */
    private static double apart(
            JsonNode answer, String which, Side side, String end, Course course) {
        JsonNode scene = answer.get("scene");
        FloatBuffer packed = floats(scene.at("/" + which + "/" + side.word() + "/" + end));
        int count = scene.get("count").asInt();
        assertThat(packed.limit()).isEqualTo(3 * count);
        double most = 0;
        for (int i = 0; i < count; i++) {
            double time = scene.get("period_s").asDouble() * i / count;
            most = Math.max(most, point(packed, i).distance(course.at(time).position()));
        }
        return most;
    }

    private static FloatBuffer floats(JsonNode base64) {
        return ByteBuffer.wrap(Base64.getDecoder().decode(base64.asString()))
                .order(ByteOrder.LITTLE_ENDIAN)
                .asFloatBuffer();
    }

    private static Vector3D point(FloatBuffer xyz, int i) {
        return new Vector3D(xyz.get(3 * i), xyz.get(3 * i + 1), xyz.get(3 * i + 2));
    }
}
