package deferent.reading.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Trace;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReachTest {
    private static final Performer PERFORMER = Performer.of(1.70);

    private static Part part(Motion motion, Side side) {
        return new Part(motion, Tether.USUAL, Place.usual(side, Plane.WALL), 1);
    }

    private static Part circleAt(double radius, Vector3D centre, Plane plane) {
        Place place = new Place(plane, PlaneTurn.NONE, centre);
        return new Part(Motion.flower(radius, 1, 0), Tether.USUAL, place, 1);
    }

    private static Reach reach(Part left) {
        return Reach.of(
                Trace.of(Pairing.of(left, part(Motion.staticSpin(1, 0), Side.RIGHT))), PERFORMER);
    }

    @Test
    void aStillHandBeforeTheBreastboneIsWithinReach() {
        Reach reach = reach(part(Motion.staticSpin(1, 0), Side.LEFT));
        assertThat(reach.left().everywhere()).isTrue();
        assertThat(reach.left().missing()).isEmpty();
        assertThat(reach.everywhere()).isTrue();
    }

    @Test
    void aHandCircleOfATetherAboutTheBreastboneIsTooWideForAnyArm() {
        Reach reach = reach(part(Motion.flower(0.6, -2, 0), Side.LEFT));
        HandReach left = reach.left();
        assertThat(left.everywhere()).isFalse();
        // Farthest is where the circle is farthest from the shoulder, found by hand: in the plane,
        // the centre's distance from the shoulder's foot and the radius add up.
        Vector3D shoulder = PERFORMER.shoulder(Side.LEFT);
        Vector3D centre = Place.usual(Side.LEFT, Plane.WALL).centre();
        double across = centre.getZ() - shoulder.getZ();
        double along = Math.hypot(centre.getX() - shoulder.getX(), centre.getY() - shoulder.getY());
        double farthest = Math.hypot(across, along + 0.6);
        assertThat(left.farthest()).isCloseTo(farthest, within(1e-9));
        assertThat(left.tooFar()).isCloseTo(farthest - PERFORMER.arm(), within(1e-9));
        assertThat(left.worst()).isEqualTo(left.tooFar());
        assertThat(left.missing()).hasSize(1);
        Interval miss = left.missing().get(0);
        double away = left.worstTime() - miss.start();
        away -= Math.floor(away);
        assertThat(away).isBetween(0.0, miss.length());
    }

    @Test
    void atTheEndsOfAMissTheArmIsJustStraight() {
        Pairing pairing =
                Pairing.of(
                        part(Motion.flower(0.6, -2, 0), Side.LEFT),
                        part(Motion.staticSpin(1, 0), Side.RIGHT));
        Trace trace = Trace.of(pairing);
        for (Interval miss : Reach.of(trace, PERFORMER).left().missing()) {
            for (double end : new double[] {miss.start(), miss.end()}) {
                assertThat(
                                trace.hand(Side.LEFT)
                                        .position(end)
                                        .distance(PERFORMER.shoulder(Side.LEFT)))
                        .isCloseTo(PERFORMER.arm(), within(2e-4));
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 0, 0.3", "0.1, -0.1, 0.2", "-0.2, 0.1, 0.4", "0.22, 0.08, 0.35"})
    void theLargestHandCircleJustTouchesWhatTheArmReaches(double x, double y, double z) {
        Vector3D centre = new Vector3D(x, y, z);
        for (Plane plane :
                new Plane[] {Plane.WALL, Plane.FLOOR, new Plane(Plane.Kind.WALL, 0.4, 0.3)}) {
            HandReach small = reach(circleAt(0.01, centre, plane)).left();
            if (small.largestRadius().isEmpty()) {
                continue;
            }
            double largest = small.largestRadius().getAsDouble();
            HandReach within = reach(circleAt(0.999 * largest, centre, plane)).left();
            HandReach beyond = reach(circleAt(largest + 0.002, centre, plane)).left();
            assertThat(within.everywhere()).as("%s %s", centre, plane).isTrue();
            assertThat(beyond.everywhere()).as("%s %s", centre, plane).isFalse();
        }
    }

    @Test
    void nothingIsWithinReachAboutACentreTwoMetresAhead() {
        HandReach left = reach(circleAt(0.2, new Vector3D(0, 0, 2), Plane.WALL)).left();
        assertThat(left.largestRadius()).isEmpty();
        assertThat(left.missing()).hasSize(1);
        assertThat(left.missing().get(0).length()).isEqualTo(1.0);
    }

    @Test
    void aHandInItsOwnShoulderIsTooNear() {
        Vector3D shoulder = PERFORMER.shoulder(Side.LEFT);
        HandReach left = reach(circleAt(0.02, shoulder, Plane.WALL)).left();
        assertThat(left.tooNear()).isCloseTo(PERFORMER.bentArm() - 0.02, within(1e-9));
        assertThat(left.everywhere()).isFalse();
    }

    @Test
    void handsInNeighbouringPlanesDoNotMeet() {
        Pairing crossing =
                Pairing.of(
                                part(Motion.flower(0.3, -2, 0), Side.LEFT),
                                part(Motion.flower(0.3, -2, 0), Side.RIGHT))
                        .with(Direction.OPPOSITE);
        Reach reach = Reach.of(Trace.of(crossing), PERFORMER);
        assertThat(reach.hands().distance()).isCloseTo(Place.HAND_BREADTH, within(1e-9));
        assertThat(reach.handsMeet()).isFalse();
    }

    @Test
    void handsInOnePlaneMeetWhereTheirCirclesCross() {
        Part left = circleAt(0.3, new Vector3D(0, 0, 0.3), Plane.WALL);
        Pairing pairing = Pairing.of(left, left).with(Direction.OPPOSITE).with(Timing.of(0.1));
        Trace trace = Trace.of(pairing);
        Nearness hands = Reach.of(trace, PERFORMER).hands();
        assertThat(hands.distance()).isCloseTo(0, within(1e-6));
        assertThat(
                        trace.hand(Side.LEFT)
                                .position(hands.time())
                                .distance(trace.hand(Side.RIGHT).position(hands.time())))
                .isCloseTo(0, within(1e-6));
        assertThat(Reach.of(trace, PERFORMER).handsMeet()).isTrue();
    }

    @Test
    void inSplitTimeHandsOnOneCircleStayADiameterApart() {
        Part part = circleAt(0.3, new Vector3D(0, 0, 0.3), Plane.WALL);
        Reach reach = Reach.of(Trace.of(Pairing.of(part, part).with(Timing.SPLIT)), PERFORMER);
        assertThat(reach.hands().distance()).isCloseTo(0.6, within(1e-9));
    }

    /** Half an arm before the shoulder, the arm reaches √3/2 of itself aside (Pythagoras). */
    @Test
    void beforeTheShoulderTheLargestCircleIsTheArmsOwn() {
        double arm = PERFORMER.arm();
        Vector3D before = PERFORMER.shoulder(Side.LEFT).add(new Vector3D(0, 0, arm / 2));
        assertThat(reach(circleAt(0.1, before, Plane.WALL)).left().largestRadius().getAsDouble())
                .isCloseTo(arm * Math.sqrt(3) / 2, within(1e-9));
        Vector3D aside = before.add(new Vector3D(0.2, 0, 0));
        assertThat(reach(circleAt(0.1, aside, Plane.WALL)).left().largestRadius().getAsDouble())
                .isCloseTo(arm * Math.sqrt(3) / 2 - 0.2, within(1e-9));
    }

    /**
     * A static figure whose plane turns goes everywhere about its centre: spheres are its limits.
     */
    @Test
    void aCircleWhosePlaneTurnsStaysWithinTheSphere() {
        double arm = PERFORMER.arm();
        Vector3D before = PERFORMER.shoulder(Side.LEFT).add(new Vector3D(0, 0, 0.9 * arm));
        PlaneTurn turn = new PlaneTurn(1, PlaneTurn.Axis.UPRIGHT, PlaneTurn.Carries.FIGURE);
        Part part = circleAt(0.05, before, Plane.WALL);
        Part turning = part.with(part.place().withTurn(turn));
        assertThat(reach(turning).left().largestRadius().getAsDouble())
                .isCloseTo(0.1 * arm, within(1e-9));
    }
}
