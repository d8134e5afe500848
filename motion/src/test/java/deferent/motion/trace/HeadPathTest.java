package deferent.motion.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Polygon;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import java.util.List;
import java.util.Map;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.special.elliptic.legendre.LegendreEllipticIntegral;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class HeadPathTest {
    private static final double L = 0.6;

    private static Trace trace(Motion motion, Place place) {
        Part other =
                new Part(
                        Motion.staticSpin(1, 0),
                        Tether.of(L),
                        Place.usual(Side.RIGHT, Plane.WALL),
                        1);
        return Trace.of(Pairing.of(new Part(motion, Tether.of(L), place, 1), other));
    }

    private static Trace trace(Motion motion) {
        return trace(motion, Place.usual(Side.LEFT, Plane.WALL));
    }

    private static int crossings(Motion motion) {
        return SelfCrossings.count(HeadPath.of(trace(motion), Side.LEFT, 720));
    }

    /** So that each loop's sides cross level, upright, and at mirrored slopes, and at the seam. */
    @ParameterizedTest
    @CsvSource({"-3, 1.5, 4", "2, 1, 1", "3, 2, 2"})
    void howAFlowerIsTurnedChangesNoneOfItsCrossings(int turns, double ratio, int crossings) {
        for (double degrees = 0; degrees < 90; degrees += 0.75) {
            double start = (1 - turns) * Math.toRadians(degrees);
            assertThat(crossings(Motion.flower(ratio * L, turns, start)))
                    .as("turned by %s°", degrees)
                    .isEqualTo(crossings);
        }
    }

    /**
     * A cat-eye is an ellipse of semi-axes R + L and R − L: it is 4(R + L)·E(m) long, m = 1 − (R −
     * L)²/(R + L)² (DLMF 19.30.2).
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.45, 0.55, 0.59, 0.62, 1})
    void aCatEyeIsAsLongAsItsEllipse(double handRadius) {
        double across = (handRadius - L) / (handRadius + L);
        double length = 4 * (handRadius + L) * LegendreEllipticIntegral.bigE(1 - across * across);
        Trace trace = trace(Motion.flower(handRadius, -1, 0.3));
        assertThat(Figure.of(trace, Side.LEFT).length()).isCloseTo(length, within(1e-9));
        assertThat(Figure.quick(trace, Side.LEFT).length()).isCloseTo(length, within(1e-5));
    }

    @Test
    void aFigureIsTheSameInEveryPlane() {
        Motion flower = Motion.flower(0.5, 3, 0.4);
        Figure wall = Figure.of(trace(flower), Side.LEFT);
        for (Plane plane :
                List.of(
                        Plane.WHEEL,
                        Plane.FLOOR,
                        new Plane(Plane.Kind.WALL, 0.4, -0.7),
                        new Plane(Plane.Kind.WHEEL, -0.3, 1.2))) {
            Place place = Place.usual(Side.LEFT, plane).withCentre(new Vector3D(0.3, -0.2, 0.5));
            Figure figure = Figure.of(trace(flower, place), Side.LEFT);
            assertThat(figure.width()).isCloseTo(wall.width(), within(1e-9));
            assertThat(figure.height()).isCloseTo(wall.height(), within(1e-9));
            assertThat(figure.signedArea()).isCloseTo(wall.signedArea(), within(1e-9));
            assertThat(figure.outerRadius()).isCloseTo(wall.outerRadius(), within(1e-9));
            assertThat(figure.length()).isCloseTo(wall.length(), within(1e-9));
            assertThat(figure.selfCrossings()).isEqualTo(wall.selfCrossings());
        }
    }

    /** Turned about u instead of v: as tall as deep, and as wide as it lies. */
    @Test
    void aToroidAboutItsLevelAxisIsAsTallAsItIsDeep() {
        PlaneTurn turn = new PlaneTurn(1, PlaneTurn.Axis.LEVEL, PlaneTurn.Carries.FIGURE);
        Figure toroid =
                Figure.of(
                        trace(
                                Motion.flower(L, 1, 0),
                                Place.usual(Side.LEFT, Plane.WALL).withTurn(turn)),
                        Side.LEFT);
        // v = 2L·sin·cos, across 2L·sin²: L either way against 2L in all.
        assertThat(toroid.width()).isCloseTo(4 * L, within(1e-9));
        assertThat(toroid.height()).isCloseTo(2 * L, within(1e-9));
    }

    /** A corner between two samples is where the head is farthest. */
    @Test
    void aPolygonReachesAsFarAsItsCornersWhateverTheSamples() {
        double second = 2 * Math.PI / 7;
        Motion held = new Motion(new Polygon(7, 0.5, 0), new Turns(0, second));
        Figure heptagon = Figure.of(trace(held), Side.LEFT);
        assertThat(heptagon.outerRadius()).isCloseTo(0.5 + L, within(1e-12));
        assertThat(heptagon.height()).isCloseTo(2 * 0.5 * Math.sin(2 * second), within(1e-12));
        assertThat(heptagon.width()).isCloseTo(0.5 - 0.5 * Math.cos(3 * second), within(1e-12));
    }

    /** Out along u in 0.3 s, a rest, and back in 0.4 s, from rest to rest as a raised cosine. */
    @Test
    void aHeadThatRestsAtAnEndHasTurnedBackThereOnce() {
        Place place = Place.usual(Side.LEFT, Plane.WALL);
        Course head =
                time -> {
                    double t = time - Math.floor(time);
                    double from = t < 0.3 ? 0 : 0.6;
                    double span = t < 0.3 ? 0.3 : 0.4;
                    if (t >= 0.3 && t < 0.6) {
                        return along(place, 0.5, 0, 0, 0);
                    }
                    double w = Math.PI / span;
                    double angle = w * (t - from);
                    double way = t < 0.3 ? 1 : -1;
                    return along(
                            place,
                            -way * 0.5 * Math.cos(angle),
                            way * 0.5 * w * Math.sin(angle),
                            way * 0.5 * w * w * Math.cos(angle),
                            -way * 0.5 * w * w * w * Math.sin(angle));
                };
        Pairing pairing = trace(Motion.staticSpin(1, 0)).pairing();
        Trace resting =
                new Trace(
                        pairing,
                        Origin.MEASURED,
                        new Interval(0, 1),
                        true,
                        Map.of(Side.LEFT, head, Side.RIGHT, head),
                        Map.of(Side.LEFT, head, Side.RIGHT, head),
                        List.of(
                                new TimedBreak(0, 2, Side.LEFT, "sets out"),
                                new TimedBreak(0.3, 2, Side.LEFT, "stops"),
                                new TimedBreak(0.6, 2, Side.LEFT, "comes back")),
                        Map.of(),
                        List.of(),
                        0);
        HeadPath path = HeadPath.of(resting, Side.LEFT, 720);
        assertThat(path.cusps()).isEqualTo(2);
        assertThat(path.width()).isCloseTo(1, within(1e-9));
        assertThat(Travel.along(path, 1e-10).length()).isCloseTo(2, within(1e-9));
    }

    private static State along(Place place, double u, double d1, double d2, double d3) {
        Vector3D axis = place.plane().u();
        return new State(
                place.centre().add(axis.scalarMultiply(u)),
                axis.scalarMultiply(d1),
                axis.scalarMultiply(d2),
                axis.scalarMultiply(d3));
    }
}
