package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.record.PatternJson;
import deferent.record.SongDocument;
import deferent.sound.WaveFile;
import deferent.sound.tune.Manner;
import deferent.sound.tune.Tune;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;

/** A song, brought in pieces, its beats found, set right and kept. */
class SongAskTest {
    private static final int RATE = 12_000;
    private static final int PIECE = 150_000;

    @TempDir static Path shelf;
    private static Visitor visitor;
    private static byte[] waltz = {};

    @BeforeAll
    static void open() {
        visitor = Visitor.to(shelf);
        float[] sound = Tune.of(Manner.plain(96, 3, 20), 8).sound(RATE);
        waltz = WaveFile.bytes(sound, RATE);
    }

    @AfterAll
    static void close() {
        visitor.close();
    }

    private static String brought(String called, byte[] bytes) {
        HttpResponse<String> begun = visitor.post("/api/song", "{\"called\": \"" + called + "\"}");
        assertThat(begun.statusCode()).as(begun.body()).isEqualTo(200);
        String song = Visitor.json(begun).get("song").asString();
        for (int at = 0; at < bytes.length; at += PIECE) {
            byte[] next = Arrays.copyOfRange(bytes, at, Math.min(bytes.length, at + PIECE));
            HttpResponse<String> reply =
                    visitor.post(
                            "/api/song/" + song,
                            "{\"at\": "
                                    + at
                                    + ", \"bytes\": \""
                                    + Base64.getEncoder().encodeToString(next)
                                    + "\"}");
            assertThat(reply.statusCode()).as(reply.body()).isEqualTo(200);
        }
        return song;
    }

    private static HttpResponse<String> asked(String song, String more) {
        return visitor.post(
                "/api/ask", "{\"ask\": \"beats\", \"song\": \"" + song + "\"" + more + "}");
    }

    private static JsonNode read(String song, String more) {
        HttpResponse<String> reply = asked(song, more);
        assertThat(reply.statusCode()).as(reply.body()).isEqualTo(200);
        return Visitor.json(reply);
    }

    private static String error(HttpResponse<String> reply) {
        assertThat(reply.statusCode()).as(reply.body()).isBetween(400, 499);
        JsonNode error = Visitor.json(reply).get("error");
        return error.get("where").asString() + ": " + error.get("what").asString();
    }

    private static HttpResponse<String> kept(String song, String name, String more) {
        return visitor.post(
                "/api/songs",
                "{\"song\": \"" + song + "\", \"name\": \"" + name + "\"" + more + "}");
    }

    private static SongDocument document(String id) throws IOException {
        return (SongDocument) PatternJson.read(Files.readString(shelf.resolve(id + ".json")));
    }

