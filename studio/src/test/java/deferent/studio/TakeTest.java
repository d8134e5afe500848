package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.record.DemoShelf;
import deferent.record.Shelf;
import deferent.take.Ending;
import deferent.take.Endings;
import deferent.take.SetEndings;
import deferent.take.Wish;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

/** Taking patterns away: what may be wished, the files themselves, and previews of them. */
class TakeTest {
    private static final String PAIRING = "\"phrase\":\"static spin vs triquetra\"";

    /** So long that nobody waits for its end. */
    private static final String LONG = ",\"wishes\":{\"size\":\"1080\",\"cycles\":500}}";

    @TempDir static Path shelf;
    private static Visitor visitor;

    @BeforeAll
    static void open() {
        Shelf full = Shelf.at(shelf);
        DemoShelf.documents().stream().limit(3).forEach(full::saveNew);
        visitor = Visitor.to(shelf);
    }

    @AfterAll
    static void close() {
        visitor.close();
    }

    private static String small(Ending ending) {
        return !ending.many() && ending.takes(Wish.SIZE) ? ",\"wishes\":{\"size\":96}" : "";
    }

    private static JsonNode take(String as, String more) {
        return visitor.ask("{\"id\":1,\"ask\":\"take\",\"as\":\"" + as + "\"," + more + "}");
    }

    private static HttpResponse<byte[]> fetched(String path) {
        try {
            return visitor.client.send(
                    visitor.request(path).build(), HttpResponse.BodyHandlers.ofByteArray());
        } catch (IOException | InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    private static JsonNode preview(String as, String more) {
        HttpResponse<String> response =
                visitor.post("/api/preview", "{\"as\":\"" + as + "\"," + more + "}");
        assertThat(response.statusCode()).as(response.body()).isEqualTo(200);
        return Visitor.json(response);
    }

    /** What is in the folder of files to be fetched. */
    private static List<Path> files(Visitor of) throws IOException {
        Path folder = of.studio.takes().files().folder().orElse(null);
        if (folder == null || !Files.exists(folder)) {
            return List.of();
        }
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile).toList();
        }
    }

    /** How many files there are; −1 where one went while they were counted. */
    private static int left(Visitor of) {
        try {
            return files(of).size();
        } catch (IOException | UncheckedIOException gone) {
            return -1;
        }
    }

    @Test
    void everyEndingSaysWhatItIsForAndWhatMayBeWished() {
        JsonNode answer = Visitor.json(visitor.get("/api/endings"));
        assertThat(answer.has("clips")).as("nobody asked for the video libraries").isFalse();
        List<String> keys = new ArrayList<>();
        for (JsonNode ending : answer.get("endings")) {
            keys.add(ending.get("key").asString());
            assertThat(ending.get("words").asString()).isNotBlank();
            for (JsonNode wish : ending.get("wishes")) {
                assertThat(wish.get("title").asString()).isNotBlank();
                assertThat(wish.get("kind").asString())
                        .isIn("yes", "word", "number", "text", "layers");
                if (wish.get("kind").asString().equals("word")) {
                    assertThat(wish.get("choices").findValuesAsString("value"))
                            .as(wish.get("key").asString())
                            .contains(wish.get("unsaid").asString());
                }
            }
        }
        assertThat(keys)
                .containsExactlyElementsOf(Endings.all().stream().map(Ending::key).toList());
        List<String> ofSets =
                answer.get("set_endings")
                        .valueStream()
                        .map(one -> one.get("key").asString() + one.path("form").asString(""))
                        .toList();
        assertThat(ofSets)
                .doesNotHaveDuplicates()
                .contains("mp4", "pdfsheet", "pdfcue", "html", "csv", "vtt", "otio", "wav", "mid");
        assertThat(answer.get("set_endings"))
                .allSatisfy(
                        one -> {
                            assertThat(one.get("words").asString()).isNotBlank();
                            assertThat(one.get("sung").asBoolean())
                                    .isEqualTo(SetEndings.of(one.get("key").asString()).sung());
                        });
        JsonNode asked = Visitor.json(visitor.get("/api/endings?clips=true"));
        assertThat(asked.at("/clips/here").asBoolean()).isTrue();
    }

