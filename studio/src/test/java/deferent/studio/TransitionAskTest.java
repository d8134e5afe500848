package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.shared.Side;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.FloatBuffer;
import java.nio.file.Path;
import java.util.Base64;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/** What the studio answers about transitions, and one of them played. */
class TransitionAskTest {
    private static final String FROM = "extension vs extension, tether 40 cm";
    private static final String TO = "extension vs static spin, tether 40 cm";

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

    private static String question(String ask, String to, String more) {
        return "{\"id\":1,\"ask\":\"%s\",\"phrase\":\"%s\",\"to\":{\"phrase\":\"%s\"}%s}"
                .formatted(ask, FROM, to, more);
    }

    @Test
    void aPlayedTransitionBeginsOnTheFirstCountAndTheSecondPatternGoesOnWhereItEnds() {
        JsonNode all = visitor.ask(question("transitions", TO, ""));
        assertThat(all.get("transitions")).isNotEmpty();
        JsonNode played = visitor.ask(question("transition-play", TO, ",\"rate\":240"));
        assertThat(played.at("/passages/0/transition")).isEqualTo(all.at("/transitions/0"));
        assertThat(played.at("/strip/counts/0/text").asString()).isEqualTo("1");
        assertThat(played.at("/strip/counts/0/time_s").asDouble()).isZero();
        double leaves = played.at("/passages/0/from_s").asDouble();
        double joined = played.at("/passages/0/to_s").asDouble();
        double seconds = played.get("seconds").asDouble();
        assertThat(leaves).as("once round before").isGreaterThanOrEqualTo(1);
        assertThat(seconds - joined).as("once round after").isGreaterThanOrEqualTo(1);
        for (JsonNode count : played.at("/strip/counts")) {
            double time = count.get("time_s").asDouble();
            assertThat(time > leaves + 1e-3 && time < joined - 1e-3)
                    .as("counts of neither pattern fall in the passage")
                    .isFalse();
        }
        JsonNode onward = played.get("onward");
        for (Side side : Side.values()) {
            Vector3D[] heads = points(played, side, "head");
            Vector3D[] hands = points(played, side, "hand");
            for (int i = 0; i < heads.length; i++) {
                assertThat(heads[i].distance(hands[i]))
                        .as("on a cord the tether keeps its length")
                        .isCloseTo(0.4, within(2e-4));
            }
            Vector3D[] next = points(onward, side, "head");
            int at = (int) Math.rint(onward.get("phase").asDouble() * next.length);
            assertThat(next[at % next.length].distance(heads[heads.length - 1]))
                    .as("no jump into the second pattern")
                    .isLessThan(0.03);
        }
    }

    @Test
    void eachHandIsMarkedWhereItIsWhenItLeavesAndJoins() {
        JsonNode played = visitor.ask(question("transition-play", TO, ",\"rate\":240"));
        JsonNode moments = played.at("/passages/0/moments");
        long hands =
                Stream.of(Side.values())
                        .filter(
                                side ->
                                        !played.at(
                                                        "/passages/0/transition/"
                                                                + side.word()
                                                                + "/kind")
                                                .asString()
                                                .equals("keeps"))
                        .count();
        assertThat(hands).isPositive();
        assertThat(moments.size()).as("each hand leaves and joins").isEqualTo((int) (2 * hands));
        double seconds = played.get("seconds").asDouble();
        double before = 0;
        for (JsonNode moment : moments) {
            double time = moment.get("time_s").asDouble();
            assertThat(time).as("in their order").isGreaterThanOrEqualTo(before);
            before = time;
            Side side = moment.get("side").asString().equals("left") ? Side.LEFT : Side.RIGHT;
            for (String end : new String[] {"hand", "head"}) {
                Vector3D[] path = points(played, side, end);
                JsonNode at = moment.get(end);
                Vector3D said =
                        new Vector3D(
                                at.get(0).asDouble(), at.get(1).asDouble(), at.get(2).asDouble());
                int i = (int) Math.rint(time / seconds * (path.length - 1));
                assertThat(path[i].distance(said)).isLessThan(0.03);
            }
        }
        String first = moments.get(0).get("count").asString();
        assertThat(
                        played.at("/passages/0/transition/told/text")
                                .asString()
                                .toLowerCase(java.util.Locale.ROOT))
                .as("the sentence says the same count")
                .startsWith(first);
    }

    @Test
    void whereTethersDifferThereIsNoneAndItSaysSo() {
        JsonNode answer =
                visitor.ask(question("transitions", "extension vs static spin, tether 35 cm", ""));
        assertThat(answer.get("transitions")).isEmpty();
        assertThat(answer.get("none").asString()).isEqualTo("tethers");
        assertThat(answer.at("/told/0/text").asString()).contains("the tethers differ");
    }

    @Test
    void oneIsTakenAwayAsAPicture() {
        JsonNode answer = visitor.ask(question("transition-take", TO, ",\"as\":\"svg\""));
        String count =
                visitor.ask(question("transition-play", TO, ""))
                        .at("/passages/0/moments/0/count")
                        .asString();
        assertThat(answer.get("name").asString()).endsWith(".svg").contains("into");
        assertThat(visitor.get(answer.get("file").asString()).body()).contains("leaves " + count);
    }

    @Test
    void aQuestionThatMakesNoSenseIsRefusedWithWhatWouldBeRight() {
        assertThat(
                        visitor.post(
                                        "/api/ask",
                                        "{\"ask\":\"transitions\",\"phrase\":\"" + FROM + "\"}")
                                .body())
                .contains("\"where\":\"to\"");
        assertThat(
                        visitor.post(
                                        "/api/ask",
                                        question("transition-play", TO, ",\"transition\":31"))
                                .body())
                .contains("ask for the transitions first");
        assertThat(
                        visitor.post("/api/ask", question("transition-take", TO, ",\"as\":\"csv\""))
                                .body())
                .contains("no transition is written as");
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
}
