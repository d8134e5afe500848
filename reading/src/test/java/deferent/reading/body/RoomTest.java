package deferent.reading.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Origin;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.CGAlgorithms3D;
import org.locationtech.jts.geom.Coordinate;

class RoomTest {
    private static Part spin(Plane plane, Vector3D centre, int turns) {
        return new Part(
                Motion.staticSpin(turns, 0),
                Tether.of(0.6),
                new Place(plane, PlaneTurn.NONE, centre),
                1);
    }

    private static Room of(Part left, Part right) {
        return of(Pairing.of(left, right));
    }

    private static Room of(Pairing pairing) {
        return Room.of(Trace.of(pairing), Performer.USUAL);
    }

    @Test
    void aTetherThatTurnsOftenIsNotMissedBetweenTwoSamples() {
        Trace trace =
                Trace.of(
                        Phrase.parse(
                                        "static spin vs arc stretches 0.75 of 3 turns then 0.25 of"
                                                + " -5 turns tether 40 cm cycles 24, timing 0.684")
                                .pairing());
        Performer small =
                new Performer(
                        OptionalDouble.of(1.41), OptionalDouble.of(0.51), OptionalDouble.empty());
        BodyOutline outline = BodyOutline.of(small);
        double least = Double.POSITIVE_INFINITY;
        int count = 200_000;
        for (int i = 0; i < count; i++) {
            double t = trace.period() * i / count;
            least =
                    Math.min(
                            least,
                            outline.distance(
                                    trace.hand(Side.RIGHT).position(t),
                                    trace.head(Side.RIGHT).position(t)));
        }
        assertThat(Room.of(trace, small).right().tetherToBody().distance())
                .isCloseTo(least, within(1e-5));
    }

    @Test
    void twoSpinsAMetreAndAHalfApartComeWithinThirtyCentimetres() {
        Room room =
                of(
                        Pairing.of(
                                        spin(Plane.WALL, new Vector3D(0.75, 0, 0.3), 1),
                                        spin(Plane.WALL, new Vector3D(-0.75, 0, 0.3), 1))
                                .with(Direction.OPPOSITE));
        // Opposite and in split time would meet; together the heads point outward at once and
        // inward at once.
        assertThat(room.headToHead().distance()).isCloseTo(0.3, within(1e-9));
        assertThat(room.headToHead().time()).isCloseTo(0.5, within(1e-6));
        assertThat(room.tetherToTether().distance()).isCloseTo(0.3, within(1e-9));
        assertThat(room.left().headToOtherHand().distance()).isCloseTo(0.9, within(1e-9));
        assertThat(room.passings()).isEmpty();
    }

    @Test
    void theLinkOfAStaticSpinAndATriquetraKeepsHeadAndHandAHandsBreadthApart() {
        Part carrier =
                new Part(
                        Motion.staticSpin(1, 0),
                        Tether.USUAL,
                        Place.usual(Side.LEFT, Plane.WALL),
                        1);
        Part rider =
                new Part(
                        new Motion(new Riding(), new Turns(-2, 0)),
                        Tether.USUAL,
                        Place.usual(Side.RIGHT, Plane.WALL),
                        1);
        Room room = of(carrier, rider);
        assertThat(room.left().headToOtherHand().distance())
                .isCloseTo(Place.HAND_BREADTH, within(1e-9));
        assertThat(room.tetherToTether().distance()).isCloseTo(Place.HAND_BREADTH, within(1e-9));
    }

