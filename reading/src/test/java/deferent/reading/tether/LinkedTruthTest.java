package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Drawn;
import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Trace;
import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
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

    /**
     * The carrier's head goes along two half circles joined by straight lines, so that its
     * acceleration jumps; timing or lag, the two ways to say it, part the cycle at other times.
     */
    @Test
    void aRiderPutOnTheCarriersHeadSwingsAsOneThatRidesItFromTheStart() {
        Motion carrier = new Motion(stadium(), new Turns(0, 0));
        Turns spin = new Turns(2, 0.3);
        Trace linked =
                Spun.pair(carrier, new Motion(Series.circle(0.3), spin), OptionalDouble.of(90));
        Trace riding = Spun.pair(carrier, new Motion(new Riding(), spin), OptionalDouble.of(90));
        for (double lag : new double[] {-0.2, 0.3}) {
            // The rider's own poi is as far ahead, or behind, as its hand.
            Timing timing = Timing.of(-lag);
            Trace timed = Trace.of(linked.pairing().with(timing));
            LinkedTruth truth =
                    LinkedTruth.of(timed, Side.LEFT, Kit.USUAL, Vector3D.ZERO, lag, 0.08);
            Trace ridden = Trace.of(riding.pairing().with(timing));
            Course put = truth.riding().orElseThrow().head();
            Course rides =
                    KeepTheHandPath.of(ridden, Side.RIGHT, Kit.USUAL).best().orElseThrow().head();
            for (double time = 0.01; time < timed.period(); time += 0.029) {
                assertThat(put.at(time).position().distance(rides.at(time).position()))
                        .isLessThan(1e-8);
            }
        }
    }

    private static Drawn stadium() {
        double r = 0.15;
        double k = 4.0 / 3 * (Math.sqrt(2) - 1) * r;
        return new Drawn(
                List.of(
                        Drawn.Cubic.line(-r, -r, r, -r),
                        new Drawn.Cubic(r, -r, r + k, -r, 2 * r, -k, 2 * r, 0),
                        new Drawn.Cubic(2 * r, 0, 2 * r, k, r + k, r, r, r),
                        Drawn.Cubic.line(r, r, -r, r),
                        new Drawn.Cubic(-r, r, -r - k, r, -2 * r, k, -2 * r, 0),
                        new Drawn.Cubic(-2 * r, 0, -2 * r, -k, -r - k, -r, -r, -r)));
    }
}
