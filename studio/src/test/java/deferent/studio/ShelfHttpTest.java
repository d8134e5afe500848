package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.record.PatternDocument;
import deferent.record.PatternJson;
import deferent.record.Shelf;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

class ShelfHttpTest {
    @TempDir Path folder;
    private Visitor visitor;

    @BeforeEach
    void open() {
        visitor = Visitor.to(folder);
    }

    @AfterEach
    void close() {
        visitor.close();
    }

    @Test
    void aPatternIsSavedShownListedAndRemoved() throws Exception {
        HttpResponse<String> saved = put("snow", text("Snow lantern"), "If-None-Match", "*");
        assertThat(saved.statusCode()).isEqualTo(201);
        String tag = saved.headers().firstValue("ETag").orElseThrow();
        assertThat(Files.readString(folder.resolve("snow.json"))).contains("Snow lantern");

        HttpResponse<String> shown = visitor.get("/api/shelf/snow");
        assertThat(shown.headers().firstValue("ETag")).contains(tag);
        assertThat(PatternJson.readPattern(shown.body()).name()).isEqualTo("Snow lantern");

        JsonNode list = Visitor.json(visitor.get("/api/shelf"));
        assertThat(list.at("/patterns/0/id").asString()).isEqualTo("snow");
        assertThat(list.at("/patterns/0/name").asString()).isEqualTo("Snow lantern");

        assertThat(delete("snow", tag).statusCode()).isEqualTo(204);
        assertThat(visitor.get("/api/shelf/snow").statusCode()).isEqualTo(404);
    }

    @Test
    void aPhraseIsReadThoughTheShelfCannotBeAndThatIsTold() throws Exception {
        String ask = "{\"ask\": \"pairing\", \"phrase\": \"isolation vs triquetra\"}";
        assertThat(Visitor.json(visitor.post("/api/ask", ask)).has("shelf_told")).isFalse();
        try (Visitor other = Visitor.to(Files.writeString(folder.resolve("file"), ""))) {
            HttpResponse<String> answer = other.post("/api/ask", ask);
            assertThat(answer.statusCode()).isEqualTo(200);
            assertThat(Visitor.json(answer).get("shelf_told").asString())
                    .startsWith("The shelf's own names are not known: ")
                    .contains("is a file");
            String sheet =
                    "{\"ask\": \"take\", \"as\": \"pdf\", \"phrase\": \"isolation vs triquetra\"}";
            assertThat(other.post("/api/ask", sheet).statusCode()).isEqualTo(200);
        }
    }

    @Test
    void whatIsNotOnTheShelfIsNamedWithTheReason() throws Exception {
        Files.createDirectory(folder.resolve("weaves"));
        Files.writeString(
                folder.resolve("phrase.json"),
                "{\"format\": 1, \"name\": \"p\", \"phrase\": \"isolation tether 50 cm vs cap\"}");
        JsonNode list = Visitor.json(visitor.get("/api/shelf"));
        assertThat(list.at("/not_listed/0/file").asString()).isEqualTo("weaves");
        assertThat(list.at("/not_listed/0/why").asString()).isEqualTo("is a folder");
        assertThat(list.at("/patterns/0/id").asString()).isEqualTo("phrase");
        assertThat(list.at("/patterns/0").has("disagrees")).isFalse();
    }

    @Test
    void aSizeOutOfItsRangeIsToldInTheUnitThatWasTyped() {
        String ask =
                "{\"ask\": \"pairing\", \"phrase\": \"isolation vs triquetra\", \"change\":"
                        + " [{\"set\": \"%s\", \"to\": %s%s}]}";
        assertThat(
                        Visitor.json(
                                        visitor.post(
                                                "/api/ask",
                                                String.format(
                                                        ask,
                                                        "left.tether_m",
                                                        "90",
                                                        ", \"typed_in\": \"cm\"")))
                                .at("/error")
                                .toString())
                .contains("is 9000 cm")
                .contains("more than 0 cm and at most 500 cm");
        for (String key :
                List.of(
                        "left.tether_m",
                        "left.hand_radius_m",
                        "left.centre_x_m",
                        "right.start_deg",
                        "tempo_cycles_per_min")) {
            for (String number : List.of("1e300", "-1e300", "123456789")) {
                HttpResponse<String> answer =
                        visitor.post("/api/ask", String.format(ask, key, number, ""));
                assertThat(answer.statusCode()).as(key + " " + number).isEqualTo(422);
                assertThat(answer.body())
                        .contains("give ")
                        .doesNotContainPattern("[0-9]E[-+]?[0-9]|Infinity");
            }
        }
    }

    @Test
    void aPatternWithoutAPlaceGetsOneFromItsName() {
        HttpResponse<String> first = visitor.post("/api/shelf", text("Winter market"));
        HttpResponse<String> second = visitor.post("/api/shelf", text("Winter market"));
        assertThat(first.statusCode()).isEqualTo(201);
        assertThat(first.headers().firstValue("Location")).contains("/api/shelf/winter-market");
        assertThat(Visitor.json(second).get("id").asString()).isEqualTo("winter-market-2");
    }

