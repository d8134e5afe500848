package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What no browser sends: each is answered in the house's form, and nothing is logged of it. */
class MalformedTest {
    @TempDir static Path folder;
    private static Visitor visitor;
    private static Visitor shelfless;

    private final Queue<String> logged = new ConcurrentLinkedQueue<>();
    private final Handler listener =
            new Handler() {
                @Override
                public void publish(LogRecord line) {
                    logged.add(line.getLevel() + " " + line.getMessage() + " " + line.getThrown());
                }

                @Override
                public void flush() {}

                @Override
                public void close() {}
            };

    @BeforeAll
    static void open() throws IOException {
        visitor = Visitor.to(folder.resolve("shelf"));
        shelfless = Visitor.to(Files.writeString(folder.resolve("no-folder"), "a file"));
    }

    @AfterAll
    static void close() {
        visitor.close();
        shelfless.close();
    }

    @BeforeEach
    void listen() {
        Logger.getLogger("").addHandler(listener);
    }

    @AfterEach
    void hearNothing() {
        Logger.getLogger("").removeHandler(listener);
        assertThat(logged).as("what was logged").isEmpty();
    }

    /** `\n` ends a line; KEY is a key that opens, HOST the studio's own name, LONG 9000 letters. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "400 | NONSENSE",
                "400 | GET / HTTP/1.1",
                "400 | GET /KEY/%u002e%u002e/x HTTP/1.1\\nHost: HOST",
                "400 | GET /%u002e HTTP/1.1\\nHost: HOST",
                "400 | GET /KEY/%zz HTTP/1.1\\nHost: HOST",
                "400 | GET /KEY/api/shelf/%c0%ae HTTP/1.1\\nHost: HOST",
                "400 | POST /KEY/api/ask HTTP/1.1\\nHost: HOST\\nContent-Type: application/json\\nTransfer-Encoding: chunked\\n\\nFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFF\\n{}",
                "400 | POST /KEY/api/ask HTTP/1.1\\nHost: HOST\\nContent-Type: application/json\\nTransfer-Encoding: chunked\\n\\nzz\\n{}",
                "400 | POST /KEY/api/ask HTTP/1.1\\nHost: HOST\\nContent-Type: application/json\\nContent-Length: x\\n\\n{}",
                "400 | POST /KEY/api/ask HTTP/1.1\\nHost: HOST\\nContent-Type: application/json\\nContent-Length: 2\\nContent-Length: 3\\n\\n{}",
                "400 | POST /KEY/api/ask HTTP/1.1\\nHost: HOST\\nContent-Type: application/json\\nContent-Length: 2\\n\\n{]",
                "403 | GET /api/shelf HTTP/1.1\\nHost: HOST",
                "403 | GET /KEY/api/shelf HTTP/1.1\\nHost: elsewhere.example",
                "404 | GET /KEY/nothing.js HTTP/1.1\\nHost: HOST",
                "404 | GET /KEY/api/live HTTP/1.1\\nHost: HOST",
                "404 | GET /KEY/api/none HTTP/1.1\\nHost: HOST\\nOrigin: http://HOST\\nConnection: Upgrade\\nUpgrade: websocket\\nSec-WebSocket-Version: 13\\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==",
                "405 | PATCH / HTTP/1.1\\nHost: HOST",
                "405 | TRACE / HTTP/1.1\\nHost: HOST",
                "405 | OPTIONS /KEY/api/shelf HTTP/1.1\\nHost: HOST",
                "405 | POST / HTTP/1.1\\nHost: HOST\\nContent-Length: 0",
                "405 | DELETE /KEY/api/ask HTTP/1.1\\nHost: HOST",
                "411 | POST /KEY/api/ask HTTP/1.1\\nHost: HOST\\nContent-Type: application/json",
                "413 | POST /KEY/api/ask HTTP/1.1\\nHost: HOST\\nContent-Type: application/json\\nContent-Length: 99999999\\n\\n{}",
                "414 | GET /LONG HTTP/1.1\\nHost: HOST",
                "415 | POST /KEY/api/ask HTTP/1.1\\nHost: HOST\\nContent-Type: text/plain\\nContent-Length: 2\\n\\n{}",
                "415 | PUT /KEY/api/shelf/x HTTP/1.1\\nHost: HOST\\nContent-Length: 2\\n\\n{}",
                "431 | GET / HTTP/1.1\\nHost: HOST\\nX: LONG",
                "501 | FROB / HTTP/1.1\\nHost: HOST",
                "501 | POST /KEY/api/ask HTTP/1.1\\nHost: HOST\\nContent-Type: application/json\\nTransfer-Encoding: gzip, chunked\\n\\n0",
                "505 | GET / HTTP/3.0\\nHost: HOST",
            })
    void everyRefusalIsToldInTheSameFormUnderTheSameHeaders(int status, String request) {
        String answer = visitor.raw(written(visitor, request));
        assertThat(answer).startsWith("HTTP/1.1 " + status + " ");
        guarded(answer);
    }

    @Test
    void aShelfThatCannotBeReadIsToldWithoutItsTrace() {
        String answer =
                shelfless.raw(written(shelfless, "GET /KEY/api/shelf HTTP/1.1\\nHost: HOST"));
        assertThat(answer).startsWith("HTTP/1.1 500 ");
        guarded(answer);
    }

    @Test
    void whatIsSentInPiecesIsNoLongerThanWhatIsSentWhole() {
        StringBuilder pieces = new StringBuilder();
        // Just over what is taken: who sends on after the answer may miss it.
        for (int i = 0; i < 65; i++) {
            pieces.append("1000\r\n").append(" ".repeat(4096)).append("\r\n");
        }
        String answer =
                visitor.raw(
                        written(
                                        visitor,
                                        "POST /KEY/api/ask HTTP/1.1\\nHost: HOST\\nContent-Type:"
                                                + " application/json\\nTransfer-Encoding: chunked")
                                + pieces);
        assertThat(answer).startsWith("HTTP/1.1 413 ");
        guarded(answer);
    }

    @Test
    void whoHangsUpInMidBodyIsNotMissed() throws IOException {
        for (int i = 0; i < 20; i++) {
            try (Socket socket = new Socket("127.0.0.1", visitor.studio.port())) {
                OutputStream out = socket.getOutputStream();
                out.write(
                        written(
                                        visitor,
                                        "POST /KEY/api/ask HTTP/1.1\\nHost: HOST\\nContent-Type:"
                                                + " application/json\\nContent-Length: 500\\n\\n{")
                                .getBytes(StandardCharsets.ISO_8859_1));
                out.flush();
                if (i % 2 == 1) {
                    socket.setSoLinger(true, 0);
                }
            }
        }
        assertThat(visitor.pairing("isolation vs triquetra").has("readings")).isTrue();
    }

    private static String written(Visitor to, String request) {
        String whole = request.replace("\\n", "\r\n");
        return whole.replace(
                                "Host: HOST",
                                whole.contains("Connection:")
                                        ? "Host: HOST"
                                        : "Host: HOST\r\nConnection: close")
                        .replace("KEY", to.key)
                        .replace("HOST", "127.0.0.1:" + to.studio.port())
                        .replace("LONG", "x".repeat(9000))
                + (whole.contains("\r\n\r\n") ? "\r\n" : "\r\n\r\n");
    }

    private static void guarded(String answer) {
        String head = answer.substring(0, answer.indexOf("\r\n\r\n"));
        for (String header :
                List.of(
                        "Content-Security-Policy: default-src 'none';",
                        "X-Content-Type-Options: nosniff",
                        "X-Frame-Options: DENY",
                        "Referrer-Policy: no-referrer",
                        "Cross-Origin-Opener-Policy: same-origin",
                        "Cross-Origin-Resource-Policy: same-origin",
                        "Cache-Control: no-store",
                        "Content-Type: application/json")) {
            assertThat(head).contains(header);
        }
        assertThat(head).doesNotContain("Server:");
        String body = answer.substring(answer.indexOf('{'), answer.lastIndexOf('}') + 1);
        var error = Desk.JSON.readTree(body).get("error");
        assertThat(error.get("what").asString()).isNotBlank();
        assertThat(error.get("where").asString()).isNotBlank();
        assertThat(error.get("right").asString()).isNotBlank();
        assertThat(answer).doesNotContain("Exception").doesNotContain("org.eclipse");
    }
}
