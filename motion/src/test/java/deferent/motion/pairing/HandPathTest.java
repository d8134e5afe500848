package deferent.motion.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class HandPathTest {
    static List<HandPath> paths() {
        return List.of(
                Series.circle(0.5),
                circled(3),
                circled(-2),
                Series.ellipse(0.5, 0.2, 0.3),
                Series.ellipse(0.2, -0.5, 0.3),
                Series.line(0.4, 1.1),
                new Arc(0.5, 0.7, 1.2, 0.3),
                new Polygon(5, 0.4, 0.6),
                DrawnTest.roundish(0.5));
    }

    private static Series circled(int times) {
        return new Series(List.of(new Series.Term(times, 0.5, 0.4)));
    }

    private static void same(PlaneJet a, double u, double v) {
        assertThat(a.u().value()).isCloseTo(u, within(1e-12));
        assertThat(a.v().value()).isCloseTo(v, within(1e-12));
    }

    @ParameterizedTest
    @MethodSource("paths")
    void aLargerPathIsGoneTheSameWayFartherOut(HandPath path) {
        HandPath large = path.scaled(2.5);
        assertThat(large.radius()).isCloseTo(2.5 * path.radius(), within(1e-12));
        assertThat(path.resized(0.3).radius()).isCloseTo(0.3, within(1e-12));
        for (double phase = 0.01; phase < 1; phase += 0.0731) {
            PlaneJet at = path.course().at(phase);
            same(large.course().at(phase), 2.5 * at.u().value(), 2.5 * at.v().value());
        }
    }

    @ParameterizedTest
    @MethodSource("paths")
    void aTurnedPathIsGoneTheSameWayAboutItsCentre(HandPath path) {
        HandPath turned = path.turned(0.8);
        path.tilt()
                .ifPresent(
                        tilt ->
                                assertThat(turned.tilt().orElseThrow())
                                        .isCloseTo(tilt + 0.8, within(1e-12)));
        for (double phase = 0.01; phase < 1; phase += 0.0731) {
            PlaneJet at = path.course().at(phase);
            double u = at.u().value();
            double v = at.v().value();
            same(
                    turned.course().at(phase),
                    u * Math.cos(0.8) - v * Math.sin(0.8),
                    u * Math.sin(0.8) + v * Math.cos(0.8));
        }
    }

    @ParameterizedTest
    @MethodSource("paths")
    void everyCycleIsTheFirstOneAgain(HandPath path) {
        HandPath.Course course = path.course();
        for (double phase = 0; phase < 1; phase += 0.0625) {
            PlaneJet first = course.at(phase);
            for (int cycle : new int[] {-2, 1, 3}) {
                same(course.at(phase + cycle), first.u().value(), first.v().value());
                same(
                        course.before(phase + cycle),
                        course.before(phase).u().value(),
                        course.before(phase).v().value());
                assertThat(course.place(phase + cycle).getX())
                        .isCloseTo(first.u().value(), within(1e-12));
                assertThat(course.place(phase + cycle).getY())
                        .isCloseTo(first.v().value(), within(1e-12));
            }
        }
    }

    @Test
    void aHandThatGoesRoundOftenIsThatManyTimesAsFast() {
        for (int times : new int[] {1, 3, -2}) {
            PlaneJet at = circled(times).course().at(0.17);
            double speed = Math.hypot(at.u().d1(), at.v().d1());
            assertThat(speed).isCloseTo(2 * Math.PI * 0.5 * Math.abs(times), within(1e-12));
            double angle = 2 * Math.PI * 0.17 * times + 0.4;
            same(at, 0.5 * Math.cos(angle), 0.5 * Math.sin(angle));
        }
    }

    @Test
    void aRoundingBesideAPolygonsCornerIsThatCorner() {
        HandPath.Course square = new Polygon(4, 0.4, 0).course();
        for (double hair : new double[] {-1e-14, 0, 1e-14}) {
            for (int corner = 1; corner < 4; corner++) {
                double phase = corner / 4.0 + hair;
                assertThat(square.at(phase).u().d1())
                        .isEqualTo(square.at(corner / 4.0 + 0.1).u().d1());
                assertThat(square.before(phase).u().d1())
                        .isEqualTo(square.at(corner / 4.0 - 0.1).u().d1());
            }
        }
    }

    @Test
    void anArcHangsStraightDownUnlessItIsTilted() {
        assertThat(new Arc(0.5, Swing.DOWN, 1).tilt().orElseThrow()).isZero();
        assertThat(new Arc(0.5, 0, 1).tilt().orElseThrow()).isEqualTo(Math.PI / 2);
        assertThat(DrawnTest.roundish(0.5).tilt()).isEmpty();
        assertThat(Series.STILL.tilt()).isEmpty();
    }

    @Test
    void anEllipseKnowsItsTwoHalfAxes() {
        for (double across : new double[] {0.2, -0.2}) {
            Series ellipse = Series.ellipse(0.5, across, 0.3);
            assertThat(ellipse.elliptic()).isTrue();
            assertThat(ellipse.along()).isCloseTo(0.5, within(1e-15));
            assertThat(ellipse.across()).isCloseTo(across, within(1e-15));
        }
    }

    @Test
    void aPathKnowsWhichWayItGoesRound() {
        assertThat(circled(3).sense()).isEqualTo(1);
        assertThat(circled(-2).sense()).isEqualTo(-1);
        assertThat(Series.ellipse(0.5, 0.2, 0).sense()).isEqualTo(1);
        assertThat(Series.ellipse(0.5, -0.2, 0).sense()).isEqualTo(-1);
        assertThat(Series.line(0.5, 0).sense()).isZero();
        assertThat(new Polygon(3, 0.5, 0).sense()).isEqualTo(1);
        assertThat(new Arc(0.5, 0, 1).sense()).isZero();
        assertThat(new Riding().sense()).isZero();
    }

    @Test
    void aPathSaysWhatItIsAndWhatTheHandDoes() {
        says(Series.STILL, "still hand", "stays where it is");
        says(circled(1), "circle", "goes round a circle");
        says(circled(-2), "circle", "goes round a circle twice");
        says(circled(3), "circle", "goes round a circle 3 times");
        says(Series.ellipse(0.5, 0.2, 0), "ellipse", "goes round an ellipse");
        says(Series.line(0.5, 0), "line", "goes to and fro on a line");
        says(
                new Series(List.of(new Series.Term(1, 0.5, 0), new Series.Term(3, 0.2, 0))),
                "looped path",
                "goes along a looped path");
        says(new Arc(0.5, 0, 1), "arc", "comes and goes along an arc");
        says(new Polygon(3, 0.5, 0), "triangle", "goes round a triangle");
        says(new Polygon(4, 0.5, 0), "square", "goes round a square");
        says(new Polygon(5, 0.5, 0), "pentagon", "goes round a polygon of 5 corners");
        says(new Polygon(6, 0.5, 0), "hexagon", "goes round a polygon of 6 corners");
        says(new Polygon(7, 0.5, 0), "7-corner polygon", "goes round a polygon of 7 corners");
        says(new Polygon(8, 0.5, 0), "octagon", "goes round a polygon of 8 corners");
        says(DrawnTest.roundish(0.5), "drawn path", "goes along a drawn path");
        says(new Riding(), "riding", "goes where the other head goes");
    }

    private static void says(HandPath path, String noun, String goes) {
        assertThat(path.noun()).isEqualTo(noun);
        assertThat(path.goes()).isEqualTo(goes);
    }

    @Test
    void aRidersPathHasNoSizeOfItsOwnAndIsNotStill() {
        Riding riding = new Riding();
        assertThat(riding.radius()).isZero();
        assertThat(riding.still()).isFalse();
        assertThat(riding.rides()).isTrue();
        assertThat(Series.STILL.still()).isTrue();
        assertThat(Series.circle(0.5).still()).isFalse();
        assertThat(Series.circle(0.5).rides()).isFalse();
        assertThat(riding.scaled(2)).isEqualTo(riding);
        assertThat(riding.turned(1)).isEqualTo(riding);
    }

    @Test
    void onlySomeSizesOfAFormHaveBoundsOfTheirOwn() {
        assertThat(Arc.OUT.bounded()).isTrue();
        assertThat(Arc.FORM.sizes().get(1).key()).isEqualTo("middle");
        assertThat(Arc.FORM.sizes().get(1).bounded()).isFalse();
    }
}
