package deferent.reading.tether;

import deferent.motion.pairing.Plane;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A tipped plane, stood upright and tipped back: a motion is found in the upright plane, where it
 * has two numbers in place of four, and followed as the plane tips, each step begun with the cord
 * turned along with the plane.
 *
 * @param axis level, in the plane
 * @param tip radians about it that bring the upright plane to this one
 */
record Tipping(Vector3D axis, double tip) {
    /** So far at once at most, radians. */
    private static final double LONGEST = Math.toRadians(10);

    /** What no step so short gets past is an end, radians. */
    private static final double SHORTEST = Math.toRadians(0.5);

    private static final double CLOSE = 1e-7;
    private static final int MOST = 12;

    /** A cord that starts farther aside in its plane than this, radians, is another motion's. */
    private static final double JUMP = 0.5;

    static Tipping of(Plane plane) {
        Vector3D normal = plane.normal();
        Vector3D level = new Vector3D(normal.getX(), 0, normal.getZ());
        // A level plane may be stood up about any line in it.
        Vector3D upright =
                level.getNorm() < 1e-9
                        ? plane.u().crossProduct(Vector3D.PLUS_J)
                        : level.normalize();
        return new Tipping(
                upright.crossProduct(Vector3D.PLUS_J),
                Math.atan2(normal.getY(), normal.dotProduct(upright)));
    }

    /** From this plane to the one that is still short of it by a share of the tip, 1 upright. */
    Rotation back(double share) {
        return new Rotation(axis, -share * tip, RotationConvention.VECTOR_OPERATOR);
    }

    /** A state turned along with its plane. */
    static double[] turned(double[] y, Rotation by) {
        Vector3D e = by.applyTo(new Vector3D(y[0], y[1], y[2]));
        Vector3D q = by.applyTo(new Vector3D(y[3], y[4], y[5]));
        return new double[] {e.getX(), e.getY(), e.getZ(), q.getX(), q.getY(), q.getZ()};
    }

    /**
     * What an upright motion becomes in this plane.
     *
     * @param table of the hand in this plane
     * @param upright state at its start, in the upright plane
     * @param held whether the direction of the cord's shadow is held, and the motion need not be
     *     periodic
     */
    Optional<PlaneShooting.Closed> followed(
            HandTable table, Cord cord, Shadow shadow, double[] upright, boolean held) {
        PlaneShooting.Closed flat = new PlaneShooting.Closed(turned(upright, back(1).revert()), 0);
        double left = 1;
        double stride = Math.min(1, LONGEST / Math.abs(tip));
        while (left > 0) {
            double to = Math.max(0, left - stride);
            Rotation back = back(to);
            double[] last = flat.state();
            double[] guess = turned(last, back);
            Shooting shooting =
                    new Shooting(
                            table.turned(back), cord, back.applyTo(shadow.axis()), shadow.turn());
            Optional<PlaneShooting.Closed> next =
                    (held
                                    ? shooting.closed(guess, CLOSE, MOST)
                                    : shooting.from(guess, CLOSE, MOST)
                                            .map(f -> new PlaneShooting.Closed(f.state(), 0)))
                            .map(
                                    c ->
                                            new PlaneShooting.Closed(
                                                    turned(c.state(), back.revert()), c.missing()))
                            .filter(c -> near(c.state(), last));
            if (next.isPresent()) {
                flat = next.get();
                left = to;
            } else {
                stride /= 2;
                if (stride * Math.abs(tip) < SHORTEST) {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(flat);
    }

    private static boolean near(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2] > Math.cos(JUMP);
    }
}
