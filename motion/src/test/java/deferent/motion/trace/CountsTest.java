package deferent.motion.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class CountsTest {
    private static Pairing pair(Motion left, Motion right) {
        return Pairing.of(part(Side.LEFT, left), part(Side.RIGHT, right));
    }

    private static Part part(Side side, Motion motion) {
        return new Part(motion, Tether.USUAL, Place.usual(side, Plane.WALL), 1);
    }

    @Test
    void aStaticSpinCountsOnceATurn() {
        Trace trace = Trace.of(pair(Motion.staticSpin(1, 0), Motion.staticSpin(1, 0)));
        assertThat(Counts.of(trace)).containsExactly(new Count(0, "1"));
    }

    @Test
    void thePoiThatTurnsMoreOftenIsCounted() {
        Trace trace = Trace.of(pair(Motion.flower(0.3, 1, Math.PI), Motion.flower(0.6, -3, 0)));
        assertThat(Counts.of(trace)).extracting(Count::said).containsExactly("1", "2", "3");
        assertThat(Counts.of(trace).get(1).time()).isCloseTo(trace.period() / 3, within(1e-9));
    }

    @Test
    void atEveryCountTheCountedTetherPointsAsAtTheFirst() {
        Trace trace =
                Trace.of(
                        pair(Motion.flower(0.3, 1, Math.PI), Motion.flower(0.6, -3, 0))
                                .with(new Timing(0.3)));
        List<Count> counts = Counts.of(trace);
        assertThat(counts).hasSize(3);
        for (Count count : counts) {
            double apart =
                    tether(trace, Side.RIGHT, count.time()).distance(tether(trace, Side.RIGHT, 0));
            assertThat(apart).isLessThan(1e-6);
        }
    }

    private static Vector3D tether(Trace trace, Side side, double time) {
        return trace.head(side).at(time).position().subtract(trace.hand(side).at(time).position());
    }

    @Test
    void anUnevenPoiIsCountedUnevenly() {
        Motion hurried =
                Motion.staticSpin(1, 0)
                        .withSpin(
                                new Stretches(
                                        0,
                                        List.of(
                                                new Stretches.Stretch(0.75, 1, Stretches.Ease.EVEN),
                                                new Stretches.Stretch(
                                                        0.25, 1, Stretches.Ease.EVEN)),
                                        0));
        Trace trace = Trace.of(pair(hurried, Motion.staticSpin(1, 0)));
        assertThat(Counts.of(trace)).hasSize(2);
        assertThat(Counts.of(trace).get(1).time()).isCloseTo(0.75 * trace.period(), within(1e-6));
    }

    @Test
    void aPendulumIsCountedAtBothEndsOfItsSwing() {
        Trace trace = Trace.of(Phrase.parse("pendulum vs pendulum").pairing());
        List<Count> counts = Counts.of(trace);
        assertThat(counts).hasSize(2);
        for (Count count : counts) {
            assertThat(trace.head(Side.LEFT).at(count.time()).velocity().getNorm())
                    .isLessThan(1e-6);
        }
    }

    @Test
    void betweenCountsOneSaysAndAndQuarters() {
        Trace trace = Trace.of(pair(Motion.staticSpin(1, 0), Motion.flower(0.6, -2, 0)));
        assertThat(Counts.of(trace, 2)).extracting(Count::said).containsExactly("1", "&", "2", "&");
        assertThat(Counts.of(trace, 4))
                .extracting(Count::said)
                .containsExactly("1", "e", "&", "a", "2", "e", "&", "a");
        assertThat(Counts.moments(trace, 4)).isEqualTo(Counts.of(trace, 2));
        assertThatThrownBy(() -> Counts.of(trace, 3)).isInstanceOf(Refusal.class);
    }

    @Test
    void everyCycleCountsAnew() {
        Trace trace = Trace.of(pair(Motion.staticSpin(1, 0), Motion.flower(0.6, -2, 0)));
        List<Count> counts = Counts.of(trace);
        assertThat(Counts.at(trace, counts, 0).said()).isEqualTo("1");
        assertThat(Counts.at(trace, counts, 0.49 * trace.period()).said()).isEqualTo("1");
        assertThat(Counts.at(trace, counts, 0.5 * trace.period()).said()).isEqualTo("2");
        assertThat(Counts.at(trace, counts, 7 * trace.period()).said()).isEqualTo("1");
        assertThat(Counts.at(trace, counts, -0.1 * trace.period()).said()).isEqualTo("2");
    }
}
