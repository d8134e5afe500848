package deferent.film.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.reel.Shot;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SpotFinderTest {
    private static final int WIDTH = 240;
    private static final int HEIGHT = 160;

    private final double[] light = new double[WIDTH * HEIGHT];

    private void streak(double ax, double ay, double bx, double by, double strength) {
        int steps = 60;
        for (int k = 0; k <= steps; k++) {
            double cx = ax + (bx - ax) * k / steps;
            double cy = ay + (by - ay) * k / steps;
            for (int y = 0; y < HEIGHT; y++) {
                for (int x = 0; x < WIDTH; x++) {
                    double d = (x - cx) * (x - cx) + (y - cy) * (y - cy);
                    light[y * WIDTH + x] += strength / steps * Math.exp(-d / (2 * 3.0 * 3.0));
                }
            }
        }
    }

    private List<LitSpot> found(double noise) {
        Random random = new Random(2);
        byte[] luma = new byte[light.length];
        for (int i = 0; i < luma.length; i++) {
            double v = 18 + light[i] + noise * random.nextGaussian();
            luma[i] = (byte) Math.max(0, Math.min(255, Math.round(v)));
        }
        byte[] grey = new byte[WIDTH / 2 * HEIGHT / 2];
        Arrays.fill(grey, (byte) 128);
        return new SpotFinder().find(new Shot(1.5, WIDTH, HEIGHT, luma, grey, grey.clone()));
    }

    @Test
    void aStreakHasItsMiddleAndItsTwoEnds() {
        streak(60, 50, 110, 80, 500);
        LitSpot spot = found(2).get(0);
        assertThat(spot.x()).isCloseTo(85, within(0.3));
        assertThat(spot.y()).isCloseTo(65, within(0.3));
        assertThat(spot.length()).isCloseTo(Math.hypot(50, 30), within(4.0));
        assertThat(Math.max(spot.ax(), spot.bx())).isCloseTo(110, within(3.0));
        assertThat(spot.time()).isEqualTo(1.5);
    }

    @Test
    void aFaintStreakIsFoundBesideABrightLamp() {
        streak(200, 30, 200, 30, 900);
        streak(30, 120, 120, 120, 480);
        assertThat(found(4)).hasSize(2);
    }

    @Test
    void aDarkRoomHoldsNoLight() {
        assertThat(found(8)).isEmpty();
    }
}
