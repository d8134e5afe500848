package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import deferent.motion.trace.Rate;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.reel.Clip;
import deferent.reel.ClipReport;
import deferent.reel.Clips;
import deferent.reel.Kind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Moving pictures and films as the installed Chromium sees them. */
class BrowserClipsTest extends InChromium {
    private static final Scene SCENE = Exported.scene("isolation vs four-petal antispin");
    private static final int EDGE = 200;

    @TempDir Path folder = Path.of("");

    private static Object seen(String script, Path file, String type) throws IOException {
        try (Page page = browser().newPage()) {
            // Decoders are for secure pages only: this one is never fetched, its answer is made
            // here.
            page.route(
                    "**/*",
                    route ->
                            route.fulfill(
                                    new Route.FulfillOptions()
                                            .setContentType("text/html")
                                            .setBody("<!doctype html><title>clips</title>")));
            page.navigate("https://clips.test/");
            String bytes = Base64.getEncoder().encodeToString(Files.readAllBytes(file));
            return page.evaluate(
                    "async ([text, type]) => {"
                            + "const bytes = Uint8Array.from(atob(text), c => c.charCodeAt(0));"
                            + script
                            + "}",
                    List.of(bytes, type));
        }
    }

    /** Frames, their times and the alpha of a corner and of the strongest pixel. */
    private static final String DECODE =
            """
            const decoder = new ImageDecoder({data: bytes, type});
            await decoder.tracks.ready;
            const track = decoder.tracks.selectedTrack;
            await decoder.completed;
            const durations = [];
            const canvas = new OffscreenCanvas(1, 1);
            let corner = 0, most = 0, middle = [];
            for (let i = 0; i < track.frameCount; i++) {
              const {image} = await decoder.decode({frameIndex: i});
              durations.push(image.duration);
              canvas.width = image.displayWidth;
              canvas.height = image.displayHeight;
              const g = canvas.getContext('2d');
              g.drawImage(image, 0, 0);
              const px = g.getImageData(0, 0, canvas.width, canvas.height).data;
              corner = Math.max(corner, px[3]);
              for (let at = 3; at < px.length; at += 4) most = Math.max(most, px[at]);
              image.close();
            }
            return {
              frames: track.frameCount,
              repeats: String(track.repetitionCount),
              width: canvas.width,
              height: canvas.height,
              micros: durations.reduce((a, b) => a + b, 0),
              least: Math.min(...durations),
              corner, most
            };
            """;

    @SuppressWarnings("unchecked")
    private static Map<String, Object> decoded(Path file, String type) throws IOException {
        return (Map<String, Object>) seen(DECODE, file, type);
    }

    private static double number(Map<String, Object> seen, String key) {
        return ((Number) seen.getOrDefault(key, Double.NaN)).doubleValue();
    }

    @Test
    void anAnimatedWebpHasAllItsFramesLoopsForEverAndIsClearWhereItShouldBe() throws IOException {
        for (Rate rate : List.of(Rate.PAL, Rate.NTSC_DOUBLE)) {
            Clip clip = Clip.of(SCENE, Still.square(EDGE).clear(), Kind.WEBP).at(rate);
            Path file = folder.resolve("clip.webp");
            ClipReport report = Clips.write(clip, file);
            Map<String, Object> seen = decoded(file, "image/webp");
            assertThat(number(seen, "frames")).isEqualTo(report.frames());
            assertThat(seen).containsEntry("repeats", "Infinity");
            assertThat(number(seen, "width")).isEqualTo(EDGE);
            assertThat(number(seen, "micros") / 1e6).isCloseTo(report.seconds(), within(0.0011));
            assertThat(number(seen, "corner")).isZero();
            assertThat(number(seen, "most")).isEqualTo(255);
        }
    }

    @Test
    void aGifHasAllItsFramesLoopsForEverAndNoneThatABrowserWouldSlowDown() throws IOException {
        for (Rate rate : List.of(Rate.FILM, Rate.NTSC, Rate.FIFTY)) {
            Clip clip = Clip.of(SCENE, Still.square(EDGE), Kind.GIF).at(rate);
            Path file = folder.resolve("clip.gif");
            ClipReport report = Clips.write(clip, file);
            Map<String, Object> seen = decoded(file, "image/gif");
            assertThat(number(seen, "frames")).isEqualTo(report.frames());
            assertThat(seen).containsEntry("repeats", "Infinity");
            assertThat(number(seen, "least")).isGreaterThanOrEqualTo(20_000);
            assertThat(number(seen, "micros") / 1e6).isCloseTo(report.seconds(), within(0.0051));
        }
    }

    @Test
    void aBrowserPlaysTheFilmsItKnows() throws IOException {
        for (Kind kind : List.of(Kind.MP4, Kind.WEBM)) {
            Clip clip = Clip.of(SCENE, Still.of(320, 180), kind).titled("a clip").counted(true);
            Path file = folder.resolve("clip." + kind.ending());
            ClipReport report = Clips.write(clip, file);
            Object seconds =
                    seen(
                            """
                            const video = document.createElement('video');
                            video.muted = true;
                            video.src = URL.createObjectURL(new Blob([bytes], {type}));
                            await new Promise((yes, no) => {
                              video.oncanplaythrough = yes;
                              video.onerror = () => no(new Error(video.error.message));
                            });
                            await video.play();
                            await new Promise(yes => video.onended = yes);
                            return video.duration;
                            """,
                            file,
                            "video/" + kind.ending());
            assertThat(((Number) seconds).doubleValue()).isCloseTo(report.seconds(), within(0.02));
        }
    }
}
