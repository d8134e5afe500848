package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Connections on which a byte comes now and then: they hold nobody up, and not for long. */
class SlowTalkersTest {
    private static final int MANY = 60;

    @TempDir Path shelf;
    private Visitor visitor;
    private final List<Socket> sockets = new ArrayList<>();
    private final ScheduledExecutorService trickle = Executors.newSingleThreadScheduledExecutor();

    @BeforeEach
    void open() {
        visitor = Visitor.to(shelf);
    }

    @AfterEach
    void close() throws IOException {
        trickle.shutdownNow();
        for (Socket socket : sockets) {
            socket.close();
        }
        visitor.close();
    }

    private void begin(String text, int many) throws IOException {
        for (int i = 0; i < many; i++) {
            Socket socket = new Socket("127.0.0.1", visitor.studio.port());
            socket.setSoTimeout(30_000);
            sockets.add(socket);
            OutputStream out = socket.getOutputStream();
            out.write(text.getBytes(StandardCharsets.ISO_8859_1));
            out.flush();
            trickle.scheduleWithFixedDelay(() -> drip(out), 200, 200, TimeUnit.MILLISECONDS);
        }
    }

    private static void drip(OutputStream out) {
        try {
            out.write(' ');
            out.flush();
        } catch (IOException closed) {
            throw new IllegalStateException(closed); // and no more drops
        }
    }

    private void answersMeanwhile() {
        for (int i = 0; i < 5; i++) {
            long asked = System.nanoTime();
            assertThat(visitor.pairing("isolation vs triquetra").has("readings")).isTrue();
            assertThat(TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - asked))
                    .as("seconds for an ordinary question")
                    .isLessThan(30);
        }
    }

    @Test
    @Timeout(120)
    void sixtyBodiesAndSixtyHeadersThatTrickleInHoldNobodyUpAndAreGivenUp() throws IOException {
        begin(
                "POST "
                        + visitor.keyed("/api/ask")
                        + " HTTP/1.1\r\nHost: 127.0.0.1:"
                        + visitor.studio.port()
                        + "\r\nContent-Type: application/json\r\nContent-Length: 1000\r\n\r\n{",
                MANY);
        // Both kinds wait out one time; by now the askers of bodies have shown their key.
        answersMeanwhile();
        begin("GET / HTTP/1.1\r\nHost: 127.0.0.1:" + visitor.studio.port() + "\r\nX-Slow: ", MANY);
        answersMeanwhile();
        for (Socket body : sockets.subList(0, MANY)) {
            String answer =
                    new String(body.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(answer).startsWith("HTTP/1.1 408 ").contains("send all of it at once");
        }
        for (Socket headers : sockets.subList(MANY, 2 * MANY)) {
            assertThat(ended(headers)).isTrue();
        }
    }

    @Test
    @Timeout(120)
    void ofManyWhoHaveNoKeyTheFirstMakeRoom() throws IOException {
        Line line = new Line(visitor);
        begin("", 3 * Crowd.MOST);
        answersMeanwhile();
        assertThat(ended(sockets.get(0))).isTrue();
        line.say("{\"id\":1,\"ask\":\"words\",\"word\":\"poi\"}");
        Until.holds("the page's socket is still there", () -> !line.heard.isEmpty());
        assertThat(line.closed).isEmpty();
    }

    private static boolean ended(Socket socket) {
        try {
            socket.getInputStream().readAllBytes();
        } catch (SocketTimeoutException open) {
            return false;
        } catch (IOException reset) {
            // Closed with drops still on their way.
        }
        return true;
    }
}
