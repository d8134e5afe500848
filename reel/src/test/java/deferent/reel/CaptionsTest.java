package deferent.reel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.trace.Rate;
import deferent.page.Scene;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The counts that go along with a clip. */
class CaptionsTest extends Outside {
    private static final Scene SCENE = Scenes.isolationWithFourPetals();

    @TempDir Path folder = Path.of("");

    private static Clip clip(Kind kind) {
        return Clip.of(SCENE, Scenes.still(96, 96), kind)
                .at(Rate.NTSC)
                .cycles(3)
                .slow(0.5)
                .titled("Isolation -> petals")
                .counted(true);
    }

    @Test
    void everyCycleIsCountedAnewInTheClipsOwnTime() {
        Loop loop = clip(Kind.MP4).loop();
        List<Cue> cues = Captions.of(SCENE.trace(), loop);
        assertThat(cues).extracting(Cue::text).startsWith("1", "2", "3", "1").hasSize(9);
        assertThat(cues.get(3).from()).isCloseTo(loop.seconds() / 3, within(1e-9));
        for (int i = 1; i < cues.size(); i++) {
            assertThat(cues.get(i).from()).isEqualTo(cues.get(i - 1).to());
        }
        assertThat(cues.get(8).to()).isEqualTo(loop.seconds());
    }

    @Test
    void aWebVttFileIsWrittenAsTheStandardHasIt() {
        String text =
                WebVtt.of(
                        "A --> B",
                        List.of(new Cue(0, 0.5, "1"), new Cue(3723.0045, 3724, "a < b & c")));
        assertThat(text)
                .isEqualTo(
                        """
                        WEBVTT - A -> B

                        00:00:00.000 --> 00:00:00.500
                        1

                        01:02:03.005 --> 01:02:04.000
                        a &lt; b &amp; c

                        """);
    }

    @Test
    void theCountsAreATrackInsideTheFilmAndForMp4AlsoAFileBesideIt() throws IOException {
        for (Kind kind : List.of(Kind.MP4, Kind.WEBM)) {
            Path file = folder.resolve("counted." + kind.ending());
            Clip clip = clip(kind);
            ClipReport report = Clips.write(clip, file);
            List<Cue> cues = Captions.of(SCENE.trace(), clip.loop());
            assertThat(asked(file, "s:0", "stream=codec_name"))
                    .containsEntry("codec_name", kind == Kind.MP4 ? "mov_text" : "webvtt");
            assertThat(asked(file, "v:0", "stream=nb_read_frames,avg_frame_rate"))
                    .containsEntry("nb_read_frames", Integer.toString(report.frames()))
                    .containsEntry("avg_frame_rate", "30000/1001");
            String track =
                    text(
                            run(
                                    List.of(
                                            "ffmpeg",
                                            "-v",
                                            "error",
                                            "-i",
                                            file.toString(),
                                            "-map",
                                            "0:s:0",
                                            "-f",
                                            "webvtt",
                                            "-")));
            holds(track, cues);
            if (kind == Kind.MP4) {
                Path beside = folder.resolve("counted.vtt");
                assertThat(report.files()).containsExactly(file, beside);
                holds(
                        text(
                                run(
                                        List.of(
                                                "ffmpeg",
                                                "-v",
                                                "error",
                                                "-i",
                                                beside.toString(),
                                                "-f",
                                                "webvtt",
                                                "-"))),
                        cues);
                Files.delete(beside);
            } else {
                assertThat(report.files()).containsExactly(file);
            }
        }
    }

    private static void holds(String vtt, List<Cue> cues) {
        List<String> times = new ArrayList<>();
        List<String> said = new ArrayList<>();
        for (String block : vtt.split("\n\n")) {
            String[] lines = block.strip().split("\n");
            if (lines.length == 2 && lines[0].contains("-->")) {
                times.add(lines[0]);
                said.add(lines[1]);
            }
        }
        assertThat(said).isEqualTo(cues.stream().map(Cue::text).toList());
        for (int i = 0; i < cues.size(); i++) {
            String[] ends = times.get(i).split(" --> ");
            assertThat(seconds(ends[0])).isCloseTo(cues.get(i).from(), within(0.0011));
            assertThat(seconds(ends[1])).isCloseTo(cues.get(i).to(), within(0.0021));
        }
    }

    private static double seconds(String time) {
        double sum = 0;
        for (String part : time.strip().split(":")) {
            sum = 60 * sum + Double.parseDouble(part);
        }
        return sum;
    }
}
