package deferent.film.hand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.film.light.LitSpot;
import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FreeSwingTest {
    /** A pendulum by small steps of time (leapfrog), seen at 400 pixels a metre. */
    private static List<List<LitSpot>> swing(double length, double amplitude, double seconds) {
        Random random = new Random(3);
        List<List<LitSpot>> frames = new ArrayList<>();
        double angle = amplitude;
        double pace = 0;
        int steps = 400;
        double h = 1 / 60.0 / steps;
        for (int i = 0; i < 60 * seconds; i++) {
            double x = 500 + 400 * length * Math.sin(angle) + 0.4 * random.nextGaussian();
            double y = 100 + 400 * length * Math.cos(angle) + 0.4 * random.nextGaussian();
            frames.add(List.of(new LitSpot(i / 60.0, x, y, x, y, x, y, 3, 900, 0, 0)));
            for (int k = 0; k < steps; k++) {
                pace -= h * Gravity.STANDARD / length * Math.sin(angle);
                angle += h * pace;
            }
        }
        return frames;
    }

    @Test
    void aFreeSwingTellsTheTetherAndThePixel() {
        FreeSwing swing = FreeSwing.of(swing(0.62, Math.toRadians(50), 9));
        assertThat(swing.length()).isCloseTo(0.62, within(0.004));
        assertThat(swing.amplitude()).isCloseTo(Math.toRadians(50), within(0.01));
        assertThat(swing.metres()).isCloseTo(1 / 400.0, within(0.02 / 400));
        assertThat(Math.abs(swing.length() - 0.62)).isLessThan(3 * swing.lengthError());
    }

    @Test
    void aSmallSwingTellsTheTetherBetterThanThePixel() {
        FreeSwing swing = FreeSwing.of(swing(1.1, Math.toRadians(8), 12));
        assertThat(swing.length()).isCloseTo(1.1, within(0.01));
        assertThat(swing.metresError()).isGreaterThan(swing.lengthError() / swing.length());
    }

    @Test
    void aWideSwingTakesLonger() {
        // DLMF 19.2(ii): 1.180340599 at a quarter turn to either side.
        assertThat(FreeSwing.slower(Math.PI / 2)).isCloseTo(1.180340599, within(1e-9));
    }

    @Test
    void aCircleIsNoSwing() {
        List<List<LitSpot>> frames = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            double x = 300 + 100 * Math.cos(i / 8.0);
            double y = 300 + 100 * Math.sin(i / 8.0);
            frames.add(List.of(new LitSpot(i / 60.0, x, y, x, y, x, y, 3, 900, 0, 0)));
        }
        assertThatThrownBy(() -> FreeSwing.of(frames))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("hang and swing freely");
    }
}