    @Test
    void whoeverIsSlowerLosesNothing() {
        String first =
                put("snow", text("Snow"), "If-None-Match", "*")
                        .headers()
                        .firstValue("ETag")
                        .orElseThrow();
        assertThat(put("snow", text("Snow, by one tab"), "If-Match", first).statusCode())
                .isEqualTo(200);
        HttpResponse<String> late = put("snow", text("Snow, by the other"), "If-Match", first);
        assertThat(late.statusCode()).isEqualTo(412);
        assertThat(Visitor.json(late).at("/error/right").asString()).isNotBlank();
        assertThat(visitor.get("/api/shelf/snow").body()).contains("Snow, by one tab");
    }

    @Test
    void aFileChangedByHandIsNotWrittenOver() throws Exception {
        String tag =
                put("snow", text("Snow"), "If-None-Match", "*")
                        .headers()
                        .firstValue("ETag")
                        .orElseThrow();
        Files.writeString(folder.resolve("snow.json"), text("Snow, by hand"));
        assertThat(put("snow", text("Snow, by tab"), "If-Match", tag).statusCode()).isEqualTo(412);
        assertThat(delete("snow", tag).statusCode()).isEqualTo(412);
        assertThat(Files.readString(folder.resolve("snow.json"))).contains("by hand");
    }

    @Test
    void ofManySavesAtOnceOnTwoStudiosExactlyOneIsTaken() {
        String tag =
                put("snow", text("Snow"), "If-None-Match", "*")
                        .headers()
                        .firstValue("ETag")
                        .orElseThrow();
        try (Visitor other = Visitor.to(folder)) {
            List<CompletableFuture<Integer>> saves =
                    IntStream.range(0, 12)
                            .mapToObj(
                                    i -> {
                                        Visitor by = i % 2 == 0 ? visitor : other;
                                        HttpRequest request =
                                                by.request("/api/shelf/snow")
                                                        .header("If-Match", tag)
                                                        .PUT(
                                                                BodyPublishers.ofString(
                                                                        text("Snow " + i)))
                                                        .build();
                                        return by.client
                                                .sendAsync(
                                                        request,
                                                        HttpResponse.BodyHandlers.ofString())
                                                .thenApply(HttpResponse::statusCode);
                                    })
                            .toList();
            List<Integer> statuses = saves.stream().map(CompletableFuture::join).toList();
            assertThat(statuses).filteredOn(s -> s == 200).hasSize(1);
            assertThat(statuses).filteredOn(s -> s == 412).hasSize(11);
        }
    }

    @Test
    void aSaveThatDoesNotSayWhatItReplacesIsRefused() {
        HttpResponse<String> response =
                visitor.send(
                        visitor.request("/api/shelf/snow")
                                .PUT(BodyPublishers.ofString(text("Snow")))
                                .build());
        assertThat(response.statusCode()).isEqualTo(428);
        assertThat(visitor.send(visitor.request("/api/shelf/snow").DELETE().build()).statusCode())
                .isEqualTo(428);
    }

    @Test
    void aNewOneDoesNotTakeAPlaceThatIsTaken() {
        put("snow", text("Snow"), "If-None-Match", "*");
        assertThat(put("snow", text("Other"), "If-None-Match", "*").statusCode()).isEqualTo(412);
    }

    @Test
    void aDocumentThatIsWrongIsRefusedWithLineAndKey() {
        HttpResponse<String> response =
                put(
                        "snow",
                        text("Snow").replace("\"tether_m\": 0.6", "\"tether_m\": -0.6"),
                        "If-None-Match",
                        "*");
        assertThat(response.statusCode()).isEqualTo(422);
        JsonNode error = Visitor.json(response).get("error");
        assertThat(error.get("where").asString()).contains("tether_m");
        assertThat(error.get("line").asInt()).isGreaterThan(1);
        assertThat(folder.resolve("snow.json")).doesNotExist();
    }

    @Test
    void aDocumentOfANewerFormatIsRefused() {
        HttpResponse<String> response =
                put(
                        "snow",
                        text("Snow").replace("\"format\": 1", "\"format\": 2"),
                        "If-None-Match",
                        "*");
        assertThat(response.statusCode()).isEqualTo(422);
        assertThat(Visitor.json(response).at("/error/what").asString()).contains("newer");
    }

    @Test
    void noNameReachesOutOfTheShelf() throws Exception {
        Path outside = Files.createDirectories(folder.resolveSibling("outside"));
        for (String name :
                List.of("..%2foutside%2fx", "%2e%2e", ".hidden", "a%2fb", "a%5cb", "a%00b")) {
            HttpResponse<String> response = put(name, text("Snow"), "If-None-Match", "*");
            assertThat(response.statusCode()).as(name).isIn(400, 404);
        }
        try (var files = Files.list(outside)) {
            assertThat(files).isEmpty();
        }
    }

