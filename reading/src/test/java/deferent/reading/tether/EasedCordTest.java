package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import org.junit.jupiter.api.Test;

/** A half-and-half flower that eases from in-spin to antispin can be spun on a cord. */
class EasedCordTest {
    private static final double RADIUS = 0.3;
    private static final double TETHER = 0.6;
    private static final double EASE = 0.125;

    private static Pairing flower(String ease) {
        return Phrase.parse(
                        "half-and-half flower hand radius 30 cm"
                                + ease
                                + " vs static spin, tempo 60")
                .pairing();
    }

    private static Pull pull(String ease) {
        return Pull.of(Trace.of(flower(ease)), Side.LEFT, Kit.USUAL);
    }

    /**
     * Independent calculation: mass times head's acceleration less its weight, along the cord, with
     * the turning's closed forms spelt out: rate 5 and −3 turns a cycle, a cycle a second, the step
     * 35x⁴ − 84x⁵ + 70x⁶ − 20x⁷ and its integral and derivative.
     */
    @Test
    void itsPullIsFiniteAndThatOfItsAcceleration() {
        double least = Double.POSITIVE_INFINITY;
        double greatest = Double.NEGATIVE_INFINITY;
        int count = 200_000;
        for (int i = 0; i < count; i++) {
            double t = (i + 0.5) / count;
            double hand = 2 * Math.PI * t;
            double fromStart = integral(t / EASE + 0.5) - integral(0.5);
            double fromHalf = integral((t - 0.5) / EASE + 0.5);
            double fromEnd = integral((t - 1) / EASE + 0.5);
            // At the start half of the change from -3 to 5 is made.
            double turned = -3 * t + 8 * EASE * (fromStart + 35 / 512.0 - fromHalf + fromEnd);
            double rate =
                    -3
                            + 8
                                    * (step(t / EASE + 0.5)
                                            - step((t - 0.5) / EASE + 0.5)
                                            + step((t - 1) / EASE + 0.5));
            double quickening =
                    8
                            / EASE
                            * (bump(t / EASE + 0.5)
                                    - bump((t - 0.5) / EASE + 0.5)
                                    + bump((t - 1) / EASE + 0.5));
            double poi = 2 * Math.PI * turned;
            double ax =
                    -RADIUS * 4 * Math.PI * Math.PI * Math.cos(hand)
                            - TETHER * Math.pow(2 * Math.PI * rate, 2) * Math.cos(poi)
                            - TETHER * 2 * Math.PI * quickening * Math.sin(poi);
            double ay =
                    -RADIUS * 4 * Math.PI * Math.PI * Math.sin(hand)
                            - TETHER * Math.pow(2 * Math.PI * rate, 2) * Math.sin(poi)
                            + TETHER * 2 * Math.PI * quickening * Math.cos(poi);
            double pull =
                    -(ax * Math.cos(poi) + (ay + Gravity.STANDARD) * Math.sin(poi))
                            / Gravity.STANDARD;
            least = Math.min(least, pull);
            greatest = Math.max(greatest, pull);
        }
        Pull eased = pull("");
        assertThat(eased.jerks()).isEmpty();
        assertThat(eased.greatestWeights()).isCloseTo(greatest, within(1e-6 * greatest));
        assertThat(eased.leastWeights()).isCloseTo(least, within(1e-6 * greatest));
        assertThat(pull(" ease 0").jerks()).hasSize(2);
    }

    private static double clipped(double x) {
        return Math.max(0, Math.min(1, x));
    }

    private static double step(double at) {
        double x = clipped(at);
        return x * x * x * x * (35 + x * (-84 + x * (70 - 20 * x)));
    }

    private static double bump(double at) {
        double x = clipped(at);
        return 140 * Math.pow(x * (1 - x), 3);
    }

    private static double integral(double at) {
        double x = clipped(at);
        return Math.pow(x, 5) * (7 + x * (-14 + x * (10 - 2.5 * x))) + Math.max(0, at - 1);
    }

    @Test
    void theHandThatKeepsItsFigureNeitherJumpsNorRuns() {
        Trace trace = Trace.of(flower(""));
        KeepTheFigure kept = KeepTheFigure.of(trace, Side.LEFT, Kit.USUAL);
        assertThat(kept.possible()).isTrue();
        // About every edge and middle of its windows.
        for (double t : new double[] {0, 0.0625, 0.4375, 0.5, 0.5625, 0.9375}) {
            var before = kept.hand().at(t + 1 - 1e-7).velocity();
            var after = kept.hand().at(t + 1 + 1e-7).velocity();
            assertThat(before.distance(after)).as("at " + t).isLessThan(1e-3);
        }
        assertThat(kept.freeFalls()).isEmpty();
    }

    @Test
    void drawnIdeallyItStillTakesAnInfiniteForce() {
        Trace trace = Trace.of(flower(" ease 0"));
        assertThatThrownBy(() -> KeepTheFigure.of(trace, Side.LEFT, Kit.USUAL))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("infinite force at 0.000 s")
                .hasMessageContaining("an ease above 0");
    }
}
