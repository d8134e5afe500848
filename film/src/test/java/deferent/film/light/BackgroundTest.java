package deferent.film.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.reel.Shot;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class BackgroundTest {
    private static Shot day(double x) {
        byte[] luma = new byte[120 * 80];
        for (int i = 0; i < luma.length; i++) {
            // A bright wall with stripes, and a dark bob before it.
            int column = i % 120;
            int row = i / 120;
            boolean bob = Math.hypot(column - x, row - 40) < 6;
            luma[i] = (byte) (bob ? 40 : 150 + (column / 10 % 2 == 0 ? 0 : 60));
        }
        return new Shot(x, 120, 80, luma, new byte[60 * 40], new byte[60 * 40]);
    }

    @Test
    void aDarkBobByDayIsFoundBeforeABrightWall() {
        List<Shot> samples = new ArrayList<>();
        for (int x = 15; x < 105; x += 15) {
            samples.add(day(x));
        }
        Background background = Background.of(samples);
        List<LitSpot> spots =
                SpotFinder.ofChanges().find(background.before(day(63), Background.By.ANY));
        assertThat(spots.get(0).x()).isCloseTo(63, within(1.0));
        assertThat(spots.get(0).y()).isCloseTo(40, within(0.5));
        assertThat(new SpotFinder().find(day(63))).noneMatch(s -> Math.abs(s.x() - 63) < 3);
    }
}
