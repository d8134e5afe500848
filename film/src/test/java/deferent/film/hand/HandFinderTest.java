package deferent.film.hand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.film.cycle.Wave;
import deferent.motion.pairing.Gravity;
import deferent.reading.tether.Kit;
import java.util.List;
import org.hipparchus.linear.MatrixUtils;
import org.junit.jupiter.api.Test;

class HandFinderTest {
    private static Wave circle(double period, double radius) {
        return new Wave(
                period,
                new double[] {0, radius, 0},
                new double[] {0, 0, radius},
                MatrixUtils.createRealIdentityMatrix(3).scalarMultiply(1e-8),
                0.001);
    }

    @Test
    void theHandIsATetherAwayWhereThePullPoints() {
        double rate = 2 * Math.PI / 0.8;
        for (HandSight sight : HandFinder.of(circle(0.8, 0.6), 0.6, Kit.USUAL, 24)) {
            double a = rate * sight.time();
            double px = -rate * rate * 0.6 * Math.cos(a);
            double py = -rate * rate * 0.6 * Math.sin(a) + Gravity.STANDARD;
            double pull = Math.hypot(px, py);
            assertThat(sight.x()).isCloseTo(0.6 * Math.cos(a) + 0.6 * px / pull, within(1e-9));
            assertThat(sight.y()).isCloseTo(0.6 * Math.sin(a) + 0.6 * py / pull, within(1e-9));
            assertThat(sight.pull()).isCloseTo(pull / Gravity.STANDARD, within(1e-9));
        }
    }

    @Test
    void noHandIsClaimedWhereTheHeadFallsFreely() {
        // At the top of this circle the head falls as a thrown one.
        double period = 2 * Math.PI * Math.sqrt(0.6 / Gravity.STANDARD);
        List<HandSight> sights = HandFinder.of(circle(period, 0.6), 0.6, Kit.USUAL, 72);
        assertThat(sights).isNotEmpty().hasSizeLessThan(72);
        assertThat(sights).allMatch(s -> s.pull() >= HandFinder.SLACK);
        assertThat(sights).noneMatch(s -> Math.abs(s.time() / period - 0.25) < 0.02);
    }

    @Test
    void aDoubtfulScaleMakesASlowHandLessSureThanAQuickOne() {
        Doubt doubt = new Doubt(0.05, 0, 0);
        double slow = most(circle(1.3, 0.6), doubt);
        double quick = most(circle(0.5, 0.6), doubt);
        assertThat(slow).isGreaterThan(1.5 * quick);
    }

    private static double most(Wave wave, Doubt doubt) {
        return HandFinder.of(wave, 0.6, Kit.USUAL, 36, doubt).stream()
                .mapToDouble(HandSight::error)
                .max()
                .orElse(0);
    }
}
