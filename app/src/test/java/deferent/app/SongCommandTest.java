package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.record.PatternJson;
import deferent.record.SongDocument;
import deferent.sound.WaveFile;
import deferent.sound.tune.Manner;
import deferent.sound.tune.Tune;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SongCommandTest {
    private static final int RATE = 22_050;

    @TempDir private static Path made;
    private static Path plain = Path.of("");

    @TempDir private Path folder;

    @BeforeAll
    static void render() throws IOException {
        plain = made.resolve("plain.wav");
        float[] sound = Tune.of(Manner.plain(96, 3, 20), 8).sound(RATE);
        Files.write(plain, WaveFile.bytes(sound, RATE));
    }

    private Desk desk() {
        return new Desk(folder);
    }

    private SongDocument kept(String id) throws IOException {
        Path file = folder.resolve("shelf").resolve(id + ".json");
        return (SongDocument) PatternJson.read(Files.readString(file));
    }

    @Test
    void aSongIsToldAndKeptAndItsSoundIsNot() throws IOException {
        Desk.Answer told = desk().good("song", plain.toString(), "--keep", "Plain waltz");
        assertThat(told.text())
                .contains("plain.wav, 0:20")
                .contains("96 beats a minute all along; a hand that goes round once a bar")
                .contains("makes 32 cycles a minute.")
                .contains("Bars of three beats, the first at 0.50 s.")
                .contains("On the shelf: plain-waltz");
        SongDocument song = kept("plain-waltz");
        assertThat(song.beats().beatsABar()).isEqualTo(3);
        assertThat(song.mended()).isFalse();
        assertThat(song.sound().find(folder).file()).contains(plain.toAbsolutePath());
        try (var files = Files.list(folder.resolve("shelf"))) {
            assertThat(files.map(f -> f.getFileName().toString()).filter(f -> !f.startsWith(".")))
                    .containsExactly("plain-waltz.json");
        }
        assertThat(desk().bad("song", plain.toString(), "--keep", "plain waltz").err())
                .contains("is on the shelf already")
                .hasLineCount(1);
        desk().good(
                        "song",
                        plain.toString(),
                        "--double",
                        "--bar",
                        "4",
                        "--first-bar",
                        "3",
                        "--replace",
                        "--keep",
                        "plain waltz");
        SongDocument mended = kept("plain-waltz");
        assertThat(mended.beats().beatsABar()).isEqualTo(4);
        assertThat(mended.beats().firstBar()).isEqualTo(2);
        assertThat(mended.beats().tempo()).isBetween(190.0, 194.0);
        assertThat(mended.mended()).isTrue();
        assertThat(desk().good("shelf", "list").out())
                .contains("plain waltz: a song of 0:20 at 192 beats a minute");
        // Who gets the shelf learns nothing of where anything lies on this machine.
        Path all = folder.resolve("all.json");
        desk().good("shelf", "export", "--out", all.toString());
        assertThat(Files.readString(all))
                .contains("\"file\": \"plain.wav\"")
                .doesNotContain(made.toString());
        assertThat(desk().bad("read", "plain waltz").err()).contains("is a song, not a pattern");
    }

    @Test
    void tapsAndATempoDecideTheLevel() {
        assertThat(
                        desk().good("song", plain.toString(), "--tempo", "48", "--json")
                                .json()
                                .at("/beats_per_min")
                                .asDouble(0))
                .isBetween(47.0, 49.0);
        var json = desk().good("song", plain.toString(), "--taps", "4.25 4.56", "--json").json();
        assertThat(json.at("/beats_per_min").asDouble(0)).isBetween(190.0, 194.0);
        assertThat(json.at("/level").asString("")).isEqualTo("said");
        assertThat(json.at("/beats_s").size()).isGreaterThan(55);
        assertThat(json.at("/told/0/text").asString("")).contains("192 beats a minute");
    }

    @Test
    void whatCannotBeIsRefusedInALine() throws IOException {
        Path text = Files.writeString(folder.resolve("text.wav"), "no sound");
        Path still = folder.resolve("still.wav");
        Files.write(still, WaveFile.bytes(new float[10 * RATE], RATE));
        assertThat(desk().bad("song", text.toString()).err())
                .contains("text.wav: is no sound file")
                .hasLineCount(1);
        assertThat(desk().bad("song", still.toString()).err())
                .contains("still.wav: is silent")
                .hasLineCount(1);
        assertThat(desk().none("song", folder.resolve("gone.wav").toString()).err())
                .contains("is not there")
                .hasLineCount(1);
        assertThat(desk().bad("song", plain.toString(), "--taps", "1.0").err())
                .contains("are only one; tap two beats or more");
        assertThat(desk().bad("song", plain.toString(), "--taps", "1.0 one").err())
                .contains("--taps one: is no time");
        assertThat(desk().bad("song", plain.toString(), "--double", "--half").err())
                .contains("are both given");
        assertThat(desk().bad("song", plain.toString(), "--bar", "17").err()).contains("--bar");
        assertThat(desk().bad("song").err()).contains("give a sound's file");
        assertThat(desk().bad("song", plain.toString(), "--replace").err()).contains("--keep");
    }

    /** Ten hours are refused as soon as the file says how long it is. */
    @Test
    void tenHoursAreRefused() throws IOException {
        Path long10 = folder.resolve("ten-hours.wav");
        int rate = 8;
        Files.write(long10, WaveFile.bytes(new float[10 * 3600 * rate], rate));
        assertThat(desk().bad("song", long10.toString()).err())
                .contains("ten-hours.wav: plays longer than two hours; cut out the song")
                .hasLineCount(1);
    }
}
