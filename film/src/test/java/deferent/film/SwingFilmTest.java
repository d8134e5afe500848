package deferent.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.film.hand.FreeSwing;
import deferent.film.light.Background;
import deferent.motion.pairing.Gravity;
import deferent.reel.Shot;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.bytedeco.ffmpeg.global.avutil;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Films of a bob that swings freely before a wall by day, rendered by small steps of time with air
 * that takes of it, seen by a camera that stands aside, looks down and leans, and coded as a
 * phone's: its length within 1.5 % from the film alone.
 */
class SwingFilmTest {
    private static final int WIDTH = 448;
    private static final int HEIGHT = 336;
    private static final double SECONDS = 9;
    private static final double DRAG = 0.03; // of k/m, a metre

    @TempDir Path folder;

    @BeforeAll
    static void beQuiet() {
        avutil.av_log_set_level(avutil.AV_LOG_ERROR);
    }

    /** One camera and one bob. */
    private record Seen(
            double length,
            double amplitude,
            double rate,
            int wall,
            int bob,
            double aside,
            double lean) {}

    private Path film(Seen seen) {
        Path file = folder.resolve("swing.mp4");
        Random random = new Random(11);
        double angle = Math.toRadians(seen.amplitude());
        double pace = 0;
        int steps = 300;
        double h = 1 / seen.rate() / steps;
        byte[] half = new byte[WIDTH / 2 * HEIGHT / 2];
        Arrays.fill(half, (byte) 128);
        try (PhoneClip clip = new PhoneClip(file, WIDTH, HEIGHT, seen.rate(), 2)) {
            for (int i = 0; i < SECONDS * seen.rate(); i++) {
                byte[] luma = new byte[WIDTH * HEIGHT];
                double[] hand = pixel(seen, 0, 0);
                double[] bob =
                        pixel(
                                seen,
                                seen.length() * Math.sin(angle),
                                -seen.length() * Math.cos(angle));
                for (int k = 0; k < luma.length; k++) {
                    int x = k % WIDTH;
                    int y = k / WIDTH;
                    double v = seen.wall() + 20.0 * x / WIDTH + (x / 40 + y / 30) % 2 * 12;
                    if (nearLine(x, y, hand, bob) < 0.7) {
                        v = (v + seen.bob()) / 2;
                    }
                    double off = Math.hypot(x - bob[0], y - bob[1]);
                    double cover = Math.max(0, Math.min(1, 7.5 - off));
                    v += cover * (seen.bob() - v) + 3 * random.nextGaussian();
                    luma[k] = (byte) Math.max(0, Math.min(255, v));
                }
                clip.add(new Shot(i / seen.rate(), WIDTH, HEIGHT, luma, half, half));
                for (int k = 0; k < steps; k++) {
                    pace -=
                            h
                                    * (Gravity.STANDARD / seen.length() * Math.sin(angle)
                                            + DRAG * seen.length() * pace * Math.abs(pace));
                    angle += h * pace;
                }
            }
        }
        return file;
    }

    // From two lengths away, turned aside about the upright and leaning about the line of sight.
    private static double[] pixel(Seen seen, double x, double y) {
        double away = 2 * seen.length();
        double aside = Math.toRadians(seen.aside());
        double up = y + 0.5 * seen.length();
        double across = x * Math.cos(aside);
        double size = 0.45 * HEIGHT / seen.length() * away / (away + x * Math.sin(aside));
        double lean = Math.toRadians(seen.lean());
        double c = Math.cos(lean);
        double s = Math.sin(lean);
        return new double[] {
            WIDTH / 2.0 + size * (c * across - s * up), HEIGHT / 2.0 - size * (s * across + c * up)
        };
    }

    private static double nearLine(double x, double y, double[] a, double[] b) {
        double dx = b[0] - a[0];
        double dy = b[1] - a[1];
        double t = ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy);
        t = Math.max(0, Math.min(1, t));
        return Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy);
    }

    private FreeSwing read(Seen seen) throws IOException {
        return FreeSwing.of(Background.moving(film(seen), share -> {}, () -> false).orElseThrow());
    }

    @ParameterizedTest
    @CsvSource({
        // length, amplitude, rate, wall, bob, aside, lean
        "0.60, 50, 30, 150,  30,  0,  0",
        "0.25, 25, 60, 170,  40, 15,  3",
        "1.00, 12, 25,  60, 220, 10, -2",
        "0.45, 80, 50,  90, 180,  8,  2",
        "0.80, 35, 30, 120,  75,  0,  4",
    })
    void itsLengthIsToldFromTheFilmAlone(
            double length,
            double amplitude,
            double rate,
            int wall,
            int bob,
            double aside,
            double lean)
            throws IOException {
        FreeSwing swing = read(new Seen(length, amplitude, rate, wall, bob, aside, lean));
        assertThat(swing.length()).isCloseTo(length, within(0.015 * length));
    }

    @Test
    void theAirIsToldByHowItDiesAway() throws IOException {
        FreeSwing swing = read(new Seen(0.6, 50, 30, 150, 30, 0, 0));
        assertThat(swing.dragOverMass()).isCloseTo(DRAG, within(0.2 * DRAG));
    }
}
