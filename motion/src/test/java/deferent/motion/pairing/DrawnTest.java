package deferent.motion.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class DrawnTest {
    // Handle length of the usual four-piece circle; it strays from the circle by 2.7e-4 radii.
    private static final double KAPPA = 4 * (Math.sqrt(2) - 1) / 3;

    static Drawn roundish(double r) {
        double k = KAPPA * r;
        return new Drawn(
                List.of(
                        new Drawn.Cubic(r, 0, r, k, k, r, 0, r),
                        new Drawn.Cubic(0, r, -k, r, -r, k, -r, 0),
                        new Drawn.Cubic(-r, 0, -r, -k, -k, -r, 0, -r),
                        new Drawn.Cubic(0, -r, k, -r, r, -k, r, 0)));
    }

    @Test
    void aDrawnPathIsWalkedAtOneSpeed() {
        HandPath.Course course = roundish(0.5).course();
        double first = speed(course.at(0.013));
        for (double phase = 0; phase < 1; phase += 0.0137) {
            assertThat(speed(course.at(phase))).isCloseTo(first, within(1e-9 * first));
        }
        assertThat(first).isCloseTo(Math.PI, within(1e-3 * Math.PI));
    }

    @Test
    void aDrawnSquareIsTheSameWalkAsAPolygon() {
        double r = 0.4;
        Drawn drawn = diamond(r);
        Polygon square = new Polygon(4, r, 0);
        assertThat(drawn.breaks()).hasSize(4).allMatch(b -> b.order() == 1);
        for (double phase = 0.003; phase < 1; phase += 0.0171) {
            PlaneJet a = drawn.course().at(phase);
            PlaneJet b = square.course().at(phase);
            assertThat(a.u().value()).isCloseTo(b.u().value(), within(1e-12));
            assertThat(a.v().value()).isCloseTo(b.v().value(), within(1e-12));
            assertThat(a.u().d1()).isCloseTo(b.u().d1(), within(1e-9));
            assertThat(a.v().d1()).isCloseTo(b.v().d1(), within(1e-9));
        }
    }

    @Test
    void aPieceWithItsHandlesPulledInStillMovesAtOneSpeed() {
        double r = 0.4;
        // A straight piece whose handles lie on its ends starts without speed in its own parameter.
        Drawn drawn =
                new Drawn(
                        List.of(
                                new Drawn.Cubic(-r, 0, -r, 0, r, 0, r, 0),
                                new Drawn.Cubic(r, 0, r, r, -r, r, -r, 0)));
        HandPath.Course course = drawn.course();
        double length = speed(course.at(0.1));
        for (double phase = 0; phase < 1; phase += 0.0137) {
            assertThat(speed(course.at(phase))).isCloseTo(length, within(1e-6 * length));
        }
        assertThat(speed(course.at(0))).isCloseTo(length, within(1e-6 * length));
    }

    @Test
    void aSmoothJoinIsNoCornerOfTheHandPath() {
        assertThat(roundish(0.5).breaks()).allMatch(b -> b.order() >= 2);
    }

    @Test
    void aPathThatDoesNotCloseIsRefused() {
        assertThatThrownBy(() -> new Drawn(List.of(Drawn.Cubic.line(0, 0, 1, 0))))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("does not close");
    }

    @Test
    void aPathWithAGapIsRefusedAndTheGapIsPlaced() {
        assertThatThrownBy(
                        () ->
                                new Drawn(
                                        List.of(
                                                Drawn.Cubic.line(0, 0, 1, 0),
                                                Drawn.Cubic.line(1, 0.1, 0, 0))))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("gap after piece 1");
    }

    @Test
    void aTurnedDrawingIsTheDrawingTurnedAndAsFarFromItsCentre() {
        Drawn path = roundish(0.5);
        for (double phase = 0; phase < 1; phase += 0.0731) {
            PlaneJet plain = path.course().at(phase);
            PlaneJet turned = path.turned(0.6).scaled(2).course().at(phase);
            double u = plain.u().value();
            double v = plain.v().value();
            assertThat(turned.u().value())
                    .isCloseTo(2 * (u * Math.cos(0.6) - v * Math.sin(0.6)), within(1e-12));
            assertThat(turned.v().value())
                    .isCloseTo(2 * (u * Math.sin(0.6) + v * Math.cos(0.6)), within(1e-12));
        }
        assertThat(path.radius()).isCloseTo(0.5, within(2e-4));
    }

    @Test
    void aRoundingBesideACornerTheHandIsOnTheSideThatWasMeant() {
        double r = 0.4;
        HandPath.Course course = diamond(r).course();
        double pace = 4 * r;
        for (double hair : new double[] {0, 1e-13, -1e-13}) {
            for (int corner = 1; corner < 4; corner++) {
                double phase = corner / 4.0 + hair;
                double into = Math.PI / 2 * (corner - 1);
                double out = Math.PI / 2 * corner;
                goes(course.at(phase), pace, out);
                goes(course.before(phase), pace, into);
                assertThat(course.place(phase).getX()).isCloseTo(r * Math.cos(out), within(1e-12));
                assertThat(course.place(phase).getY()).isCloseTo(r * Math.sin(out), within(1e-12));
            }
        }
        goes(course.at(1 - 1e-13), pace, 0);
        goes(course.before(1e-13), pace, 1.5 * Math.PI);
    }

    // From the corner at that angle to the next, a quarter turn on.
    private static void goes(PlaneJet at, double pace, double from) {
        assertThat(at.u().d1())
                .isCloseTo(pace * (Math.cos(from + Math.PI / 2) - Math.cos(from)), within(1e-9));
        assertThat(at.v().d1())
                .isCloseTo(pace * (Math.sin(from + Math.PI / 2) - Math.sin(from)), within(1e-9));
    }

    private static Drawn diamond(double r) {
        return new Drawn(
                List.of(
                        Drawn.Cubic.line(r, 0, 0, r),
                        Drawn.Cubic.line(0, r, -r, 0),
                        Drawn.Cubic.line(-r, 0, 0, -r),
                        Drawn.Cubic.line(0, -r, r, 0)));
    }

    @Test
    void aSmallDrawingIsWalkedAsALargeOneOfItsShape() {
        HandPath.Course small = roundish(0.005).course();
        HandPath.Course large = roundish(5).course();
        for (double phase = 0.0031; phase < 1; phase += 0.0471) {
            PlaneJet a = small.at(phase);
            PlaneJet b = large.at(phase);
            assertThat(1000 * a.u().value()).isCloseTo(b.u().value(), within(1e-9));
            assertThat(1000 * a.v().d1()).isCloseTo(b.v().d1(), within(1e-7));
            assertThat(1000 * a.u().d2()).isCloseTo(b.u().d2(), within(1e-6));
        }
    }

    /**
     * Mirrored across its join a path's place along it is odd and its place across it even, so
     * speed and bend pass over without a jump, and what jumps is how the bend changes.
     */
    @Test
    void aJoinBetweenMirroredPiecesIsABreakOfTheThirdOrder() {
        assertThat(roundish(0.5).breaks()).hasSize(4).allMatch(b -> b.order() == 3);
    }

    @Test
    void whereAStraightPieceRunsIntoABendTheBendChanges() {
        double r = 0.3;
        double k = KAPPA * r;
        Drawn stadium =
                new Drawn(
                        List.of(
                                Drawn.Cubic.line(-r, -r, r, -r),
                                new Drawn.Cubic(r, -r, r + k, -r, 2 * r, -k, 2 * r, 0),
                                new Drawn.Cubic(2 * r, 0, 2 * r, k, r + k, r, r, r),
                                Drawn.Cubic.line(r, r, -r, r),
                                new Drawn.Cubic(-r, r, -r - k, r, -2 * r, k, -2 * r, 0),
                                new Drawn.Cubic(-2 * r, 0, -2 * r, -k, -r - k, -r, -r, -r)));
        for (double size : new double[] {1, 0.001}) {
            assertThat(stadium.scaled(size).breaks().stream().map(Break::order))
                    .as("%s times as large", size)
                    .containsExactly(2, 2, 3, 2, 2, 3);
        }
    }

    /** Three straight pieces one after another: the joins on the way are none. */
    @Test
    void aJoinWithinAStraightLineIsNoBreak() {
        Drawn triangle =
                new Drawn(
                        List.of(
                                Drawn.Cubic.line(0, 0, 0.3, 0),
                                Drawn.Cubic.line(0.3, 0, 0.5, 0),
                                Drawn.Cubic.line(0.5, 0, 0, 0.5),
                                Drawn.Cubic.line(0, 0.5, 0, 0)));
        assertThat(triangle.breaks()).hasSize(3).allMatch(b -> b.order() == 1);
    }

    private static double speed(PlaneJet at) {
        return Math.hypot(at.u().d1(), at.v().d1());
    }
}
