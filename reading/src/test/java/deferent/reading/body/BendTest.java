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
import deferent.motion.trace.Trace;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class BendTest {
    private static final Performer PERFORMER = Performer.of(1.70);

    // Both hands on their far sides at once: no turn helps.
    private static Trace crossed(double radius, double ahead) {
        Part part =
                new Part(
                        Motion.flower(radius, 1, 0),
                        Tether.USUAL,
                        new Place(Plane.WALL, PlaneTurn.NONE, new Vector3D(0, 0, ahead)),
                        1);
        return Trace.of(Pairing.of(part, part).with(Timing.SPLIT).withTempo(OptionalDouble.of(10)));
    }

    private static Posture posture(double forward, double lean) {
        return new Posture(forward, 0, lean, 0);
    }

    private static Reach reach(double radius, double ahead) {
        return Reach.of(crossed(radius, ahead), PERFORMER);
    }

    @Test
    void whatATurnReachesNeedsNoBend() {
        assertThat(reach(0.28, 0.30).bend()).isEmpty();
        assertThat(reach(0.28, 0.30).reached()).isTrue();
    }

    @Test
    void whereATurnFallsALittleShortTheShouldersComeForwardAlone() {
        Reach reach = reach(0.31, 0.30);
        assertThat(reach.trunk().reached()).isFalse();
        Bend bend = reach.bend().orElseThrow();
        assertThat(bend.reached()).isTrue();
        assertThat(bend.lean()).isZero();
        assertThat(bend.forward()).isBetween(0.01, 0.04);
        assertThat(reach.reached()).isTrue();
    }

    /** Independent of the search: each hand's distance from a joint that is bent so, in a row. */
    @Test
    void bentSoEachArmIsJustLongEnough() {
        Reach reach = reach(0.38, 0.30);
        Bend bend = reach.bend().orElseThrow();
        assertThat(bend.reached()).isTrue();
        assertThat(Math.toDegrees(bend.lean())).isBetween(1.0, 15.0);
        assertThat(farthest(0.38, bend, bend.trunk().greatest()))
                .isLessThanOrEqualTo(PERFORMER.arm() + Reach.SLACK);
        Bend less =
                new Bend(posture(bend.forward(), bend.lean() - Math.toRadians(1)), bend.trunk());
        assertThat(farthest(0.38, less, TrunkTurn.MOST)).isGreaterThan(PERFORMER.arm());
    }

    // At each instant the turn is the best for the farther hand of the two; slow as it is, a trunk
    // gets from each to the next.
    private static double farthest(double radius, Bend bend, double most) {
        double farthest = 0;
        Trace trace = crossed(radius, 0.30);
        for (int i = 0; i < 120; i++) {
            double time = trace.period() * i / 120;
            double least = Double.POSITIVE_INFINITY;
            for (int step = -200; step <= 200; step++) {
                double turn = most * step / 200;
                double longer = 0;
                for (Side side : Side.values()) {
                    Vector3D joint = bend.shoulder(PERFORMER, side, turn);
                    longer = Math.max(longer, trace.hand(side).position(time).distance(joint));
                }
                least = Math.min(least, longer);
            }
            farthest = Math.max(farthest, least);
        }
        return farthest;
    }

    @Test
    void aJointIsCarriedForwardByALeanAndByATurnToTheOtherSide() {
        Vector3D rest = PERFORMER.shoulder(Side.LEFT);
        Bend bend = new Bend(posture(0.04, Math.toRadians(10)), reach(0.2, 0.3).trunk());
        Vector3D leant = bend.shoulder(PERFORMER, Side.LEFT, 0);
        double hipsToShoulders = (0.818 - 0.530) * 1.70;
        assertThat(leant.getZ() - rest.getZ())
                .isCloseTo(
                        hipsToShoulders * Math.sin(Math.toRadians(10))
                                + 0.04 * Math.cos(Math.toRadians(10)),
                        within(1e-9));
        assertThat(leant.getX()).isCloseTo(rest.getX(), within(1e-12));
        // Turned to the performer's right, a negative turn, the left joint comes forward.
        assertThat(bend.shoulder(PERFORMER, Side.LEFT, -0.5).getZ()).isGreaterThan(leant.getZ());
    }

    @Test
    void aHandFarBeyondIsToldWithTheMostThatABodyBends() {
        Reach reach = reach(0.8, 0.30);
        Bend bend = reach.bend().orElseThrow();
        assertThat(bend.reached()).isFalse();
        assertThat(reach.reached()).isFalse();
        assertThat(Math.toDegrees(bend.lean())).isCloseTo(15, within(1e-9));
        assertThat(bend.trunk().tooFar())
                .isCloseTo(farthest(0.8, bend, TrunkTurn.MOST) - PERFORMER.arm(), within(1e-3));
    }

    @Test
    void noLeanForwardHelpsAHandBehindTheBack() {
        Reach reach = reach(0.30, -0.60);
        assertThat(reach.trunk().reached()).isFalse();
        assertThat(reach.bend()).isEmpty();
    }

    private static Reach beside(double radius, double out, double up) {
        Part[] parts = new Part[2];
        for (Side side : Side.values()) {
            Vector3D centre = new Vector3D(out, up, side == Side.LEFT ? 0.30 : 0.22);
            parts[side.ordinal()] =
                    new Part(
                            Motion.flower(radius, 1, 0),
                            Tether.USUAL,
                            new Place(Plane.WALL, PlaneTurn.NONE, centre),
                            1);
        }
        Pairing slow = Pairing.of(parts[0], parts[1]).withTempo(OptionalDouble.of(20));
        return Reach.of(Trace.of(slow), PERFORMER);
    }

    /** Forward as far as they come and raised by the least that does; nobody leans for it. */
    @Test
    void shouldersRiseForHandsThatAreHighUp() {
        Bend bend = beside(0.25, 0.25, 0.20).bend().orElseThrow();
        assertThat(bend.reached()).isTrue();
        assertThat(bend.forward()).isCloseTo(0.04, within(1e-9));
        assertThat(bend.raised()).isBetween(0.01, 0.03);
        assertThat(bend.lean()).isZero();
        assertThat(bend.aside()).isZero();
        assertThat(beside(0.30, 0, -0.20).bend().map(Bend::raised).orElse(0.0))
                .as("for low hands they stay")
                .isZero();
    }

    /** To the side on which the hands are, and to the other for the mirrored pattern. */
    @Test
    void aTrunkLeansAsideLastAndTowardItsHands() {
        Bend left = beside(0.20, 0.35, 0.10).bend().orElseThrow();
        assertThat(left.reached()).isTrue();
        assertThat(Math.toDegrees(left.aside())).isBetween(1.0, 10.0);
        Bend right = beside(0.20, -0.35, 0.10).bend().orElseThrow();
        assertThat(right.reached()).isTrue();
        assertThat(Math.toDegrees(right.aside())).isBetween(-10.0, -1.0);
    }

    @Test
    void leaningToTheLeftBringsBothShouldersToTheLeft() {
        Posture left = new Posture(0, 0, 0, Math.toRadians(10));
        Vector3D rest = PERFORMER.shoulder(Side.LEFT);
        Vector3D leant = left.placed(PERFORMER, rest, 0);
        assertThat(leant.getX()).isGreaterThan(rest.getX());
        assertThat(leant.getY()).as("the left one sinks").isLessThan(rest.getY());
        assertThat(left.seen(PERFORMER, leant, 0).distance(rest)).isCloseTo(0, within(1e-12));
        Posture all = new Posture(0.03, 0.02, 0.2, -0.1);
        Vector3D anywhere = new Vector3D(0.1, -0.3, 0.4);
        assertThat(
                        all.seen(PERFORMER, all.placed(PERFORMER, anywhere, 0.6), 0.6)
                                .distance(anywhere))
                .isCloseTo(0, within(1e-12));
    }
}
