package deferent.reading.tether;

import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
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
 *
 * <p>About an axis the cord's shadow is counted through whole turns, so that no other number of
 * turns closes; and, as in a plane, for a direction of the shadow there is a start that closes all
 * but the speed along it ({@link #closed}), which finds motions that are nearly neutral.
 */
final class Shooting implements Directions {
    private static final double FLAT = 1e-6;
    private static final double LONGEST = 0.6;

    /** So near its axis a cord has no shadow; the sine. */
    private static final double UPON = 1e-6;

    /** Steps after which every one must come nearer. */
    private static final int SOON = 4;

    private final HandTable table;
    private final Cord cord;
    private final Vector3D axis;
    private final double turn;
    private final double unit;

    /**
     * @param axis about which the cord's shadow turns; the zero vector where turns are not counted
     * @param turn what the shadow is to turn by over the cycle, radians
     */
    Shooting(HandTable table, Cord cord, Vector3D axis, double turn) {
        this.table = table;
        this.cord = cord;
        this.axis = axis;
        this.turn = turn;
        this.unit = cord.swingLength() * 2 * Math.PI / table.period();
    }

    @Override
    public Optional<PlaneShooting.Found> from(double[] start, double tolerance, int most) {
        return from(start, tolerance, most, Double.POSITIVE_INFINITY);
    }

    @Override
    public Optional<PlaneShooting.Found> near(double[] start, double tolerance, int most) {
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
        Vector3D[] axes = axes(e0);
        double[] y = Slips.about(start, axes, 2, unit);
        double turned = cycle(y);
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
        residual[0] += 2 * Math.PI * Math.rint((turned - turn) / (2 * Math.PI));
        return new Shot(residual, Slips.matrix(y, there, 2, unit));
    }

    /** Along the shadow's circle first, then toward the axis. */
    private Vector3D[] axes(Vector3D e) {
        Vector3D around = axis.crossProduct(e);
        if (around.getNorm() < UPON) {
            return Slips.axes(e);
        }
        Vector3D first = around.normalize();
        return new Vector3D[] {first, e.crossProduct(first)};
    }

    /** One cycle; returns what the shadow turned by. */
    private double cycle(double[] y) {
        Marching marching = new Marching(cord, 4);
        if (axis.getNormSq() == 0) {
            marching.cycle(table, y);
            return turn;
        }
        Vector3D u = axis.orthogonal();
        Vector3D v = axis.crossProduct(u);
        double sum = 0;
        double last = Math.atan2(direction(y).dotProduct(v), direction(y).dotProduct(u));
        for (int i = 0; i < table.steps(); i++) {
            marching.step(table, i, y);
            double angle = Math.atan2(direction(y).dotProduct(v), direction(y).dotProduct(u));
            sum += Math.IEEEremainder(angle - last, 2 * Math.PI);
            last = angle;
        }
        return sum;
    }

    /** By Newton's method in what is left free where the shadow's direction is held. */
    @Override
    public Optional<PlaneShooting.Closed> closed(double[] start, double tolerance, int most) {
        double[] y = start;
        double before = Double.POSITIVE_INFINITY;
        for (int i = 0; i < most; i++) {
            Shot shot = shoot(y);
            double[] r = shot.residual();
            double size = Math.hypot(Math.hypot(r[0], r[1]), r[3]);
            if (!(size < 1e6) || i >= SOON && !(size < before)) {
                return Optional.empty();
            }
            if (size < tolerance) {
                return Optional.of(new PlaneShooting.Closed(y, r[2]));
            }
            before = size;
            double[][] m = shot.monodromy();
            Vector3D free =
                    solved(
                            new Vector3D(m[0][1], m[1][1] - 1, m[3][1]),
                            new Vector3D(m[0][2], m[1][2], m[3][2]),
                            new Vector3D(m[0][3], m[1][3], m[3][3] - 1),
                            new Vector3D(-r[0], -r[1], -r[3]));
            if (free.isNaN() || free.isInfinite()) {
                return Optional.empty();
            }
            double share = Math.min(1, LONGEST / free.getNorm());
            y =
                    moved(
                            y,
                            new double[] {
                                0, share * free.getX(), share * free.getY(), share * free.getZ()
                            });
        }
        return Optional.empty();
    }

    /** x with x₁a + x₂b + x₃c = d, by Cramer's rule. */
    private static Vector3D solved(Vector3D a, Vector3D b, Vector3D c, Vector3D d) {
        Vector3D bc = b.crossProduct(c);
        return new Vector3D(
                        d.dotProduct(bc),
                        d.dotProduct(c.crossProduct(a)),
                        d.dotProduct(a.crossProduct(b)))
                .scalarMultiply(1 / a.dotProduct(bc));
    }

    @Override
    public double[] turned(double[] start, double by) {
        Rotation about = new Rotation(axis, by, RotationConvention.VECTOR_OPERATOR);
        Vector3D h = new Vector3D(table.velocity()[0], table.velocity()[1], table.velocity()[2]);
        return Following.state(
                h,
                cord,
                about.applyTo(direction(start)),
                about.applyTo(Following.rate(h, cord, start)));
    }

    @Override
    public double angle(PlaneShooting.Closed from, PlaneShooting.Closed to) {
        Vector3D one = axis.crossProduct(direction(from.state()));
        Vector3D other = axis.crossProduct(direction(to.state()));
        return Math.atan2(axis.dotProduct(one.crossProduct(other)), one.dotProduct(other));
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
        Vector3D[] axes = axes(e);
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
