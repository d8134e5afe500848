package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Drawn;
import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Turns;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Origin;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class KeepTheFigureTest {
    // Independently computed in double precision for R = L = 0.60 m, one hand turn a second.
    @Test
    void aTriquetrasHandRoundsATriangleToKeepTheLight() {
        KeepTheFigure keep = KeepTheFigure.of(Spun.triquetra(1.0), Side.LEFT, Kit.USUAL);
        assertThat(keep.away().greatest()).isCloseTo(0.215, within(5e-4));
        assertThat(keep.away().mean()).isCloseTo(0.100, within(5e-4));
        assertThat(keep.away().fromPath()).isCloseTo(0.213, within(5e-4));
        assertThat(keep.away().fromPathMean()).isCloseTo(0.073, within(5e-4));
    }

    /**
     * With the hand on the cord's far end the head's own equation must hold with a pull along it.
     */
    @Test
    void theHandThatKeepsTheFigureLeavesNothingForARodToDo() {
        for (Kit kit : new Kit[] {Kit.USUAL, Kit.USUAL.withAir(true)}) {
            Trace ideal = Spun.triquetra(1.0);
            KeepTheFigure keep = KeepTheFigure.of(ideal, Side.LEFT, kit);
            Trace corded = keep.in(ideal);
            assertThat(corded.origin()).isEqualTo(Origin.CORDED);
            Pull pull = Pull.of(corded, Side.LEFT, kit);
            assertThat(pull.sideways()).isLessThan(1e-9);
            assertThat(pull.taut()).isTrue();
            assertThat(pull.least()).isCloseTo(keep.leastPull(), within(1e-9));
            for (double t : new double[] {0, 0.1, 0.37, 0.77}) {
                assertThat(
                                corded.hand(Side.LEFT)
                                        .at(t)
                                        .position()
                                        .distance(corded.head(Side.LEFT).at(t).position()))
                        .isCloseTo(0.6, within(1e-12));
            }
        }
    }

    @Test
    void itsHandsDerivativesAreThoseOfItsPlaces() {
        Trace ideal = Spun.triquetra(1.0);
        Course hand = KeepTheFigure.of(ideal, Side.LEFT, Kit.USUAL.withAir(true)).hand();
        double h = 1e-4;
        for (double t : new double[] {0.05, 0.3, 0.61, 0.95}) {
            State at = hand.at(t);
            State back = hand.at(t - h);
            State on = hand.at(t + h);
            assertThat(
                            on.position()
                                    .subtract(back.position())
                                    .scalarMultiply(1 / (2 * h))
                                    .distance(at.velocity()))
                    .isLessThan(1e-4);
            assertThat(
                            on.velocity()
                                    .subtract(back.velocity())
                                    .scalarMultiply(1 / (2 * h))
                                    .distance(at.acceleration()))
                    .isLessThan(1e-2);
            assertThat(
                            on.acceleration()
                                    .subtract(back.acceleration())
                                    .scalarMultiply(1 / (2 * h))
                                    .distance(at.jerk()))
                    .isLessThan(1e-1);
        }
    }

    /** Without weight the hand circle of an isolation or extension is the ideal one. */
    @Test
    void withoutWeightAHandGoingRoundWithItsHeadIsAlreadyRight() {
        for (Trace ideal : new Trace[] {Spun.isolation(1.0), Spun.extension(0.6, 1.0)}) {
            KeepTheFigure keep =
                    KeepTheFigure.of(ideal, Side.LEFT, Cord.of(ideal, Side.LEFT, Kit.USUAL, 0));
            assertThat(keep.away().greatest()).isLessThan(1e-12);
            assertThat(keep.getsRound()).isTrue();
        }
    }

    @Test
    void aFigureThatFallsFreelySaysWhen() {
        // Straight down with g at the top of the circle.
        Trace ideal = Spun.staticSpin(2 * Math.PI * Math.sqrt(0.6 / Gravity.STANDARD));
        KeepTheFigure keep = KeepTheFigure.of(ideal, Side.LEFT, Kit.USUAL);
        assertThat(keep.possible()).isFalse();
        assertThat(keep.freeFalls()).hasSize(1);
        assertThat(keep.freeFalls().get(0).time()).isCloseTo(ideal.period() / 4, within(1e-6));
        assertThat(keep.in(ideal).gaps()).hasSize(1);
        assertThatThrownBy(() -> Steadiness.of(keep))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("free fall");
    }

    @Test
    void aHeadWhoseQuickeningJumpsWouldMakeItsHandJump() {
        // Half a turn quickly, half a turn slowly, each from rest to rest: smooth; a drawn path of
        // two half circles of unlike size is not.
        Drawn egg = egg();
        Trace ideal = Spun.of(new Motion(egg, new Turns(1, 0)), 1.0);
        KeepTheFigure keep = KeepTheFigure.of(ideal, Side.LEFT, Kit.USUAL);
        assertThat(keep.jumps()).isNotEmpty();
        assertThat(keep.possible()).isFalse();
    }

    // Two half ellipses, 0.2 and 0.4 m tall, that meet upright at ±0.3 m: their bends differ.
    private static Drawn egg() {
        double k = 4.0 / 3 * (Math.sqrt(2) - 1);
        return new Drawn(
                List.of(
                        new Drawn.Cubic(0.3, 0, 0.3, 0.4 * k, 0.3 * k, 0.4, 0, 0.4),
                        new Drawn.Cubic(0, 0.4, -0.3 * k, 0.4, -0.3, 0.4 * k, -0.3, 0),
                        new Drawn.Cubic(-0.3, 0, -0.3, -0.2 * k, -0.3 * k, -0.2, 0, -0.2),
                        new Drawn.Cubic(0, -0.2, 0.3 * k, -0.2, 0.3, -0.2 * k, 0.3, 0)));
    }

    @Test
    void aSwingOfItsOwnTempoNeedsNoOtherHand() {
        Trace pendulum = Spun.pendulum(1.2);
        KeepTheFigure keep = KeepTheFigure.of(pendulum, Side.LEFT, Kit.USUAL);
        assertThat(keep.away().greatest()).isLessThan(1e-9);
    }

    @Test
    void aFlowerOfManyCyclesGetsRoundAsOftenAsItSays() {
        KeepTheFigure kept =
                KeepTheFigure.of(
                        Trace.of(
                                Phrase.parse(
                                                "9-petal in-spin hand radius 65 cm cycles 24 vs"
                                                        + " static spin, tempo 73")
                                        .pairing()),
                        Side.LEFT,
                        Kit.USUAL);
        assertThat(kept.idealTurns()).isEqualTo(24 * 10);
        assertThat(kept.getsRound()).isTrue();
    }

    /** A poi that leaves a stall passes through free fall between two samples. */
    @Test
    void itsLeastPullIsNoMoreThanWhatAFreeFallLeaves() {
        KeepTheFigure kept =
                KeepTheFigure.of(
                        Trace.of(
                                Phrase.parse(
                                                "ellipse axes 26.1 cm by -65.6 cm tilt -3° stretches"
                                                        + " 0.6 of 0.5 turns then 0.4 of -1.5 turns"
                                                        + " stalling ease 0 cycles 4 vs vertical linear"
                                                        + " extension wheel, timing 1/3, tempo 65.5")
                                        .pairing()),
                        Side.LEFT,
                        Kit.USUAL);
        assertThat(kept.freeFalls())
                .isNotEmpty()
                .allSatisfy(
                        fall ->
                                assertThat(kept.leastPullWeights())
                                        .isLessThanOrEqualTo(fall.weights() + 1e-9));
    }

    /**
     * The class comment's own limit, {@link KeepTheFigure#LOST}: a light head's as a heavy one's.
     */
    @Test
    void aPullBelowAThousandthOfTheHeadsWeightIsLostWhateverTheHeadWeighs() {
        for (double mass : new double[] {0.01, 0.12, 1.5}) {
            Kit kit = Kit.USUAL.withHeadMass(mass);
            KeepTheFigure lost = KeepTheFigure.of(upsideDown(1.0005), Side.LEFT, kit);
            assertThat(lost.freeFalls()).hasSize(1);
            assertThat(lost.freeFalls().get(0).weights()).isCloseTo(0.0005, within(1e-6));
            assertThat(KeepTheFigure.of(upsideDown(1.002), Side.LEFT, kit).freeFalls()).isEmpty();
        }
    }

    // A static spin whose own quickening is so many gs: at the top one less is left.
    private static Trace upsideDown(double gs) {
        return Spun.staticSpin(2 * Math.PI * Math.sqrt(0.6 / (gs * Gravity.STANDARD)));
    }

    @Test
    void aFreeFallLiesInTheGapThatItLeaves() {
        Trace ideal = upsideDown(1);
        KeepTheFigure keep = KeepTheFigure.of(ideal, Side.LEFT, Kit.USUAL);
        double time = keep.freeFalls().get(0).time();
        Interval gap = keep.in(ideal).gaps().get(0);
        assertThat(gap.start()).isLessThan(time).isCloseTo(time, within(1e-5));
        assertThat(gap.end()).isGreaterThan(time).isCloseTo(time, within(1e-5));
    }

    @Test
    void aHeavyCordsHandsDerivativesAreThoseOfItsPlaces() {
        KeepTheFigure keep =
                KeepTheFigure.of(Spun.triquetra(0.8), Side.LEFT, Kit.USUAL.withCordMass(0.05));
        assertThat(keep.mismatch()).isPositive();
        for (double t : new double[] {0.05, 0.3, 0.61}) {
            assertSlopes(keep.hand(), t, 1e-4);
        }
    }

    /**
     * Where a head's jerk jumps the hand's velocity does; up to there and from there on the hand's
     * acceleration is still how its velocity changes.
     */
    @Test
    void besideAJumpOfTheJerkTheHandsDerivativesAreThoseOfItsPlaces() {
        Trace ideal = Spun.of(new Motion(cushion(), new Turns(0, 0)), 1.0);
        assertThat(ideal.breaks()).isNotEmpty().allMatch(b -> b.order() == 3);
        Course hand = KeepTheFigure.of(ideal, Side.LEFT, Kit.USUAL).hand();
        // Half way round its weight pulls across the way its jerk jumps.
        double jump = hand.at(0.5).velocity().distance(hand.before(0.5).velocity());
        assertThat(jump).isGreaterThan(0.05);
        assertSlopes(hand, 0.503, 1e-4);
        assertSlopes(hand, 0.497, 1e-4);
        // And so at the jump itself: a thousandth of a second changes little on either side.
        assertNear(hand.before(0.5), hand.at(0.499));
        assertNear(hand.at(0.5), hand.at(0.501));
    }

    private static void assertNear(State jump, State beside) {
        assertThat(jump.acceleration().distance(beside.acceleration()))
                .isLessThan(2e-3 * (1 + beside.jerk().getNorm()));
    }

    // Four quarters, each the mirror image of its neighbours, flatter than a circle's at the joins.
    private static Drawn cushion() {
        double r = 0.3;
        double k = 0.75 * r;
        return new Drawn(
                List.of(
                        new Drawn.Cubic(r, 0, r, k, k, r, 0, r),
                        new Drawn.Cubic(0, r, -k, r, -r, k, -r, 0),
                        new Drawn.Cubic(-r, 0, -r, -k, -k, -r, 0, -r),
                        new Drawn.Cubic(0, -r, k, -r, r, -k, r, 0)));
    }

    private static void assertSlopes(Course hand, double t, double h) {
        State at = hand.at(t);
        State back = hand.at(t - h);
        State on = hand.at(t + h);
        assertSlope(back.position(), on.position(), at.velocity(), h);
        assertSlope(back.velocity(), on.velocity(), at.acceleration(), h);
        assertSlope(back.acceleration(), on.acceleration(), at.jerk(), h);
    }

    private static void assertSlope(Vector3D back, Vector3D on, Vector3D slope, double h) {
        Vector3D found = on.subtract(back).scalarMultiply(1 / (2 * h));
        assertThat(found.distance(slope)).isLessThan(1e-3 * (1 + slope.getNorm()));
    }
}
