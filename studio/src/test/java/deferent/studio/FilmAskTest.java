package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Base64;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/** A film of practice, brought in pieces and watched. */
class FilmAskTest {
    private static final int PIECE = 100_000;
    private static final Path PRACTICE = Path.of("..", "docs", "practice.mp4");

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

    private static String begun() {
        HttpResponse<String> reply = visitor.post("/api/film", "{}");
        assertThat(reply.statusCode()).isEqualTo(200);
        return Visitor.json(reply).get("film").asString();
    }

    private static HttpResponse<String> piece(String film, long at, byte[] bytes) {
        return visitor.post(
                "/api/film/" + film,
                "{\"at\": "
                        + at
                        + ", \"bytes\": \""
                        + Base64.getEncoder().encodeToString(bytes)
                        + "\"}");
    }

    private static String brought(byte[] bytes) {
        String film = begun();
        for (int at = 0; at < bytes.length; at += PIECE) {
            byte[] next = Arrays.copyOfRange(bytes, at, Math.min(bytes.length, at + PIECE));
            HttpResponse<String> reply = piece(film, at, next);
            assertThat(reply.statusCode()).as(reply.body()).isEqualTo(200);
        }
        return film;
    }

    private static JsonNode watched(String film, String more) {
        return visitor.ask(
                "{\"id\": 1, \"ask\": \"film\", \"film\": \"" + film + "\"" + more + "}");
    }

    @Test
    void aFilmBroughtInPiecesIsReadAndSaysWhereEachLightAndHandWas() throws IOException {
        String film = brought(Files.readAllBytes(PRACTICE));
        JsonNode answer =
                watched(film, ", \"phrase\": \"static spin vs triquetra\", \"tether_m\": 0.6");
        assertThat(answer.has("error")).as(answer.toString()).isFalse();
        assertThat(answer.get("told").isEmpty()).isFalse();
        JsonNode left = answer.get("over").get("sides").get("left");
        assertThat(left.get("head").size()).isEqualTo(left.get("meant").size()).isGreaterThan(60);
        assertThat(left.get("hands").isEmpty()).isFalse();
        JsonNode again = watched(film, ", \"pixel_m\": 0.005");
        assertThat(again.get("film").get("asked").asBoolean()).isFalse();
    }

    @Test
    void whatIsNoFilmIsRefusedInOneSentence() {
        String film = brought("no film at all".getBytes(StandardCharsets.UTF_8));
        HttpResponse<String> reply =
                visitor.post("/api/ask", "{\"ask\": \"film\", \"film\": \"" + film + "\"}");
        assertThat(reply.statusCode()).isEqualTo(422);
        assertThat(Visitor.json(reply).get("error").get("what").asString())
                .isEqualTo("is not a film");
    }

    @Test
    void aPieceThatDoesNotGoOnWhereTheLastOneEndedIsRefused() {
        String film = begun();
        assertThat(piece(film, 0, new byte[10]).statusCode()).isEqualTo(200);
        assertThat(piece(film, 5, new byte[10]).statusCode()).isEqualTo(409);
        assertThat(piece(film, 10, new byte[10]).statusCode()).isEqualTo(200);
    }

    @Test
    void onlyTheLastFilmsAreKept() {
        String first = begun();
        begun();
        begun();
        assertThat(piece(first, 0, new byte[1]).statusCode()).isEqualTo(404);
        assertThat(piece("..", 0, new byte[1]).statusCode()).isGreaterThanOrEqualTo(400);
    }
}
