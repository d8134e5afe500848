package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/** Work that keeps the machine busy for long: it waits, is told so, and stands in nobody's way. */
@Timeout(180)
class HeavyWorkTest {
    private static final String LARGE = "\"ask\":\"seek\",\"motions\":400000";

    @TempDir Path shelf;
    private Visitor visitor;
    private final List<Socket> sockets = new ArrayList<>();

    @BeforeEach
    void open() {
        visitor = Visitor.to(shelf);
    }

    @AfterEach
    void close() throws IOException {
        for (Socket socket : sockets) {
            socket.close();
        }
        visitor.close();
    }

    private Socket post(String path, String body) throws IOException {
        Socket socket = new Socket("127.0.0.1", visitor.studio.port());
        socket.setSoTimeout(60_000);
        sockets.add(socket);
        OutputStream out = socket.getOutputStream();
        out.write(
                ("POST "
                                + visitor.keyed(path)
                                + " HTTP/1.1\r\nHost: 127.0.0.1:"
                                + visitor.studio.port()
                                // Else a refusal leaves the line open for half a minute.
                                + "\r\nConnection: close"
                                + "\r\nContent-Type: application/json\r\nContent-Length: "
                                + body.length()
                                + "\r\n\r\n"
                                + body)
                        .getBytes(StandardCharsets.ISO_8859_1));
        out.flush();
        return socket;
    }

    private long answered() {
        return sockets.stream().filter(HeavyWorkTest::answered).count();
    }

    private static boolean answered(Socket socket) {
        try {
            return socket.getInputStream().available() > 0;
        } catch (IOException gone) {
            throw new UncheckedIOException(gone);
        }
    }

    private Lane lane(Lanes.Work work) {
        return visitor.studio.lanes().of(work);
    }

    @Test
    void aPostThatHadToWaitIsToldHowManyWereBeforeIt() throws Exception {
        String small = "{\"ask\":\"seek\",\"motions\":10000}";
        Socket free = post("/api/ask", small);
        assertThat(answer(free)).startsWith("HTTP/1.1 200 ").doesNotContain("Deferent-Waited");
        Lane seeks = lane(Lanes.Work.SEEK);
        // It is answered a moment before its worker is free again.
        Until.holds("the first has ended", () -> seeks.working() == 0);
        Socket large = post("/api/ask", "{" + LARGE + "}");
        Until.holds("the large one is sought", () -> seeks.working() == 1);
        Socket second = post("/api/ask", small);
        Until.holds("the second waits", () -> seeks.waiting() == 1);
        Socket third = post("/api/ask", small);
        Until.holds("the third waits", () -> seeks.waiting() == 2);
        large.close();
        assertThat(answer(second)).startsWith("HTTP/1.1 200 ").contains("Deferent-Waited: 1\r\n");
        assertThat(answer(third)).contains("Deferent-Waited: 2\r\n");
    }

    private static String answer(Socket socket) throws IOException {
        return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }

    @Test
    void thirtyLargeSeeksLeaveQuestionsAnsweredAndEndWhenTheirAskersHangUp() throws Exception {
        for (int i = 0; i < 30; i++) {
            post("/api/ask", "{" + LARGE + "}");
        }
        Lane seeks = lane(Lanes.Work.SEEK);
        Until.holds("one seeks and eight wait", () -> seeks.working() == 1 && seeks.waiting() == 8);
        Line line = new Line(visitor);
        for (int i = 0; i < 20; i++) {
            line.say(
                    "{\"id\":" + i + ",\"ask\":\"pairing\",\"phrase\":\"isolation vs triquetra\"}");
            assertThat(line.answer().has("readings")).isTrue();
        }
        Until.holds("all others are answered", () -> answered() >= 21);
        int refused = 0;
        int ended = 0;
        for (Socket socket : sockets) {
            if (answered(socket)) {
                String answer =
                        new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
                if (answer.startsWith("HTTP/1.1 200 ")) {
                    ended++; // It was at work and has come to its end meanwhile.
                    continue;
                }
                assertThat(answer)
                        .startsWith("HTTP/1.1 503 ")
                        .contains("Retry-After: ")
                        .containsPattern("has [89] before you");
                refused++;
            }
        }
        assertThat(refused).isPositive();
        assertThat(refused + ended).as("no more than nine at work or waiting").isBetween(21, 30);
        for (Socket socket : sockets) {
            socket.close();
        }
        Until.holds("nobody is worked for", () -> visitor.studio.lanes().busy() == 0);
    }

