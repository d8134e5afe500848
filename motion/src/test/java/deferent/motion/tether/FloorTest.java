package deferent.motion.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Side;
import deferent.motion.trace.Trace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FloorTest {
    private static Floor floor(Trace trace) {
        return Floor.of(trace, Side.LEFT, Cord.of(trace, Side.LEFT, Kit.USUAL));
    }

    /** Loop-the-loop, any mechanics textbook; AGM form DLMF 19.8(i). */
    @Test
    void theSlowestFullCircleAboutAStillHandIsTheLoopTheLoop() {
        assertThat(Floor.loop(Gravity.STANDARD, Gravity.STANDARD))
                .isCloseTo(4.037811640, within(5e-10));
        Floor.Limit hand = floor(Spun.staticSpin(0.8)).hand();
        assertThat(hand.reason()).isEqualTo(Floor.Reason.SLACK);
        assertThat(hand.period())
                .hasValueCloseTo(4.037811640 * Math.sqrt(0.6 / Gravity.STANDARD), within(1e-9));
        // It gives way at the top.
        assertThat(hand.phase()).hasValueCloseTo(0.25, within(1e-6));
    }

    @Test
    void atThatTempoTheHeadGoesThroughTopAndBottomAtTheTextbooksSpeeds() {
        double period = Floor.loop(0.6, Gravity.STANDARD);
        Trace trace = Spun.staticSpin(period);
        KeepTheHand keep = KeepTheHand.of(trace, Side.LEFT, Kit.USUAL);
        assertThat(keep.solutions()).hasSize(1);
        KeepTheHand.Solution loop = keep.solutions().get(0);
        assertThat(keep.tried().everyDirection()).isTrue();
        assertThat(loop.leastPullWeights()).isCloseTo(0, within(1e-6));
        assertThat(loop.greatestPull() / Kit.USUAL.headMass() / Gravity.STANDARD)
                .isCloseTo(6, within(1e-6));
        Pull pull = Pull.of(keep.in(trace, loop), Side.LEFT, Kit.USUAL);
        assertThat(pull.headSpeedLeast())
                .isCloseTo(Math.sqrt(0.6 * Gravity.STANDARD), within(1e-6));
        assertThat(pull.headSpeed()).isCloseTo(Math.sqrt(5 * 0.6 * Gravity.STANDARD), within(1e-6));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.99, 0.95})
    void aLittleFasterTheLoopIsTautAndALittleSlowerItIsNot(double share) {
        double period = Floor.loop(0.6, Gravity.STANDARD);
        assertThat(KeepTheHand.of(Spun.staticSpin(share * period), Side.LEFT, Kit.USUAL).best())
                .isPresent();
        assertThat(KeepTheHand.of(Spun.staticSpin(period / share), Side.LEFT, Kit.USUAL).best())
                .isEmpty();
    }

    /** Even turning: Lω² = g at the top, for a rod and for a light alike. */
    @Test
    void anEvenStaticSpinsIdealAndItsLightGiveWayWhereItsQuickeningIsItsWeight() {
        Floor floor = floor(Spun.staticSpin(0.8));
        double period = 2 * Math.PI * Math.sqrt(0.6 / Gravity.STANDARD);
        assertThat(floor.ideal().period()).hasValueCloseTo(period, within(1e-9));
        assertThat(floor.ideal().reason()).isEqualTo(Floor.Reason.SLACK);
        assertThat(floor.light().period()).hasValueCloseTo(period, within(1e-9));
        assertThat(floor.light().reason()).isEqualTo(Floor.Reason.FREE_FALL);
        assertThat(floor.light().phase()).hasValueCloseTo(0.25, within(1e-6));
    }

    @Test
    void atItsFloorTheLightOfATriquetraAsksForFreeFall() {
        Floor.Limit light = floor(Spun.triquetra(1.0)).light();
        double period = light.period().orElseThrow();
        assertThat(KeepTheLight.of(Spun.triquetra(0.99 * period), Side.LEFT, Kit.USUAL))
                .matches(KeepTheLight::getsRound);
        assertThat(KeepTheLight.of(Spun.triquetra(1.01 * period), Side.LEFT, Kit.USUAL))
                .matches(k -> !k.getsRound());
        KeepTheLight there = KeepTheLight.of(Spun.triquetra(period), Side.LEFT, Kit.USUAL);
        assertThat(there.freeFalls()).isNotEmpty();
        assertThat(there.possible()).isFalse();
        assertThat(there.freeFalls())
                .anySatisfy(
                        f ->
                                assertThat(f.time() / period)
                                        .isCloseTo(light.phase().orElseThrow(), within(1e-3)));
    }

    @Test
    void aTriquetrasKeptHandHasItsFloorWhereItsTautMotionGoesSlack() {
        Floor.Limit hand = floor(Spun.triquetra(1.0)).hand();
        assertThat(hand.reason()).isEqualTo(Floor.Reason.SLACK);
        double period = hand.period().orElseThrow();
        assertThat(KeepTheHand.of(Spun.triquetra(0.995 * period), Side.LEFT, Kit.USUAL).best())
                .isPresent();
        assertThat(KeepTheHand.of(Spun.triquetra(1.005 * period), Side.LEFT, Kit.USUAL).best())
                .isEmpty();
    }

    @Test
    void aLinearExtensionWouldHaveToPushAtAnyTempo() {
        Floor floor = floor(Spun.of(Motion.flower(0.6, -1, 0), 1.0));
        assertThat(floor.ideal().reason()).isEqualTo(Floor.Reason.NEVER);
        assertThat(floor.light().reason()).isEqualTo(Floor.Reason.NEVER);
    }

    @Test
    void inTheFloorPlaneAStaticSpinIsTautAtAnyTempo() {
        Floor floor = floor(Spun.of(Motion.staticSpin(1, 0), Plane.FLOOR, 1.0));
        assertThat(floor.ideal().reason()).isEqualTo(Floor.Reason.NONE);
        assertThat(floor.light().reason()).isEqualTo(Floor.Reason.NONE);
    }

    @Test
    void gravityAloneDoesAPendulumsWorkAtItsOwnTempo() {
        Trace pendulum = Spun.pendulum(1.0);
        Floor floor = floor(pendulum);
        assertThat(floor.gravityAlone()).hasValueCloseTo(pendulum.period(), within(1e-9));
        assertThat(floor.hand().reason()).isEqualTo(Floor.Reason.OWN_TEMPO);
        assertThat(floor(Spun.pendulum(2.0)).ideal().reason()).isEqualTo(Floor.Reason.NEVER);
    }

    @Test
    void inAirTheFloorsAreFoundToo() {
        Trace spin = Spun.staticSpin(0.8);
        Floor floor = Floor.of(spin, Side.LEFT, Cord.of(spin, Side.LEFT, Kit.USUAL.withAir(true)));
        // Drag acts across the cord of a still hand's circle.
        assertThat(floor.ideal().period())
                .hasValueCloseTo(2 * Math.PI * Math.sqrt(0.6 / Gravity.STANDARD), within(1e-6));
        // A still hand puts no work in, so no periodic motion is left.
        assertThat(floor.hand().reason()).isEqualTo(Floor.Reason.NEVER);
    }
}
