package deferent.film;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Refusal;
import deferent.reel.Footage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
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