    /**
     * Two spins of 0.6 m, hands 0.6 m apart, in opposite directions and together: the tethers are
     * mirror images, so they cross while both reach over the middle, from 60 degrees before the
     * inward way to 60 degrees after it; a third of the cycle.
     */
    @Test
    void mirroredSpinsPassBeforeEachOtherOverTheMiddle() {
        Room room =
                of(
                        Pairing.of(
                                        spin(Plane.WALL, new Vector3D(0.3, 0, 0.34), 1),
                                        spin(Plane.WALL, new Vector3D(-0.3, 0, 0.26), 1))
                                .with(Direction.OPPOSITE));
        // Along one line at the inward instant they only lie along one another, so that parts the
        // passing in two.
        double crossed = room.passings().stream().mapToDouble(p -> p.spell().length()).sum();
        assertThat(crossed).isCloseTo(1.0 / 3, within(3e-3));
        for (Passing passing : room.passings()) {
            assertThat(passing.front()).contains(Side.LEFT);
            assertThat(passing.depthBetween()).isCloseTo(0.08, within(1e-9));
            assertThat(passing.left().getX()).isCloseTo(0, within(1e-9));
            assertThat(passing.right().getY()).isCloseTo(passing.left().getY(), within(1e-9));
            assertThat(passing.leftLies().nearest()).isEqualTo(Plane.Kind.WALL);
            assertThat(passing.leftLies().exact()).isTrue();
        }
    }

    @Test
    void aWheelPlaneSpinPassesBehindAWallPlaneSpin() {
        Room room =
                of(
                        spin(Plane.WALL, new Vector3D(0.3, 0.1, 0.9), 1),
                        spin(Plane.WHEEL, new Vector3D(0, 0, 0), 2));
        assertThat(room.passings()).isNotEmpty();
        for (Passing passing : room.passings()) {
            assertThat(passing.front()).contains(Side.LEFT);
            assertThat(passing.rightLies().nearest()).isEqualTo(Plane.Kind.WHEEL);
        }
    }

    @Test
    void inATurningPlaneThePoiLiesWhereThePlaneHasTurnedTo() {
        Part flat = spin(Plane.WALL, new Vector3D(0, 0, 0.9), 1);
        for (PlaneTurn.Axis axis : PlaneTurn.Axis.values()) {
            PlaneTurn turn = new PlaneTurn(1, axis, PlaneTurn.Carries.FIGURE);
            Part turning = flat.with(flat.place().withTurn(turn));
            for (boolean mirrored : new boolean[] {false, true}) {
                Pairing pairing = Pairing.of(turning, flat);
                Trace trace =
                        Trace.of(
                                mirrored
                                        ? pairing.with(
                                                deferent.motion.pairing.Sense.COUNTER_CLOCKWISE)
                                        : pairing);
                for (double t = 0.01; t < 1; t += 0.07) {
                    Vector3D tether =
                            trace.head(Side.LEFT)
                                    .position(t)
                                    .subtract(trace.hand(Side.LEFT).position(t));
                    Lying lying = Lying.of(turning, mirrored, t);
                    assertThat(lying.normal().dotProduct(tether)).isCloseTo(0, within(1e-9));
                }
            }
            assertThat(Lying.of(turning, false, 0.25).nearest())
                    .isEqualTo(
                            axis == PlaneTurn.Axis.UPRIGHT ? Plane.Kind.WHEEL : Plane.Kind.FLOOR);
        }
    }

    @Test
    void aWallPlaneBeforeTheBodyClearsItByItsDepth() {
        Room room =
                of(
                        spin(Plane.WALL, new Vector3D(0, 0, 0.34), 1),
                        spin(Plane.WALL, new Vector3D(0, 0, 0.26), 1));
        assertThat(room.left().tetherToBody().distance()).isCloseTo(0.34, within(2e-2));
        assertThat(room.right().handToBody().distance()).isCloseTo(0.26, within(1e-9));
    }

    @Test
    void aWheelPlaneThroughTheMiddleHitsTheBody() {
        Room room =
                of(
                        spin(Plane.WHEEL, new Vector3D(0.04, 0, 0.3), 1),
                        spin(Plane.WHEEL, new Vector3D(-0.6, 0, 0.3), 1));
        assertThat(room.left().headToBody().distance()).isNegative();
        assertThat(room.left().nearestPart()).isEqualTo(BodyOutline.Part.TRUNK);
        assertThat(room.right().tetherToBody().distance()).isPositive();
    }

