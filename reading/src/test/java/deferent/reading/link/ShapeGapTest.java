package deferent.reading.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.State;
import deferent.reading.shared.LinkKind;
import java.util.List;
import java.util.function.DoubleFunction;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Shape gaps in closed form, and of shapes that are the same in another place. */
class ShapeGapTest {
    private static final Interval CYCLE = new Interval(0, 1);
    private static final double MILLIMETRE = 0.001;
    private static final Rotation TURN =
            new Rotation(new Vector3D(1, -2, 0.5), 2.2, RotationConvention.VECTOR_OPERATOR);

    // A flower with a loop too many, and the same with its plane left behind.
    private static Vector3D flat(double t) {
        return turning(t, 0.6, 1).add(turning(t, 0.3, 2)).add(turning(t + 0.1, 0.15, -3));
    }

    private static Vector3D leaving(double t) {
        return flat(t).add(new Vector3D(0, 0, 0.2 * Math.cos(4 * Math.PI * t + 0.3)));
    }

    @ParameterizedTest
    @CsvSource({"1, 1", "1, -1", "-1, 1", "-1, -1"})
    void aShapeIsItselfTurnedMirroredStartedElsewhereAndWalkedBackwards(int way, int side) {
        for (DoubleFunction<Vector3D> path :
                List.<DoubleFunction<Vector3D>>of(ShapeGapTest::flat, ShapeGapTest::leaving)) {
            WalkedCurve there = curve(path);
            WalkedCurve here =
                    curve(
                            t -> {
                                Vector3D p = path.apply(way * t + 0.237);
                                return TURN.applyTo(
                                                new Vector3D(p.getX(), side * p.getY(), p.getZ()))
                                        .add(new Vector3D(0.4, -0.1, 0.2));
                            });
            ShapeGap certified = ShapeGap.certified(there, here);
            assertThat(certified.gap()).isLessThan(MILLIMETRE / 10);
            // The tight inner loop is where the steps stray from the curve.
            assertThat(certified.error())
                    .isCloseTo(Math.max(there.sag(384), here.sag(384)), within(MILLIMETRE / 10));
            assertThat(certified.atLeast()).isLessThan(MILLIMETRE / 10);
            assertThat(ShapeGap.refined(there, here)).isLessThan(MILLIMETRE);
            assertThat(ShapeGap.estimated(there, here)).isLessThan(20 * MILLIMETRE);
        }
    }

    /** A hand on the cat-eye's ellipse about a head's circle: no motion does better. */
    @Test
    void anEllipseIsFromACircleByTheWorseOfItsTwoAxes() {
        WalkedCurve circle = curve(t -> turning(t, 0.6, 1));
        apart(circle, curve(t -> turning(t, 0.5, 1).add(turning(t, 0.2, -1))), 0.3);
        apart(circle, curve(t -> turning(t, 0.6, 1).add(turning(t, 0.2, -1))), 0.2);
        apart(
                curve(t -> turning(t, 0.6, 1).add(turning(t, 0.1, -1))),
                curve(t -> turning(t, 0.6, 1).add(turning(t, 0.3, -1))),
                0.2);
    }

    /** To and fro on lines: each end gives half of what they differ in length. */
    @Test
    void twoLinesAreApartByHalfTheDifferenceOfTheirLengths() {
        apart(
                curve(t -> new Vector3D(0.6 * Math.cos(2 * Math.PI * t), 0, 0)),
                curve(t -> new Vector3D(0, 0, 0.5 * Math.cos(2 * Math.PI * t))),
                0.1);
    }

    @Test
    void whatStaysOnOnePointIsAsFarAsTheOtherReaches() {
        WalkedCurve still = curve(t -> Vector3D.PLUS_I);
        WalkedCurve circle = curve(t -> turning(t, 0.6, 1));
        apart(still, circle, 0.6);
        apart(circle, still, 0.6);
        assertThat(ShapeGap.certified(still, circle).headRadius()).isZero();
        assertThat(ShapeGap.certified(circle, still).headRadius())
                .isCloseTo(0.6, within(MILLIMETRE));
        // A still hand's path has no length for samples to miss, a circle's polygon lies within.
        assertThat(ShapeGap.certified(circle, still).error())
                .isCloseTo(0.6 * (1 - Math.cos(Math.PI / 720)), within(1e-6));
    }

    /** A circle bent up and down by 10 cm is 10 cm from it laid upon it, and 5 cm at the least. */
    @Test
    void aBentCircleIsNoFurtherFromAFlatOneThanItIsBent() {
        WalkedCurve circle = curve(t -> turning(t, 0.6, 1));
        WalkedCurve bent =
                curve(
                        t ->
                                turning(t, 0.6, 1)
                                        .add(new Vector3D(0, 0, 0.1 * Math.cos(4 * Math.PI * t))));
        for (ShapeGap gap :
                new ShapeGap[] {
                    ShapeGap.certified(circle, bent), ShapeGap.certified(bent, circle)
                }) {
            assertThat(gap.gap()).isBetween(0.05, 0.1 + MILLIMETRE);
            assertThat(gap.atLeast()).isLessThanOrEqualTo(gap.gap());
        }
    }

    @Test
    void kindsAreSpeltInLowerCase() {
        assertThat(LinkKind.TOUCHING.word()).isEqualTo("touching");
        assertThat(LinkKind.NONE.word()).isEqualTo("none");
    }

    private static void apart(WalkedCurve head, WalkedCurve hand, double gap) {
        ShapeGap certified = ShapeGap.certified(head, hand);
        assertThat(certified.gap()).isCloseTo(gap, within(MILLIMETRE));
        assertThat(certified.atLeast()).isCloseTo(gap, within(MILLIMETRE));
        assertThat(certified.error()).isLessThan(MILLIMETRE);
        assertThat(ShapeGap.refined(head, hand)).isCloseTo(gap, within(5 * MILLIMETRE));
        assertThat(ShapeGap.estimated(head, hand)).isCloseTo(gap, within(20 * MILLIMETRE));
        assertThat(ShapeGap.quick(head, hand).gap()).isEqualTo(ShapeGap.estimated(head, hand));
        assertThat(ShapeGap.quick(head, hand).error()).isNaN();
    }

    private static WalkedCurve curve(DoubleFunction<Vector3D> path) {
        Course course = t -> new State(path.apply(t), Vector3D.ZERO, Vector3D.ZERO, Vector3D.ZERO);
        return WalkedCurve.of(course, CYCLE, true, new double[0], 1440);
    }

    private static Vector3D turning(double turns, double radius, int way) {
        double angle = 2 * Math.PI * way * turns;
        return new Vector3D(radius * Math.cos(angle), radius * Math.sin(angle), 0);
    }
}
