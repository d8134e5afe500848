package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Trace;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a cord's own mass does to the hand that keeps a figure. */
class HeavyDirectionTest {
    private static final Kit HEAVY = new Kit(0.12, 0.07, 0.1, false);

    /**
     * For small swings to either side of a steady pull b₀ the equation is linear, δθ″ = b₀(θ −
     * θ_b), so that the cord swings b₀/(b₀ + δω²) as far as its pull does.
     */
    @ParameterizedTest
    @CsvSource({"1, 0.02", "3, 0.02", "5, 0.3"})
    void aSwayingPullIsFollowedByLessTheQuickerItSways(int sways, double delta) {
        double omega = 2 * Math.PI * sways;
        double sway = 1e-5;
        Smooth direction =
                HeavyDirection.of(
                                (time, last) ->
                                        new Vector3D(10 * sway * Math.cos(omega * time), 10, 0),
                                delta,
                                new double[] {0, 1},
                                8,
                                Optional.empty())
                        .orElseThrow();
        double[] n = new double[9];
        for (int i = 0; i < 40; i++) {
            double time = i / 40.0;
            direction.at(time, false, n);
            double theta = sway * Math.cos(omega * time) * 10 / (10 + delta * omega * omega);
            assertThat(n[0]).isCloseTo(theta, within(1e-6 * sway));
            assertThat(n[6]).isCloseTo(-omega * omega * theta, within(1e-6 * omega * omega * sway));
        }
    }

    /**
     * Differential flatness (Sreenath, Lee and Kumar, CDC 2013), here of a cord with mass:
     * simulated forward from that hand path, the head draws its figure again.
     */
    @ParameterizedTest
    @CsvSource({
        "triquetra, 60",
        "isolation, 90",
        "'triquetra, tip 10°', 60",
        "extension wheel, 120",
        "CAP, 60",
        "cat-eye hand radius 50 cm, 100"
    })
    void theHandThatKeepsAFigureWithAHeavyCordGivesItBack(String motion, double tempo) {
        Trace ideal = Trace.of(Phrase.parse(motion + " vs static spin, tempo " + tempo).pairing());
        KeepTheFigure keep = KeepTheFigure.of(ideal, Side.LEFT, HEAVY);
        assertThat(keep.mismatch()).isLessThan(1e-6);
        Orbit orbit = keep.orbit(1200);
        Course head = Following.cycle(orbit.table(), keep.cord(), orbit.start());
        for (int i = 0; i < 120; i++) {
            double time = ideal.interval().start() + ideal.period() * i / 120;
            Vector3D meant = ideal.head(Side.LEFT).position(time);
            assertThat(keep.hand().position(time).distance(meant))
                    .isCloseTo(keep.cord().length(), within(1e-7));
            assertThat(head.position(time).distance(meant)).isLessThan(1e-4);
        }
        assertThat(keep.hand().position(0).distance(light(ideal).position(0)))
                .as("with its own mass the cord asks for another hand")
                .isGreaterThan(1e-4);
    }

    private static Course light(Trace ideal) {
        return KeepTheFigure.of(ideal, Side.LEFT, Kit.USUAL).hand();
    }

    @Test
    void aHeavyCordThatWouldHaveToPushIsRefusedWithWhatWouldBeRight() {
        Trace ideal =
                Trace.of(
                        Phrase.parse(
                                        "vertical linear extension vs stall amplitude 79° tether 120 cm tip 10° cycles 2, tempo 60")
                                .pairing());
        assertThatThrownBy(() -> KeepTheFigure.of(ideal, Side.LEFT, HEAVY))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("heavy a cord")
                .hasMessageContaining("lighter cord");
    }
}