    @Test
    void nearestTimesAreWhereTheExactTraceIsNearest() {
        Pairing pairing =
                Pairing.of(
                                new Part(
                                        Motion.flower(0.5, -3, 0.2),
                                        Tether.of(0.55),
                                        Place.usual(Side.LEFT, Plane.WALL),
                                        2),
                                new Part(
                                        Motion.flower(0.4, 4, 0.9),
                                        Tether.of(0.6),
                                        Place.usual(Side.RIGHT, Plane.WALL),
                                        3))
                        .with(Timing.of(0.37));
        Trace trace = Trace.of(pairing);
        Nearness heads = Room.of(trace, Performer.USUAL).headToHead();
        double brute = Double.POSITIVE_INFINITY;
        for (int i = 0; i < 200_000; i++) {
            double t = trace.period() * i / 200_000;
            brute =
                    Math.min(
                            brute,
                            trace.head(Side.LEFT)
                                    .position(t)
                                    .distance(trace.head(Side.RIGHT).position(t)));
        }
        assertThat(heads.distance()).isCloseTo(brute, within(1e-6));
        assertThat(heads.distance()).isLessThanOrEqualTo(brute + 1e-12);
    }

    private static Part turning(
            double radius, int turns, Plane plane, Vector3D centre, int cycles) {
        return new Part(
                Motion.flower(radius, turns, 0.4),
                Tether.of(0.55),
                new Place(plane, PlaneTurn.NONE, centre),
                cycles);
    }

    // JTS's distance between two segments, at very many instants.
    @Test
    void tethersAreAsNearAsTheirNearestPoints() {
        Plane tilted = new Plane(Plane.Kind.WALL, 0.4, 0.3);
        for (Pairing pairing :
                new Pairing[] {
                    Pairing.of(
                            turning(0.3, -2, Plane.WALL, new Vector3D(0.3, 0, 0.3), 1),
                            turning(0.4, 3, tilted, new Vector3D(-0.2, 0.1, 0.5), 2)),
                    Pairing.of(
                            spin(Plane.WALL, new Vector3D(0.3, 0.1, 0.9), 1),
                            spin(Plane.WHEEL, new Vector3D(0, 0, 0.5), 2)),
                    Pairing.of(
                            spin(Plane.FLOOR, new Vector3D(0.9, 0.2, 0.4), 1),
                            spin(tilted, new Vector3D(-0.5, 0.1, 0.2), 3)),
                    Pairing.of(
                            turning(0.2, 2, Plane.WHEEL, new Vector3D(0.4, 0, 0.3), 1),
                            turning(0.3, -3, Plane.WALL, new Vector3D(-0.2, 0.3, 0.5), 1))
                }) {
            Trace trace = Trace.of(pairing);
            double least = Double.POSITIVE_INFINITY;
            int count = 20_000;
            for (int i = 0; i < count; i++) {
                double t = trace.period() * i / count;
                least =
                        Math.min(
                                least,
                                CGAlgorithms3D.distanceSegmentSegment(
                                        at(trace.hand(Side.LEFT).position(t)),
                                        at(trace.head(Side.LEFT).position(t)),
                                        at(trace.hand(Side.RIGHT).position(t)),
                                        at(trace.head(Side.RIGHT).position(t))));
            }
            assertThat(Room.of(trace, Performer.USUAL).tetherToTether().distance())
                    .isCloseTo(least, within(5e-4));
        }
    }

    private static Coordinate at(Vector3D p) {
        return new Coordinate(p.getX(), p.getY(), p.getZ());
    }

