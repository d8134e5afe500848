package deferent.reading.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TrunkTurnTest {
    private static final Performer PERFORMER = Performer.of(1.70);
    private static final Vector3D AHEAD = new Vector3D(0, 0, 0.30);

    private static Trace slow(Part left, Part right) {
        return Trace.of(Pairing.of(left, right).withTempo(OptionalDouble.of(10)));
    }

    private static Part circle(double radius, Vector3D centre) {
        return part(Motion.flower(radius, 1, 0), centre);
    }

    private static Part still(Side side) {
        return part(Motion.staticSpin(1, 0), PERFORMER.shoulder(side).add(new Vector3D(0, 0, 0.3)));
    }

    private static Part part(Motion motion, Vector3D centre) {
        return new Part(motion, Tether.USUAL, new Place(Plane.WALL, PlaneTurn.NONE, centre), 1);
    }

    private static TrunkTurn turn(Trace trace, double most) {
        return TrunkTurn.of(trace, Reach.samples(trace), PERFORMER, Math.toRadians(most));
    }

    // Independent calculation, 1.70 m, arm to grip 0.656 m: the largest hand circle by turn.
    @ParameterizedTest
    @CsvSource({
        "0, 0, 0, 0.28",
        "0, 0, 25, 0.36",
        "0, 0, 45, 0.43",
        "0, 0, 60, 0.48",
        "0.10, 0.08, 0, 0.40",
        "0.10, 0.08, 25, 0.48",
        "0.10, 0.08, 45, 0.55"
    })
    void aTurnedTrunkBringsALargerHandCircleIntoReach(
            double out, double up, double most, double radius) {
        Vector3D centre = AHEAD.add(new Vector3D(out, up, 0));
        TrunkTurn within = turn(slow(circle(radius - 0.005, centre), still(Side.RIGHT)), most);
        TrunkTurn beyond = turn(slow(circle(radius + 0.006, centre), still(Side.RIGHT)), most);
        assertThat(within.reached()).isTrue();
        assertThat(beyond.reached()).isFalse();
        assertThat(beyond.tooFarSide()).isEqualTo(Side.LEFT);
    }

    // Independent calculation: both hands on their far sides at once reach 0.29 m.
    @Test
    void noTurnHelpsTwoHandsThatAreOnTheirFarSidesAtOnce() {
        TrunkTurn beyond = turn(crossed(0.30), 45);
        assertThat(beyond.reached()).isFalse();
        Vector3D farSide = AHEAD.add(new Vector3D(-0.30, 0, 0));
        double far = farSide.distance(PERFORMER.shoulder(Side.LEFT));
        assertThat(beyond.tooFar()).isCloseTo(far - PERFORMER.arm(), within(1e-4));
        assertThat(turn(crossed(0.29), 45).reached()).isTrue();
    }

    private static Trace crossed(double radius) {
        return Trace.of(
                Pairing.of(circle(radius, AHEAD), circle(radius, AHEAD))
                        .with(Timing.SPLIT)
                        .withTempo(OptionalDouble.of(10)));
    }

    @Test
    void withinAnArmsReachTheTrunkStaysStraight() {
        TrunkTurn turn = turn(slow(circle(0.2, AHEAD), still(Side.RIGHT)), 45);
        assertThat(turn.turned()).isFalse();
        assertThat(turn.greatest()).isZero();
        assertThat(turn.reached()).isTrue();
    }

    // The left hand is farthest on the performer's right: the left shoulder comes forward.
    @Test
    void theTrunkTurnsTowardTheSideOnWhichTheHandIsFar() {
        TrunkTurn left = turn(slow(circle(0.36, AHEAD), still(Side.RIGHT)), 45);
        assertThat(left.toThe()).isEqualTo(Side.RIGHT);
        TrunkTurn right = turn(slow(still(Side.LEFT), circle(0.36, AHEAD)), 45);
        assertThat(right.toThe()).isEqualTo(Side.LEFT);
        assertThat(right.greatest()).isCloseTo(left.greatest(), within(1e-9));
    }

    /** Every hand is within a straight arm of its shoulder where the trunk is turned so. */
    @ParameterizedTest
    @ValueSource(doubles = {0.30, 0.36, 0.42})
    void turnedSoEachArmIsLongEnough(double radius) {
        Trace trace = slow(circle(radius, AHEAD), still(Side.RIGHT));
        Samples samples = Reach.samples(trace);
        double[] turns = TrunkTurn.turns(trace, samples, PERFORMER, TrunkTurn.MOST);
        assertThat(turn(trace, 45).turned()).isTrue();
        Vector3D joint = PERFORMER.shoulder(Side.LEFT);
        Vector3D axis = new Vector3D(0, joint.getY(), joint.getZ());
        double longest = 0;
        for (int i = 0; i < samples.count(); i++) {
            Rotation turned =
                    new Rotation(Vector3D.PLUS_J, turns[i], RotationConvention.VECTOR_OPERATOR);
            Vector3D shoulder = axis.add(turned.applyTo(joint.subtract(axis)));
            Vector3D hand = Samples.point(samples.hand(Side.LEFT), i);
            longest = Math.max(longest, hand.distance(shoulder));
        }
        assertThat(longest).isCloseTo(PERFORMER.arm(), within(Reach.SLACK));
    }

    @Test
    void aTrunkTurnsNoFasterThanABodyDoes() {
        Pairing pairing = Pairing.of(circle(0.42, AHEAD), still(Side.RIGHT));
        for (double tempo : new double[] {20, 60, 120}) {
            Trace trace = Trace.of(pairing.withTempo(OptionalDouble.of(tempo)));
            double[] turns =
                    TrunkTurn.turns(trace, Reach.samples(trace), PERFORMER, TrunkTurn.MOST);
            double step = trace.period() / turns.length;
            for (int i = 0; i < turns.length; i++) {
                double next = turns[(i + 1) % turns.length];
                assertThat(Math.abs(next - turns[i]) / step)
                        .isLessThanOrEqualTo(Math.toRadians(240) + 1e-9);
            }
        }
    }

    // Each hand in turn is on its far side, so the trunk turns to and fro once a cycle.
    @Test
    void whatASlowCycleReachesAFastOneMayNot() {
        Pairing pairing =
                Pairing.of(circle(0.33, AHEAD), circle(0.33, AHEAD)).with(Timing.TOGETHER);
        assertThat(turn(Trace.of(pairing.withTempo(OptionalDouble.of(10))), 45).reached()).isTrue();
        assertThat(turn(Trace.of(pairing.withTempo(OptionalDouble.of(200))), 45).reached())
                .isFalse();
    }
}
