package deferent.reel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.trace.Rate;
import deferent.record.landing.Landing;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A film made from a film keeps each frame's own time, and shows it upright. */
class ReprintTest {
    private static final int WIDTH = 128;
    private static final int HEIGHT = 64;
    // A phone's: uneven, one frame long missing.
    private static final long[] TICKS = {0, 3000, 6100, 8900, 18000, 20990, 24100, 27000};

    @TempDir private Path folder;

    /** Red at its upper left, green at its upper right, blue elsewhere. */
    private Path uneven() throws IOException {
        return uneven(Optional.empty());
    }

    private Path uneven(Optional<Tone> tone) throws IOException {
        Path file = folder.resolve("phone.mp4");
        Format format =
                new Format(Kind.MP4, WIDTH, HEIGHT, false, Rate.of(30), Rate.of(90_000), "");
        BufferedImage picture = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = picture.createGraphics();
        g.setColor(Color.BLUE);
        g.fillRect(0, 0, WIDTH, HEIGHT);
        g.setColor(Color.RED);
        g.fillRect(0, 0, 32, 32);
        g.setColor(Color.GREEN);
        g.fillRect(WIDTH - 32, 0, 32, 32);
        g.dispose();
        try (Landing landing = Landing.at(file);
                Film film =
                        Film.open(
                                format,
                                Recipe.mp4(format, ""),
                                tone.map(Tone::stream),
                                landing.channel());
                FrameCel cel = film.cel()) {
            for (long tick : TICKS) {
                cel.take(picture);
                film.add(cel, tick, 3000);
            }
            if (tone.isPresent()) {
                tone.get().into(film, 20);
            }
            film.finish();
            landing.land();
        }
        return file;
    }

    /** As a phone held upright stores it: a quarter turn clockwise brings it upright. */
    private static void turn(Path file) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        int at = new String(bytes, StandardCharsets.ISO_8859_1).indexOf("tkhd");
        // The matrix of a track's header: ISO/IEC 14496-12, 8.3.2.
        ByteBuffer.wrap(bytes)
                .position(at + 4 + 40)
                .putInt(0)
                .putInt(0x10000)
                .putInt(0)
                .putInt(-0x10000)
                .putInt(0)
                .putInt(0)
                .putInt(HEIGHT << 16)
                .putInt(0)
                .putInt(0x40000000);
        Files.write(file, bytes);
    }

    private record Kept(List<Double> times, List<BufferedImage> pictures) {}

    private static Kept kept(Path film) throws IOException {
        Kept kept = new Kept(new ArrayList<>(), new ArrayList<>());
        Reprint.look(
                film,
                (picture, time) -> {
                    BufferedImage copy =
                            new BufferedImage(
                                    picture.getWidth(), picture.getHeight(), picture.getType());
                    copy.createGraphics().drawImage(picture, 0, 0, null);
                    kept.pictures().add(copy);
                    return kept.times().add(time);
                },
                share -> {},
                () -> false);
        return kept;
    }

    private Reprint.Report printed(Path film, Path to, double slow) {
        return new Reprint(
                        film,
                        slow,
                        "",
                        size -> new Dimension(size.width, size.height),
                        (frame, time, print) -> print.createGraphics().drawImage(frame, 0, 0, null))
                .write(to, share -> {}, () -> false)
                .orElseThrow();
    }

    private static void assertColour(BufferedImage picture, int x, int y, Color colour) {
        Color seen = new Color(picture.getRGB(x, y));
        assertThat(seen.getRed()).isCloseTo(colour.getRed(), within(40));
        assertThat(seen.getGreen()).isCloseTo(colour.getGreen(), within(40));
        assertThat(seen.getBlue()).isCloseTo(colour.getBlue(), within(40));
    }

    @Test
    void eachFrameKeepsItsOwnTimeAndAQuarterAsFastTakesFourTimesAsLong() throws IOException {
        Path film = uneven();
        for (double slow : new double[] {1, 0.25}) {
            Path to = folder.resolve("print.mp4");
            Reprint.Report report = printed(film, to, slow);
            assertThat(report.frames()).isEqualTo(TICKS.length);
            assertThat(report.sound()).isEqualTo(Reprint.Sound.NONE);
            List<Double> times = kept(to).times();
            assertThat(times).hasSize(TICKS.length);
            for (int i = 0; i < TICKS.length; i++) {
                assertThat(times.get(i)).isCloseTo(TICKS[i] / 90_000.0 / slow, within(2e-5));
            }
        }
    }

    @Test
    void aFilmThatWasHeldUprightIsWrittenUpright() throws IOException {
        Path film = uneven();
        turn(film);
        Path to = folder.resolve("print.mp4");
        Reprint.Report report = printed(film, to, 1);
        assertThat(report.width()).isEqualTo(HEIGHT);
        assertThat(report.height()).isEqualTo(WIDTH);
        BufferedImage upright = kept(to).pictures().get(3);
        // What was stored at its upper left stands at the upper right then.
        assertColour(upright, HEIGHT - 16, 16, Color.RED);
        assertColour(upright, HEIGHT - 16, WIDTH - 16, Color.GREEN);
        assertColour(upright, 16, 16, Color.BLUE);
    }

    @Test
    void soundGoesAlongAtFullSpeedAndIsToldToBeLeftOutElse() throws IOException {
        try (Tone tone = new Tone()) {
            Path film = uneven(Optional.of(tone));
            Path to = folder.resolve("print.mp4");
            assertThat(printed(film, to, 1).sound()).isEqualTo(Reprint.Sound.KEPT);
            try (Footage footage = Footage.open(to)) {
                List<Double> heard = new ArrayList<>();
                var sound = footage.sound().orElseThrow();
                footage.hear(
                        sound,
                        packet ->
                                heard.add(
                                        (double) packet.pts()
                                                * sound.time_base().num()
                                                / sound.time_base().den()));
                while (footage.next().isPresent()) {
                    assertThat(footage.frames()).isEqualTo(TICKS.length);
                }
                // The encoder's first packet stands before the first picture.
                assertThat(heard).hasSizeBetween(17, 20);
                for (int i = 1; i < heard.size(); i++) {
                    assertThat(heard.get(i) - heard.get(i - 1))
                            .isCloseTo(1024 / 48_000.0, within(1e-3));
                }
            }
            assertThat(printed(film, to, 0.5).sound()).isEqualTo(Reprint.Sound.LEFT_OUT);
            try (Footage footage = Footage.open(to)) {
                assertThat(footage.sound()).isEmpty();
            }
        }
    }

    @Test
    void stoppedItLeavesWhatStoodThere() throws IOException {
        Path film = uneven();
        Path to = Files.writeString(folder.resolve("print.mp4"), "before");
        assertThat(
                        new Reprint(film, 1, "", size -> size, (frame, time, print) -> {})
                                .write(to, share -> {}, () -> true))
                .isEmpty();
        assertThat(Files.readString(to)).isEqualTo("before");
    }
}
