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
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PoseOverTest {
    private static final Performer PERFORMER = Performer.of(1.70);

    private static Part circle(double radius, Vector3D centre) {
        return new Part(
                Motion.flower(radius, 1, 0),
                Tether.USUAL,
                new Place(Plane.WALL, PlaneTurn.NONE, centre),
                1);
    }

    private static Trace both(double radius, Vector3D left, Vector3D right) {
        return Trace.of(
                Pairing.of(circle(radius, left), circle(radius, right))
                        .withTempo(OptionalDouble.of(20)));
    }

    private static PoseOver pose(Trace trace) {
        return PoseOver.of(trace, Reach.of(trace, PERFORMER));
    }

    /**
     * Straight ahead, turned, bent and leant aside: a grip in reach is where its hand's path is.
     */
    @ParameterizedTest
    @CsvSource({"0.20, 0, 0", "0.34, 0, 0", "0.25, 0.25, 0.20", "0.20, 0.35, 0.10"})
    void whatIsWithinReachIsHeldInTheHand(double radius, double out, double up) {
        Trace trace = both(radius, new Vector3D(out, up, 0.30), new Vector3D(out, up, 0.22));
        Reach reach = Reach.of(trace, PERFORMER);
        assertThat(reach.reached()).isTrue();
        PoseOver pose = PoseOver.of(trace, reach);
        for (Side side : Side.values()) {
            assertThat(pose.stretched(side)).isFalse();
            for (int i = 0; i < pose.count(); i++) {
                Vector3D hand = trace.hand(side).position(pose.time(i));
                assertThat(pose.grip(side, i).distance(hand)).isLessThan(2e-3);
            }
        }
    }

    @Test
    void noBoneGrowsAndJointsStayTogether() {
        Trace trace = both(0.34, new Vector3D(0, 0, 0.30), new Vector3D(0, 0, 0.22));
        PoseOver pose = pose(trace);
        double fist = PERFORMER.elbowToGrip() - PERFORMER.forearm();
        for (int i = 0; i < pose.count(); i++) {
            for (Side side : Side.values()) {
                assertThat(pose.shoulder(side, i).distance(pose.elbow(side, i)))
                        .isCloseTo(PERFORMER.upperArm(), within(1e-9));
                assertThat(pose.elbow(side, i).distance(pose.wrist(side, i)))
                        .isCloseTo(PERFORMER.forearm(), within(1e-9));
                assertThat(pose.wrist(side, i).distance(pose.grip(side, i)))
                        .isCloseTo(fist, within(1e-9));
            }
        }
    }

    @Test
    void anArmThatIsTooShortIsStretchedTowardItsHandAndEndsWhereItEnds() {
        Trace trace = both(0.30, new Vector3D(0, 0, 1.50), new Vector3D(-0.20, 0, 0.30));
        PoseOver pose = pose(trace);
        assertThat(pose.stretched(Side.LEFT)).isTrue();
        assertThat(pose.stretched(Side.RIGHT)).isFalse();
        for (int i = 0; i < pose.count(); i++) {
            Vector3D shoulder = pose.shoulder(Side.LEFT, i);
            Vector3D hand = trace.hand(Side.LEFT).position(pose.time(i));
            Vector3D grip = pose.grip(Side.LEFT, i);
            assertThat(grip.distance(shoulder)).isCloseTo(PERFORMER.arm(), within(1e-9));
            assertThat(Vector3D.angle(grip.subtract(shoulder), hand.subtract(shoulder)))
                    .isLessThan(1e-6);
        }
    }

    /** The trunk of the pose turns as far as the sentence on reach says. */
    @Test
    void itsTrunkTurnsAsFarAsIsSaid() {
        Trace trace = both(0.34, new Vector3D(0, 0, 0.30), new Vector3D(0, 0, 0.22));
        Reach reach = Reach.of(trace, PERFORMER);
        PoseOver pose = PoseOver.of(trace, reach);
        double most = 0;
        for (int i = 0; i < pose.count(); i++) {
            most = Math.max(most, Math.abs(pose.turn(i)));
        }
        assertThat(reach.turned().turned()).isTrue();
        assertThat(most).isCloseTo(reach.turned().greatest(), within(Math.toRadians(2)));
    }

    /** An elbow that nothing is in the way of hangs, a little outward. */
    @Test
    void anElbowHangsBelowTheLineFromShoulderToHand() {
        Trace trace = both(0.05, new Vector3D(0.25, 0, 0.35), new Vector3D(-0.25, 0, 0.35));
        PoseOver pose = pose(trace);
        for (int i = 0; i < pose.count(); i++) {
            Vector3D middle =
                    pose.shoulder(Side.LEFT, i).add(pose.grip(Side.LEFT, i)).scalarMultiply(0.5);
            assertThat(pose.elbow(Side.LEFT, i).getY()).isLessThan(middle.getY() - 0.05);
        }
    }
}
