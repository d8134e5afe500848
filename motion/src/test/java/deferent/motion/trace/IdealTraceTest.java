package deferent.motion.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Polygon;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Sense;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class IdealTraceTest {
    private static final Motion TRIQUETRA = Motion.flower(0.6, -2, 0.4);

    private static Part part(Motion motion, Side side, int cycles) {
        return new Part(motion, Tether.USUAL, Place.usual(side, Plane.WALL), cycles);
    }

    private static Pairing of(Motion left, Motion right) {
        return Pairing.of(part(left, Side.LEFT, 1), part(right, Side.RIGHT, 1));
    }

    private static Vector3D at(Course course, double time) {
        return course.at(time).position();
    }

    // Looking along +z, as the performer does, x to the left and y up: clockwise goes left to up.
    private static double clockwise(State s, Vector3D centre) {
        Vector3D r = s.position().subtract(centre);
        return r.getX() * s.velocity().getY() - r.getY() * s.velocity().getX();
    }

    @Test
    void unsaidTheLeftHandGoesClockwiseAsThePerformerSeesIt() {
        Trace trace = Trace.of(of(TRIQUETRA, TRIQUETRA));
        Vector3D centre = trace.pairing().left().place().centre();
        State start = trace.hand(Side.LEFT).at(0);
        assertThat(start.position().subtract(centre).getX()).isCloseTo(0.6, within(1e-12));
        assertThat(start.velocity().getY()).isPositive();
        assertThat(clockwise(trace.hand(Side.LEFT).at(0.3), centre)).isPositive();
    }

    @Test
    void counterClockwiseGoesTheOtherWay() {
        Trace trace = Trace.of(of(TRIQUETRA, TRIQUETRA).with(Sense.COUNTER_CLOCKWISE));
        Vector3D centre = trace.pairing().left().place().centre();
        assertThat(clockwise(trace.hand(Side.LEFT).at(0.3), centre)).isNegative();
    }

    @Test
    void togetherAndOppositeTheHandsMeetAtTopAndBottom() {
        Trace trace = Trace.of(of(TRIQUETRA, TRIQUETRA).with(Direction.OPPOSITE));
        for (double quarter : new double[] {0.25, 0.75}) {
            Vector3D left = at(trace.hand(Side.LEFT), quarter * trace.period());
            Vector3D right = at(trace.hand(Side.RIGHT), quarter * trace.period());
            assertThat(left.getX()).isCloseTo(right.getX(), within(1e-12));
            assertThat(left.getY()).isCloseTo(right.getY(), within(1e-12));
        }
    }

    @Test
    void oppositeTheRightSideIsTheLeftSideInAMirror() {
        Trace trace = Trace.of(of(TRIQUETRA, TRIQUETRA).with(Direction.OPPOSITE));
        for (double t = 0; t < trace.period(); t += 0.07) {
            Vector3D left = at(trace.head(Side.LEFT), t);
            Vector3D right = at(trace.head(Side.RIGHT), t);
            assertThat(right.getX()).isCloseTo(-left.getX(), within(1e-12));
            assertThat(right.getY()).isCloseTo(left.getY(), within(1e-12));
        }
    }

    @Test
    void inQuarterTimeTheRightHandIsAQuarterCycleAhead() {
        Trace trace = Trace.of(of(TRIQUETRA, TRIQUETRA).with(Timing.QUARTER));
        Vector3D apart =
                trace.pairing()
                        .right()
                        .place()
                        .centre()
                        .subtract(trace.pairing().left().place().centre());
        for (double t = 0; t < trace.period(); t += 0.07) {
            Vector3D later = at(trace.head(Side.LEFT), t + trace.period() / 4).add(apart);
            assertThat(at(trace.head(Side.RIGHT), t).distance(later)).isLessThan(1e-12);
        }
    }

    @Test
    void ahandThatCyclesThreeTimesWhileTheOtherCyclesTwiceCloseTogether() {
        Trace trace =
                Trace.of(Pairing.of(part(TRIQUETRA, Side.LEFT, 3), part(TRIQUETRA, Side.RIGHT, 2)));
        double period = trace.period();
        Course left = trace.head(Side.LEFT);
        Course right = trace.head(Side.RIGHT);
        assertThat(at(left, 0.1).distance(at(left, 0.1 + period / 3))).isLessThan(1e-9);
        assertThat(at(right, 0.1).distance(at(right, 0.1 + period / 2))).isLessThan(1e-9);
        assertThat(at(left, 0.1).distance(at(left, 0.1 + period / 2))).isGreaterThan(0.05);
        assertThat(period).isCloseTo(3, within(1e-12));
    }

    @Test
    void aRidersHandIsItsCarriersHeadCarriedToItsOwnCentre() {
        Motion rider = new Motion(new Riding(), new Turns(-2, 0));
        Trace trace = Trace.of(of(Motion.staticSpin(1, 0), rider));
        for (double t = 0; t < trace.period(); t += 0.05) {
            Vector3D offset = at(trace.hand(Side.RIGHT), t).subtract(at(trace.head(Side.LEFT), t));
            assertThat(offset.distance(new Vector3D(0, 0, -Place.HAND_BREADTH))).isLessThan(1e-12);
        }
    }

    @Test
    void aRiderInQuarterTimeIsWhereItsCarriersHeadWillBeAQuarterCycleLater() {
        Motion rider = new Motion(new Riding(), new Turns(-2, 0));
        Trace trace = Trace.of(of(Motion.staticSpin(1, 0), rider).with(Timing.QUARTER));
        for (double t = 0; t < trace.period(); t += 0.05) {
            Vector3D head = at(trace.head(Side.LEFT), t + trace.period() / 4);
            Vector3D hand = at(trace.hand(Side.RIGHT), t);
            assertThat(hand.getX()).isCloseTo(head.getX(), within(1e-12));
            assertThat(hand.getY()).isCloseTo(head.getY(), within(1e-12));
        }
    }

    @Test
    void aLeftRiderTrailsARootThatIsAhead() {
        Motion rider = new Motion(new Riding(), new Turns(-2, 0));
        Trace trace = Trace.of(of(rider, Motion.staticSpin(1, 0)).with(Timing.QUARTER));
        for (double t = 0; t < trace.period(); t += 0.05) {
            Vector3D head = at(trace.head(Side.RIGHT), t - trace.period() / 4);
            Vector3D hand = at(trace.hand(Side.LEFT), t);
            assertThat(hand.getX()).isCloseTo(head.getX(), within(1e-12));
            assertThat(hand.getY()).isCloseTo(head.getY(), within(1e-12));
        }
    }

    @Test
    void aRiderSharesTheBreaksOfItsCarrier() {
        Motion square = new Motion(new Polygon(4, 0.4, 0), new Turns(1, 0));
        Motion rider = new Motion(new Riding(), new Turns(-2, 0));
        for (Timing timing : List.of(Timing.TOGETHER, Timing.QUARTER, Timing.of(0.1))) {
            Trace trace = Trace.of(of(square, rider).with(timing));
            List<TimedBreak> riders =
                    trace.breaks().stream().filter(b -> b.side() == Side.RIGHT).toList();
            assertThat(riders).hasSize(4).allMatch(b -> b.order() == 1);
            for (TimedBreak b : riders) {
                Course hand = trace.hand(Side.RIGHT);
                assertThat(hand.before(b.time()).velocity().distance(hand.at(b.time()).velocity()))
                        .isGreaterThan(1);
            }
        }
    }

    @Test
    void theBreaksOfBothHandsStandInTheOrderOfTheirTimes() {
        Motion square = new Motion(new Polygon(4, 0.4, 0), new Turns(1, 0));
        Motion heptagon = new Motion(new Polygon(7, 0.4, 0), new Turns(1, 0));
        Pairing pairing =
                Pairing.of(part(square, Side.LEFT, 3), part(heptagon, Side.RIGHT, 2))
                        .with(Timing.of(0.3));
        assertThat(Trace.of(pairing).breaks())
                .hasSize(3 * 4 + 2 * 7)
                .isSortedAccordingTo(Comparator.comparingDouble(TimedBreak::time));
    }

    @Test
    void aToroidsPlaneTurnsAboutItsUprightWhileHeightsStay() {
        Part flat = part(TRIQUETRA, Side.LEFT, 1);
        PlaneTurn turning = new PlaneTurn(1, PlaneTurn.Axis.UPRIGHT, PlaneTurn.Carries.FIGURE);
        Part toroid = flat.with(flat.place().withTurn(turning));
        Trace a = Trace.of(Pairing.of(flat, part(TRIQUETRA, Side.RIGHT, 1)));
        Trace b = Trace.of(Pairing.of(toroid, part(TRIQUETRA, Side.RIGHT, 1)));
        Vector3D centre = flat.place().centre();
        for (double t = 0; t < a.period(); t += 0.05) {
            Vector3D resting = at(a.head(Side.LEFT), t).subtract(centre);
            Vector3D turned = at(b.head(Side.LEFT), t).subtract(centre);
            assertThat(turned.getY()).isCloseTo(resting.getY(), within(1e-12));
            double angle = 2 * Math.PI * t / a.period();
            assertThat(turned.getX()).isCloseTo(resting.getX() * Math.cos(angle), within(1e-12));
            assertThat(turned.getZ()).isCloseTo(-resting.getX() * Math.sin(angle), within(1e-12));
        }
    }

    @Test
    void samplesAreTheTraceAtEvenTimesWithoutTheEnd() {
        Trace trace = Trace.of(of(TRIQUETRA, Motion.staticSpin(1, 0)));
        Samples samples = trace.samples(90);
        assertThat(samples.count()).isEqualTo(90);
        assertThat(samples.time(89)).isCloseTo(trace.period() * 89 / 90, within(1e-12));
        assertThat(Samples.point(samples.head(Side.LEFT), 37))
                .isEqualTo(at(trace.head(Side.LEFT), samples.time(37)));
    }

    @Test
    void aSidesOwnCycleIsTheFirstOfItsCyclesWithItsBreaks() {
        Motion square = new Motion(new Polygon(4, 0.4, 0), new Turns(1, 0));
        Trace trace =
                Trace.of(Pairing.of(part(square, Side.LEFT, 3), part(TRIQUETRA, Side.RIGHT, 1)));
        Trace own = trace.ownCycle(Side.LEFT);
        assertThat(own.period()).isCloseTo(trace.period() / 3, within(1e-12));
        assertThat(own.breaks()).hasSize(4).allMatch(b -> b.time() < trace.period() / 3 - 0.1);
        assertThat(own.ownCycle(Side.LEFT)).isSameAs(own);
        assertThat(trace.ownCycle(Side.RIGHT)).isSameAs(trace);
    }

    @Test
    void theFastestPoiIsSeenSixtyTimesATurn() {
        int[][] cyclesTurnsCount = {{1, -12, 720}, {2, 7, 1440}, {4, -7, 2880}, {3, 0, 720}};
        for (int[] c : cyclesTurnsCount) {
            Part left = part(Motion.flower(0.5, c[1], 0), Side.LEFT, c[0]);
            Trace trace = Trace.of(Pairing.of(left, part(TRIQUETRA, Side.RIGHT, 1)));
            assertThat(trace.samples().count()).isEqualTo(c[2]);
        }
    }
}