    @Test
    void whereTethersCrossInViewBothPointsLieOnTheirTethersOneBehindTheOther() {
        Trace trace =
                Trace.of(
                        Pairing.of(
                                        turning(0.3, -2, Plane.WALL, new Vector3D(0.2, 0, 0.3), 1),
                                        turning(
                                                0.1,
                                                3,
                                                Plane.WALL,
                                                new Vector3D(-0.2, 0.1, 0.5),
                                                2))
                                .withTempo(OptionalDouble.of(40)));
        Room room = Room.of(trace, Performer.USUAL);
        assertThat(room.passings()).isNotEmpty();
        for (Passing passing : room.passings()) {
            assertThat(passing.left().getX()).isCloseTo(passing.right().getX(), within(1e-9));
            assertThat(passing.left().getY()).isCloseTo(passing.right().getY(), within(1e-9));
            onTether(trace, Side.LEFT, passing.time(), passing.left());
            onTether(trace, Side.RIGHT, passing.time(), passing.right());
            double middle = (passing.spell().start() + passing.spell().end()) / 2;
            assertThat(Math.IEEEremainder(passing.time() - middle, trace.period()))
                    .isCloseTo(0, within(1e-9));
        }
    }

    private static void onTether(Trace trace, Side side, double time, Vector3D point) {
        Vector3D hand = trace.hand(side).position(time);
        Vector3D head = trace.head(side).position(time);
        assertThat(hand.distance(point) + point.distance(head))
                .isCloseTo(hand.distance(head), within(1e-9));
    }

    @Test
    void whereTethersPassATurningPoiLiesInItsTurnedPlane() {
        Part flat = spin(Plane.WALL, new Vector3D(0.2, 0, 0.3), 3);
        PlaneTurn turn = new PlaneTurn(2, PlaneTurn.Axis.UPRIGHT, PlaneTurn.Carries.FIGURE);
        Part turning =
                new Part(
                        Motion.staticSpin(3, 0),
                        Tether.of(0.6),
                        new Place(Plane.WALL, turn, new Vector3D(-0.2, 0, 0.9)),
                        2);
        Trace trace =
                Trace.of(
                        Pairing.of(flat, turning)
                                .with(Timing.of(0.2))
                                .withTempo(OptionalDouble.of(40)));
        Room room = Room.of(trace, Performer.USUAL);
        assertThat(room.passings()).isNotEmpty();
        for (Passing passing : room.passings()) {
            Vector3D tether =
                    trace.head(Side.RIGHT)
                            .position(passing.time())
                            .subtract(trace.hand(Side.RIGHT).position(passing.time()));
            assertThat(passing.rightLies().normal().dotProduct(tether)).isCloseTo(0, within(1e-9));
        }
    }

    @Test
    void howFarAPlaneLeansIsTheAngleToTheNearestOfTheTrade() {
        Lying wall = Lying.across(new Vector3D(0, Math.sin(0.3), Math.cos(0.3)));
        assertThat(wall.nearest()).isEqualTo(Plane.Kind.WALL);
        assertThat(wall.off()).isCloseTo(0.3, within(1e-12));
        assertThat(wall.exact()).isFalse();
        Lying floor = Lying.across(new Vector3D(0.6, -0.8, 0));
        assertThat(floor.nearest()).isEqualTo(Plane.Kind.FLOOR);
        assertThat(floor.off()).isCloseTo(Math.asin(0.6), within(1e-12));
        Vector3D even = new Vector3D(1, 1, 1).normalize();
        assertThat(Lying.across(even).off()).isCloseTo(Math.acos(1 / Math.sqrt(3)), within(1e-9));
        assertThat(Lying.across(Vector3D.MINUS_I))
                .extracting(Lying::nearest, Lying::off)
                .containsExactly(Plane.Kind.WHEEL, 0.0);
    }