    private static List<String> sounds() throws IOException {
        Path folder = shelf.resolve("sound");
        if (!Files.exists(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(f -> f.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void aSongIsReadSetRightAndKeptWithItsSound() throws IOException {
        String song = brought("The waltz, 2.wav", waltz);
        JsonNode found = read(song, "");
        assertThat(found.at("/told/0/text").asString("")).startsWith("96 beats a minute all along");
        assertThat(found.get("beats_a_bar").asInt()).isEqualTo(3);
        assertThat(found.get("loud").size()).isEqualTo(200);
        double[] beats = times(found);

        JsonNode mended =
                read(
                        song,
                        ", \"mends\": [{\"level\": \"double\"}, {\"first_bar\": 4}, {\"beat\": 3,"
                                + " \"to_s\": "
                                + (beats[1] + 0.2)
                                + "}]");
        double[] twice = times(mended);
        assertThat(twice).hasSize(2 * beats.length - 1);
        assertThat(twice[2]).isEqualTo(beats[1]);
        assertThat(twice[3]).isEqualTo(beats[1] + 0.2);
        assertThat(mended.get("first_bar").asInt()).isEqualTo(1);
        assertThat(mended.get("level").asString()).isEqualTo("said");
        assertThat(mended.get("bars").asString()).isEqualTo("said");
        assertThat(
                        read(song, ", \"mends\": [{\"level\": \"half\"}], \"beats_a_bar\": 2")
                                .get("beats_s")
                                .size())
                .isBetween(beats.length / 2, (beats.length + 1) / 2);
        assertThat(read(song, ", \"taps_s\": [4.25, 4.56]").get("beats_per_min").asDouble())
                .isBetween(190.0, 194.0);

        assertThat(error(kept(song, " ", ""))).contains("is empty");
        assertThat(sounds()).isEmpty();
        assertThat(kept(song, "Waltz", "").statusCode()).isEqualTo(200);
        assertThat(document("waltz").mended()).isFalse();
        assertThat(document("waltz").sound().file()).isEqualTo("the-waltz-2.wav");
        assertThat(sounds()).containsExactly("the-waltz-2.wav");
        assertThat(Files.readAllBytes(shelf.resolve("sound").resolve("the-waltz-2.wav")))
                .isEqualTo(waltz);
        assertThat(document("waltz").sound().find(shelf).file()).isPresent();

        // A name that is taken is asked about; in its place the sound is not copied once more.
        assertThat(error(kept(song, "waltz", ""))).isEqualTo("\"waltz\": is on the shelf already");
        assertThat(
                        kept(
                                        song,
                                        "waltz",
                                        ", \"mends\": [{\"level\": \"half\"}], \"replace\": true")
                                .statusCode())
                .isEqualTo(200);
        assertThat(document("waltz").mended()).isTrue();
        assertThat(document("waltz").beats().times())
                .hasSizeBetween(beats.length / 2, (beats.length + 1) / 2);
        assertThat(sounds()).containsExactly("the-waltz-2.wav");

        // Another sound of the same name lies beside it, under no name that leads elsewhere.
        byte[] other = waltz.clone();
        other[other.length - 1] ^= 1;
        String second = brought("../../The waltz, 2.wav", other);
        read(second, "");
        assertThat(kept(second, "Another", "").statusCode()).isEqualTo(200);
        assertThat(sounds()).containsExactly("the-waltz-2-2.wav", "the-waltz-2.wav");
        try (Stream<Path> files = Files.list(shelf)) {
            assertThat(files.map(f -> f.getFileName().toString()).filter(f -> !f.startsWith(".")))
                    .containsExactlyInAnyOrder("another.json", "sound", "waltz.json");
        }
    }

    private static double[] times(JsonNode song) {
        return song.get("beats_s").valueStream().mapToDouble(JsonNode::asDouble).toArray();
    }

    @Test
    void whatCannotBeIsRefusedInOneSentence() {
        assertThat(error(asked(brought("a.wav", "no sound".getBytes(StandardCharsets.UTF_8)), "")))
                .isEqualTo("a.wav: is no sound file");
        byte[] still = WaveFile.bytes(new float[10 * RATE], RATE);
        assertThat(error(asked(brought("still.wav", still), ""))).isEqualTo("still.wav: is silent");
        String song = brought("b.wav", waltz);
        assertThat(error(kept(song, "Early", ""))).contains("was not listened to yet");
        assertThat(error(asked(song, ", \"taps_s\": [1]"))).isEqualTo("taps: are only one");
        assertThat(error(asked(song, ", \"mends\": [{\"beat\": 3, \"to_s\": 19}]")))
                .isEqualTo("beat 4 of the song: would fall at 19.00 s");
        assertThat(error(asked(song, ", \"mends\": [{\"first_bar\": 999}]")))
                .isEqualTo("beat 1000 of the song: is not there");
        assertThat(error(asked("gone", ""))).isEqualTo("the song: is not there any more");
    }

    @ParameterizedTest
    @CsvSource({
        "song.mp3, song.mp3",
        "../../etc/passwd, _._.._etc_passwd",
        "'Ähre: „Auf\"?.ogg', 'Ähre_ _Auf__.ogg'",
        ".., song",
        "'', song",
        ".hidden, _hidden"
    })
    void aFileIsCalledAsItWasLessWhatNoNameMayHold(String called, String name) {
        assertThat(SongDesk.fileName(called)).isEqualTo(name);
    }
}
