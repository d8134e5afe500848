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
        Drawn drawn =
                new Drawn(
                        List.of(
                                Drawn.Cubic.line(r, 0, 0, r),
                                Drawn.Cubic.line(0, r, -r, 0),
                                Drawn.Cubic.line(-r, 0, 0, -r),
                                Drawn.Cubic.line(0, -r, r, 0)));
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

    private static double speed(PlaneJet at) {
        return Math.hypot(at.u().d1(), at.v().d1());
    }
}
