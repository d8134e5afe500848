package deferent.reading.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.State;
import java.util.function.DoubleFunction;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Paths as curves, by their lengths and breadths in closed form. */
class WalkedCurveTest {
    private static final Interval CYCLE = new Interval(0, 1);
    private static final double R = 0.6;

    @Test
    void aCircleGoneRoundSixTimesIsOneCircle() {
        WalkedCurve often = curve(t -> ellipse(6 * t, R, R), 1440);
        assertThat(often.length()).isCloseTo(2 * Math.PI * R, within(1e-4));
        assertThat(often.dimension()).isEqualTo(2);
        WalkedCurve open =
                WalkedCurve.of(
                        course(t -> ellipse(6 * t, R, R)), CYCLE, false, new double[0], 1440);
        assertThat(open.length()).isCloseTo(6 * 2 * Math.PI * R, within(1e-2));
    }

    @Test
    void fromSamplesTooTheCircleIsGoneRoundOnce() {
        for (int rounds : new int[] {1, 2, 3, 7}) {
            for (int count : new int[] {720, 1440, 5040}) {
                Course course = course(t -> ellipse(rounds * t, R, R));
                WalkedCurve curve = WalkedCurve.of(course, CYCLE, true, samples(course, count));
                assertThat(curve.length()).isCloseTo(2 * Math.PI * R, within(2e-3));
                assertThat(curve.closed()).isTrue();
            }
        }
    }

    @Test
    void ofManySamplesEverySecondIsTaken() {
        Course course = course(t -> ellipse(t, R, R));
        assertThat(WalkedCurve.of(course, CYCLE, true, samples(course, 1440)).points())
                .hasSize(3 * 721);
        assertThat(WalkedCurve.of(course, CYCLE, true, samples(course, 360)).points())
                .hasSize(3 * 361);
        assertThat(WalkedCurve.of(course, CYCLE, false, samples(course, 1440)).points())
                .hasSize(3 * 1440);
    }

    /** A square's corners are kept, where even times would cut them. */
    @Test
    void aPathWithCornersRunsThroughThem() {
        DoubleFunction<Vector3D> square =
                t -> {
                    double along = 4 * (t - Math.floor(t));
                    double s = along - Math.floor(along);
                    return switch ((int) along) {
                        case 0 -> new Vector3D(s, 0, 0);
                        case 1 -> new Vector3D(1, s, 0);
                        case 2 -> new Vector3D(1 - s, 1, 0);
                        default -> new Vector3D(0, 1 - s, 0);
                    };
                };
        WalkedCurve curve =
                WalkedCurve.of(course(square), CYCLE, true, new double[] {0.25, 0.5, 0.75}, 11);
        assertThat(curve.length()).isCloseTo(4, within(1e-12));
    }

    @Test
    void stepsAreALikeLengthWhereverTheWalkStartsAndWhicheverWayItGoes() {
        // Uneven in time: the walk is even all the same.
        WalkedCurve curve = curve(t -> ellipse(t + 0.1 * Math.sin(2 * Math.PI * t), R, R), 1440);
        for (double from : new double[] {0, 0.3, 1.3, -0.7, 0.995}) {
            double[] there = curve.walked(48, from, false);
            double[] back = curve.walked(48, from, true);
            for (int i = 0; i <= 48; i++) {
                if (i > 0) {
                    assertThat(at(there, i).distance(at(there, i - 1)))
                            .isCloseTo(2 * R * Math.sin(Math.PI / 48), within(1e-5));
                }
                assertThat(at(back, 48 - i).distance(at(there, i))).isLessThan(1e-12);
            }
            assertThat(at(there, 48).distance(at(there, 0))).isLessThan(1e-12);
        }
        double[] plain = curve.walked(48, 0, false);
        assertThat(at(curve.walked(48, 0.25, false), 0).distance(at(plain, 12))).isLessThan(1e-9);
    }

    @Test
    void anOpenPathIsWalkedFromEndToEnd() {
        WalkedCurve line =
                WalkedCurve.of(
                        course(t -> new Vector3D(t * t, 0, 0)), CYCLE, false, new double[0], 100);
        double[] walked = line.walked(4, 0, false);
        assertThat(at(walked, 4).distance(at(walked, 0))).isCloseTo(1, within(1e-12));
        assertThat(at(walked, 1).distance(at(walked, 0))).isCloseTo(0.25, within(1e-12));
        assertThat(line.closed()).isFalse();
    }

    /** Folded about its long axis, an ellipse's two halves are its short axis apart at most. */
    @Test
    void anEllipseIsHalfItsShortAxisFromOneThatGoesBackTheWayItCame() {
        assertThat(curve(t -> ellipse(t + 0.013, 0.9, 0.3), 1440).offReturning(720))
                .isCloseTo(0.3, within(1e-3));
        assertThat(curve(t -> ellipse(t + 0.013, R, R), 1440).offReturning(720))
                .isCloseTo(R, within(1e-3));
    }

    @Test
    void aPendulumsArcGoesBackTheWayItCame() {
        WalkedCurve arc =
                curve(t -> ellipse(0.2 * Math.sin(2 * Math.PI * (t + 0.0123)), R, R), 1440);
        assertThat(arc.offReturning(720)).isLessThan(1e-3);
        assertThat(arc.waist(384)).isLessThan(1e-3);
    }

    @Test
    void aLoopsWaistIsItsShortAxis() {
        assertThat(curve(t -> ellipse(t, 0.9, 0.3), 1440).waist(384))
                .isCloseTo(2 * 0.3, within(1e-3));
        assertThat(curve(t -> ellipse(t, R, R), 1440).waist(384)).isCloseTo(2 * R, within(1e-4));
    }

    /** r (1 − cos(π/n)) off the chords of a regular polygon. */
    @Test
    void aCircleSagsFromItsPolygon() {
        WalkedCurve circle = curve(t -> ellipse(t, R, R), 1440);
        assertThat(circle.sag(24)).isCloseTo(R * (1 - Math.cos(Math.PI / 24)), within(1e-6));
        WalkedCurve still = curve(t -> Vector3D.PLUS_I, 60);
        assertThat(still.sag(24)).isZero();
        assertThat(still.dimension()).isZero();
    }

    private static WalkedCurve curve(DoubleFunction<Vector3D> path, int count) {
        return WalkedCurve.of(course(path), CYCLE, true, new double[0], count);
    }

    private static Course course(DoubleFunction<Vector3D> path) {
        return t -> new State(path.apply(t), Vector3D.ZERO, Vector3D.ZERO, Vector3D.ZERO);
    }

    private static double[] samples(Course course, int count) {
        double[] out = new double[3 * count];
        for (int i = 0; i < count; i++) {
            double[] p = course.position((double) i / count).toArray();
            System.arraycopy(p, 0, out, 3 * i, 3);
        }
        return out;
    }

    private static Vector3D at(double[] walked, int i) {
        return new Vector3D(walked[3 * i], walked[3 * i + 1], walked[3 * i + 2]);
    }

    // In a tilted plane.
    private static Vector3D ellipse(double turns, double a, double b) {
        double angle = 2 * Math.PI * turns;
        return new Vector3D(
                a * Math.cos(angle), 0.6 * b * Math.sin(angle), 0.8 * b * Math.sin(angle));
    }
}
