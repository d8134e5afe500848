package deferent.reading.link;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.geometry.enclosing.WelzlEncloser;
import org.hipparchus.geometry.euclidean.twod.DiskGenerator;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import org.locationtech.jts.algorithm.MinimumDiameter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.impl.CoordinateArraySequence;

/**
 * Measures of how far a path reaches that no rigid motion changes, and the bound they set on the
 * shape gap.
 *
 * <p>Two curves at Fréchet distance δ lie within δ of each other (Hausdorff distance is never
 * greater). So the ball round one, widened by δ, holds the other: their least enclosing radii
 * differ by at most δ. Two farthest points of one are each within δ of a point of the other:
 * diameters differ by at most 2δ. In the plane the hull of one lies in the hull of the other
 * widened by δ: widths between parallel lines differ by at most 2δ, perimeters of the hulls by at
 * most 2πδ (Steiner's formula). Greatest of these is the bound. All four are taken from points on
 * the curve; the curve strays from their chords by at most {@code sag}, so each measure of the
 * curve itself is at most that much more per side, which is taken off.
 *
 * @param radius of the least enclosing circle or ball, metres; in space at most a little more
 * @param radiusAtLeast that radius is no less, metres
 * @param diameter metres
 * @param width least distance between parallel lines that hold it; NaN in space, metres
 * @param round perimeter of the convex hull; NaN in space, metres
 * @param sag metres
 */
record Extent(
        double radius,
        double radiusAtLeast,
        double diameter,
        double width,
        double round,
        double sag) {
    private static final GeometryFactory SHEET = new GeometryFactory();

    static Extent of(double[] xyz, int dimension, double sag) {
        double diameter = diameter(xyz);
        if (dimension == 0) {
            return new Extent(0, 0, 0, 0, 0, 0);
        }
        if (dimension == 1) {
            return new Extent(diameter / 2, diameter / 2, diameter, 0, 2 * diameter, sag);
        }
        if (dimension == 3) {
            double[] radius = ball(xyz);
            return new Extent(radius[0], radius[1], diameter, Double.NaN, Double.NaN, sag);
        }
        Coordinate[] points = new Coordinate[xyz.length / 3];
        for (int i = 0; i < points.length; i++) {
            points[i] = new Coordinate(xyz[3 * i], xyz[3 * i + 1]);
        }
        CoordinateSequence all = new CoordinateArraySequence(points);
        Geometry hull = SHEET.createMultiPoint(all).convexHull();
        double radius = circle(hull);
        return new Extent(
                radius,
                radius,
                diameter,
                new MinimumDiameter(hull, true).getLength(),
                hull.getLength(),
                sag);
    }

    /** No rigid motion brings the two paths' Fréchet distance below this, metres. */
    double gapAtLeast(Extent o) {
        double bound =
                Math.max(
                        Math.max(radiusAtLeast - o.radius, o.radiusAtLeast - radius),
                        Math.abs(diameter - o.diameter) / 2);
        if (!Double.isNaN(width) && !Double.isNaN(o.width)) {
            bound = Math.max(bound, Math.abs(width - o.width) / 2);
            bound = Math.max(bound, Math.abs(round - o.round) / (2 * Math.PI));
        }
        return Math.max(0, bound - Math.max(sag, o.sag));
    }

    // Hipparchus's: JTS's own least circle came out smaller than half the diameter for a path that
    // goes up to its ends and back.
    private static double circle(Geometry hull) {
        List<Vector2D> corners = new ArrayList<>();
        for (Coordinate corner : hull.getCoordinates()) {
            corners.add(new Vector2D(corner.x, corner.y));
        }
        return new WelzlEncloser<>(1e-12 * hull.getLength(), new DiskGenerator())
                .enclose(corners)
                .getRadius();
    }

    // A centre by weights that grow with the distance from it, which end on the points that hold
    // the
    // ball. Any centre's greatest distance is enough radius; the weighted spread about the weighted
    // mean is never more than the square of the least radius.
    private static double[] ball(double[] xyz) {
        int count = xyz.length / 3;
        double[] weight = new double[count];
        Arrays.fill(weight, 1.0 / count);
        double most = Double.MAX_VALUE;
        double least = 0;
        for (int step = 0; step < 150; step++) {
            double[] c = new double[3];
            for (int i = 0; i < xyz.length; i++) {
                c[i % 3] += weight[i / 3] * xyz[i];
            }
            double far = 0;
            double spread = 0;
            double[] away = new double[count];
            for (int i = 0; i < count; i++) {
                double dx = xyz[3 * i] - c[0];
                double dy = xyz[3 * i + 1] - c[1];
                double dz = xyz[3 * i + 2] - c[2];
                double square = dx * dx + dy * dy + dz * dz;
                away[i] = Math.sqrt(square);
                far = Math.max(far, away[i]);
                spread += weight[i] * square;
            }
            most = Math.min(most, far);
            least = Math.max(least, Math.sqrt(spread));
            double sum = 0;
            for (int i = 0; i < count; i++) {
                weight[i] *= away[i] / far;
                sum += weight[i];
            }
            for (int i = 0; i < count; i++) {
                weight[i] /= sum;
            }
        }
        return new double[] {most, Math.min(least, most)};
    }

    private static double diameter(double[] xyz) {
        double most = 0;
        for (int i = 0; i < xyz.length; i += 3) {
            for (int j = 0; j < i; j += 3) {
                double dx = xyz[i] - xyz[j];
                double dy = xyz[i + 1] - xyz[j + 1];
                double dz = xyz[i + 2] - xyz[j + 2];
                most = Math.max(most, dx * dx + dy * dy + dz * dz);
            }
        }
        return Math.sqrt(most);
    }
}
