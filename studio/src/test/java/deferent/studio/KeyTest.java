package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.URI;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.WebSocket;
import java.net.http.WebSocketHandshakeException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

/** What another user of the machine, who reaches the port but has no key, gets: nothing. */
class KeyTest {
    private static final String WRONG = "A".repeat(32);

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

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/api/shelf",
                "/api/palette",
                "/api/endings",
                "/api/shelf/snow/thumbnail",
                "/api/shelf/snow/moves",
                "/main.js",
                "/css/base.css",
                "/palette.css",
                "/index.html",
                "/shell.html",
                "/page",
                "/vendor/lit/index.js",
                "/favicon.ico",
                "/api/page"
            })
    void nothingIsReadWithoutTheKey(String path) {
        turnedAway(visitor.send(visitor.bare(path).build()));
        turnedAway(visitor.send(visitor.bare("/" + WRONG + path).build()));
        String almost = visitor.key.substring(0, 31) + (visitor.key.endsWith("A") ? "B" : "A");
        turnedAway(visitor.send(visitor.bare("/" + almost + path).build()));
    }

    private static void turnedAway(HttpResponse<String> answer) {
        assertThat(answer.statusCode()).isEqualTo(403);
        JsonNode error = Visitor.json(answer).get("error");
        assertThat(error.get("what").asString()).isEqualTo("has no key that opens the studio");
        assertThat(error.get("right").asString()).contains("press Enter where it runs");
    }

    @Test
    void nothingIsChangedWithoutTheKey() {
        String pattern = visitor.pairing("isolation vs triquetra").get("pattern").toString();
        assertThat(visitor.post("/api/shelf", pattern).statusCode()).isEqualTo(201);
        String id = Visitor.json(visitor.get("/api/shelf")).at("/patterns/0/id").asString();
        String tag = visitor.get("/api/shelf/" + id).headers().firstValue("ETag").orElseThrow();
        turnedAway(
                visitor.send(
                        visitor.bare("/api/shelf/" + id).header("If-Match", tag).DELETE().build()));
        turnedAway(
                visitor.send(
                        visitor.bare("/api/shelf/" + id)
                                .header("If-Match", tag)
                                .header("Content-Type", "application/json")
                                .PUT(BodyPublishers.ofString(pattern))
                                .build()));
        turnedAway(
                visitor.send(
                        visitor.bare("/api/shelf")
                                .header("Content-Type", "application/json")
                                .POST(BodyPublishers.ofString(pattern))
                                .build()));
        assertThat(Visitor.json(visitor.get("/api/shelf")).get("patterns")).hasSize(1);
        assertThat(visitor.get("/api/shelf/" + id).headers().firstValue("ETag")).contains(tag);
    }

    @Test
    void noSocketOpensWithoutTheKey() {
        for (String path : new String[] {"/api/live", "/" + WRONG + "/api/live", "/"}) {
            assertThatThrownBy(
                            () ->
                                    visitor.client
                                            .newWebSocketBuilder()
                                            .header("Origin", visitor.origin())
                                            .buildAsync(
                                                    URI.create(
                                                            "ws://127.0.0.1:"
                                                                    + visitor.studio.port()
                                                                    + path),
                                                    new WebSocket.Listener() {})
                                            .join())
                    .hasCauseInstanceOf(WebSocketHandshakeException.class);
        }
    }

    @Test
    void theShellSaysHowToOpenAndHoldsNothing() {
        HttpResponse<String> shell = visitor.send(visitor.bare("/").build());
        assertThat(shell.statusCode()).isEqualTo(200);
        assertThat(shell.body())
                .contains("Press <kbd>Enter</kbd> in the terminal where it runs")
                .doesNotContain(visitor.key)
                .doesNotContain("main.js");
        assertThat(shell.headers().firstValue("Content-Security-Policy").orElseThrow())
                .containsPattern("script-src 'self' 'sha256-[^']+';")
                .containsPattern("style-src 'self' 'sha256-[^']+';")
                .contains("base-uri 'none'");
    }

    @Test
    void anOpeningBuysOneSessionAndItsFileGoesWithIt() {
        Opening opening = visitor.studio.opening();
        assertThat(opening.file()).exists();
        HttpResponse<String> first = visitor.trade(opening.address());
        assertThat(first.statusCode()).isEqualTo(200);
        assertThat(Visitor.json(first).get("session").asString()).isNotEqualTo(visitor.key);
        assertThat(opening.file()).doesNotExist();
        assertThat(visitor.trade(opening.address()).statusCode()).isEqualTo(403);
    }

    @Test
    void thePageComesOnceByAKeyOfItsOwnAndItsAddressesAreBelowTheSessions() {
        String page = Visitor.json(visitor.post("/api/page", "{}")).get("page").asString();
        HttpResponse<String> html = visitor.send(visitor.bare("/" + page + "/").build());
        assertThat(html.body()).contains("<base href=\"/" + visitor.key + "/\">");
        assertThat(html.headers().firstValue("Content-Security-Policy").orElseThrow())
                .contains("base-uri 'self'");
        assertThat(html.headers().firstValue("Cache-Control")).contains("no-store");
        assertThat(visitor.send(visitor.bare("/" + page + "/").build()).statusCode())
                .as("an address that a browser's history keeps opens nothing")
                .isEqualTo(403);
        assertThat(visitor.send(visitor.bare("/" + visitor.key + "/").build()).statusCode())
                .as("no page has its session's key in its address")
                .isEqualTo(404);
    }

    @Test
    void theOpeningFileIsItsOwnersAloneAndGoneWithTheStudio() throws Exception {
        Opening opening = visitor.studio.opening();
        Path folder =
                Optional.ofNullable(opening.file().getParent()).map(Path::getParent).orElseThrow();
        assertThat(String.valueOf(folder.getFileName())).startsWith("deferent-");
        assertThat(Files.readString(opening.file())).contains(opening.address().toString());
        Assumptions.assumeTrue(
                folder.getFileSystem().supportedFileAttributeViews().contains("posix"),
                "this file system has no such permissions");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(opening.file())))
                .isEqualTo("rw-------");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder)))
                .isEqualTo("rwx------");
        visitor.studio.close();
        assertThat(folder).doesNotExist();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"text/plain", "application/x-www-form-urlencoded", "", "application/jsonx"})
    void whatIsPostedIsSaidToBeJson(String kind) {
        var request = visitor.bare(visitor.keyed("/api/ask"));
        if (!kind.isEmpty()) {
            request.header("Content-Type", kind);
        }
        HttpResponse<String> answer =
                visitor.send(request.POST(BodyPublishers.ofString("{\"ask\":\"words\"}")).build());
        assertThat(answer.statusCode()).isEqualTo(415);
        assertThat(Visitor.json(answer).at("/error/right").asString()).contains("application/json");
    }

    @Test
    void aFileAndAPreviewHaveKeysOfTheirOwn() {
        JsonNode taken =
                visitor.ask(
                        "{\"ask\":\"take\",\"as\":\"csv\",\"phrase\":\"isolation vs triquetra\"}");
        String file = taken.get("file").asString();
        assertThat(file).startsWith("/api/taken/").doesNotContain(visitor.key);
        assertThat(visitor.send(visitor.bare(file).build()).statusCode()).isEqualTo(200);
        String other = file.replaceFirst("/api/taken/[^/]+/", "/api/taken/" + WRONG + "/");
        assertThat(visitor.send(visitor.bare(other).build()).statusCode()).isEqualTo(404);
        JsonNode preview =
                Visitor.json(
                        visitor.post(
                                "/api/preview",
                                "{\"as\":\"html\",\"phrase\":\"isolation vs triquetra\"}"));
        String page = preview.get("page").asString();
        assertThat(page).startsWith("/api/preview/").doesNotContain(visitor.key);
        assertThat(visitor.send(visitor.bare(page).build()).statusCode()).isEqualTo(200);
        assertThat(visitor.send(visitor.bare("/api/preview/" + WRONG).build()).statusCode())
                .isEqualTo(404);
    }
}
