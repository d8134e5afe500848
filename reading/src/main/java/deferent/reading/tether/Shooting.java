package deferent.reading.tether;

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
 * changes q (in units of {@link #unit}). The step solves (M − 1)δ = −r by singular values and
 * leaves out those under a millionth of the greatest: where a whole family of motions is periodic,
 * as about the upright for a level circle, the shortest step is the one meant. Where everything
 * stays in a plane, {@link PlaneShooting} does the same in two numbers.
 */
final class Shooting {
    private static final double FLAT = 1e-6;
    private static final double LONGEST = 0.6;

    private final HandTable table;
    private final Cord cord;
    private final double unit;

    Shooting(HandTable table, Cord cord) {
        this.table = table;
        this.cord = cord;
        this.unit = cord.swingLength() * 2 * Math.PI / table.period();
    }

    /** Newton's method from a start; empty where it does not settle. */
    Optional<PlaneShooting.Found> from(double[] start, double tolerance, int most) {
        return from(start, tolerance, most, Double.POSITIVE_INFINITY);
    }

    /** From so near that every step must halve what is missing; empty as soon as one does not. */
    Optional<PlaneShooting.Found> near(double[] start, double tolerance, int most) {
        return from(start, tolerance, most, 0.5);
    }

    private Optional<PlaneShooting.Found> from(
            double[] start, double tolerance, int most, double share) {
        double[] y = start.clone();
        double before = Double.POSITIVE_INFINITY;
        double[] last = y;
        for (int i = 0; i < most; i++) {
            Shot shot = shoot(y);
            if (!(shot.size() < 1e6)) {
                return Optional.empty();
            }
            if (shot.size() < tolerance) {
                return Optional.of(new PlaneShooting.Found(y, shot.size(), i));
            }
            if (!(shot.size() < share * before)) {
                return before < PlaneShooting.ROUNDING
                        ? Optional.of(new PlaneShooting.Found(last, before, i))
                        : Optional.empty();
            }
            before = shot.size();
            last = y;
            y = moved(y, step(shot));
        }
        return Optional.empty();
    }

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
        Vector3D e0 = direction(start);
        Vector3D[] axes = Slips.axes(e0);
        double[] y = Slips.about(start, axes, 2, unit);
        new Marching(cord, 4).cycle(table, y);
        Vector3D e1 = direction(y);
        Vector3D[] there = Slips.carried(axes, e0, e1);
        double angle = Math.atan2(e0.crossProduct(e1).getNorm(), e0.dotProduct(e1));
        Vector3D across = e1.subtract(e0.scalarMultiply(e0.dotProduct(e1)));
        double length = across.getNorm();
        double[] residual = new double[4];
        for (int a = 0; a < 2; a++) {
            residual[a] = length > 0 ? angle * across.dotProduct(axes[a]) / length : 0;
            residual[2 + a] = (dot(y, there[a]) - dot(start, axes[a])) / unit;
        }
        return new Shot(residual, Slips.matrix(y, there, 2, unit));
    }

    private static double dot(double[] y, Vector3D axis) {
        return y[3] * axis.getX() + y[4] * axis.getY() + y[5] * axis.getZ();
    }

    private static Vector3D direction(double[] y) {
        return new Vector3D(y[0], y[1], y[2]);
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
        Vector3D e = direction(y);
        Vector3D[] axes = Slips.axes(e);
        Vector3D aside = new Vector3D(step[0], axes[0], step[1], axes[1]);
        double angle = aside.getNorm();
        Vector3D to =
                angle > 0
                        ? e.scalarMultiply(Math.cos(angle))
                                .add(aside.scalarMultiply(Math.sin(angle) / angle))
                        : e;
        Vector3D[] there = Slips.carried(axes, e, to);
        Vector3D q =
                new Vector3D(
                        dot(y, axes[0]) + step[2] * unit,
                        there[0],
                        dot(y, axes[1]) + step[3] * unit,
                        there[1]);
        double[] out = {to.getX(), to.getY(), to.getZ(), q.getX(), q.getY(), q.getZ()};
        Swinging.tidy(out);
        return out;
    }
}