    @Test
    void aSeekThatWaitsIsToldHowManyAreBeforeAndStopsAtOnce() throws Exception {
        Line first = new Line(visitor);
        Line second = new Line(visitor);
        first.say("{\"id\":1," + LARGE + "}");
        Until.holds("the first seeks", () -> lane(Lanes.Work.SEEK).working() == 1);
        second.say("{\"id\":2," + LARGE + "}");
        JsonNode waits = second.next();
        assertThat(waits.get("id").asInt()).isEqualTo(2);
        assertThat(waits.get("waiting").asInt()).isEqualTo(1);
        assertThat(waits.get("told").asString()).isEqualTo("1 before you");
        second.say("{\"id\":3,\"ask\":\"stop\",\"of\":\"seek\"}");
        assertThat(second.next().get("stopping").asString()).isEqualTo("seek");
        JsonNode last = second.next();
        assertThat(last.get("id").asInt()).isEqualTo(2);
        assertThat(last.get("done").asBoolean()).isTrue();
        assertThat(last.get("complete").asBoolean()).isFalse();
        assertThat(lane(Lanes.Work.SEEK).working()).as("the first still seeks").isEqualTo(1);
        first.say("{\"id\":4,\"ask\":\"stop\",\"of\":\"seek\"}");
        assertThat(first.last().get("complete").asBoolean()).isFalse();
    }

    @Test
    void stopIsAnsweredWhileEveryWorkerIsBusy() throws Exception {
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            Line line = new Line(visitor);
            lines.add(line);
            line.say("{\"id\":1," + LARGE + "}");
            line.say(
                    "{\"id\":2,\"ask\":\"take\",\"as\":\"zip\",\"wishes\":{\"size\":\"wide\"},"
                            + "\"phrase\":\"isolation vs triquetra\"}");
        }
        Until.holds(
                "seek and film are at work",
                () -> lane(Lanes.Work.SEEK).working() + lane(Lanes.Work.FILM).working() == 2);
        for (Line line : lines) {
            line.say("{\"id\":3,\"ask\":\"stop\",\"of\":\"seek\"}");
            line.say("{\"id\":4,\"ask\":\"stop\",\"of\":\"take\"}");
        }
        for (Line line : lines) {
            int done = 0;
            while (done < 2) {
                done += line.next().path("done").asBoolean(false) ? 1 : 0;
            }
        }
        Until.holds("nobody is worked for", () -> visitor.studio.lanes().busy() == 0);
    }

    @Test
    void aSmallPictureIsNotBehindAFilm() throws Exception {
        Line film = new Line(visitor);
        film.say(
                "{\"id\":1,\"ask\":\"take\",\"as\":\"zip\",\"wishes\":{\"size\":\"wide\"},"
                        + "\"phrase\":\"isolation vs triquetra\"}");
        Until.holds("the film is written", () -> lane(Lanes.Work.FILM).working() == 1);
        JsonNode picture =
                visitor.ask(
                        "{\"ask\":\"take\",\"as\":\"svg\",\"phrase\":\"isolation vs triquetra\"}");
        assertThat(picture.get("file").asString()).endsWith(".svg");
        assertThat(lane(Lanes.Work.FILM).working()).as("the film goes on").isEqualTo(1);
        film.abort();
        Until.holds("who has gone is not filmed for", () -> lane(Lanes.Work.FILM).working() == 0);
    }
}
