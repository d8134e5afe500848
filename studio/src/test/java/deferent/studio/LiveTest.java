package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletionException;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

class LiveTest {
    @TempDir Path shelf;
    private Visitor visitor;

    @BeforeEach
    void open() {
        visitor = Visitor.to(shelf);
    }

    @AfterEach
    void close() {
        visitor.close();
    }

    @Test
    void aQuestionIsAnsweredOnTheSocketAsByPost() throws Exception {
        String question = "{\"id\":7,\"ask\":\"pairing\",\"phrase\":\"isolation vs triquetra\"}";
        Line line = new Line(visitor);
        line.say(question);
        JsonNode answer = line.answer();
        assertThat(answer.get("id").asInt()).isEqualTo(7);
        assertThat(answer).isEqualTo(visitor.ask(question));
    }

    @Test
    void everyMoveOfADragIsAnsweredInItsOrder() throws Exception {
        Line line = new Line(visitor);
        for (int i = 0; i < 200; i++) {
            line.say(
                    """
                    {"id":%d,"ask":"pairing","phrase":"isolation vs triquetra",
                     "change":[{"grab":"right.circle","to":[%s,0,0.26]}]}
                    """
                            .formatted(i, 0.3 + 0.002 * i));
        }
        for (int i = 0; i < 200; i++) {
            JsonNode answer = line.answer();
            assertThat(answer.get("id").asInt()).isEqualTo(i);
            assertThat(answer.at("/pattern/pairing/right/hand/radius_m").asDouble())
                    .isEqualTo(Math.rint(300 + 2.0 * i) / 1000);
        }
    }

    @Test
    void aRefusedQuestionGetsItsErrorAndItsIdAndTheLineStaysOpen() throws Exception {
        Line line = new Line(visitor);
        line.say("{\"id\":\"a\",\"ask\":\"pairing\",\"phrase\":\"isolation vs nonsense\"}");
        JsonNode refused = line.answer();
        assertThat(refused.get("id").asString()).isEqualTo("a");
        assertThat(refused.at("/error/start").asInt()).isEqualTo(13);
        line.say("not json");
        assertThat(line.answer().at("/error/what").asString()).startsWith("is not JSON");
        line.say("{\"id\":2,\"ask\":\"words\",\"word\":\"CAP\"}");
        assertThat(line.answer().get("id").asInt()).isEqualTo(2);
    }

    @Test
    void aNewerQuestionOvertakesSettledWork() throws Exception {
        Line line = new Line(visitor);
        int settled = 12;
        for (int i = 0; i < settled; i++) {
            line.say(
                    "{\"id\":%d,\"ask\":\"pairing\",\"phrase\":\"isolation vs triquetra\",\"detail\":\"settled\"}"
                            .formatted(i));
        }
        line.say("{\"id\":99,\"ask\":\"pairing\",\"phrase\":\"isolation vs triquetra\"}");
        int answered = 0;
        int dropped = 0;
        boolean live = false;
        for (int i = 0; i <= settled; i++) {
            JsonNode answer = line.answer();
            if (answer.path("dropped").asBoolean(false)) {
                dropped++;
            } else if (answer.get("id").asInt() == 99) {
                live = true;
            } else {
                answered++;
            }
        }
        assertThat(live).isTrue();
        assertThat(answered + dropped).isEqualTo(settled);
        assertThat(dropped).isGreaterThan(0);
        assertThat(line.silent()).isTrue();
    }

    @Test
    void settledWorkThatNobodyOvertakesIsFinished() throws Exception {
        Line line = new Line(visitor);
        line.say(
                "{\"id\":1,\"ask\":\"pairing\",\"phrase\":\"isolation vs triquetra\",\"detail\":\"settled\"}");
        JsonNode answer = line.answer();
        assertThat(answer.get("detail").asString()).isEqualTo("settled");
        assertThat(answer.at("/readings/links/0/shape_gap_is_estimate").asBoolean()).isFalse();
    }

    @Test
    void askingForAWordDoesNotDisturbSettledWork() throws Exception {
        Line line = new Line(visitor);
        line.say(
                "{\"id\":1,\"ask\":\"pairing\",\"phrase\":\"isolation vs triquetra\",\"detail\":\"settled\"}");
        line.say("{\"id\":2,\"ask\":\"words\",\"word\":\"CAP\"}");
        JsonNode one = line.answer();
        JsonNode other = line.answer();
        JsonNode settled = one.get("id").asInt() == 1 ? one : other;
        assertThat(settled.has("scene")).isTrue();
    }

    @Test
    void aMessageThatIsTooLargeClosesTheLine() throws Exception {
        Line line = new Line(visitor);
        try {
            line.say("{\"word\":\"" + "x".repeat(300_000) + "\"}");
        } catch (CompletionException hungUp) {
            // The server may hang up before all of it is sent.
        }
        // 1009 is "message too big" (RFC 6455, 7.4.1); the line may also break before it is read.
        assertThat(line.closed.poll(2, TimeUnit.MINUTES)).isIn(1009, Line.BROKEN);
        assertThat(line.heard).isEmpty();
        Line next = new Line(visitor);
        next.say("{\"id\":1,\"ask\":\"words\",\"word\":\"CAP\"}");
        assertThat(next.answer().get("id").asInt()).isEqualTo(1);
    }

