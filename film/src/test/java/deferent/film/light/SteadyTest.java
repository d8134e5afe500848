package deferent.film.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SteadyTest {
    private static List<List<LitSpot>> shaken(boolean lamp) {
        List<List<LitSpot>> frames = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            double t = i / 60.0;
            double shake = 4 * Math.sin(9 * t);
            List<LitSpot> spots = new ArrayList<>();
            spots.add(spot(t, 400 + 200 * Math.cos(6 * t) + shake, 300 + 200 * Math.sin(6 * t)));
            if (lamp) {
                spots.add(spot(t, 50 + shake, 60));
            }
            frames.add(spots);
        }
        return frames;
    }

    private static LitSpot spot(double time, double x, double y) {
        return new LitSpot(time, x, y, x, y, x, y, 3, 5000, 0, 0);
    }

    @Test
    void aLampTellsTheShakeAndGoes() {
        Steady steady = Steady.of(shaken(true));
        assertThat(steady.shake()).hasValueCloseTo(4 / Math.sqrt(2), within(0.3));
        for (List<LitSpot> spots : steady.frames()) {
            LitSpot head = spots.get(0);
            assertThat(spots).hasSize(1);
            assertThat(head.x()).isCloseTo(400 + 200 * Math.cos(6 * head.time()), within(0.5));
        }
    }

    @Test
    void withoutALampShakeIsNotClaimed() {
        List<List<LitSpot>> frames = shaken(false);
        Steady steady = Steady.of(frames);
        assertThat(steady.shake()).isEmpty();
        assertThat(steady.frames()).isEqualTo(frames);
    }
}
