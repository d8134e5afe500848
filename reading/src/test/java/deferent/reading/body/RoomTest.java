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
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

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
}
