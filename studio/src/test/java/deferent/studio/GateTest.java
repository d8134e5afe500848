package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.ConnectException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.WebSocket;
import java.net.http.WebSocketHandshakeException;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CompletionException;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GateTest {
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

    @ParameterizedTest
    @ValueSource(strings = {"127.0.0.1", "localhost", "[::1]", "LOCALHOST"})
    void theMachinesOwnNamesAreLetIn(String name) {
        assertThat(raw(name + ":" + visitor.studio.port(), "")).startsWith("HTTP/1.1 200");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "evil.example",
                "evil.example:%d",
                "127.0.0.1",
                "localhost:1",
                "127.0.0.1.evil.example:%d",
                "localhost:%d.evil.example",
                "user@evil.example:%d",
                "[::2]:%d"
            })
    void aRequestForAnotherHostIsTurnedAway(String host) {
        String answer = raw(host.formatted(visitor.studio.port()), "");
        assertThat(answer).matches("(?s)HTTP/1\\.1 40[03] .*");
        assertThat(answer).doesNotContain("bluish").doesNotContain("inks");
    }

    @Test
    void aRequestForNoHostOrTwoIsTurnedAway() {
        String own = "Host: 127.0.0.1:" + visitor.studio.port() + "\r\n";
        assertThat(visitor.raw("GET /api/palette HTTP/1.1\r\nConnection: close\r\n\r\n"))
                .startsWith("HTTP/1.1 400");
        assertThat(
                        visitor.raw(
                                "GET /api/palette HTTP/1.1\r\n"
                                        + own
                                        + own
                                        + "Connection: close\r\n\r\n"))
                .matches("(?s)HTTP/1\\.1 40[03] .*");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "http://evil.example",
                "null",
                "https://127.0.0.1:%d",
                "http://127.0.0.1:1",
                "http://localhost.evil.example:%d",
                "file://"
            })
    void aPageFromElsewhereIsTurnedAway(String origin) {
        HttpResponse<String> response =
                visitor.send(
                        visitor.request("/api/ask")
                                .header("Origin", origin.formatted(visitor.studio.port()))
                                .POST(BodyPublishers.ofString("{\"ask\":\"words\"}"))
                                .build());
        assertThat(response.statusCode()).isEqualTo(403);
        assertThat(Visitor.json(response).path("error").path("what").asString())
                .isEqualTo("comes from another site's page");
    }

    @Test
    void theStudiosOwnPageIsLetIn() {
        HttpResponse<String> response =
                visitor.send(
                        visitor.request("/api/ask")
                                .header("Origin", visitor.origin())
                                .POST(
                                        BodyPublishers.ofString(
                                                "{\"ask\":\"words\",\"word\":\"poi\"}"))
                                .build());
        assertThat(response.statusCode()).isIn(200, 422);
    }

    @Test
    void anotherSiteCannotPullAnswersInAsScripts() {
        HttpResponse<String> response =
                visitor.send(
                        visitor.request("/api/shelf")
                                .header("Sec-Fetch-Site", "cross-site")
                                .header("Sec-Fetch-Mode", "no-cors")
                                .build());
        assertThat(response.statusCode()).isEqualTo(403);
    }

    @Test
    void aLinkFromElsewhereLeadsToTheShellAndToNothingElse() {
        assertThat(fromElsewhere(visitor.bare("/")).statusCode()).isEqualTo(200);
        assertThat(fromElsewhere(visitor.request("/palette.css")).statusCode()).isEqualTo(403);
        assertThat(
                        fromElsewhere(
                                        visitor.request("/api/page")
                                                .POST(BodyPublishers.ofString("{}")))
                                .statusCode())
                .isEqualTo(403);
    }

    private static HttpResponse<String> fromElsewhere(HttpRequest.Builder request) {
        return visitor.send(
                request.header("Sec-Fetch-Site", "cross-site")
                        .header("Sec-Fetch-Mode", "navigate")
                        .build());
    }

    /** Pages of other ports are of the same site, and may be another user's. */
    @Test
    void anotherPortOfThisMachineIsElsewhere() {
        HttpResponse<String> response =
                visitor.send(
                        visitor.request("/api/palette")
                                .header("Sec-Fetch-Site", "same-site")
                                .header("Sec-Fetch-Mode", "navigate")
                                .build());
        assertThat(response.statusCode()).isEqualTo(403);
    }

    @Test
    void aSocketWithoutAnOriginIsTurnedAway() {
        assertThatThrownBy(
                        () ->
                                visitor.client
                                        .newWebSocketBuilder()
                                        .buildAsync(visitor.live(), new WebSocket.Listener() {})
                                        .join())
                .isInstanceOf(CompletionException.class)
                .hasCauseInstanceOf(WebSocketHandshakeException.class);
    }

    @Test
    void aSocketFromAnotherSitesPageIsTurnedAway() {
        assertThatThrownBy(
                        () ->
                                visitor.client
                                        .newWebSocketBuilder()
                                        .header("Origin", "http://evil.example")
                                        .buildAsync(visitor.live(), new WebSocket.Listener() {})
                                        .join())
                .hasCauseInstanceOf(WebSocketHandshakeException.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"/palette.css", "/nothing.js", "/api/shelf", "/api/shelf/nobody"})
    void everyAnswerCarriesItsGuards(String path) {
        HttpResponse<String> response = visitor.get(path);
        assertThat(response.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
        assertThat(response.headers().firstValue("Referrer-Policy")).contains("no-referrer");
        assertThat(response.headers().firstValue("Content-Security-Policy").orElse(""))
                .contains("default-src 'none'")
                .contains("script-src 'self';")
                .contains("frame-ancestors 'none'")
                .contains(
                        "frame-src http://localhost:%1$d/api/preview/ http://127.0.0.1:%1$d/api/preview/;"
                                .formatted(visitor.studio.port()))
                .doesNotContain("unsafe-eval");
        assertThat(response.headers().firstValue("Access-Control-Allow-Origin")).isEmpty();
    }

    @Test
    void otherMachinesFindNobodyListening() throws Exception {
        List<InetAddress> others =
                Collections.list(NetworkInterface.getNetworkInterfaces()).stream()
                        .flatMap(NetworkInterface::inetAddresses)
                        .filter(a -> a instanceof Inet4Address && !a.isLoopbackAddress())
                        .toList();
        // A machine without a network has no other address; 127.0.0.2 is another one everywhere.
        for (InetAddress address :
                others.isEmpty() ? List.of(InetAddress.getByName("127.0.0.2")) : others) {
            assertThatThrownBy(() -> new Socket(address, visitor.studio.port()).close())
                    .isInstanceOf(ConnectException.class);
        }
    }

    private static String raw(String host, String more) {
        return visitor.raw(
                "GET "
                        + visitor.keyed("/api/palette")
                        + " HTTP/1.1\r\nHost: "
                        + host
                        + "\r\n"
                        + more
                        + "Connection: close\r\n\r\n");
    }
}
