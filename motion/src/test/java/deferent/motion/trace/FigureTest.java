package deferent.motion.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Polygon;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FigureTest {
    private static final double L = 0.6;

    private static Part part(Motion motion) {
        return new Part(motion, Tether.of(L), Place.usual(Side.LEFT, Plane.WALL), 1);
    }

    private static Pairing beside(Part left) {
        Place place = Place.usual(Side.RIGHT, Plane.WALL);
        return Pairing.of(left, new Part(Motion.staticSpin(1, 0), Tether.of(L), place, 1));
    }

    private static Figure figure(Motion motion) {
        return Figure.of(Trace.of(beside(part(motion))), Side.LEFT);
    }

    private static Figure flower(double handRadius, int turns) {
        return figure(Motion.flower(handRadius, turns, 0.7));
    }

    /** Closed forms of Lawrence, A Catalog of Special Plane Curves (1972), to a part in 10⁹. */
    @Nested
    class Lawrence {
        @ParameterizedTest(name = "{0}: n = {1}, R = {2} L")
        @CsvSource({
            "deltoid, -2, 2, 2, 16, 3",
            "astroid, -3, 3, 6, 24, 4",
            "cardioid, 2, 2, 6, 16, 1",
            "nephroid, 3, 3, 12, 24, 2"
        })
        void aCuspedFlowerHasItsBooksAreaAndLength(
                String name, int turns, double ratio, double area, double length, int cusps) {
            Figure figure = flower(ratio * L, turns);
            double square = Math.PI * L * L;
            assertThat(figure.signedArea()).isCloseTo(area * square, within(1e-9));
            assertThat(figure.unionArea()).isCloseTo(area * square, within(1e-9));
            assertThat(figure.length()).isCloseTo(length * L, within(1e-9));
            assertThat(figure.cusps()).isEqualTo(cusps);
            assertThat(figure.petals()).isEqualTo(cusps);
            assertThat(figure.symmetryOrder()).isEqualTo(cusps);
            assertThat(figure.selfCrossings()).isZero();
            assertThat(figure.outerRadius()).isCloseTo((ratio + 1) * L, within(1e-9));
        }

        /** An ellipse: area π(R + L)|R − L|, against the hand's turn where R is below L. */
        @ParameterizedTest
        @ValueSource(doubles = {0.3, 0.5, 0.9, 1.4})
        void aCatEyeIsAnEllipse(double handRadius) {
            Figure figure = figure(Motion.flower(handRadius, -1, 0));
            double area = Math.PI * (handRadius + L) * (handRadius - L);
            assertThat(figure.signedArea()).isCloseTo(area, within(1e-9));
            assertThat(figure.unionArea()).isCloseTo(Math.abs(area), within(1e-9));
            assertThat(figure.width()).isCloseTo(2 * (handRadius + L), within(1e-9));
            assertThat(figure.height()).isCloseTo(2 * Math.abs(handRadius - L), within(1e-9));
            assertThat(figure.symmetryOrder()).isEqualTo(2);
            assertThat(figure.petals()).isZero();
        }

        /** Cardan circles: a line of length 4L passed over twice. */
        @Test
        void aLinearExtensionIsALinePassedOverTwice() {
            Figure figure = figure(Motion.flower(L, -1, 0));
            assertThat(figure.width()).isCloseTo(4 * L, within(1e-9));
            assertThat(figure.height()).isCloseTo(0, within(1e-9));
            assertThat(figure.length()).isCloseTo(8 * L, within(1e-9));
            assertThat(figure.unionArea()).isCloseTo(0, within(1e-9));
            assertThat(figure.cusps()).isEqualTo(2);
            assertThat(figure.selfCrossings()).isZero();
        }
    }

    /** Common practice, no source. */
    @Nested
    class TradeFacts {
        @Test
        void anExtensionAndATriquetraReachEquallyFar() {
            Figure extension = figure(Motion.flower(L, 1, 0));
            assertThat(extension.outerRadius()).isCloseTo(2 * L, within(1e-9));
            assertThat(flower(L, -2).outerRadius()).isCloseTo(2 * L, within(1e-9));
        }

        @Test
        void aStaticSpinReachesATetherAndATriquetraTwo() {
            assertThat(figure(Motion.staticSpin(1, 0)).outerRadius()).isCloseTo(L, within(1e-9));
            assertThat(flower(L, -2).outerRadius()).isCloseTo(2 * L, within(1e-9));
        }

        @Test
        void aCatEyeFallsIntoALinearExtensionAsTheHandCircleNearsTheTether() {
            for (double off : new double[] {0.1, 0.01, 0.001}) {
                Figure figure = figure(Motion.flower(L + off, -1, 0));
                assertThat(figure.height()).isCloseTo(2 * off, within(1e-9));
                assertThat(figure.selfCrossings()).isZero();
            }
        }

        @Test
        void anIsolationDrawsACircleOfHalfItsTether() {
            Figure figure = figure(Motion.flower(L / 2, 1, Math.PI));
            assertThat(figure.outerRadius()).isCloseTo(L / 2, within(1e-9));
            assertThat(figure.symmetryOrder()).isZero();
        }
    }

    @Test
    void theHeadsLengthIsCountedRoundByRound() {
        Figure twice = figure(Motion.staticSpin(2, 0));
        assertThat(twice.length()).isCloseTo(4 * Math.PI * L, within(1e-9));
        assertThat(twice.signedArea()).isCloseTo(2 * Math.PI * L * L, within(1e-9));
        assertThat(twice.unionArea()).isCloseTo(Math.PI * L * L, within(1e-9));
        assertThat(twice.selfCrossings()).isZero();
    }

    @Test
    @SuppressWarnings("ArgumentSelectionDefectChecker") // the hands change places
    void anAntispinFlowerThatGoesRoundAgainstTheHandHasNegativeArea() {
        assertThat(flower(L, -2).signedArea()).isCloseTo(-Math.PI * L * L, within(1e-9));
        Pairing mirrored = beside(part(Motion.flower(L, -2, 0)));
        Figure figure =
                Figure.of(
                        Trace.of(
                                new Pairing(
                                        mirrored.right(),
                                        mirrored.left(),
                                        mirrored.timing(),
                                        Direction.OPPOSITE,
                                        mirrored.sense(),
                                        mirrored.tempoSaid())),
                        Side.RIGHT);
        assertThat(figure.signedArea()).isCloseTo(Math.PI * L * L, within(1e-9));
    }

    /**
     * A three-petal rose r = 2L·cos 3θ: its petals meet in one point and cover, all told, π·L²
     * (Lawrence 1972, rose).
     */
    @Test
    void aTriquetraIsARoseWhosePetalsMeetInOnePoint() {
        Figure rose = flower(L, -2);
        assertThat(rose.selfCrossings()).isEqualTo(1);
        assertThat(rose.unionArea()).isCloseTo(Math.PI * L * L, within(1e-5));
        assertThat(rose.cusps()).isZero();
        assertThat(rose.symmetryOrder()).isEqualTo(3);
    }

    /**
     * A limaçon r = 2·cos θ + 1 (times L, about its node): outer loop L²(2π + 3√3/2), inner loop
     * within it (Lawrence 1972, limaçon); the hand circle 1 tether and n = 2 draw it.
     */
    @Test
    void anInSpinOfOnePetalCrossesItselfOnceAndItsInnerLoopCountsOnce() {
        Figure limacon = flower(L, 2);
        assertThat(limacon.selfCrossings()).isEqualTo(1);
        assertThat(limacon.signedArea()).isCloseTo(3 * Math.PI * L * L, within(1e-9));
        double outer = (2 * Math.PI + 3 * Math.sqrt(3) / 2) * L * L;
        assertThat(limacon.unionArea()).isCloseTo(outer, within(1e-5 * outer));
    }

    /** A loop at each petal's end, or between the petals, that touches no other loop. */
    @ParameterizedTest
    @CsvSource({"-2, 1.5, 3", "-3, 1.5, 4", "-4, 2, 5", "3, 2, 2", "4, 2, 3", "6, 2, 5"})
    void aFlowerWithLoopsCrossesItselfOnceAPetal(int turns, double ratio, int crossings) {
        Figure figure = flower(ratio * L, turns);
        assertThat(figure.selfCrossings()).isEqualTo(crossings);
        assertThat(figure.symmetryOrder()).isEqualTo(crossings);
    }

    @Test
    void aPendulumsSwingIsAnArcPassedOverTwice() {
        Figure swing = figure(Motion.pendulum(1.2));
        assertThat(swing.length()).isCloseTo(4 * 1.2 * L, within(1e-9));
        assertThat(swing.width()).isCloseTo(2 * L * Math.sin(1.2), within(1e-9));
        assertThat(swing.height()).isCloseTo(L * (1 - Math.cos(1.2)), within(1e-9));
        assertThat(swing.cusps()).isEqualTo(2);
        assertThat(swing.selfCrossings()).isZero();
        assertThat(swing.unionArea()).isCloseTo(0, within(1e-9));
    }

    @Test
    void aHeadThatStaysWhereItIsDrawsNothing() {
        Figure still = figure(Motion.staticSpin(0, 0));
        assertThat(still.length()).isZero();
        assertThat(still.width()).isZero();
        assertThat(still.outerRadius()).isCloseTo(L, within(1e-12));
    }

    @Test
    void aSquareHandPathWithAHeldTetherIsASquare() {
        Figure square = figure(new Motion(new Polygon(4, 0.5, 0), new Turns(0, 0)));
        assertThat(square.length()).isCloseTo(4 * 0.5 * Math.sqrt(2), within(1e-9));
        assertThat(square.unionArea()).isCloseTo(0.5, within(1e-9));
        assertThat(square.width()).isCloseTo(1, within(1e-9));
        assertThat(square.symmetryOrder()).isEqualTo(4);
        assertThat(square.cusps()).isZero();
        assertThat(square.outerRadius()).isCloseTo(0.5 + L, within(1e-9));
    }

    @Test
    void aFigureIsMeasuredOverItsOwnCycleWhateverTheOtherHandDoes() {
        Figure alone = flower(1.5 * L, -3);
        Part quick =
                new Part(
                        Motion.flower(1.5 * L, -3, 0.7),
                        Tether.of(L),
                        Place.usual(Side.LEFT, Plane.WALL),
                        3);
        Pairing rhythm =
                Pairing.of(
                        quick,
                        new Part(
                                Motion.flower(0.4, 2, 0),
                                Tether.of(L),
                                Place.usual(Side.RIGHT, Plane.WALL),
                                2));
        Figure among = Figure.of(Trace.of(rhythm), Side.LEFT);
        assertThat(among.length()).isCloseTo(alone.length(), within(1e-9));
        assertThat(among.selfCrossings()).isEqualTo(4);
        assertThat(among.unionArea()).isCloseTo(alone.unionArea(), within(1e-9));
    }

    @Test
    void aRiderOnAStaticSpinDrawsTheFlowerOfThatHandCircle() {
        Pairing riding =
                Pairing.of(
                        part(Motion.staticSpin(1, 0)),
                        new Part(
                                new Motion(new Riding(), new Turns(-2, 0.7)),
                                Tether.of(L),
                                Place.usual(Side.RIGHT, Plane.WALL),
                                1));
        Figure rider = Figure.of(Trace.of(riding), Side.RIGHT);
        Figure flower = flower(L, -2);
        assertThat(rider.length()).isCloseTo(flower.length(), within(1e-9));
        assertThat(rider.selfCrossings()).isEqualTo(flower.selfCrossings());
        assertThat(rider.symmetryOrder()).isEqualTo(3);
    }

    @Test
    void theUsualCapStallsNowhereAndReachesTwoTethers() {
        Figure cap =
                figure(
                        new Motion(
                                new Arc(L, Swing.DOWN, Math.PI / 2, 0.25), new Turns(2, -Math.PI)));
        assertThat(cap.cusps()).isZero();
        assertThat(cap.outerRadius()).isCloseTo(2 * L, within(1e-9));
        assertThat(cap.symmetryOrder()).isEqualTo(1);
    }

    /**
     * Out of its plane: a circle turned once about its upright is as wide as before, seen whole.
     */
    @Test
    void aToroidIsAsWideAsTheFigureItTurns() {
        Part flat = part(Motion.flower(L, 1, 0));
        PlaneTurn turn = new PlaneTurn(1, PlaneTurn.Axis.UPRIGHT, PlaneTurn.Carries.FIGURE);
        Figure toroid =
                Figure.of(Trace.of(beside(flat.with(flat.place().withTurn(turn)))), Side.LEFT);
        assertThat(toroid.outerRadius()).isCloseTo(2 * L, within(1e-9));
        assertThat(toroid.height()).isCloseTo(4 * L, within(1e-9));
        // u = 2L·cos², across = −2L·cos·sin: 2L either way at most.
        assertThat(toroid.width()).isCloseTo(2 * L, within(1e-9));
    }

    @Test
    void anEllipticHandPathWithAHeldTetherIsThatEllipse() {
        Figure figure = figure(new Motion(Series.ellipse(0.5, 0.2, 0.3), new Turns(0, 1)));
        assertThat(figure.unionArea()).isCloseTo(Math.PI * 0.5 * 0.2, within(1e-9));
        assertThat(figure.symmetryOrder()).isEqualTo(2);
    }
}
