package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import java.util.List;
import org.junit.jupiter.api.Test;

class StripTest {

    @Test
    void aPoiThatTurnsTwiceACycleHasTwoBeats() {
        Trace trace = Trace.of(Phrase.parse("static spin vs triquetra").pairing());
        assertThat(times(trace, Strip.Kind.BEAT, Side.LEFT)).containsExactly(0.0);
        List<Double> two = times(trace, Strip.Kind.BEAT, Side.RIGHT);
        assertThat(two).hasSize(2);
        assertThat(two.get(1)).isCloseTo(0.5, within(1e-6));
    }

    @Test
    void aTriquetraHasThreePetalsAThirdOfTheCycleApart() {
        Trace trace = Trace.of(Phrase.parse("static spin vs triquetra").pairing());
        List<Double> petals = times(trace, Strip.Kind.PETAL, Side.RIGHT);
        assertThat(petals).hasSize(3);
        assertThat(petals.get(1) - petals.get(0)).isCloseTo(1 / 3.0, within(1e-6));
        assertThat(times(trace, Strip.Kind.PETAL, Side.LEFT)).isEmpty();
    }

    @Test
    void inSplitTimePetalsAndBeatsComeHalfACycleEarlier() {
        Trace trace = Trace.of(Phrase.parse("static spin vs triquetra, split time").pairing());
        List<Double> petals = times(trace, Strip.Kind.PETAL, Side.RIGHT);
        assertThat(petals).hasSize(3);
        assertThat(petals.get(0)).isCloseTo(1 / 6.0, within(1e-6));
        assertThat(times(trace, Strip.Kind.BEAT, Side.RIGHT)).contains(0.5);
    }

    @Test
    void aPendulumStallsAtBothEndsAndBeatsNever() {
        Trace trace = Trace.of(Phrase.parse("pendulum vs CAP").pairing());
        List<Double> stalls = times(trace, Strip.Kind.STALL, Side.LEFT);
        assertThat(stalls).hasSize(2);
        assertThat(stalls.get(1) - stalls.get(0)).isCloseTo(trace.period() / 2, within(1e-3));
        assertThat(times(trace, Strip.Kind.BEAT, Side.LEFT)).isEmpty();
    }

    @Test
    void aSpinThatNeverStopsHasNoStall() {
        Trace trace = Trace.of(Phrase.parse("isolation vs extension").pairing());
        assertThat(times(trace, Strip.Kind.STALL, Side.LEFT)).isEmpty();
        assertThat(times(trace, Strip.Kind.STALL, Side.RIGHT)).isEmpty();
    }

    @Test
    void theGapIsTheDistanceInThePlaneAndForgetsTheDepth() {
        Trace trace = Trace.of(Phrase.parse("isolation vs extension").pairing());
        // Head 0.3 m one way from the centre, hand 0.6 m the other way: always 0.9 m.
        for (double gap : Strip.gap(trace, Side.LEFT)) {
            assertThat(gap).isCloseTo(0.9, within(1e-9));
        }
    }

    private static List<Double> times(Trace trace, Strip.Kind kind, Side side) {
        return Strip.marks(trace).stream()
                .filter(m -> m.kind() == kind && m.side() == side)
                .map(Strip.Mark::time)
                .toList();
    }
}