    @Test
    void whatIsNoNumberIsNoPlaneAndNoCrossing() {
        Lying lying = Lying.across(Vector3D.PLUS_K);
        assertThatThrownBy(() -> new Lying(Plane.Kind.WALL, Double.NaN, Vector3D.PLUS_K))
                .isInstanceOf(Refusal.class);
        assertThatThrownBy(
                        () ->
                                new Passing(
                                        new Interval(0, 1),
                                        Double.NaN,
                                        Vector3D.ZERO,
                                        Vector3D.ZERO,
                                        lying,
                                        lying))
                .isInstanceOf(Refusal.class);
    }

    // From 2 s to 5 s along a straight line past the origin, and not round again.
    private static Trace once(double from) {
        Trace spun =
                Trace.of(
                        Pairing.of(
                                spin(Plane.WALL, Vector3D.ZERO, 1),
                                spin(Plane.WALL, Vector3D.ZERO, 1)));
        return new Trace(
                spun.pairing(),
                Origin.MEASURED,
                new Interval(from, from + 3),
                false,
                Map.of(Side.LEFT, spun.hand(Side.LEFT), Side.RIGHT, spun.hand(Side.RIGHT)),
                Map.of(Side.LEFT, spun.head(Side.LEFT), Side.RIGHT, spun.head(Side.RIGHT)),
                List.of(),
                Map.of(),
                List.of(),
                0);
    }

    @Test
    void inATraceThatEndsSpellsEndWithIt() {
        Trace trace = once(2);
        Samples samples = trace.samples(30);
        assertThat(Spells.of(trace, samples, i -> true, t -> true))
                .containsExactly(new Interval(2, 5));
        assertThat(Spells.of(trace, samples, i -> false, t -> false)).isEmpty();
        List<Interval> late =
                Spells.of(trace, samples, i -> samples.time(i) >= 4.01, t -> t >= 4.01);
        assertThat(late).hasSize(1);
        assertThat(late.get(0).start()).isCloseTo(4.01, within(1e-6));
        assertThat(late.get(0).end()).isEqualTo(5);
        List<Interval> early =
                Spells.of(trace, samples, i -> samples.time(i) < 2.51, t -> t < 2.51);
        assertThat(early).hasSize(1);
        assertThat(early.get(0).start()).isEqualTo(2);
        assertThat(early.get(0).end()).isCloseTo(2.51, within(1e-6));
    }

    @Test
    void inATraceThatEndsTheNearestInstantLiesWithinIt() {
        Trace trace = once(2);
        Samples samples = trace.samples(30);
        for (double low : new double[] {1, 2, 3.333, 4.97, 5, 7}) {
            double[] sampled = new double[30];
            for (int i = 0; i < 30; i++) {
                sampled[i] = Math.abs(samples.time(i) - low);
            }
            Nearness near = Nearness.of(trace, samples, sampled, t -> Math.abs(t - low));
            double expected = Math.max(2, Math.min(5, low));
            assertThat(near.time()).isCloseTo(expected, within(1e-5));
            assertThat(near.distance()).isCloseTo(Math.abs(expected - low), within(1e-5));
        }
        assertThat(Nearness.within(trace, 7.5)).isEqualTo(7.5);
    }

    @Test
    void aTimeOfAnotherCycleIsBroughtIntoThisOne() {
        Trace trace =
                Trace.of(
                        Pairing.of(
                                        turning(0.3, -2, Plane.WALL, Vector3D.ZERO, 1),
                                        turning(0.3, -2, Plane.WALL, Vector3D.ZERO, 1))
                                .withTempo(OptionalDouble.of(75)));
        assertThat(trace.period()).isCloseTo(0.8, within(1e-12));
        assertThat(Nearness.within(trace, 0.3)).isCloseTo(0.3, within(1e-12));
        assertThat(Nearness.within(trace, 1.9)).isCloseTo(0.3, within(1e-12));
        assertThat(Nearness.within(trace, -0.1)).isCloseTo(0.7, within(1e-12));
        assertThat(Nearness.within(trace, trace.period())).isZero();
    }
}
