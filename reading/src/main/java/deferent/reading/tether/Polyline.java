package deferent.reading.tether;

import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A path as a curve, its timing forgotten: how far a point is from it. A polyline of {@value
 * #COUNT} chords; for a circle of 0.6 m its sagitta is 3 µm.
 */
final class Polyline {
    private static final int COUNT = 960;
    private static final int STRIDE = 16;

    private final double[] xyz = new double[3 * (COUNT + 1)];
    private final double longest;

    private Polyline(Course course, Interval over) {
        for (int i = 0; i <= COUNT; i++) {
            double time = over.start() + over.length() * i / COUNT;
            Vector3D p = (i == COUNT ? course.before(time) : course.at(time)).position();
            xyz[3 * i] = p.getX();
            xyz[3 * i + 1] = p.getY();
            xyz[3 * i + 2] = p.getZ();
        }
        double most = 0;
        for (int i = 0; i < COUNT; i += STRIDE) {
            double length = 0;
            for (int j = i; j < i + STRIDE; j++) {
                length += Math.sqrt(square(3 * j, xyz[3 * j + 3], xyz[3 * j + 4], xyz[3 * j + 5]));
            }
            most = Math.max(most, length);
        }
        longest = most;
    }

    static Polyline of(Course course, Interval over) {
        return new Polyline(course, over);
    }

    /** Distance of a point from the curve, metres. */
    double distance(Vector3D point) {
        double x = point.getX();
        double y = point.getY();
        double z = point.getZ();
        // A stretch cannot come nearer than its first point's distance less its own length.
        double best = Double.POSITIVE_INFINITY;
        for (int i = 0; i < COUNT; i += STRIDE) {
            best = Math.min(best, square(3 * i, x, y, z));
        }
        double within = Math.sqrt(best) + longest;
        for (int i = 0; i < COUNT; i += STRIDE) {
            if (square(3 * i, x, y, z) <= within * within) {
                for (int j = i; j < i + STRIDE; j++) {
                    best = Math.min(best, toChord(3 * j, x, y, z));
                }
            }
        }
        return Math.sqrt(best);
    }

    private double square(int at, double x, double y, double z) {
        double dx = x - xyz[at];
        double dy = y - xyz[at + 1];
        double dz = z - xyz[at + 2];
        return dx * dx + dy * dy + dz * dz;
    }

    private double toChord(int at, double x, double y, double z) {
        double ux = xyz[at + 3] - xyz[at];
        double uy = xyz[at + 4] - xyz[at + 1];
        double uz = xyz[at + 5] - xyz[at + 2];
        double dx = x - xyz[at];
        double dy = y - xyz[at + 1];
        double dz = z - xyz[at + 2];
        double length = ux * ux + uy * uy + uz * uz;
        double t =
                length > 0 ? Math.max(0, Math.min(1, (dx * ux + dy * uy + dz * uz) / length)) : 0;
        dx -= t * ux;
        dy -= t * uy;
        dz -= t * uz;
        return dx * dx + dy * dy + dz * dz;
    }
}
