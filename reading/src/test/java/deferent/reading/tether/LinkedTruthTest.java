package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Turns;
import deferent.motion.trace.Trace;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class LinkedTruthTest {
    private static Trace staticSpinAnd(Motion rider, double tempo) {
        return Spun.pair(Motion.staticSpin(1, 0), rider, OptionalDouble.of(tempo));
    }

    @Test
    void aStaticSpinAndATriquetraLinkAsPicturesButNotAsCords() {
        LinkedTruth truth =
                LinkedTruth.of(staticSpinAnd(Motion.flower(0.6, -2, 0), 60), Side.LEFT, Kit.USUAL);
        assertThat(truth.ideal().greatest()).isLessThan(1e-9);
        // The rider's hand strays as it does alone.
        assertThat(truth.figureKept().greatest()).isCloseTo(0.215, within(5e-4));
        assertThat(truth.figureKept().fromPathMean()).isCloseTo(0.073, within(5e-4));
        assertThat(truth.verdict()).isEqualTo(LinkedTruth.Verdict.RIDER_GIVES);
        assertThat(truth.riding()).hasValueSatisfying(s -> assertThat(s.pulls()).isTrue());
        // At a second a turn the still hand's loop is just too slow.
        assertThat(truth.carriersHand()).isEmpty();
    }

    @Test
    void aStaticSpinAndAnExtensionKeepTheirTieBetterTheFasterTheySpin() {
        double last = Double.POSITIVE_INFINITY;
        for (double tempo : new double[] {60, 90, 120, 180}) {
            LinkedTruth truth =
                    LinkedTruth.of(
                            staticSpinAnd(Motion.flower(0.6, 1, 0), tempo), Side.LEFT, Kit.USUAL);
            assertThat(truth.figureKept().greatest()).isLessThan(last);
            last = truth.figureKept().greatest();
            assertThat(truth.verdict())
                    .isEqualTo(
                            tempo > 60
                                    ? LinkedTruth.Verdict.SURVIVES
                                    : LinkedTruth.Verdict.SURVIVES_AS_SHAPE);
        }
    }

    @Test
    void anExtensionAndATriquetraWereNotLinkedInTheFirstPlace() {
        Trace trace =
                Spun.pair(
                        Motion.flower(0.6, 1, 0), Motion.flower(0.6, -2, 0), OptionalDouble.of(60));
        assertThat(LinkedTruth.of(trace, Side.LEFT, Kit.USUAL).verdict())
                .isEqualTo(LinkedTruth.Verdict.NOT_LINKED);
    }

    @Test
    void aTruePendulumKeepsHandPathAndFigureAtOnce() {
        Trace trace =
                Spun.pair(
                        Motion.pendulum(Math.toRadians(80)),
                        new Motion(new Riding(), new Turns(2, 0)),
                        OptionalDouble.empty());
        LinkedTruth truth = LinkedTruth.of(trace, Side.LEFT, Kit.USUAL);
        assertThat(truth.ideal().greatest()).isLessThan(1e-9);
        assertThat(truth.carriersHand())
                .hasValueSatisfying(
                        away ->
                                assertThat(away.greatest())
                                        .isCloseTo(truth.figureKept().greatest(), within(1e-6)));
    }

    /** Common practice, no source. */
    @Test
    void aPendulumVersionOfALinkedPairingCanBeDoneSlowerThanTheStaticSpinVersion() {
        Trace swinging =
                Spun.pair(
                        Motion.pendulum(Math.PI / 2),
                        new Motion(new Riding(), new Turns(2, 0)),
                        OptionalDouble.empty());
        KeepTheHandPath carrier = KeepTheHandPath.of(swinging, Side.LEFT, Kit.USUAL);
        KeepTheHandPath rider = KeepTheHandPath.of(swinging, Side.RIGHT, Kit.USUAL);
        assertThat(carrier.best()).isPresent();
        assertThat(rider.best()).isPresent();
        double slowestSpin = SlowestTempo.loop(0.6, Gravity.STANDARD);
        assertThat(swinging.period()).isGreaterThan(1.5 * slowestSpin);
    }
}
