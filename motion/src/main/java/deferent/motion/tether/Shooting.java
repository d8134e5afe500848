package deferent.motion.tether;

import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * Periodic states of a cord behind a hand, by shooting: Newton's method on "the state after a cycle
 * is the state before it", its matrix the monodromy from the slips' own equations.
 *
 * <p>A slip has coordinates (c, d) on two axes across the cord: c turns the direction (radians), d
 * changes q (in units of {@link #unit}). Where everything stays in one plane only the axis within
 * it is used and the angle is counted through whole turns, so that the wanted number of turns is
 * part of the target. The step solves (M − 1)δ = −r by singular values and leaves out those under
 * {@value #FLAT} of the greatest: with a still hand every shift along the orbit is periodic too,
 * and the shortest step is the one meant.
 */
final class Shooting {
    private static final double FLAT = 1e-6;
    private static final double LONGEST = 0.6;

    private final HandTable table;
    private final Cord cord;
    private final double unit;
    private final double turn;
    private final Vector3D normal;
    private final boolean planar;

    /**
     * @param normal of the plane everything stays in; the zero vector where it does not
     * @param turn the angle the cord is to turn in that plane over the cycle, radians
     */
    Shooting(HandTable table, Cord cord, Vector3D normal, double turn) {
        this.table = table;
        this.cord = cord;
        this.normal = normal;
        this.planar = normal.getNormSq() > 0;
        this.turn = turn;
        this.unit = cord.swingLength() * 2 * Math.PI / table.period();
    }

    /** A periodic state and the monodromy of slips about it, in (c, d) coordinates. */
    record Found(double[] state, double[][] monodromy, double residual, int iterations) {}

    /** Newton's method from a start; empty where it does not settle. */
    Optional<Found> from(double[] start, double tolerance, int most) {
        double[] y = start.clone();
        for (int i = 0; i < most; i++) {
            Shot shot = shoot(y);
            if (!(shot.size() < 1e6)) {
                return Optional.empty();
            }
            if (shot.size() < tolerance) {
                return Optional.of(new Found(y, shot.monodromy(), shot.size(), i));
            }
            y = moved(y, step(shot));
        }
        return Optional.empty();
    }

    /**
     * For a plane: the rate with which the cord makes its turns from a given direction, by Newton's
     * method in d alone, and what q then lacks of closing. Faster means more turning, so this root
     * is plain to find where a periodic motion itself may be nearly neutral and hard to.
     */
    Optional<Closed> closed(double[] start, double tolerance, int most) {
        double[] y = start.clone();
        for (int i = 0; i < most; i++) {
            Shot shot = shoot(y);
            double miss = shot.residual()[0];
            if (Math.abs(miss) < tolerance) {
                return Optional.of(new Closed(y, shot.residual()[1]));
            }
            double by = -miss / shot.monodromy()[0][1];
            if (!Double.isFinite(by)) {
                return Optional.empty();
            }
            y = moved(y, new double[] {0, Math.max(-1, Math.min(1, by))});
        }
        return Optional.empty();
    }

    /** A state whose direction closes after the wanted turns, and what q misses, in units. */
    record Closed(double[] state, double missing) {}

    private record Shot(double[] residual, double[][] monodromy) {
        double size() {
            double sum = 0;
            for (double r : residual) {
                sum += r * r;
            }
            return Math.sqrt(sum);
        }
    }

    private Shot shoot(double[] start) {
        Vector3D[] axes = axes(start);
        int count = planar ? 1 : 2;
        int size = 2 * count;
        double[] y = Slips.about(start, axes, count, unit);
        Marching marching = new Marching(cord, size);
        double turned = 0;
        for (int i = 0; i < table.steps(); i++) {
            double x0 = y[0];
            double y0 = y[1];
            double z0 = y[2];
            marching.step(table, i, y);
            if (planar) {
                Vector3D a = new Vector3D(x0, y0, z0);
                Vector3D b = new Vector3D(y[0], y[1], y[2]);
                turned += Math.atan2(normal.dotProduct(a.crossProduct(b)), a.dotProduct(b));
            }
        }
        Vector3D e0 = direction(start);
        Vector3D e1 = direction(y);
        Vector3D[] there = planar ? axes(y) : Slips.carried(axes, e0, e1);
        double[] residual = new double[size];
        double[][] m = Slips.matrix(y, there, count, unit);
        if (planar) {
            residual[0] = turned - turn;
        } else {
            double angle = Math.atan2(e0.crossProduct(e1).getNorm(), e0.dotProduct(e1));
            Vector3D across = e1.subtract(e0.scalarMultiply(e0.dotProduct(e1)));
            double length = across.getNorm();
            for (int a = 0; a < count; a++) {
                residual[a] = length > 0 ? angle * across.dotProduct(axes[a]) / length : 0;
            }
        }
        for (int a = 0; a < count; a++) {
            residual[count + a] = (dot(y, there[a]) - dot(start, axes[a])) / unit;
        }
        return new Shot(residual, m);
    }

    private static double dot(double[] y, Vector3D axis) {
        return y[3] * axis.getX() + y[4] * axis.getY() + y[5] * axis.getZ();
    }

    private static Vector3D direction(double[] y) {
        return new Vector3D(y[0], y[1], y[2]);
    }

    private Vector3D[] axes(double[] y) {
        return planar ? Slips.axes(direction(y), normal) : Slips.axes(direction(y));
    }

    private static double[] step(Shot shot) {
        int n = shot.residual().length;
        RealMatrix m = MatrixUtils.createRealMatrix(shot.monodromy());
        for (int i = 0; i < n; i++) {
            m.addToEntry(i, i, -1);
        }
        SingularValueDecomposition svd = new SingularValueDecomposition(m);
        double[] s = svd.getSingularValues();
        double[] out = new double[n];
        for (int k = 0; k < n; k++) {
            if (s[k] < FLAT * Math.max(s[0], 1)) {
                continue;
            }
            double along = 0;
            for (int i = 0; i < n; i++) {
                along += svd.getU().getEntry(i, k) * shot.residual()[i];
            }
            for (int i = 0; i < n; i++) {
                out[i] -= along / s[k] * svd.getV().getEntry(i, k);
            }
        }
        double size = 0;
        for (double v : out) {
            size += v * v;
        }
        size = Math.sqrt(size);
        if (size > LONGEST) {
            for (int i = 0; i < n; i++) {
                out[i] *= LONGEST / size;
            }
        }
        return out;
    }

    private double[] moved(double[] y, double[] step) {
        Vector3D[] axes = axes(y);
        int count = step.length / 2;
        Vector3D e = direction(y);
        Vector3D aside = Vector3D.ZERO;
        for (int a = 0; a < count; a++) {
            aside = aside.add(axes[a].scalarMultiply(step[a]));
        }
        double angle = aside.getNorm();
        Vector3D to =
                angle > 0
                        ? e.scalarMultiply(Math.cos(angle))
                                .add(aside.scalarMultiply(Math.sin(angle) / angle))
                        : e;
        Vector3D[] there = Slips.carried(axes, e, to);
        Vector3D q = Vector3D.ZERO;
        for (int a = 0; a < 2; a++) {
            double d = a < count ? step[count + a] * unit : 0;
            q = q.add(there[a].scalarMultiply(dot(y, axes[a]) + d));
        }
        double[] out = {to.getX(), to.getY(), to.getZ(), q.getX(), q.getY(), q.getZ()};
        Swinging.tidy(out);
        return out;
    }
}