    @ParameterizedTest
    @MethodSource("deferent.take.Endings#all")
    void everyChoiceThatIsOfferedCanBeMade(Ending ending) {
        JsonNode endings = Visitor.json(visitor.get("/api/endings")).get("endings");
        for (JsonNode offer : endings.get(Endings.all().indexOf(ending)).get("wishes")) {
            String key = offer.get("key").asString();
            for (JsonNode choice : offer.get("choices")) {
                String form =
                        offer.get("forms").isEmpty() || key.equals("form")
                                ? ""
                                : "\"form\":\"" + offer.get("forms").get(0).asString() + "\",";
                // A whole pattern is enough to choose for; what is written is another test's.
                JsonNode seen =
                        preview(
                                ending.key(),
                                "\"calm\":\"always\","
                                        + PAIRING
                                        + ",\"wishes\":{"
                                        + form
                                        + "\""
                                        + key
                                        + "\":\""
                                        + choice.get("value").asString()
                                        + "\"}");
                assertThat(seen.get("told").asString()).isNotBlank();
            }
        }
    }

    @ParameterizedTest
    @MethodSource("deferent.take.Endings#all")
    void aPairingIsTakenAwayAsEveryEnding(Ending ending) {
        JsonNode taken = take(ending.key(), PAIRING + small(ending));
        assertThat(taken.get("name").asString())
                .isEqualTo("static-spin-vs-triquetra." + ending.key());
        HttpResponse<byte[]> file = fetched(taken.get("file").asString());
        assertThat(file.statusCode()).isEqualTo(200);
        assertThat(file.body()).hasSize(taken.get("bytes").asInt());
        assertThat(file.headers().firstValue("Content-Disposition"))
                .contains("attachment; filename=\"" + taken.get("name").asString() + "\"");
        assertThat(file.headers().firstValue("Content-Type").orElse(""))
                .startsWith(ending.mediaType());
        assertThat(file.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
        for (JsonNode beside : taken.get("beside")) {
            HttpResponse<byte[]> captions = fetched(beside.get("file").asString());
            assertThat(new String(captions.body(), StandardCharsets.UTF_8)).startsWith("WEBVTT");
            assertThat(captions.headers().firstValue("Content-Type").orElse(""))
                    .startsWith("text/vtt");
        }
    }

    @Test
    void aShelfAndARouteBecomeBooklets() {
        assertThat(take("pdf", "\"shelf\":true").get("told").asString()).contains("booklet of 3");
        JsonNode one = visitor.pairing("isolation vs triquetra").get("pattern");
        JsonNode other = visitor.pairing("isolation vs extension").get("pattern");
        JsonNode route =
                take(
                        "pdf",
                        "\"patterns\":["
                                + one
                                + ","
                                + other
                                + "],\"title\":\"../Out & in\",\"route\":true");
        assertThat(route.get("told").asString()).contains("booklet of 2");
        assertThat(route.get("name").asString()).isEqualTo("out-in.pdf");
        assertThat(
                        visitor.post("/api/ask", "{\"ask\":\"take\",\"as\":\"png\",\"shelf\":true}")
                                .body())
                .contains("end the file in .pdf");
    }

    @Test
    void aClipTellsHowFarItIs() throws Exception {
        Line line = new Line(visitor);
        line.say(
                "{\"id\":4,\"ask\":\"take\",\"as\":\"mp4\","
                        + PAIRING
                        + ",\"wishes\":{\"size\":480,\"cycles\":4}}");
        JsonNode part = line.answer();
        assertThat(part.at("/progress/told").asString()).contains("of 240");
        assertThat(part.at("/progress/share").asDouble()).isBetween(0.0, 1.0);
        JsonNode last = line.last();
        assertThat(last.get("id").asInt()).isEqualTo(4);
        assertThat(last.get("told").asString()).contains("240 frames");
    }

    @Test
    void whatIsStoppedInMidClipLeavesNothing() throws Exception {
        List<Path> before = files(visitor);
        Line line = new Line(visitor);
        line.say("{\"id\":5,\"ask\":\"take\",\"as\":\"mp4\"," + PAIRING + LONG);
        assertThat(line.answer().has("progress")).isTrue();
        assertThat(files(visitor)).as("it is being written").hasSizeGreaterThan(before.size());
        line.say("{\"ask\":\"stop\",\"of\":\"take\"}");
        JsonNode last = line.last();
        assertThat(last.get("stopped").asBoolean()).isTrue();
        assertThat(last.has("file")).isFalse();
        assertThat(files(visitor)).containsExactlyInAnyOrderElementsOf(before);
    }

    @Test
    void aPageThatIsClosedStopsItsClip() throws Exception {
        Visitor other = Visitor.to(shelf);
        Line line = new Line(other);
        line.say("{\"id\":5,\"ask\":\"take\",\"as\":\"mp4\"," + PAIRING + LONG);
        assertThat(line.answer().has("progress")).isTrue();
        line.abort();
        Line next = new Line(other);
        next.say("{\"id\":6,\"ask\":\"take\",\"as\":\"csv\"," + PAIRING + "}");
        assertThat(next.last().has("file")).isTrue();
        Until.holds("of the clip nothing is left", () -> left(other) == 1);
        other.close();
    }

    @Test
    void onlyTheLastFewAreKeptAndNoneWhenTheStudioCloses() throws IOException {
        Visitor other = Visitor.to(shelf);
        String first = "";
        for (int i = 0; i <= TakenFolder.MOST; i++) {
            String file =
                    other.ask("{\"ask\":\"take\",\"as\":\"csv\"," + PAIRING + "}")
                            .get("file")
                            .asString();
            first = first.isEmpty() ? file : first;
        }
        assertThat(files(other)).hasSize(TakenFolder.MOST);
        HttpResponse<String> gone = other.get(first);
        assertThat(gone.statusCode()).isEqualTo(404);
        assertThat(gone.body()).contains("write the file once more");
        Path folder = other.studio.takes().files().folder().orElseThrow();
        other.close();
        assertThat(folder).doesNotExist();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/api/taken/%s/..%%2Fsecret",
                "/api/taken/%s/../../secret",
                "/api/taken/%s/%%2e%%2e%%2fsecret",
                "/api/taken/..%%2F%s/static-spin-vs-triquetra.csv",
                "/api/taken/%s/",
                "/api/taken/%s/static-spin-vs-triquetra.csv%%00",
                "/api/taken/none/static-spin-vs-triquetra.csv",
            })
    void noOtherFileIsReached(String path) throws IOException {
        String file = take("csv", PAIRING).get("file").asString();
        String key = file.split("/")[3];
        Path folder = visitor.studio.takes().files().folder().orElseThrow();
        Files.writeString(folder.resolve("secret"), "what nobody shall read");
        String answer =
                visitor.raw(
                        "GET "
                                + path.formatted(key)
                                + " HTTP/1.1\r\nHost: 127.0.0.1:"
                                + visitor.studio.port()
                                + "\r\nConnection: close\r\n\r\n");
        assertThat(answer).matches("(?s)HTTP/1\\.1 40[04] .*").doesNotContain("nobody shall");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "png | \"wishes\":{\"hat\":\"red\"} | 422 | \"hat\"",
                "png | \"wishes\":{\"fps\":\"25\"} | 422 | fps",
                "png | \"wishes\":{\"size\":\"huge\"} | 422 | size",
                "png | \"wishes\":{\"size\":[1]} | 400 | wishes.size",
                "png | \"wishes\":[] | 400 | wishes",
                "mp4 | \"wishes\":{\"size\":\"97\"} | 422 | width of a clip",
                "csv | \"wishes\":{\"rate\":\"1e99\"} | 422 | ",
                "xyz | \"wishes\":{} | 422 | file xyz",
                "png | \"colour\":\"red\" | 400 | colour",
                "png | \"shelf\":true | 400 | phrase, pattern, patterns and shelf",
            })
    void whatCannotBeIsRefusedInTheSameWordsByBoth(String as, String wish, int status, String where)
            throws IOException {
        List<Path> before = files(visitor);
        String body = "{\"as\":\"" + as + "\"," + PAIRING + "," + wish;
        HttpResponse<String> seen = visitor.post("/api/preview", body + "}");
        HttpResponse<String> taken = visitor.post("/api/ask", body + ",\"ask\":\"take\"}");
        assertThat(taken.statusCode()).isEqualTo(status);
        assertThat(seen.statusCode()).isEqualTo(status);
        assertThat(Visitor.json(seen).at("/error/what"))
                .isEqualTo(Visitor.json(taken).at("/error/what"));
        if (where != null) {
            assertThat(Visitor.json(seen).at("/error/where").asString()).isEqualTo(where);
        }
        assertThat(files(visitor)).containsExactlyInAnyOrderElementsOf(before);
    }

    @Test
    void picturesArePreviewedSmallAndAsTheyAre() throws IOException {
        JsonNode png = preview("png", PAIRING + ",\"wishes\":{\"size\":\"3840x2160\"}");
        assertThat(png.get("told").asString()).isEqualTo("3840 by 2160 pixels");
        var image =
                ImageIO.read(
                        new ByteArrayInputStream(
                                Base64.getDecoder().decode(png.get("base64").asString())));
        assertThat(image.getWidth()).isEqualTo(640);
        assertThat(image.getHeight()).isEqualTo(360);
        JsonNode svg = preview("svg", PAIRING);
        JsonNode written = take("svg", PAIRING);
        assertThat(Base64.getDecoder().decode(svg.get("base64").asString()))
                .isEqualTo(fetched(written.get("file").asString()).body());
    }

    @Test
    void clipsArePreviewedMovingOrAsOneFrame() throws IOException {
        JsonNode moving = preview("mp4", PAIRING);
        assertThat(moving.get("media_type").asString()).isEqualTo("image/webp");
        byte[] webp = Base64.getDecoder().decode(moving.get("base64").asString());
        assertThat(new String(webp, StandardCharsets.ISO_8859_1))
                .startsWith("RIFF")
                .contains("ANIM");
        JsonNode calm = preview("mp4", "\"calm\":\"always\"," + PAIRING);
        assertThat(calm.get("media_type").asString()).isEqualTo("image/png");
        assertThat(calm.get("moves").asBoolean()).isTrue();
        assertThat(calm.get("told")).isEqualTo(moving.get("told"));
    }

    @Test
    void fastLightsStandStillInThePreviewWhereThatIsAskedForAndCarryTheirCaution() {
        String fast =
                "\"phrase\":\"isolation vs isolation, split time\",\"change\":[{\"set\":\"tempo_cycles_per_min\",\"to\":200}],\"calm\":\"fast\"";
        JsonNode seen = preview("webm", fast);
        assertThat(seen.get("caution").asString()).contains("photosensitive");
        assertThat(seen.get("media_type").asString()).isEqualTo("image/png");
        JsonNode slowed = preview("webm", fast + ",\"wishes\":{\"slow\":\"1/4\"}");
        assertThat(slowed.get("caution").asString()).isEmpty();
        assertThat(slowed.get("media_type").asString()).isEqualTo("image/webp");
        assertThat(take("gif", fast.replace(",\"calm\":\"fast\"", "")).get("caution").asString())
                .contains("photosensitive");
    }

    @Test
    void aSheetIsPreviewedByItsFirstPageAndATableByItsFirstLines() throws IOException {
        JsonNode sheet = preview("pdf", PAIRING);
        var page =
                ImageIO.read(
                        new ByteArrayInputStream(
                                Base64.getDecoder().decode(sheet.get("base64").asString())));
        // ISO 216: A4 is 210 by 297 mm.
        assertThat((double) page.getHeight() / page.getWidth())
                .isCloseTo(297.0 / 210, org.assertj.core.api.Assertions.within(0.005));
        assertThat(preview("pdf", "\"shelf\":true").get("told").asString()).contains("first of");
        JsonNode table = preview("csv", PAIRING + ",\"wishes\":{\"cycles\":1000}");
        assertThat(table.get("text").asString()).startsWith("time_s,").hasLineCount(14);
        assertThat(table.get("told").asString()).isEqualTo("100000 rows");
        assertThat(preview("glb", PAIRING).get("media_type").asString()).isEqualTo("image/png");
    }

    @Test
    void aPageIsPreviewedInAFrameOfNoOrigin() {
        String path = preview("html", PAIRING).get("page").asString();
        HttpResponse<String> page = visitor.get(path);
        assertThat(page.body()).startsWith("<!doctype html>");
        assertThat(page.headers().firstValue("Content-Security-Policy").orElse(""))
                .contains("sandbox allow-scripts;")
                .contains("frame-ancestors 'self'")
                .contains("default-src 'none'")
                .contains("script-src 'sha256-")
                .doesNotContain("unsafe-inline")
                .doesNotContain("allow-same-origin");
        assertThat(page.headers().firstValue("X-Frame-Options")).contains("SAMEORIGIN");
        assertThat(visitor.get("/api/preview/none").statusCode()).isEqualTo(404);
    }

    @Test
    void thePhotoHelperTellsTheShutterAndTheDots() {
        JsonNode photo =
                visitor.ask(
                        "{\"ask\":\"photo\",\"id\":3,\"phrase\":\"isolation vs triquetra\",\"led_hz\":60,\"duty\":0.3}");
        assertThat(photo.at("/common/time_s").asDouble()).isEqualTo(1);
        assertThat(photo.at("/lights/right/blinks/a_figure").asDouble()).isEqualTo(60);
        assertThat(photo.get("told").findValuesAsString("text").get(0))
                .contains("Open the shutter");
        assertThat(
                        visitor.post(
                                        "/api/ask",
                                        "{\"ask\":\"photo\",\"phrase\":\"isolation vs triquetra\",\"led_hz\":0}")
                                .body())
                .contains("rate of a blinking light");
    }
}
