package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.reading.body.Pass;
import deferent.reading.body.Pass.Kind;
import deferent.reading.body.Pass.Thing;
import deferent.reading.body.Pass.Way;
import deferent.reading.body.Passes;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TellPassesTest {
    // Two beats in a cycle of one second: "1" at 0 s and "2" at 0.5 s.
    private static final Pairing TWO =
            Phrase.parse("triquetra vs static spin, tether 40 cm").pairing();

    private static Thing of(Side side, Kind kind) {
        return new Thing(kind, Optional.of(side));
    }

    private static final Thing LEFT_POI = of(Side.LEFT, Kind.POI);
    private static final Thing RIGHT_POI = of(Side.RIGHT, Kind.POI);
    private static final Thing LEFT_FOREARM = of(Side.LEFT, Kind.FOREARM);
    private static final Thing RIGHT_FOREARM = of(Side.RIGHT, Kind.FOREARM);
    private static final Thing RIGHT_UPPER = of(Side.RIGHT, Kind.UPPER_ARM);
    private static final Thing TRUNK = new Thing(Kind.TRUNK, Optional.empty());
    private static final Thing HEAD = new Thing(Kind.HEAD, Optional.empty());

    private static Pass pass(Thing one, Way way, Thing other, double from, double to) {
        return new Pass(one, other, way, new Interval(from, to), (from + to) / 2 % 1, 0.1);
    }

    private static List<String> told(Pass... passes) {
        return TellPasses.of(TWO, new Passes(List.of(passes), true, true)).stream()
                .map(Told::text)
                .toList();
    }

    @Test
    void aPassIsToldByItsCount() {
        assertThat(TWO.period()).isEqualTo(1.0);
        assertThat(told(pass(LEFT_POI, Way.BEFORE, RIGHT_FOREARM, 0.45, 0.55)))
                .containsExactly("On 2 the left poi passes before the right forearm.");
        assertThat(told(pass(LEFT_POI, Way.BEFORE, RIGHT_FOREARM, 0.95, 1.05)))
                .containsExactly("On 1 the left poi passes before the right forearm.");
    }

    @Test
    void anArmIsOneWhereBothItsHalvesArePassedInTurn() {
        assertThat(
                        told(
                                pass(LEFT_POI, Way.BEFORE, RIGHT_FOREARM, 0.70, 0.75),
                                pass(LEFT_POI, Way.BEFORE, RIGHT_UPPER, 0.75, 0.80)))
                .containsExactly("Between 2 and 1 the left poi passes before the right arm.");
    }

    @Test
    void whatComesAgainTheOtherWayRoundIsToldOnce() {
        assertThat(
                        told(
                                pass(LEFT_FOREARM, Way.OVER, RIGHT_FOREARM, 0.20, 0.30),
                                pass(RIGHT_FOREARM, Way.OVER, LEFT_FOREARM, 0.70, 0.80)))
                .containsExactly(
                        "Between 1 and 2 the left forearm crosses over the right, and half a cycle later the other way round.");
        assertThat(
                        told(
                                pass(LEFT_POI, Way.BEFORE, RIGHT_FOREARM, 0.20, 0.30),
                                pass(RIGHT_POI, Way.BEFORE, LEFT_FOREARM, 0.20, 0.30)))
                .containsExactly("Between 1 and 2 each poi passes before the other forearm.");
        assertThat(
                        told(
                                pass(LEFT_FOREARM, Way.OVER, RIGHT_FOREARM, 0.20, 0.30),
                                pass(RIGHT_FOREARM, Way.OVER, LEFT_FOREARM, 0.45, 0.55)))
                .hasSize(2);
    }

    @Test
    void whatStaysBeforeTheBodyGoesWithoutSaying() {
        assertThat(told(pass(LEFT_POI, Way.BEFORE, TRUNK, 0, 1))).isEmpty();
        assertThat(told(pass(TRUNK, Way.BEFORE, LEFT_POI, 0.45, 0.55)))
                .containsExactly("On 2 the left poi passes behind your trunk.");
        assertThat(told(pass(LEFT_POI, Way.OVER, HEAD, 0.45, 0.55)))
                .containsExactly("On 2 the left poi passes over your head.");
    }

    @Test
    void cordsAreToldWhereNowTheOneIsInFrontAndNowTheOther() {
        Pass left = pass(LEFT_POI, Way.BEFORE, RIGHT_POI, 0.20, 0.30);
        assertThat(told(left)).isEmpty();
        assertThat(told(left, pass(RIGHT_POI, Way.BEFORE, LEFT_POI, 0.45, 0.55)))
                .containsExactly(
                        "Between 1 and 2 the left poi passes before the right.",
                        "On 2 the right poi passes before the left.");
    }

    @Test
    void aLongSpellIsToldByItsCounts() {
        assertThat(told(pass(LEFT_POI, Way.BEFORE, RIGHT_FOREARM, 0.02, 0.55)))
                .containsExactly("From 1 to 2 the left poi passes before the right forearm.");
        assertThat(told(pass(LEFT_POI, Way.BEFORE, RIGHT_FOREARM, 0, 1)))
                .containsExactly("All the time the left poi is before the right forearm.");
    }

    @Test
    void aTouchIsNoPass() {
        assertThat(told(pass(LEFT_POI, Way.BEFORE, RIGHT_FOREARM, 0.500, 0.505))).isEmpty();
    }
}
