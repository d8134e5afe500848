package deferent.reading.body;

import deferent.motion.shared.Side;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A performer's body as a simple solid that things may hit ({@link Person} is what is drawn of it):
 * head, neck, trunk and legs, each all that lies within some thickness of an upright rectangle that
 * faces the audience (a point for the head, a line for the neck). Arms are left out because they go
 * with the hands.
 *
 * <p>Heights and breadths are shares of stature: chin 0.870, shoulders 0.818, hips 0.530, ankles
 * 0.039, breadth of hips 0.191 (from memory, after the drawing of Drillis and Contini (1966) in
 * Winter, Biomechanics and Motor Control of Human Movement); thicknesses are from memory alone. The
 * trunk is as broad as the shoulders; its front holds the breastbone, the frame's origin, and above
 * that it rounds off, a centimetre or two over the shoulders.
 */
public final class BodyOutline {
    private static final double CROWN = 1.000;
    private static final double CHIN = 0.870;
    private static final double SHOULDERS = 0.818;
    private static final double HIPS = 0.530;
    private static final double ANKLES = 0.039;
    private static final double HALF_HIPS = 0.191 / 2;
    private static final double NECK_THICK = 0.035;
    private static final double LEG_THICK = 0.05;

    /** What of the body. */
    public enum Part {
        HEAD,
        NECK,
        TRUNK,
        LEGS
    }

    /**
     * All within {@code thick} of the rectangle from −{@code half} to {@code half} in x and {@code
     * low} to {@code high} in y, at depth {@code z}; metres.
     */
    record Slab(Part part, double half, double low, double high, double z, double thick) {
        double distance(double x, double y, double depth) {
            double dx = Math.max(0, Math.abs(x) - half);
            double dy = Math.max(0, Math.max(low - y, y - high));
            double dz = depth - z;
            return Math.sqrt(dx * dx + dy * dy + dz * dz) - thick;
        }

        /**
         * Least distance of the segment from p to q. Along it, half the slope of the squared
         * distance to the rectangle is (point − nearest point)·(q − p): rising and straight between
         * the places where the segment crosses the rectangle's four border lines, so the zero is
         * found exactly.
         */
        double distance(double px, double py, double pz, double qx, double qy, double qz) {
            double dx = qx - px;
            double dy = qy - py;
            double dz = qz - pz;
            double a = 0;
            double b = 1;
            double atA = slope(0, px, py, pz, dx, dy, dz);
            if (atA >= 0) {
                return distance(px, py, pz);
            }
            double atB = slope(1, px, py, pz, dx, dy, dz);
            if (atB <= 0) {
                return distance(qx, qy, qz);
            }
            for (int border = 0; border < 4; border++) {
                double s =
                        switch (border) {
                            case 0 -> (-half - px) / dx;
                            case 1 -> (half - px) / dx;
                            case 2 -> (low - py) / dy;
                            default -> (high - py) / dy;
                        };
                if (s > a && s < b) {
                    double here = slope(s, px, py, pz, dx, dy, dz);
                    if (here < 0) {
                        a = s;
                        atA = here;
                    } else {
                        b = s;
                        atB = here;
                    }
                }
            }
            double s = atB > atA ? a - atA * (b - a) / (atB - atA) : a;
            return distance(px + s * dx, py + s * dy, pz + s * dz);
        }

        private double slope(
                double s, double px, double py, double pz, double dx, double dy, double dz) {
            double x = px + s * dx;
            double y = py + s * dy;
            double offX = x - Math.max(-half, Math.min(half, x));
            double offY = y - Math.max(low, Math.min(high, y));
            return offX * dx + offY * dy + (pz + s * dz - z) * dz;
        }
    }

    private final Slab[] slabs;

    private BodyOutline(Slab[] slabs) {
        this.slabs = slabs;
    }

    public static BodyOutline of(Performer performer) {
        double h = performer.stature();
        double z = -Performer.DEPTH * h;
        double trunk = Performer.DEPTH * h;
        double skull = (CROWN - CHIN) / 2 * h;
        double face = performer.height((CROWN + CHIN) / 2);
        double half = Math.max(performer.shoulder(Side.LEFT).getX() - trunk, 0);
        return new BodyOutline(
                new Slab[] {
                    new Slab(Part.HEAD, 0, face, face, z, skull),
                    new Slab(
                            Part.NECK,
                            0,
                            performer.height(SHOULDERS),
                            performer.height(CHIN),
                            z,
                            NECK_THICK * h),
                    new Slab(Part.TRUNK, half, performer.height(HIPS) + trunk, 0, z, trunk),
                    new Slab(
                            Part.LEGS,
                            (HALF_HIPS - LEG_THICK) * h,
                            performer.height(ANKLES) + LEG_THICK * h,
                            performer.height(HIPS),
                            z,
                            LEG_THICK * h)
                });
    }

    Slab slab(Part part) {
        return slabs[part.ordinal()];
    }

    /** From a point to the body, metres; below zero inside it. */
    public double distance(Vector3D point) {
        return distance(point.getX(), point.getY(), point.getZ());
    }

    double distance(double x, double y, double z) {
        double least = Double.POSITIVE_INFINITY;
        for (Slab slab : slabs) {
            least = Math.min(least, slab.distance(x, y, z));
        }
        return least;
    }

    /** From the segment between two points to the body, metres; below zero where it goes in. */
    public double distance(Vector3D p, Vector3D q) {
        return distance(p.getX(), p.getY(), p.getZ(), q.getX(), q.getY(), q.getZ());
    }

    double distance(double px, double py, double pz, double qx, double qy, double qz) {
        double least = Double.POSITIVE_INFINITY;
        for (Slab slab : slabs) {
            least = Math.min(least, slab.distance(px, py, pz, qx, qy, qz));
        }
        return least;
    }

    /** Which part the segment between two points is nearest to. */
    public Part nearest(Vector3D p, Vector3D q) {
        Slab best = slabs[0];
        double least = Double.POSITIVE_INFINITY;
        for (Slab slab : slabs) {
            double here = slab.distance(p.getX(), p.getY(), p.getZ(), q.getX(), q.getY(), q.getZ());
            if (here < least) {
                least = here;
                best = slab;
            }
        }
        return best.part;
    }
}
