package deferent.reel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.trace.Rate;
import deferent.page.Palette;
import deferent.page.Png;
import deferent.page.Scene;
import deferent.page.Still;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Clips as another decoder sees them. */
class SeenClipsTest extends Outside {
    private static final int EDGE = 400;
    // Two still hands about one centre: every head is a tether from the middle of the picture, and
    // the paper leaves a margin of 0.075 of its edge.
    private static final Scene SPINS = Scenes.of("static spin vs static spin, split time");
    private static final double REACH = EDGE * (1 - 2 * 0.075) / 2;

    @TempDir Path folder = Path.of("");

    @Test
    void everyRateIsExactFromTheFirstFrameToTheLast() {
        for (Rate rate : Rate.FRAMES) {
            for (Kind kind : List.of(Kind.MP4, Kind.MOV)) {
                Clip clip = Clip.of(SPINS, Scenes.still(96, 64), kind).at(rate).cycles(3);
                Path file = folder.resolve("clip." + kind.ending());
                ClipReport report = Clips.write(clip, file);
                Map<String, String> seen =
                        asked(file, "v:0", "stream=r_frame_rate,avg_frame_rate,nb_read_frames");
                assertThat(seen)
                        .as("%s at %s", kind, rate.said())
                        .containsEntry("r_frame_rate", rate.num() + "/" + rate.den())
                        .containsEntry("avg_frame_rate", rate.num() + "/" + rate.den())
                        .containsEntry("nb_read_frames", Integer.toString(report.frames()));
                assertThat(number(asked(file, "", "format=duration"), "duration"))
                        .isCloseTo(report.seconds(), within(1e-3));
                String[] base = asked(file, "v:0", "stream=time_base").get("time_base").split("/");
                List<String> times = listed(file, "packet=pts");
                assertThat(times).hasSize(report.frames());
                for (int i = 0; i < times.size(); i++) {
                    long units = Long.parseLong(times.get(i)) * Long.parseLong(base[0]);
                    // units / base[1] seconds is i frames, exactly.
                    assertThat(units * rate.num())
                            .isEqualTo(i * rate.den() * Long.parseLong(base[1]));
                }
            }
        }
    }

    @Test
    void webmRoundsEachFrameToAMillisecondAndNeverAddsTheRoundingUp() {
        Clip clip = Clip.of(SPINS, Scenes.still(64, 64), Kind.WEBM).at(Rate.NTSC_DOUBLE).cycles(10);
        Path file = folder.resolve("clip.webm");
        ClipReport report = Clips.write(clip, file);
        List<String> times = listed(file, "packet=pts");
        assertThat(times).hasSize(report.frames());
        for (int i = 0; i < times.size(); i++) {
            assertThat(Long.parseLong(times.get(i)) / 1000.0)
                    .isCloseTo(Rate.NTSC_DOUBLE.time(i), within(0.0005001));
        }
        // The container says how long a frame lasts in whole nanoseconds.
        String[] said = asked(file, "v:0", "stream=r_frame_rate").get("r_frame_rate").split("/");
        assertThat(1e9 * Double.parseDouble(said[1]) / Double.parseDouble(said[0]))
                .isCloseTo(1e9 * 1001 / 60000, within(1.0));
    }

