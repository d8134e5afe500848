package deferent.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.film.light.LitSpot;
import deferent.film.words.TellFilm;
import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Trace;
import deferent.motion.trial.TwelveClassics;
import deferent.reel.Footage;
import deferent.tell.Told;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bytedeco.ffmpeg.global.avutil;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FilmFaultsTest {
    @TempDir Path folder;

    @BeforeAll
    static void beQuiet() {
        avutil.av_log_set_level(avutil.AV_LOG_FATAL);
    }

    @Test
    void aLetterIsNoFilm() throws IOException {
        Path file = Files.writeString(folder.resolve("letter.mp4"), "Dear Anna, ...");
        assertThatThrownBy(() -> Footage.open(file))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("is not a film");
    }

    private static List<List<LitSpot>> spun(int lights) {
        Trace trace =
                Classics.corded(TwelveClassics.turning("static spin vs triquetra", 70), true)
                        .orElseThrow();
        List<List<LitSpot>> frames = new ArrayList<>();
        for (List<LitSpot> spots : Classics.spots(trace, 8, 30, 5)) {
            List<LitSpot> some = new ArrayList<>(spots.subList(0, Math.min(lights, 2)));
            if (lights > 2) {
                double t = spots.get(0).time();
                double x = 1500 + 150 * Math.cos(7 * t);
                double y = 500 + 150 * Math.sin(7 * t);
                some.add(new LitSpot(t, x, y, x - 9, y, x + 9, y, 3, 900, 0, 0));
            }
            frames.add(some);
        }
        return frames;
    }

    private static FilmReading read(int lights) {
        return FilmReading.of(
                spun(lights), FilmAsk.NOTHING.scaled(Classics.PIXEL).tethered(0.6), 1080, "film");
    }

    @Test
    void noLightAndOneLightAreRefusedInOneSentence() {
        assertThatThrownBy(() -> read(0))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("shows no light that moves");
        assertThatThrownBy(() -> read(1))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("shows one moving light alone");
    }

    @Test
    void aThirdLightThatMovesIsTold() {
        assertThat(TellFilm.of(read(3)))
                .extracting(Told::text)
                .anyMatch(text -> text.contains("more than two lights move"));
        assertThat(TellFilm.of(read(2)))
                .extracting(Told::text)
                .noneMatch(text -> text.contains("more than two lights move"));
    }

    @Test
    void aFileThatIsNotThereIsRefused() {
        assertThatThrownBy(() -> Footage.open(folder.resolve("none.mp4")))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("cannot be read");
    }

    @Test
    void aCodecNobodyKnowsIsRefused() throws IOException {
        RenderedFilm film =
                new RenderedFilm(
                        Corded.of("extension vs extension, opposites").orElseThrow(),
                        Spoilt.not(30).coded(4),
                        0.02,
                        1);
        Path file = folder.resolve("strange.mp4");
        Tried.code(film, 0.5, file);
        String bytes = Files.readString(file, StandardCharsets.ISO_8859_1);
        Files.writeString(file, bytes.replace("avc1", "zz9q"), StandardCharsets.ISO_8859_1);
        assertThatThrownBy(() -> Footage.open(file))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("cannot be read here");
    }
}
