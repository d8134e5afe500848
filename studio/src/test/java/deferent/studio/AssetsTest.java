package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

class AssetsTest {
    @TempDir static Path folder;
    private static Visitor visitor;

    @BeforeAll
    static void open() throws Exception {
        Path page = Files.createDirectories(folder.resolve("page"));
        Files.writeString(
                page.resolve("index.html"),
                "<!doctype html><script>alert('one')</script><script src=\"/two.js\"></script>");
        Files.writeString(page.resolve("two.js"), "export const two = 2;");
        Files.writeString(page.resolve("secret.txt"), "of a kind that is not served");
        Files.writeString(folder.resolve("outside.js"), "out of the folder");
        Files.createSymbolicLink(page.resolve("way-out.js"), folder.resolve("outside.js"));
        visitor = Visitor.to(StudioOptions.of(folder.resolve("shelf")).withPage(page));
    }

    @AfterAll
    static void close() {
        visitor.close();
    }

    @Test
    void thePagesFilesAreServedWithTheirKind() {
        HttpResponse<String> response = visitor.get("/two.js");
        assertThat(response.body()).isEqualTo("export const two = 2;");
        assertThat(response.headers().firstValue("Content-Type").orElse(""))
                .startsWith("text/javascript");
    }

    @Test
    void aFileThatIsKnownIsNotSentAgain() {
        String tag = visitor.get("/two.js").headers().firstValue("ETag").orElseThrow();
        HttpResponse<String> again =
                visitor.send(visitor.request("/two.js").header("If-None-Match", tag).build());
        assertThat(again.statusCode()).isEqualTo(304);
        assertThat(again.body()).isEmpty();
    }

    @Test
    void ofInlineScriptsExactlyThoseOfThePageMayRun() {
        String policy =
                visitor.page().headers().firstValue("Content-Security-Policy").orElseThrow();
        // Worked out with: printf "alert('one')" | openssl dgst -sha256 -binary | base64
        assertThat(policy).contains("script-src 'self' 'sha256-" + ALERT_ONE + "';");
        assertThat(policy).doesNotContain("script-src 'self' 'unsafe-inline'");
    }

    private static final String ALERT_ONE = "M5KW4HfiqRkQwvDkRpoUB1GCZwFuI8sv+eGZv4H2BGc=";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/../outside.js",
                "/..%2foutside.js",
                "/%2e%2e/outside.js",
                "/%2e%2e%2foutside.js",
                "/x/../../outside.js",
                "/..\\outside.js",
                "/..%5coutside.js",
                "/%252e%252e/outside.js",
                "//etc/passwd",
                "/way-out.js",
                "/secret.txt",
                "/.hidden.js",
                "/vendor/three/../../../outside.js",
                "/vendor/three/..%2f..%2fpackage.json",
                "/vendor/../page/two.js",
                "/vendor/jackson/x.js",
                "/vendor/three/package.json%00.js",
                "/two.js;x=1/../../outside.js"
            })
    void nothingElseIsReachedWhateverThePathSays(String path) {
        String answer =
                visitor.raw(
                        "GET "
                                + visitor.keyed(path)
                                + " HTTP/1.1\r\nHost: 127.0.0.1:"
                                + visitor.studio.port()
                                + "\r\nConnection: close\r\n\r\n");
        assertThat(answer).matches("(?s)HTTP/1\\.1 40[034] .*");
        assertThat(answer).doesNotContain("out of the folder").doesNotContain("not served");
    }

    @Test
    void everyLibraryThatThePackedPageNamesIsThere() throws Exception {
        String html;
        try (var in = AssetsTest.class.getResourceAsStream("/deferent/studio/page/index.html")) {
            assertThat(in).as("the packed page").isNotNull();
            html = new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        }
        Matcher map =
                Pattern.compile("<script type=\"importmap\">(.*?)</script>", Pattern.DOTALL)
                        .matcher(html);
        assertThat(map.find()).isTrue();
        JsonNode imports = Desk.JSON.readTree(map.group(1)).get("imports");
        assertThat(imports.size()).isGreaterThan(5);
        for (Map.Entry<String, JsonNode> entry : imports.properties()) {
            String place = entry.getValue().asString();
            if (!place.endsWith("/")) {
                HttpResponse<String> response = visitor.get(place.substring(1));
                assertThat(response.statusCode()).as(place).isEqualTo(200);
                assertThat(response.headers().firstValue("Content-Type").orElse(""))
                        .startsWith("text/javascript");
            }
        }
    }

    @Test
    void whatTheLibrariesImportFromEachOtherIsThereToo() {
        assertThat(visitor.get("/vendor/three/build/three.core.min.js").statusCode())
                .isEqualTo(200);
        assertThat(visitor.get("/vendor/lit-html/is-server.js").statusCode()).isEqualTo(200);
        assertThat(visitor.get("/vendor/uplot/dist/uPlot.min.css").statusCode()).isEqualTo(200);
    }

    @Test
    void thePaletteIsServedForStylesAndForScripts() {
        assertThat(visitor.get("/palette.css").body()).contains("--ink-left: #0072B2;");
        JsonNode palette = Visitor.json(visitor.get("/api/palette"));
        assertThat(palette.at("/looks/left-head-trail/ink").asString()).isEqualTo("left");
        assertThat(palette.at("/looks/right-head/marker").asString()).isEqualTo("diamond");
        assertThat(palette.at("/inks/link/dark").asString()).isEqualTo("#009E73");
    }
}
