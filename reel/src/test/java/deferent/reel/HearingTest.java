package deferent.reel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sounds of every make, written by another's encoder, are heard at their times. */
class HearingTest extends Outside {
    private static final int RATE = 12_000;

    /** When the tone begins, seconds. */
    private static final double BEGINS = 1.25;

    private static final double SECONDS = 3;

    @TempDir private static Path folder;

    /** A tone on two channels that begins late, in every make at once. */
    @BeforeAll
    static void encode() {
        List<String> words =
                new ArrayList<>(
                        List.of(
                                "ffmpeg",
                                "-v",
                                "error",
                                "-f",
                                "lavfi",
                                "-i",
                                "aevalsrc=gte(t\\,1.25)*sin(2764.6*t)/2|gte(t\\,1.25)*sin(2764.6*t)/2"
                                        + ":s=44100:d=3",
                                "-f",
                                "lavfi",
                                "-i",
                                "color=black:s=64x64:r=10:d=3"));
        for (String ending : List.of("wav", "flac", "mp3", "m4a", "ogg", "opus")) {
            words.addAll(List.of("-map", "0:a", folder.resolve("tone." + ending).toString()));
        }
        words.addAll(List.of("-map", "0:a", "-map", "1:v", folder.resolve("film.mp4").toString()));
        words.addAll(List.of("-map", "1:v", folder.resolve("mute.mp4").toString()));
        run(words);
    }

    private static float[] heard(Path file) throws IOException {
        float[] all = new float[0];
        try (Hearing hearing = Hearing.open(file, RATE)) {
            assertThat(hearing.seconds()).isCloseTo(SECONDS, within(0.1));
            for (float[] some = hearing.next(); some.length > 0; some = hearing.next()) {
                int before = all.length;
                all = Arrays.copyOf(all, before + some.length);
                System.arraycopy(some, 0, all, before, some.length);
            }
            assertThat(hearing.next()).isEmpty();
        }
        return all;
    }

    @ParameterizedTest
    @CsvSource({
        "tone.wav",
        "tone.flac",
        "tone.mp3",
        "tone.m4a",
        "tone.ogg",
        "tone.opus",
        "film.mp4"
    })
    void aToneIsHeardWhenItBegins(String name) throws IOException {
        float[] sound = heard(folder.resolve(name));
        assertThat(sound.length / (double) RATE).isCloseTo(SECONDS, within(0.06));
        int first = 0;
        while (Math.abs(sound[first]) < 0.2) {
            first++;
        }
        assertThat(first / (double) RATE).isCloseTo(BEGINS, within(0.004));
        double power = 0;
        for (int i = 2 * RATE; i < 5 * RATE / 2; i++) {
            power += sound[i] * (double) sound[i] * 2 / RATE;
        }
        // A sine that reaches a half.
        assertThat(Math.sqrt(power)).isCloseTo(0.5 / Math.sqrt(2), within(0.02));
    }

    @Test
    void whatIsNoSoundIsRefusedInASentence() throws IOException {
        Path text = Files.writeString(folder.resolve("text.mp3"), "no sound at all");
        for (Path wrong : List.of(text, folder.resolve("mute.mp4"), folder.resolve("gone.wav"))) {
            assertThatThrownBy(() -> Hearing.open(wrong, RATE))
                    .isInstanceOf(Refusal.class)
                    .hasMessageMatching(
                            ".*(is no sound file|has no sound in it|is not there).*; give a so.*");
        }
    }
}