    @ParameterizedTest
    @EnumSource(
            value = Kind.class,
            names = {"MP4", "WEBM", "MOV", "GIF"})
    void allFramesAreThereInEveryKindAndShape(Kind kind) {
        for (int[] size : new int[][] {{320, 320}, {640, 360}, {180, 320}}) {
            Clip clip =
                    Clip.of(Scenes.isolationWithFourPetals(), Scenes.still(size[0], size[1]), kind)
                            .at(Rate.PAL);
            Path file = folder.resolve("clip." + kind.ending());
            ClipReport report = Clips.write(clip, file);
            Map<String, String> seen =
                    asked(file, "v:0", "stream=width,height,nb_read_frames,sample_aspect_ratio");
            assertThat(seen)
                    .containsEntry("nb_read_frames", Integer.toString(report.frames()))
                    .containsEntry("width", Integer.toString(size[0]))
                    .containsEntry("height", Integer.toString(size[1]));
            assertThat(number(asked(file, "", "format=duration"), "duration"))
                    .isCloseTo(report.seconds(), within(0.011));
            assertThat(report.bytes()).isEqualTo(file.toFile().length());
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = Kind.class,
            names = {"MP4", "WEBM", "MOV", "GIF"})
    void theSeamIsNoLargerThanAnyOtherStep(Kind kind) {
        Clip clip =
                Clip.of(Scenes.isolationWithFourPetals(), Scenes.still(320, 320), kind)
                        .at(Rate.NTSC);
        Path file = folder.resolve("clip." + kind.ending());
        Clips.write(clip, file);
        List<byte[]> frames = frames(file, 320, 320);
        double largest = 0;
        for (int i = 1; i < frames.size(); i++) {
            largest = Math.max(largest, step(frames.get(i - 1), frames.get(i)));
        }
        assertThat(step(frames.get(frames.size() - 1), frames.get(0)))
                .isLessThanOrEqualTo(1.05 * largest);
    }

    private static double step(byte[] from, byte[] to) {
        double sum = 0;
        for (int i = 0; i < from.length; i++) {
            double d = (from[i] & 255) - (to[i] & 255);
            sum += d * d;
        }
        return Math.sqrt(sum / from.length);
    }

    @ParameterizedTest
    @EnumSource(
            value = Kind.class,
            names = {"MP4", "WEBM", "MOV", "GIF"})
    void theHeadsAreWhereTheSceneHasThemWithinHalfAPixel(Kind kind) {
        Clip clip = Clip.of(SPINS, Scenes.still(EDGE, EDGE), kind).at(Rate.PAL);
        Path file = folder.resolve("clip." + kind.ending());
        Clips.write(clip, file);
        List<byte[]> frames = frames(file, EDGE, EDGE);
        assertThat(frames).hasSize(25);
        for (int frame : new int[] {0, 7, 13, 24}) {
            BufferedImage painted = Png.image(SPINS, clip.still().at(clip.loop().moment(frame)));
            var head =
                    SPINS.at(
                            deferent.page.Track.head(deferent.motion.shared.Side.LEFT),
                            clip.loop().moment(frame));
            var centre = SPINS.trace().pairing().left().place().centre();
            double x = EDGE / 2.0 + REACH / 0.6 * (head.getX() - centre.getX());
            double y = EDGE / 2.0 - REACH / 0.6 * (head.getY() - centre.getY());
            double[] seen = disc(frames.get(frame), x, y);
            assertThat(Math.hypot(seen[0] - x, seen[1] - y))
                    .as("%s, frame %d", kind, frame)
                    .isLessThan(0.5);
            // And the colour is the painted one: of the ink, and of the paper in a corner.
            Color ink = new Color(painted.getRGB((int) x, (int) y));
            assertThat(ink).isEqualTo(Palette.Ink.LEFT.on(Palette.Theme.LIGHT));
            assertThat(apart(frames.get(frame), (int) x, (int) y, ink)).isLessThan(12);
            assertThat(apart(frames.get(frame), 5, 5, new Color(painted.getRGB(5, 5))))
                    .isLessThan(4);
        }
    }

    /** Where the middle of a disc lies that is told from its rim by being as dark as its middle. */
    private static double[] disc(byte[] rgba, double x, double y) {
        int[] ink = pixel(rgba, (int) x, (int) y);
        double right = 0;
        double down = 0;
        int count = 0;
        List<int[]> open = new ArrayList<>(List.of(new int[] {(int) x, (int) y}));
        boolean[] been = new boolean[EDGE * EDGE];
        while (!open.isEmpty()) {
            int[] at = open.remove(open.size() - 1);
            if (been[at[1] * EDGE + at[0]] || Math.hypot(at[0] - x, at[1] - y) > 12) {
                continue;
            }
            been[at[1] * EDGE + at[0]] = true;
            int[] here = pixel(rgba, at[0], at[1]);
            int off =
                    Math.abs(here[0] - ink[0])
                            + Math.abs(here[1] - ink[1])
                            + Math.abs(here[2] - ink[2]);
            if (off > 180) {
                continue;
            }
            right += at[0] + 0.5;
            down += at[1] + 0.5;
            count++;
            open.add(new int[] {at[0] + 1, at[1]});
            open.add(new int[] {at[0] - 1, at[1]});
            open.add(new int[] {at[0], at[1] + 1});
            open.add(new int[] {at[0], at[1] - 1});
        }
        return new double[] {right / count, down / count};
    }

    private static int[] pixel(byte[] rgba, int x, int y) {
        int at = 4 * (y * EDGE + x);
        return new int[] {
            rgba[at] & 255, rgba[at + 1] & 255, rgba[at + 2] & 255, rgba[at + 3] & 255
        };
    }

    /**
     * How far the mean of five by five pixels is from a colour, in the channel where it is
     * furthest: a film's encoder leaves specks of one pixel, and other ones on every run.
     */
    private static double apart(byte[] rgba, int x, int y, Color colour) {
        double[] off = new double[3];
        for (int i = 0; i < 25; i++) {
            int[] seen = pixel(rgba, x + i % 5 - 2, y + i / 5 - 2);
            off[0] += (seen[0] - colour.getRed()) / 25.0;
            off[1] += (seen[1] - colour.getGreen()) / 25.0;
            off[2] += (seen[2] - colour.getBlue()) / 25.0;
        }
        return Math.max(Math.abs(off[0]), Math.max(Math.abs(off[1]), Math.abs(off[2])));
    }

    @Test
    void filmsSayThatTheirColoursAreThoseOfBt709InTheNarrowRange() {
        for (Kind kind : List.of(Kind.MP4, Kind.WEBM, Kind.MOV)) {
            Path file = folder.resolve("clip." + kind.ending());
            Clips.write(Clip.of(SPINS, Scenes.still(128, 96), kind).at(Rate.PAL), file);
            assertThat(
                            asked(
                                    file,
                                    "v:0",
                                    "stream=color_space,color_range,color_primaries,color_transfer"))
                    .as(kind.words())
                    .containsEntry("color_range", "tv")
                    .containsEntry("color_space", "bt709")
                    .containsEntry("color_primaries", "bt709")
                    .containsEntry("color_transfer", "bt709");
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = Kind.class,
            names = {"WEBM", "MOV"})
    void aTransparentFilmIsClearInTheCornerAndFullOnTheHead(Kind kind) {
        Still still = Still.square(EDGE).clear();
        Clip clip = Clip.of(SPINS, still, kind).at(Rate.PAL);
        Path file = folder.resolve("clip." + kind.ending());
        Clips.write(clip, file);
        List<byte[]> frames =
                kind == Kind.WEBM
                        ? frames(file, EDGE, EDGE, "-c:v", "libvpx-vp9")
                        : frames(file, EDGE, EDGE);
        assertThat(frames).hasSize(25);
        for (int frame : new int[] {0, 12, 24}) {
            BufferedImage painted = Png.image(SPINS, still.at(clip.loop().moment(frame)));
            double worst = 0;
            double sum = 0;
            for (int y = 0; y < EDGE; y++) {
                for (int x = 0; x < EDGE; x++) {
                    int[] seen = pixel(frames.get(frame), x, y);
                    double off = Math.abs((painted.getRGB(x, y) >>> 24) - seen[3]);
                    worst = Math.max(worst, off);
                    sum += off;
                }
            }
            assertThat(pixel(frames.get(frame), 3, 3)[3]).isZero();
            assertThat(sum / EDGE / EDGE).isLessThan(0.5);
            assertThat(worst).isLessThan(64);
            double turn = 2 * Math.PI * frame / 25;
            int[] head =
                    pixel(
                            frames.get(frame),
                            (int) (EDGE / 2 + REACH * Math.cos(turn)),
                            (int) (EDGE / 2 - REACH * Math.sin(turn)));
            assertThat(head[3]).isGreaterThan(250);
        }
    }

    @Test
    void aSequenceOfPicturesIsThePaintingItself() throws IOException {
        Still still = Still.square(96).clear();
        Clip clip = Clip.of(SPINS, still, Kind.PNGS).at(Rate.PAL).titled("two spins");
        Path file = folder.resolve("spins.zip");
        ClipReport report = Clips.write(clip, file);
        try (ZipFile zip = new ZipFile(file.toFile())) {
            List<String> names = zip.stream().map(ZipEntry::getName).toList();
            assertThat(names).hasSize(report.frames()).startsWith("spins-0001.png");
            assertThat(zip.getComment()).contains("two spins").contains("25 frames a second");
            BufferedImage seen = ImageIO.read(zip.getInputStream(zip.getEntry("spins-0004.png")));
            BufferedImage painted = Png.image(SPINS, still.at(clip.loop().moment(3)));
            assertThat(seen.getRGB(2, 2) >>> 24).isZero();
            for (int y = 0; y < 96; y++) {
                for (int x = 0; x < 96; x++) {
                    assertThat(seen.getRGB(x, y) >>> 24).isEqualTo(painted.getRGB(x, y) >>> 24);
                }
            }
        }
    }

    @Test
    void twoMinutesAreTwoMinutes() {
        Path file = folder.resolve("long.mp4");
        Clip clip =
                Clip.of(SPINS, Scenes.still(64, 48), Kind.MP4)
                        .at(Rate.FILM_NTSC)
                        .filling(120)
                        .counted(true);
        ClipReport report = Clips.write(clip, file);
        List<String> times = listed(file, "packet=pts_time");
        assertThat(times).hasSize(report.frames());
        assertThat(Double.parseDouble(times.get(times.size() - 1)))
                .isCloseTo(Rate.FILM_NTSC.time(report.frames() - 1), within(1e-6));
        assertThat(report.seconds()).isCloseTo(120, within(12.0));
        assertThat(Math.abs(report.tempoOff())).isLessThan(0.5 / report.frames());
    }

    @Test
    void slowMotionShowsTheSameCycleOverMoreFrames() {
        Path file = folder.resolve("slow.mp4");
        Clip clip = Clip.of(SPINS, Scenes.still(96, 96), Kind.MP4).at(Rate.PAL);
        Clips.write(clip.slow(0.25), file);
        assertThat(asked(file, "v:0", "stream=nb_read_frames"))
                .containsEntry("nb_read_frames", Integer.toString(4 * clip.frames()));
    }

    @Test
    void aLongTitleInAnyScriptIsKept() {
        String title = "Isolation gegen Dreiblatt – 孤立 & “Blüte”";
        for (Kind kind : List.of(Kind.MP4, Kind.WEBM, Kind.MOV)) {
            Path file = folder.resolve("Ünïcode " + kind + "." + kind.ending());
            Clip clip = Clip.of(SPINS, Scenes.still(96, 96), kind).titled(title).at(Rate.PAL);
            Clips.write(clip, file);
            Map<String, String> seen = asked(file, "", "format_tags=title");
            assertThat(seen.getOrDefault("TAG:title", seen.get("TAG:TITLE"))).isEqualTo(title);
        }
    }

    @Test
    void theIndexOfAnMp4GoesFirstSoThatItPlaysWhileItLoads() throws IOException {
        Path file = folder.resolve("clip.mp4");
        Clips.write(Clip.of(SPINS, Scenes.still(96, 96), Kind.MP4).cycles(5).counted(true), file);
        String bytes =
                new String(Files.readAllBytes(file), java.nio.charset.StandardCharsets.ISO_8859_1);
        assertThat(bytes.indexOf("moov")).isPositive().isLessThan(bytes.indexOf("mdat"));
    }

    private static double number(Map<String, String> seen, String key) {
        return Double.parseDouble(seen.getOrDefault(key, "NaN"));
    }
}
