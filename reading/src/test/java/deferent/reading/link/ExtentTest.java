package deferent.reading.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** How far paths reach, in closed form; aside and aslant, because no motion should change it. */
class ExtentTest {
    private static final double R = 0.6;

    @Test
    void aCircleIsAsWideAsItIsLong() {
        Extent circle = Extent.of(ellipse(R, R), 2, 0);
        assertThat(circle.radius()).isCloseTo(R, within(1e-9));
        assertThat(circle.radiusAtLeast()).isEqualTo(circle.radius());
        assertThat(circle.diameter()).isCloseTo(2 * R, within(1e-9));
        assertThat(circle.width()).isCloseTo(2 * R, within(1e-4));
        assertThat(circle.round()).isCloseTo(2 * Math.PI * R, within(1e-4));
    }

    /** A circle and the cat-eye's ellipse about it: the hand must give half the short axis. */
    @Test
    void anEllipseIsHeldByItsLongAxisAndNarrowAsItsShortOne() {
        Extent ellipse = Extent.of(ellipse(0.9, 0.3), 2, 0);
        assertThat(ellipse.radius()).isCloseTo(0.9, within(1e-9));
        assertThat(ellipse.width()).isCloseTo(2 * 0.3, within(1e-4));
        Extent circle = Extent.of(ellipse(0.9, 0.9), 2, 0);
        assertThat(circle.gapAtLeast(ellipse)).isCloseTo(0.9 - 0.3, within(1e-4));
        assertThat(ellipse.gapAtLeast(circle)).isCloseTo(0.9 - 0.3, within(1e-4));
    }

    @Test
    void aLineIsTwiceItsLengthRoundAndAPointNothing() {
        double[] there = {0, 0, 0, 0.3, 0.4, 0};
        Extent line = Extent.of(there, 1, 0);
        assertThat(line).isEqualTo(new Extent(0.25, 0.25, 0.5, 0, 1, 0));
        Extent point = Extent.of(new double[6], 0, 0);
        assertThat(line.gapAtLeast(point)).isEqualTo(0.25);
        assertThat(point.gapAtLeast(line)).isEqualTo(0.25);
        Extent longer = Extent.of(new double[] {0, 0, 0, 0.9, 0, 0}, 1, 0);
        assertThat(longer.gapAtLeast(line)).isCloseTo(0.2, within(1e-12));
    }

    /** Steiner: a hull widened by d is 2πd longer round. A slim cross and a circle as wide. */
    @Test
    void lengthRoundTellsFiguresApartThatAreAsLongAndAsWide() {
        // Of one width, 1: the circle is π round, the triangle of Reuleaux too (Barbier); the
        // equilateral triangle that is as high as that circle is 2√3 round.
        double side = 2 / Math.sqrt(3);
        Extent triangle = Extent.of(new double[] {0, 0, 0, side, 0, 0, side / 2, 1, 0}, 2, 0);
        Extent ofOneWidth = new Extent(side / Math.sqrt(3), 0, side, 1, Math.PI, 0);
        assertThat(triangle.width()).isCloseTo(1, within(1e-12));
        assertThat(triangle.gapAtLeast(ofOneWidth))
                .isCloseTo((2 * Math.sqrt(3) - Math.PI) / (2 * Math.PI), within(1e-9));
    }

    @Test
    void whatThePolygonLeavesOutOfTheCurveIsTakenOffTheBound() {
        Extent small = Extent.of(ellipse(0.5, 0.5), 2, 0.01);
        Extent large = Extent.of(ellipse(0.7, 0.7), 2, 0.03);
        assertThat(small.gapAtLeast(large)).isCloseTo(0.2 - 0.03, within(1e-4));
        assertThat(large.gapAtLeast(small)).isCloseTo(0.2 - 0.03, within(1e-4));
        assertThat(small.gapAtLeast(small)).isZero();
    }

    @Test
    void theBallRoundABoxIsHalfItsDiagonal() {
        double[] box = new double[24];
        for (int i = 0; i < 8; i++) {
            box[3 * i] = 1 + (i & 1) * 0.6;
            box[3 * i + 1] = -2 + (i >> 1 & 1) * 0.4;
            box[3 * i + 2] = 3 + (i >> 2) * 0.2;
        }
        Extent extent = Extent.of(box, 3, 0);
        double half = Math.sqrt(0.36 + 0.16 + 0.04) / 2;
        assertThat(extent.radius()).isCloseTo(half, within(1e-9));
        assertThat(extent.radiusAtLeast()).isCloseTo(half, within(1e-9));
        assertThat(extent.diameter()).isCloseTo(2 * half, within(1e-12));
        assertThat(extent.width()).isNaN();
        assertThat(extent.round()).isNaN();
    }

    /** The ball stands on the far points, however many lie about elsewhere. */
    @Test
    void pointsWithinDoNotWidenTheBallNorMoveIt() {
        double[] points = new double[3 * 40];
        for (int i = 2; i < 40; i++) {
            Vector3D p =
                    new Vector3D(0.2, Vector3D.PLUS_I)
                            .add(new Vector3D(0.05 * Math.cos(i), 0.05 * Math.sin(i), 0.001 * i));
            System.arraycopy(p.toArray(), 0, points, 3 * i, 3);
        }
        points[0] = -0.5;
        points[3] = 0.5;
        Extent extent = Extent.of(points, 3, 0);
        assertThat(extent.radiusAtLeast()).isLessThanOrEqualTo(0.5 + 1e-12);
        assertThat(extent.radius()).isBetween(0.5, 0.51);
        assertThat(extent.radiusAtLeast()).isCloseTo(0.5, within(0.01));
    }

    /** A regular tetrahedron's edges are √(8/3) of its ball's radius. */
    @Test
    void aTetrahedronIsHeldByItsCornersAndABallWithItIsApartByTheDiameters() {
        double e = R / Math.sqrt(3);
        double[] corners = {e, e, e, e, -e, -e, -e, e, -e, -e, -e, e};
        Extent tetrahedron = Extent.of(corners, 3, 0);
        assertThat(tetrahedron.radius()).isCloseTo(R, within(1e-9));
        assertThat(tetrahedron.radiusAtLeast()).isCloseTo(R, within(1e-9));
        assertThat(tetrahedron.diameter()).isCloseTo(R * Math.sqrt(8.0 / 3), within(1e-12));
        double[] octahedron = new double[18];
        for (Vector3D p : List.of(Vector3D.PLUS_I, Vector3D.PLUS_J, Vector3D.PLUS_K)) {
            int at = p.getX() > 0 ? 0 : p.getY() > 0 ? 6 : 12;
            System.arraycopy(p.scalarMultiply(R).toArray(), 0, octahedron, at, 3);
            System.arraycopy(p.scalarMultiply(-R).toArray(), 0, octahedron, at + 3, 3);
        }
        assertThat(tetrahedron.gapAtLeast(Extent.of(octahedron, 3, 0)))
                .isCloseTo(R - R * Math.sqrt(2.0 / 3), within(1e-9));
    }

    private static double[] ellipse(double a, double b) {
        int n = 720;
        double[] points = new double[3 * n];
        for (int i = 0; i < n; i++) {
            double x = a * Math.cos(2 * Math.PI * i / n);
            double y = b * Math.sin(2 * Math.PI * i / n);
            points[3 * i] = 0.3 + 0.6 * x - 0.8 * y;
            points[3 * i + 1] = -0.1 + 0.8 * x + 0.6 * y;
        }
        return points;
    }
}
