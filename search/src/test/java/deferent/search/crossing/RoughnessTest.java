package deferent.search.crossing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Gravity;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RoughnessTest {
    private static final double BLEND = 0.25;

    @Test
    void aStepOfSpeedAloneTakesAnEvenPush() {
        assertThat(Roughness.least(0, 1, BLEND))
                .isCloseTo(1 / BLEND / Gravity.STANDARD, within(1e-12));
        assertThat(Roughness.leastPeak(0, 1, BLEND))
                .isCloseTo(1 / BLEND / Gravity.STANDARD, within(1e-12));
    }

    // A push one way and back: ½·a·(T/2)² twice is Δp, so a = 4Δp/T².
    @Test
    void aStepOfPlaceAloneTakesAPushThereAndOneBack() {
        assertThat(Roughness.leastPeak(0.08, 0, BLEND))
                .isCloseTo(4 * 0.08 / (BLEND * BLEND) / Gravity.STANDARD, within(1e-12));
        assertThat(Roughness.least(0.08, 0, BLEND))
                .isCloseTo(
                        Math.sqrt(12) * 0.08 / (BLEND * BLEND) / Gravity.STANDARD, within(1e-12));
    }

    // The bound's own push: +U up to s = Δv/2U from the middle, −U after it; both conditions hold.
    @Test
    void theLeastPeakIsReachedByAPushThatTurnsRoundOnce() {
        double dp = 0.05;
        double dv = 0.7;
        double u = Roughness.leastPeak(dp, dv, BLEND) * Gravity.STANDARD;
        double s = dv / (2 * u);
        double half = BLEND / 2;
        assertThat(Math.abs(s)).isLessThan(half);
        assertThat(u * (s + half) - u * (half - s)).isCloseTo(dv, within(1e-12));
        assertThat(u * (half * half - s * s)).isCloseTo(dp, within(1e-12));
    }

    // Any push that meets both conditions is the least one plus one that meets neither; many are
    // tried, in two dimensions, with Δp and Δv at any angle.
    @Test
    void noPushThatArrivesIsGentlerThanTheLeast() {
        Random random = new Random(7);
        int steps = 400;
        double dt = BLEND / steps;
        for (int trial = 0; trial < 200; trial++) {
            double[] dp = {random.nextGaussian() * 0.05, random.nextGaussian() * 0.05};
            double[] dv = {random.nextGaussian(), random.nextGaussian()};
            double square = 0;
            for (int axis = 0; axis < 2; axis++) {
                double[] u = new double[steps];
                double sum = 0;
                double first = 0;
                double second = 0;
                for (int i = 0; i < steps; i++) {
                    double t = (i + 0.5) * dt - BLEND / 2;
                    u[i] = random.nextGaussian() * (trial % 4);
                    sum += u[i] * dt;
                    first += t * u[i] * dt;
                    second += t * t * dt;
                }
                // Corrected to arrive exactly.
                double even = (dv[axis] - sum) / BLEND;
                double slope = (-dp[axis] - first) / second;
                for (int i = 0; i < steps; i++) {
                    double t = (i + 0.5) * dt - BLEND / 2;
                    double all = u[i] + even + slope * t;
                    square += all * all * dt;
                }
            }
            double rms = Math.sqrt(square / BLEND) / Gravity.STANDARD;
            double least =
                    Roughness.least(Math.hypot(dp[0], dp[1]), Math.hypot(dv[0], dv[1]), BLEND);
            assertThat(rms).isGreaterThanOrEqualTo(least * (1 - 1e-4));
            if (trial % 4 == 0) {
                assertThat(rms).isCloseTo(least, within(1e-4 * least));
            }
        }
    }
}
