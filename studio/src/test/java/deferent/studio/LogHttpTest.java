package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.record.Log;
import deferent.record.Shelf;
import deferent.record.log.DemoLog;
import java.net.URLEncoder;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/**
 * The log of practice in the studio: shown, written in, and taken in from another device's file.
 */
class LogHttpTest {
    private static final String FILE =
            """
            {"format": "deferent-log", "version": 1, "entries": [
              {"id": "k3f9a2c4e1", "date": "2026-11-26", "pattern": "isolation vs triquetra", "minutes": 12}]}
            """;

    @TempDir private Path folder;
    private Visitor visitor;

    @BeforeEach
    void open() {
        visitor = Visitor.to(folder);
    }

    @AfterEach
    void close() {
        visitor.close();
    }

    private JsonNode shown(String today) {
        return Visitor.json(visitor.get("/api/log?today=" + today));
    }

    private JsonNode dropped(String text) {
        String called = URLEncoder.encode("from the hall.json", StandardCharsets.UTF_8);
        HttpResponse<String> answer =
                visitor.send(
                        visitor.request("/api/log/file?called=" + called)
                                .POST(BodyPublishers.ofString(text))
                                .build());
        return Visitor.json(answer);
    }

    @Test
    void theWeeksTheDaysAndEachPatternAreShownAndWhenToRest() {
        Log.of(Shelf.at(folder)).add(DemoLog.entries());
        JsonNode log = shown("2026-11-22");
        assertThat(log.at("/weeks")).hasSize(5);
        assertThat(log.at("/weeks/0/minutes/0").asDouble()).isEqualTo(15);
        assertThat(log.at("/entries")).hasSize(DemoLog.entries().size());
        assertThat(log.at("/entries/0/said").asString())
                .contains("static spin vs triquetra", "15 min");
        assertThat(log.at("/patterns").findValuesAsString("text"))
                .anyMatch(said -> said.contains("up to 48 a minute"));
        assertThat(log.at("/recent_work/told/text").asString()).contains("see a doctor");
        assertThat(log.at("/recent_work/told/why").asString()).contains("Gabbett");
        // A week before the log begins none of it was yet.
        JsonNode before = shown("2026-10-11");
        assertThat(before.at("/entries")).isEmpty();
        assertThat(before.at("/ahead_told").asString()).contains("dated after today");
    }

    @Test
    void whatIsWrittenIsCalledAsTheCommandLineCallsItAndWhatCannotBeIsRefused() {
        HttpResponse<String> written =
                visitor.post(
                        "/api/log",
                        "{\"phrase\": \"isolation vs triquetra, tempo 50\", \"part\": \"left hand\","
                                + " \"minutes\": 12, \"went\": \"so-so\", \"date\": \"2026-11-26\"}");
        assertThat(Visitor.json(written).at("/told").asString())
                .isEqualTo(
                        "In the log: isolation vs triquetra (left hand), 12 min, it went so-so.");
        assertThat(Log.of(Shelf.at(folder)).look().entries())
                .singleElement()
                .satisfies(e -> assertThat(e.pattern()).isEqualTo("isolation vs triquetra"));
        HttpResponse<String> none =
                visitor.post("/api/log", "{\"phrase\": \"weave\", \"minutes\": 0}");
        assertThat(none.statusCode()).isEqualTo(422);
        assertThat(none.body()).contains("more than 0");
    }

    @Test
    void aFileOfAnotherDeviceIsTakenInOnceAndWhyNotIsSaidAsOnTheCommandLine() {
        assertThat(dropped(FILE).at("/told").asString())
                .isEqualTo("from the hall.json: 1 new entry in the log.");
        assertThat(dropped(FILE).at("/told").asString())
                .isEqualTo("from the hall.json: nothing new, it was there already.");
        assertThat(dropped(FILE.replace("\"version\": 1, ", "")).at("/error/what").asString())
                .isEqualTo("has no \"version\", so it is older than all");
        assertThat(dropped(FILE.replace("ion\": 1", "ion\": 2")).at("/error/what").asString())
                .contains("newer than this deferent");
        JsonNode wrong = dropped(FILE.replace("12}", "-1}")).at("/error");
        assertThat(wrong.at("/where").asString())
                .startsWith("from the hall.json, line 2")
                .endsWith("entries.0.minutes");
        assertThat(dropped("{\"phrase\": \"weave\"}").at("/error/what").asString())
                .isEqualTo("is no log of practice");
        assertThat(Log.of(Shelf.at(folder)).look().entries()).hasSize(1);
    }

    @Test
    void aLogMayBeLargerThanOtherBodiesAndAHugeOneIsRefusedBeforeItIsSent() {
        assertThat(dropped(FILE + " ".repeat(2_000_000)).at("/told").asString())
                .contains("1 new entry");
        assertThat(visitor.get("/api/log/file?bytes=5000000").statusCode()).isEqualTo(200);
        assertThat(visitor.get("/api/log/file?called=a.json&bytes=6000057").body())
                .contains("a.json, document", "is 6000057 bytes long")
                .contains("a log has at most 5000000");
        assertThat(visitor.post("/api/log", "{\"phrase\": \"" + "x".repeat(300_000) + "\"}"))
                .extracting(HttpResponse::statusCode)
                .isEqualTo(413);
    }

    private static final String LEARN =
            "{\"ask\": \"learn\", \"phrase\": \"static spin vs triquetra, tether 45 cm\","
                    + " \"from\": \"2026-11-28\", \"by\": \"2026-12-18\"}";

    @Test
    void anOrderToLearnInIsPlannedAnewOnceTheLogHasMoreAndItsDrillsArePatterns() {
        JsonNode before = visitor.ask(LEARN);
        JsonNode first = before.at("/drills/0");
        assertThat(first.at("/known").asBoolean()).isFalse();
        assertThat(before.at("/days/0/sittings/0/drill").asInt()).isEqualTo(1);
        assertThat(first.at("/often").asString()).isNotEmpty();
        assertThat(before.at("/left_out")).isNotEmpty();
        int last = before.at("/drills").size() - 1;
        assertThat(before.at("/drills/" + last + "/name").asString()).isEqualTo("all of it");
        for (JsonNode drill : before.at("/drills")) {
            // Each is a pairing that links, or says why not.
            assertThat(drill.at("/meets").asString())
                    .containsAnyOf("Linked", "It does not link", "nothing to link with");
            String asked =
                    "{\"ask\": \"pairing\", \"told\": false, \"samples\": 24, \"pattern\": "
                            + drill.at("/pattern")
                            + "}";
            assertThat(visitor.ask(asked).at("/phrase").asString())
                    .isEqualTo(drill.at("/phrase").asString());
        }
        visitor.post(
                "/api/log",
                "{\"phrase\": \"static spin vs triquetra, tether 45 cm\", \"part\": \"left hand\","
                        + " \"minutes\": "
                        + first.at("/minutes")
                        + ", \"went\": \"well\", \"date\": \"2026-11-27\"}");
        JsonNode after = visitor.ask(LEARN);
        assertThat(after.at("/drills/0/known").asBoolean()).isTrue();
        assertThat(after.at("/days/0/sittings/0/again").asBoolean()).isTrue();
        assertThat(after.at("/days/0/sittings/1/drill").asInt()).isEqualTo(2);
        assertThat(after.at("/ready").asString()).isLessThan(before.at("/ready").asString());
    }
}
