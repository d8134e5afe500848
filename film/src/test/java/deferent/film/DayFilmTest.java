package deferent.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.film.follow.HeadAt;
import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.motion.trial.TwelveClassics;
import deferent.reel.Shot;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.bytedeco.ffmpeg.global.avutil;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A film by day: coloured heads before a patterned wall, with a body that sways and arms that move,
 * rendered and coded as a phone's.
 */
class DayFilmTest {
    private static final int WIDTH = 480;
    private static final int HEIGHT = 480;
    private static final double PIXEL = 0.0065;
    private static final double RATE = 30;
    private static final double SECONDS = 10;
    private static final Pairing SPUN = TwelveClassics.turning("static spin vs triquetra", 70);
    private static final Trace TRACE = Classics.corded(SPUN, true).orElseThrow();

    @TempDir Path folder;

    @BeforeAll
    static void beQuiet() {
        avutil.av_log_set_level(avutil.AV_LOG_ERROR);
    }

    private static double[] pixel(Vector3D p) {
        return new double[] {WIDTH / 2.0 + p.getX() / PIXEL, HEIGHT / 2.0 - p.getY() / PIXEL};
    }

    private static Vector3D at(Side side, double time, boolean head) {
        double t = TRACE.interval().start() + time % TRACE.period();
        return (head ? TRACE.head(side) : TRACE.hand(side)).position(t);
    }

    /** With a ball of the heads' colour that somebody throws up beside them. */
    private Path film(boolean ball) {
        Path file = folder.resolve("day.mp4");
        Random random = new Random(5);
        int half = WIDTH / 2;
        try (PhoneClip clip = new PhoneClip(file, WIDTH, HEIGHT, RATE, 4)) {
            for (int i = 0; i < SECONDS * RATE; i++) {
                double time = i / RATE;
                byte[] luma = new byte[WIDTH * HEIGHT];
                byte[] blue = new byte[half * half];
                byte[] red = new byte[half * half];
                Arrays.fill(blue, (byte) 128);
                Arrays.fill(red, (byte) 126);
                for (int k = 0; k < luma.length; k++) {
                    int x = k % WIDTH;
                    int y = k / WIDTH;
                    double v = 120 + (x / 48 + y / 36) % 2 * 25 + 3 * random.nextGaussian();
                    luma[k] = (byte) v;
                }
                double sway = 6 * Math.sin(2 * time);
                disc(luma, WIDTH / 2.0 + sway, HEIGHT / 2.0 + 40, 34, 60);
                for (Side side : Side.values()) {
                    double[] hand = pixel(at(side, time, false));
                    for (int s = 0; s <= 20; s++) {
                        double w = s / 20.0;
                        disc(
                                luma,
                                w * hand[0] + (1 - w) * (WIDTH / 2.0 + sway),
                                w * hand[1] + (1 - w) * HEIGHT / 2.0,
                                5,
                                80);
                    }
                }
                for (Side side : Side.values()) {
                    double[] head = pixel(at(side, time, true));
                    disc(luma, head[0], head[1], 7, 150);
                    boolean green = side == Side.LEFT && !ball;
                    colour(blue, red, head, 7, green ? 80 : 150, green ? 80 : 210);
                }
                if (ball) {
                    double[] up = {WIDTH - 40, 400 - 300 * Math.abs(Math.sin(2.3 * time))};
                    disc(luma, up[0], up[1], 9, 150);
                    colour(blue, red, up, 9, 150, 210);
                }
                clip.add(new Shot(time, WIDTH, HEIGHT, luma, blue, red));
            }
        }
        return file;
    }

    private static void disc(byte[] luma, double cx, double cy, double r, int value) {
        for (int y = (int) Math.max(0, cy - r); y < Math.min(HEIGHT, cy + r + 1); y++) {
            for (int x = (int) Math.max(0, cx - r); x < Math.min(WIDTH, cx + r + 1); x++) {
                if (Math.hypot(x - cx, y - cy) < r) {
                    luma[y * WIDTH + x] = (byte) value;
                }
            }
        }
    }

    private static void colour(byte[] blue, byte[] red, double[] at, double r, int b, int d) {
        for (int y = 0; y < HEIGHT / 2; y++) {
            for (int x = 0; x < WIDTH / 2; x++) {
                if (Math.hypot(2 * x + 0.5 - at[0], 2 * y + 0.5 - at[1]) < r) {
                    blue[y * (WIDTH / 2) + x] = (byte) b;
                    red[y * (WIDTH / 2) + x] = (byte) d;
                }
            }
        }
    }

    private static FilmReading read(Path film, FilmAsk ask) throws IOException {
        return FilmReading.of(film, ask.scaled(PIXEL).tethered(0.6), share -> {}, () -> false)
                .orElseThrow();
    }

    @Test
    void colouredHeadsAreFoundByDay() throws IOException {
        FilmReading film = read(film(false), FilmAsk.NOTHING);
        assertThat(film.measured().period()).isCloseTo(SPUN.period(), within(0.003));
        assertThat(film.nearest().orElseThrow().phrase().orElseThrow()).contains("triquetra");
    }

    @Test
    void twoHeadsPointedAtAreEnoughWhereABallFliesBesideThem() throws IOException {
        double time = 2;
        double[] left = pixel(at(Side.LEFT, time, true));
        double[] right = pixel(at(Side.RIGHT, time, true));
        FilmReading film =
                read(
                        film(true),
                        FilmAsk.NOTHING
                                .pointing(
                                        new HeadAt(time, left[0] + 4, left[1] - 3),
                                        new HeadAt(time, right[0] - 4, right[1] + 3))
                                .first(Side.LEFT));
        assertThat(film.measured().period()).isCloseTo(SPUN.period(), within(0.003));
        assertThat(film.nearest().orElseThrow().phrase().orElseThrow())
                .startsWith("static spin vs triquetra");
    }
}