    @Test
    void twoSocketsDoNotDisturbEachOther() throws Exception {
        Line one = new Line(visitor);
        Line two = new Line(visitor);
        one.say(
                "{\"id\":1,\"ask\":\"pairing\",\"phrase\":\"isolation vs triquetra\",\"detail\":\"settled\"}");
        two.say("{\"id\":2,\"ask\":\"pairing\",\"phrase\":\"isolation vs triquetra\"}");
        assertThat(two.answer().get("id").asInt()).isEqualTo(2);
        assertThat(one.answer().has("scene")).isTrue();
    }

    @Test
    void aSeekIsToldInPartsAndSaysTheirOrderAtTheEnd() throws Exception {
        Line line = new Line(visitor);
        line.say("{\"id\":5,\"ask\":\"seek\",\"motions\":10000,\"order\":\"reach\",\"limit\":6}");
        List<String> told = new ArrayList<>();
        JsonNode part = line.answer();
        while (!part.path("done").asBoolean(false)) {
            assertThat(part.get("id").asInt()).isEqualTo(5);
            if (part.has("answer")) {
                told.add(part.at("/answer/key").asString());
            }
            part = line.answer();
        }
        assertThat(part.get("complete").asBoolean()).isTrue();
        assertThat(part.get("order_of_keys")).hasSize(6);
        for (JsonNode key : part.get("order_of_keys")) {
            assertThat(told).contains(key.asString());
        }
        assertThat(line.silent()).isTrue();
    }

    @Test
    void aNewerSeekDropsTheOlderAndAChangeOfThePatternDropsNeither() throws Exception {
        Line line = new Line(visitor);
        line.say("{\"id\":1,\"ask\":\"seek\",\"motions\":200000,\"order\":\"slowest\"}");
        line.say("{\"id\":2,\"ask\":\"seek\",\"motions\":10000,\"limit\":3}");
        line.say("{\"id\":3,\"ask\":\"pairing\",\"phrase\":\"isolation vs triquetra\"}");
        boolean dropped = false;
        boolean paired = false;
        JsonNode part = line.answer();
        while (!(part.get("id").asInt() == 2 && part.path("done").asBoolean(false))) {
            dropped |= part.get("id").asInt() == 1 && part.path("dropped").asBoolean(false);
            paired |= part.get("id").asInt() == 3 && part.has("scene");
            part = line.answer();
        }
        assertThat(part.get("order_of_keys")).hasSize(3);
        assertThat(dropped).isTrue();
        assertThat(paired).isTrue();
        assertThat(line.silent()).isTrue();
    }

    @Test
    void aStoppedSeekEndsWithWhatItHasFound() throws Exception {
        Line line = new Line(visitor);
        line.say(
                "{\"id\":1,\"ask\":\"seek\",\"motions\":10000,\"order\":\"slowest\",\"limit\":120}");
        JsonNode part = line.answer();
        while (!part.has("answer")) {
            part = line.answer();
        }
        line.say("{\"ask\":\"stop\",\"of\":\"seek\"}");
        int more = 0;
        while (!part.path("done").asBoolean(false)) {
            part = line.answer();
            more++;
        }
        assertThat(more).isLessThan(100);
        assertThat(part.get("complete").asBoolean()).isFalse();
        assertThat(part.get("order_of_keys")).isNotEmpty();
        assertThat(part.at("/told/0/text").asString()).contains("stopped");
    }

    @Test
    void aSocketThatClosesEndsItsSeekSoThatTheNextOneRuns() throws Exception {
        Line gone = new Line(visitor);
        gone.say(
                "{\"id\":1,\"ask\":\"seek\",\"motions\":10000,\"order\":\"slowest\",\"limit\":120}");
        gone.answer();
        gone.abort();
        Line line = new Line(visitor);
        line.say("{\"id\":2,\"ask\":\"seek\",\"motions\":10000,\"limit\":2}");
        JsonNode part = line.answer();
        while (!part.path("done").asBoolean(false)) {
            part = line.answer();
        }
        assertThat(part.get("order_of_keys")).hasSize(2);
    }

    @Test
    void aSeekThatIsRefusedSaysWhyAndKeepsItsId() throws Exception {
        Line line = new Line(visitor);
        line.say("{\"id\":1,\"ask\":\"seek\",\"order\":\"new\"}");
        JsonNode refused = line.answer();
        assertThat(refused.get("id").asInt()).isEqualTo(1);
        assertThat(refused.at("/error/where").asString()).isEqualTo("the shelf");
        line.say("{\"id\":2,\"ask\":\"seek\",\"filter\":{\"exakt\":true}}");
        assertThat(line.answer().at("/error/where").asString()).isEqualTo("filter.exakt");
    }
}