    @Test
    void aBrokenFileIsListedWithItsErrorAndHidesNothing() throws Exception {
        put("snow", text("Snow"), "If-None-Match", "*");
        Files.writeString(folder.resolve("torn.json"), "{\"format\": 1,\n \"name\": ");
        JsonNode list = Visitor.json(visitor.get("/api/shelf"));
        assertThat(list.get("patterns").size()).isEqualTo(1);
        assertThat(list.at("/not_listed/0/file").asString()).isEqualTo("torn.json");
        assertThat(list.at("/not_listed/0/why").asString()).contains("line");
    }

    @Test
    void aThumbnailIsASmallPictureThatIsNotSentTwice() {
        put("snow", text("Snow"), "If-None-Match", "*");
        HttpResponse<String> picture = visitor.get("/api/shelf/snow/thumbnail");
        assertThat(picture.headers().firstValue("Content-Type")).contains("image/svg+xml");
        assertThat(picture.body())
                .contains("id=\"left-head-trail\"")
                .doesNotContain("id=\"ground\"");
        String tag = picture.headers().firstValue("ETag").orElseThrow();
        assertThat(
                        visitor.send(
                                        visitor.request("/api/shelf/snow/thumbnail")
                                                .header("If-None-Match", tag)
                                                .build())
                                .statusCode())
                .isEqualTo(304);
        assertThat(visitor.get("/api/shelf/snow/thumbnail?theme=dark").body())
                .isNotEqualTo(picture.body());
    }

    @Test
    void aThumbnailMovesThroughBothHandsAndHeadsAndIsNotSentTwice() {
        put("snow", text("Snow"), "If-None-Match", "*");
        HttpResponse<String> moves = visitor.get("/api/shelf/snow/moves");
        JsonNode read = Visitor.json(moves);
        assertThat(read.get("period_s").asDouble()).isEqualTo(1);
        for (String track : List.of("/left/hand", "/left/head", "/right/hand", "/right/head")) {
            byte[] points = Base64.getDecoder().decode(read.at("/samples" + track).asString());
            assertThat(points).as(track).hasSize(read.get("count").asInt() * 3 * Float.BYTES);
        }
        String tag = moves.headers().firstValue("ETag").orElseThrow();
        assertThat(
                        visitor.send(
                                        visitor.request("/api/shelf/snow/moves")
                                                .header("If-None-Match", tag)
                                                .build())
                                .statusCode())
                .isEqualTo(304);
    }

    @Test
    void whatIsListedSaysItsLabelsItsTempoAndWhenItWasChanged() {
        Instant before = Instant.now().minusSeconds(2);
        PatternDocument slow =
                PatternDocument.of(
                        "Slow",
                        Phrase.parse("isolation vs triquetra, tempo 40").pairing(),
                        Performer.USUAL);
        String labelled =
                PatternJson.write(slow)
                        .replaceFirst("\"name\"", "\"tags\": [\"fire\", \"duo\"], \"name\"");
        assertThat(put("slow", labelled, "If-None-Match", "*").statusCode()).isEqualTo(201);
        JsonNode listed = Visitor.json(visitor.get("/api/shelf")).at("/patterns/0");
        assertThat(listed.get("tags").values())
                .extracting(JsonNode::asString)
                .containsExactly("fire", "duo");
        assertThat(listed.get("tempo_cycles_per_min").asDouble()).isEqualTo(40);
        assertThat(Instant.parse(listed.get("changed").asString()))
                .isBetween(before, Instant.now().plusSeconds(2));
    }

    @Test
    void aMotionOfTheUsersOwnIsSayableOnceItIsOnTheShelf() throws Exception {
        String motion =
                """
                {"format": 1, "kind": "motion", "name": "snowflake",
                 "hand": {"path": "circle", "radius_m": 0.3}, "spin": {"law": "turns", "turns": -5, "start_deg": 0},
                 "tether_m": 0.6}
                """;
        assertThat(
                        visitor.post(
                                        "/api/ask",
                                        "{\"ask\":\"pairing\",\"phrase\":\"snowflake vs isolation\"}")
                                .statusCode())
                .isEqualTo(422);
        assertThat(put("snowflake", motion, "If-None-Match", "*").statusCode()).isEqualTo(201);
        JsonNode answer = visitor.pairing("snowflake vs isolation");
        assertThat(answer.at("/pattern/pairing/left/spin/turns").asInt()).isEqualTo(-5);
        assertThat(answer.get("phrase").asString()).contains("snowflake");
    }

    private HttpResponse<String> put(String id, String body, String header, String value) {
        return visitor.send(
                visitor.request("/api/shelf/" + id)
                        .header(header, value)
                        .PUT(BodyPublishers.ofString(body))
                        .build());
    }

    private HttpResponse<String> delete(String id, String tag) {
        return visitor.send(
                visitor.request("/api/shelf/" + id).header("If-Match", tag).DELETE().build());
    }

    private static String text(String name) {
        return PatternJson.write(
                PatternDocument.of(
                        name, Phrase.parse("static spin vs triquetra").pairing(), Performer.USUAL));
    }

    @Test
    void theShelfTheStudioWritesIsTheShelfTheCommandLineReads() {
        put("snow", text("Snow"), "If-None-Match", "*");
        assertThat(Shelf.at(folder).load("snow").document().name()).isEqualTo("Snow");
    }
}
