package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Polygon;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Trace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PullTest {
    private static Pull pull(Trace trace) {
        return Pull.of(trace, Side.LEFT, Kit.USUAL);
    }

    /**
     * Any mechanics textbook: T = mg(3cos θ − 2cos a), so cos a at the end and 3 − 2cos a below.
     */
    @ParameterizedTest
    @ValueSource(doubles = {30, 60, 90})
    void aPendulumPullsWithTheCosineOfItsSwingAtEitherEnd(double degrees) {
        double a = Math.toRadians(degrees);
        Pull pull = pull(Spun.pendulum(a));
        assertThat(pull.leastWeights()).isCloseTo(Math.cos(a), within(1e-7));
        assertThat(pull.greatestWeights()).isCloseTo(3 - 2 * Math.cos(a), within(1e-9));
        assertThat(pull.sideways()).isLessThan(1e-9);
        assertThat(pull.taut()).isTrue();
    }

    @Test
    void aPendulumPastAQuarterTurnGoesSlackBeforeItsEnds() {
        double a = Math.toRadians(120);
        Trace pendulum = Spun.pendulum(a);
        Pull pull = pull(pendulum);
        assertThat(pull.leastWeights()).isCloseTo(Math.cos(a), within(1e-7));
        assertThat(pull.taut()).isFalse();
        // The pull is zero where 3cos θ = 2cos a. The cycle starts at an end, so the slack stretch
        // there runs over the seam and shows as two.
        assertThat(pull.slack()).hasSize(3);
        double end = pull.slack().get(0).end();
        assertThat(Math.cos(angle(pendulum, end))).isCloseTo(2 * Math.cos(a) / 3, within(1e-8));
    }

    private static double angle(Trace trace, double time) {
        var cord =
                trace.head(Side.LEFT)
                        .at(time)
                        .position()
                        .subtract(trace.hand(Side.LEFT).at(time).position());
        return Math.atan2(cord.getX(), -cord.getY());
    }

    /** Even turning, hand still: T = m(Lω² − g·sin θ), and the rest across the cord is mg·cos θ. */
    @Test
    void anEvenStaticSpinPullsWithItsOwnQuickeningAndItsWeight() {
        Pull pull = pull(Spun.staticSpin(0.8));
        double own = Spun.TETHER * Math.pow(2 * Math.PI / 0.8, 2) / Gravity.STANDARD;
        assertThat(pull.greatestWeights()).isCloseTo(own + 1, within(1e-9));
        assertThat(pull.leastWeights()).isCloseTo(own - 1, within(1e-9));
        assertThat(pull.weights(pull.mean())).isCloseTo(own, within(1e-9));
        assertThat(pull.weights(pull.sideways())).isCloseTo(1, within(1e-9));
        assertThat(pull.greatestTime()).isCloseTo(0.6, within(1e-6));
        assertThat(pull.headSpeed()).isCloseTo(0.6 * 2 * Math.PI / 0.8, within(1e-9));
    }

    /** Down by one diameter: 2Lmg. */
    @Test
    void gravityGivesOnTheWayDownWhatItTakesOnTheWayUp() {
        Pull pull = pull(Spun.staticSpin(0.8));
        assertThat(pull.gravityWork())
                .isCloseTo(2 * 0.6 * Kit.USUAL.headMass() * Gravity.STANDARD, within(1e-4));
        assertThat(pull.gravityHelps()).hasSize(1);
        Interval down = pull.gravityHelps().get(0);
        assertThat(down.start()).isCloseTo(0.2, within(1e-9));
        assertThat(down.end()).isCloseTo(0.6, within(1e-9));
    }

    @Test
    void aSlowStaticSpinWouldBeSlackAboutItsTop() {
        Pull pull = pull(Spun.staticSpin(1.8));
        assertThat(pull.taut()).isFalse();
        Interval slack = pull.slack().get(0);
        assertThat((slack.start() + slack.end()) / 2).isCloseTo(0.45, within(1e-9));
        double own = 0.6 * Math.pow(2 * Math.PI / 1.8, 2) / Gravity.STANDARD;
        assertThat(Math.sin(2 * Math.PI * slack.start() / 1.8)).isCloseTo(own, within(1e-9));
    }

    @Test
    void aBoxesCornersTakeAnImpulseAndTheRestIsReadBetweenThem() {
        Trace box = Spun.of(new Motion(new Polygon(4, 0.4, 0), new Turns(-3, 0)), 1.2);
        Pull pull = pull(box);
        assertThat(pull.jerks()).hasSize(4);
        // A corner turns the hand's velocity by a quarter turn: √2 times its speed.
        double speed = 4 * 0.4 * Math.sqrt(2) / 1.2;
        assertThat(pull.jerks())
                .allSatisfy(
                        j ->
                                assertThat(Math.hypot(j.along(), j.across()))
                                        .isCloseTo(
                                                Kit.USUAL.headMass() * speed * Math.sqrt(2),
                                                within(1e-9)));
        assertThat(pull.greatest()).isFinite();
    }

    @Test
    void aCordWithWeightPullsTheHandHarderThanTheHead() {
        Trace spin = Spun.staticSpin(0.7);
        Kit heavy = Kit.USUAL.withCordMass(0.05);
        Pull light = Pull.of(spin, Side.LEFT, Kit.USUAL);
        Pull pull = Pull.of(spin, Side.LEFT, heavy);
        assertThat(pull.greatest()).isCloseTo(light.greatest(), within(1e-9));
        // The cord's 30 g go round at half the radius.
        double cord = 0.05 * 0.6;
        double omega = 2 * Math.PI / 0.7;
        assertThat(pull.handForce())
                .isCloseTo(
                        light.handForce() + cord * (0.3 * omega * omega + Gravity.STANDARD),
                        within(1e-6));
    }

    /** Level plane, even turning: the pull along the cord is mLω², the rod carries the weight. */
    @Test
    void inTheFloorPlaneTheWeightHangsAcrossTheCord() {
        Pull pull = pull(Spun.of(Motion.staticSpin(1, 0), Plane.FLOOR, 0.8));
        assertThat(pull.weights(pull.sideways())).isCloseTo(1, within(1e-9));
        assertThat(pull.leastWeights()).isCloseTo(pull.greatestWeights(), within(1e-9));
    }

    @Test
    void howeverOftenAPoiTurnsEachTurnIsLookedAtThirtyTwoTimes() {
        int[][] cyclesTurnsLooks = {{1, 1, 360}, {24, 5, 32 * 24 * 5}, {3, -10, 32 * 3 * 10}};
        for (int[] c : cyclesTurnsLooks) {
            Part left =
                    new Part(
                            Motion.flower(0.5, c[1], 0),
                            Tether.USUAL,
                            Place.usual(Side.LEFT, Plane.WALL),
                            c[0]);
            Part right =
                    new Part(
                            Motion.staticSpin(1, 0),
                            Tether.USUAL,
                            Place.usual(Side.RIGHT, Plane.WALL),
                            1);
            assertThat(Pull.samples(Trace.of(Pairing.of(left, right)), Side.LEFT, 360))
                    .isEqualTo(c[2]);
        }
    }
}
