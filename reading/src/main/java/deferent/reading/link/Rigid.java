package deferent.reading.link;

import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * A turn, perhaps with a mirror, and then a shift.
 *
 * <p>{@link #best} is the least-squares motion of weighted pairs of points in closed form: in the
 * plane by complex numbers (the turn is the argument of the correlation), in space by the singular
 * values of the cross covariance (Kabsch, Acta Crystallographica A 32, 1976).
 *
 * @param turn the nine entries of the orthogonal matrix, row by row
 * @param shift metres, after the turn
 */
record Rigid(double[] turn, double[] shift) {

    static Rigid flat(double angle, boolean mirrored, double dx, double dy) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        return mirrored
                ? new Rigid(new double[] {c, s, 0, s, -c, 0, 0, 0, 1}, new double[] {dx, dy, 0})
                : new Rigid(new double[] {c, -s, 0, s, c, 0, 0, 0, 1}, new double[] {dx, dy, 0});
    }

    boolean mirrored() {
        double[] t = turn;
        return t[0] * (t[4] * t[8] - t[5] * t[7])
                        - t[1] * (t[3] * t[8] - t[5] * t[6])
                        + t[2] * (t[3] * t[7] - t[4] * t[6])
                < 0;
    }

    /** The points moved, into {@code out}. */
    void move(double[] points, double[] out) {
        for (int i = 0; i < points.length; i += 3) {
            double x = points[i];
            double y = points[i + 1];
            double z = points[i + 2];
            out[i] = turn[0] * x + turn[1] * y + turn[2] * z + shift[0];
            out[i + 1] = turn[3] * x + turn[4] * y + turn[5] * z + shift[1];
            out[i + 2] = turn[6] * x + turn[7] * y + turn[8] * z + shift[2];
        }
    }

    /** This motion, then a small one: in the plane (angle, dx, dy), in space (three, three). */
    Rigid nudged(double[] by) {
        if (by.length == 3) {
            double c = Math.cos(by[0]);
            double s = Math.sin(by[0]);
            double[] t = turn;
            return new Rigid(
                    new double[] {
                        c * t[0] - s * t[3],
                        c * t[1] - s * t[4],
                        0,
                        s * t[0] + c * t[3],
                        s * t[1] + c * t[4],
                        0,
                        0,
                        0,
                        1
                    },
                    new double[] {shift[0] + by[1], shift[1] + by[2], 0});
        }
        Vector3D axis = new Vector3D(by[0], by[1], by[2]);
        double[][] r =
                axis.getNorm() == 0
                        ? MatrixUtils.createRealIdentityMatrix(3).getData()
                        : new Rotation(axis, axis.getNorm(), RotationConvention.VECTOR_OPERATOR)
                                .getMatrix();
        double[] turned = new double[9];
        for (int a = 0; a < 3; a++) {
            for (int b = 0; b < 3; b++) {
                turned[3 * a + b] =
                        r[a][0] * turn[b] + r[a][1] * turn[3 + b] + r[a][2] * turn[6 + b];
            }
        }
        return new Rigid(
                turned, new double[] {shift[0] + by[3], shift[1] + by[4], shift[2] + by[5]});
    }

    /**
     * The motion of {@code h} that brings its points nearest those of {@code p}, by weighted least
     * squares over the pairs.
     */
    static Rigid best(
            double[] p,
            double[] h,
            int[] pairs,
            int count,
            double[] weight,
            boolean flat,
            boolean mirrored) {
        double sum = 0;
        double[] mp = new double[3];
        double[] mh = new double[3];
        for (int k = 0; k < count; k++) {
            double w = weight[k];
            int i = 3 * pairs[2 * k];
            int j = 3 * pairs[2 * k + 1];
            sum += w;
            for (int a = 0; a < 3; a++) {
                mp[a] += w * p[i + a];
                mh[a] += w * h[j + a];
            }
        }
        for (int a = 0; a < 3; a++) {
            mp[a] /= sum;
            mh[a] /= sum;
        }
        double[] m = new double[9];
        for (int k = 0; k < count; k++) {
            double w = weight[k];
            int i = 3 * pairs[2 * k];
            int j = 3 * pairs[2 * k + 1];
            double px = w * (p[i] - mp[0]);
            double py = w * (p[i + 1] - mp[1]);
            double hx = h[j] - mh[0];
            double hy = h[j + 1] - mh[1];
            m[0] += px * hx;
            m[1] += px * hy;
            m[3] += py * hx;
            m[4] += py * hy;
            if (!flat) {
                double pz = w * (p[i + 2] - mp[2]);
                double hz = h[j + 2] - mh[2];
                m[2] += px * hz;
                m[5] += py * hz;
                m[6] += pz * hx;
                m[7] += pz * hy;
                m[8] += pz * hz;
            }
        }
        Rigid turned =
                flat
                        ? flat(
                                mirrored
                                        ? Math.atan2(m[3] + m[1], m[0] - m[4])
                                        : Math.atan2(m[3] - m[1], m[0] + m[4]),
                                mirrored,
                                0,
                                0)
                        : new Rigid(spatialTurn(m, mirrored), new double[3]);
        double[] moved = new double[3];
        turned.move(mh, moved);
        return new Rigid(
                turned.turn, new double[] {mp[0] - moved[0], mp[1] - moved[1], mp[2] - moved[2]});
    }

    // The orthogonal matrix of wanted handedness nearest m. Adding a share of its cofactors leaves
    // the
    // singular vectors alone and fills the third direction in when a flat path meets a spatial one;
    // Newton's iteration (Higham, SIAM Journal on Scientific and Statistical Computing 7, 1986)
    // then
    // finds the orthogonal factor, ten times as fast as by singular values, which step in where the
    // two handednesses are nearly as good as each other.
    private static double[] spatialTurn(double[] m, boolean mirrored) {
        double size = 0;
        for (double x : m) {
            size += x * x;
        }
        size = Math.sqrt(size);
        if (size == 0) {
            return bySingularValues(m, mirrored);
        }
        double[] x = new double[9];
        double[] cofactors = cofactors(m);
        double share = (mirrored ? -1.5 : 1.5) / (size * size);
        for (int i = 0; i < 9; i++) {
            x[i] = m[i] / size + share * cofactors[i];
        }
        for (int step = 0; step < 20; step++) {
            cofactors = cofactors(x);
            double det = x[0] * cofactors[0] + x[1] * cofactors[1] + x[2] * cofactors[2];
            if (Math.abs(det) < 1e-9 || det < 0 != mirrored) {
                return bySingularValues(m, mirrored);
            }
            double change = 0;
            for (int i = 0; i < 9; i++) {
                double next = (x[i] + cofactors[i] / det) / 2;
                change = Math.max(change, Math.abs(next - x[i]));
                x[i] = next;
            }
            if (change < 1e-12) {
                return x;
            }
        }
        return bySingularValues(m, mirrored);
    }

    private static double[] cofactors(double[] a) {
        return new double[] {
            a[4] * a[8] - a[5] * a[7], a[5] * a[6] - a[3] * a[8], a[3] * a[7] - a[4] * a[6],
            a[2] * a[7] - a[1] * a[8], a[0] * a[8] - a[2] * a[6], a[1] * a[6] - a[0] * a[7],
            a[1] * a[5] - a[2] * a[4], a[2] * a[3] - a[0] * a[5], a[0] * a[4] - a[1] * a[3]
        };
    }

    private static double[] bySingularValues(double[] m, boolean mirrored) {
        SingularValueDecomposition svd =
                new SingularValueDecomposition(
                        MatrixUtils.createRealMatrix(
                                new double[][] {
                                    {m[0], m[1], m[2]}, {m[3], m[4], m[5]}, {m[6], m[7], m[8]}
                                }));
        RealMatrix u = svd.getU();
        RealMatrix v = svd.getV();
        double sign = determinant(u) * determinant(v) * (mirrored ? -1 : 1) < 0 ? -1 : 1;
        double[] turn = new double[9];
        for (int a = 0; a < 3; a++) {
            for (int b = 0; b < 3; b++) {
                turn[3 * a + b] =
                        u.getEntry(a, 0) * v.getEntry(b, 0)
                                + u.getEntry(a, 1) * v.getEntry(b, 1)
                                + sign * u.getEntry(a, 2) * v.getEntry(b, 2);
            }
        }
        return turn;
    }

    private static double determinant(RealMatrix a) {
        return a.getEntry(0, 0)
                        * (a.getEntry(1, 1) * a.getEntry(2, 2)
                                - a.getEntry(1, 2) * a.getEntry(2, 1))
                - a.getEntry(0, 1)
                        * (a.getEntry(1, 0) * a.getEntry(2, 2)
                                - a.getEntry(1, 2) * a.getEntry(2, 0))
                + a.getEntry(0, 2)
                        * (a.getEntry(1, 0) * a.getEntry(2, 1)
                                - a.getEntry(1, 1) * a.getEntry(2, 0));
    }
}
