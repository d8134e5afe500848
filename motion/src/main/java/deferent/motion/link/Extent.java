package deferent.motion.link;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.enclosing.WelzlEncloser;
import org.hipparchus.geometry.euclidean.threed.Euclidean3D;
import org.hipparchus.geometry.euclidean.threed.SphereGenerator;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.locationtech.jts.algorithm.MinimumBoundingCircle;
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
 * @param radius of the least enclosing circle or ball, metres
 * @param diameter metres
 * @param width least distance between parallel lines that hold it; NaN in space, metres
 * @param round perimeter of the convex hull; NaN in space, metres
 * @param sag metres
 */
record Extent(double radius, double diameter, double width, double round, double sag) {
    private static final GeometryFactory SHEET = new GeometryFactory();

    static Extent of(double[] xyz, int dimension, double sag) {
        double diameter = diameter(xyz);
        if (dimension == 0) {
            return new Extent(0, 0, 0, 0, 0);
        }
        if (dimension == 1) {
            return new Extent(diameter / 2, diameter, 0, 2 * diameter, sag);
        }
        if (dimension == 3) {
            List<Vector3D> points = new ArrayList<>();
            for (int i = 0; i < xyz.length; i += 3) {
                points.add(new Vector3D(xyz[i], xyz[i + 1], xyz[i + 2]));
            }
            double radius =
                    new WelzlEncloser<Euclidean3D, Vector3D>(1e-9, new SphereGenerator())
                            .enclose(points)
                            .getRadius();
            return new Extent(radius, diameter, Double.NaN, Double.NaN, sag);
        }
        Coordinate[] points = new Coordinate[xyz.length / 3];
        for (int i = 0; i < points.length; i++) {
            points[i] = new Coordinate(xyz[3 * i], xyz[3 * i + 1]);
        }
        CoordinateSequence all = new CoordinateArraySequence(points);
        Geometry hull = SHEET.createMultiPoint(all).convexHull();
        return new Extent(
                new MinimumBoundingCircle(hull).getRadius(),
                diameter,
                new MinimumDiameter(hull, true).getLength(),
                hull.getLength(),
                sag);
    }

    /** No rigid motion brings the two paths' Fréchet distance below this, metres. */
    double gapAtLeast(Extent o) {
        double bound = Math.max(Math.abs(radius - o.radius), Math.abs(diameter - o.diameter) / 2);
        if (!Double.isNaN(width) && !Double.isNaN(o.width)) {
            bound = Math.max(bound, Math.abs(width - o.width) / 2);
            bound = Math.max(bound, Math.abs(round - o.round) / (2 * Math.PI));
        }
        return Math.max(0, bound - Math.max(sag, o.sag));
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
