package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Plane;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SlowestTempoTest {
    private static SlowestTempo slowest(Trace trace) {
        return SlowestTempo.of(trace, Side.LEFT, Cord.of(trace, Side.LEFT, Kit.USUAL));
    }

    /** Loop-the-loop, any mechanics textbook; AGM form DLMF 19.8(i). */
    @Test
    void theSlowestFullCircleAboutAStillHandIsTheLoopTheLoop() {
        assertThat(SlowestTempo.loop(Gravity.STANDARD, Gravity.STANDARD))
                .isCloseTo(4.037811640, within(5e-10));
        SlowestTempo.Limit hand = slowest(Spun.staticSpin(0.8)).handPathKept();
        assertThat(hand.reason()).isEqualTo(SlowestTempo.Reason.SLACK);
        assertThat(hand.period())
                .hasValueCloseTo(4.037811640 * Math.sqrt(0.6 / Gravity.STANDARD), within(1e-9));
        // It gives way at the top.
        assertThat(hand.phase()).hasValueCloseTo(0.25, within(1e-6));
    }

    @Test
    void atThatTempoTheHeadGoesThroughTopAndBottomAtTheTextbooksSpeeds() {
        double period = SlowestTempo.loop(0.6, Gravity.STANDARD);
        Trace trace = Spun.staticSpin(period);
        KeepTheHandPath keep = KeepTheHandPath.of(trace, Side.LEFT, Kit.USUAL);
        assertThat(keep.solutions()).hasSize(1);
        KeepTheHandPath.Solution loop = keep.solutions().get(0);
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
        double period = SlowestTempo.loop(0.6, Gravity.STANDARD);
        assertThat(KeepTheHandPath.of(Spun.staticSpin(share * period), Side.LEFT, Kit.USUAL).best())
                .isPresent();
        assertThat(KeepTheHandPath.of(Spun.staticSpin(period / share), Side.LEFT, Kit.USUAL).best())
                .isEmpty();
    }

    /** Even turning: Lω² = g at the top, for a rod and for a figure alike. */
    @Test
    void anEvenStaticSpinsIdealAndItsFigureGiveWayWhereItsQuickeningIsItsWeight() {
        SlowestTempo slowest = slowest(Spun.staticSpin(0.8));
        double period = 2 * Math.PI * Math.sqrt(0.6 / Gravity.STANDARD);
        assertThat(slowest.ideal().period()).hasValueCloseTo(period, within(1e-9));
        assertThat(slowest.ideal().reason()).isEqualTo(SlowestTempo.Reason.SLACK);
        assertThat(slowest.figureKept().period()).hasValueCloseTo(period, within(1e-9));
        assertThat(slowest.figureKept().reason()).isEqualTo(SlowestTempo.Reason.FREE_FALL);
        assertThat(slowest.figureKept().phase()).hasValueCloseTo(0.25, within(1e-6));
    }

    @Test
    void atItsSlowestTheFigureOfATriquetraAsksForFreeFall() {
        SlowestTempo.Limit figure = slowest(Spun.triquetra(1.0)).figureKept();
        double period = figure.period().orElseThrow();
        assertThat(KeepTheFigure.of(Spun.triquetra(0.99 * period), Side.LEFT, Kit.USUAL))
                .matches(KeepTheFigure::getsRound);
        assertThat(KeepTheFigure.of(Spun.triquetra(1.01 * period), Side.LEFT, Kit.USUAL))
                .matches(k -> !k.getsRound());
        KeepTheFigure there = KeepTheFigure.of(Spun.triquetra(period), Side.LEFT, Kit.USUAL);
        assertThat(there.freeFalls()).isNotEmpty();
        assertThat(there.possible()).isFalse();
        assertThat(there.freeFalls())
                .anySatisfy(
                        f ->
                                assertThat(f.time() / period)
                                        .isCloseTo(figure.phase().orElseThrow(), within(1e-3)));
    }

    /** Its acceleration leaves straight down by less than a thousandth while it passes a weight. */
    @Test
    void aFigureThatOnlyGrazesFreeFallIsLostThereToo() {
        String stalling =
                "arc hand radius 1.45 tether stretches 0.25 of -1.75 turns then 0.75 of 2.75 turns"
                        + " stalling ease 0 tether 29.9 cm vs static spin, tempo ";
        Trace ideal = Trace.of(Phrase.parse(stalling + 30).pairing());
        double tempo = slowest(ideal).figureKept().tempo().orElseThrow();
        assertThat(tempo).isBetween(36.0, 37.0);
        assertThat(figureKept(stalling + 1.003 * tempo).freeFalls()).isEmpty();
        assertThat(figureKept(stalling + 0.997 * tempo).freeFalls()).isNotEmpty();
        assertThat(figureKept(stalling + 30).freeFalls()).isNotEmpty();
    }

    private static KeepTheFigure figureKept(String phrase) {
        return KeepTheFigure.of(Trace.of(Phrase.parse(phrase).pairing()), Side.LEFT, Kit.USUAL);
    }

    @Test
    void aTriquetrasKeptHandPathHasItsSlowestTempoWhereItsTautMotionGoesSlack() {
        SlowestTempo.Limit hand = slowest(Spun.triquetra(1.0)).handPathKept();
        assertThat(hand.reason()).isEqualTo(SlowestTempo.Reason.SLACK);
        double period = hand.period().orElseThrow();
        assertThat(KeepTheHandPath.of(Spun.triquetra(0.995 * period), Side.LEFT, Kit.USUAL).best())
                .isPresent();
        assertThat(KeepTheHandPath.of(Spun.triquetra(1.005 * period), Side.LEFT, Kit.USUAL).best())
                .isEmpty();
    }

    @Test
    void aLinearExtensionWouldHaveToPushAtAnyTempo() {
        SlowestTempo slowest = slowest(Spun.of(Motion.flower(0.6, -1, 0), 1.0));
        assertThat(slowest.ideal().reason()).isEqualTo(SlowestTempo.Reason.NEVER);
        assertThat(slowest.figureKept().reason()).isEqualTo(SlowestTempo.Reason.NEVER);
    }

    @Test
    void inTheFloorPlaneAStaticSpinIsTautAtAnyTempo() {
        SlowestTempo slowest = slowest(Spun.of(Motion.staticSpin(1, 0), Plane.FLOOR, 1.0));
        assertThat(slowest.ideal().reason()).isEqualTo(SlowestTempo.Reason.NONE);
        assertThat(slowest.figureKept().reason()).isEqualTo(SlowestTempo.Reason.NONE);
    }

    @Test
    void gravityAloneDoesAPendulumsWorkAtItsOwnTempo() {
        Trace pendulum = Spun.pendulum(1.0);
        SlowestTempo slowest = slowest(pendulum);
        assertThat(slowest.gravityAlone()).hasValueCloseTo(pendulum.period(), within(1e-9));
        assertThat(slowest.handPathKept().reason()).isEqualTo(SlowestTempo.Reason.OWN_TEMPO);
        assertThat(slowest(Spun.pendulum(2.0)).ideal().reason())
                .isEqualTo(SlowestTempo.Reason.NEVER);
    }

    @Test
    void inAirTheSlowestTemposAreFoundToo() {
        Trace spin = Spun.staticSpin(0.8);
        SlowestTempo slowest =
                SlowestTempo.of(spin, Side.LEFT, Cord.of(spin, Side.LEFT, Kit.USUAL.withAir(true)));
        // Drag acts across the cord of a still hand's circle.
        assertThat(slowest.ideal().period())
                .hasValueCloseTo(2 * Math.PI * Math.sqrt(0.6 / Gravity.STANDARD), within(1e-6));
        // A still hand puts no work in, so no periodic motion is left.
        assertThat(slowest.handPathKept().reason()).isEqualTo(SlowestTempo.Reason.NEVER);
    }

    /**
     * A big head in air: what the fastest tempo begins with ends long before the tempo spun at, at
     * which a motion near the ideal is found all the same.
     */
    @Test
    void whereNothingComesDownSoFarWhatIsSpunHasLimitsOfItsOwn() {
        Kit kit = new Kit(0.2, 0.15332677822911878, 0, true);
        Trace ideal =
                Trace.of(
                        Phrase.parse("isolation vs extension hand start -57.4°, tempo 129.7")
                                .pairing());
        Cord cord = Cord.of(ideal, Side.RIGHT, kit);
        SlowestTempo alone = SlowestTempo.of(ideal, Side.RIGHT, cord);
        KeepTheHandPath searched = KeepTheHandPath.of(ideal, Side.RIGHT, cord);
        assertThat(alone.handPathKept().met(129.7)).isFalse();
        assertThat(searched.best()).isPresent();
        SlowestTempo.Agreed agreed = alone.agreed(ideal, searched);
        assertThat(agreed.slowest().handPathKept().met(129.7)).isTrue();
        assertThat(agreed.handPathKept()).isEqualTo(searched);
        assertThat(agreed.slowest().figureKept()).isEqualTo(alone.figureKept());
        // At its own slowest it is still found, and a little slower it is not.
        double slowest = agreed.slowest().handPathKept().tempo().orElseThrow();
        assertThat(at(slowest * 1.01, kit).best()).isPresent();
        assertThat(at(slowest * 0.97, kit).best()).isEmpty();
    }

    private static KeepTheHandPath at(double tempo, Kit kit) {
        return KeepTheHandPath.of(
                Trace.of(
                        Phrase.parse("isolation vs extension hand start -57.4°, tempo " + tempo)
                                .pairing()),
                Side.RIGHT,
                kit);
    }
}
