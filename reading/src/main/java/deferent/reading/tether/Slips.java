package deferent.reading.tether;

import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Small slips of a cord's state on two axes across it: c radians aside, d (in some unit of speed)
 * of q. A slip of the direction takes e·δq = −q·δe with it, because q stays across the cord.
 */
final class Slips {
    private Slips() {}

    /** Any two axes across {@code e}. */
    static Vector3D[] axes(Vector3D e) {
        Vector3D first = e.orthogonal();
        return new Vector3D[] {first, e.crossProduct(first)};
    }

    /** The axis within the plane of that normal, the positive way round, then the normal. */
    static Vector3D[] axes(Vector3D e, Vector3D normal) {
        return new Vector3D[] {normal.crossProduct(e).normalize(), normal};
    }

    /** The axes turned the shortest way with the direction from {@code e} to {@code to}. */
    static Vector3D[] carried(Vector3D[] axes, Vector3D e, Vector3D to) {
        Vector3D[] out = new Vector3D[axes.length];
        Vector3D sum = e.add(to);
        double by = 1 / (1 + e.dotProduct(to));
        for (int i = 0; i < axes.length; i++) {
            Vector3D a = axes[i];
            out[i] =
                    Double.isFinite(by) && by < 1e12
                            ? a.subtract(sum.scalarMultiply(sum.dotProduct(a) * by))
                                    .add(to.scalarMultiply(2 * e.dotProduct(a)))
                            : a;
        }
        return out;
    }

    /** A state with unit slips beside it: first c on each axis, then d on each. */
    static double[] about(double[] y, Vector3D[] axes, int count, double unit) {
        double[] out = new double[6 * (1 + 2 * count)];
        System.arraycopy(y, 0, out, 0, 6);
        Vector3D e = new Vector3D(y[0], y[1], y[2]);
        Vector3D q = new Vector3D(y[3], y[4], y[5]);
        for (int a = 0; a < count; a++) {
            put(out, 6 * (1 + a), axes[a], e.scalarMultiply(-axes[a].dotProduct(q)));
            put(out, 6 * (1 + count + a), Vector3D.ZERO, axes[a].scalarMultiply(unit));
        }
        return out;
    }

    private static void put(double[] y, int at, Vector3D e, Vector3D q) {
        y[at] = e.getX();
        y[at + 1] = e.getY();
        y[at + 2] = e.getZ();
        y[at + 3] = q.getX();
        y[at + 4] = q.getY();
        y[at + 5] = q.getZ();
    }

    /** What became of unit slips, on these axes: column j is what slip j has become. */
    static double[][] matrix(double[] y, Vector3D[] axes, int count, double unit) {
        int n = 2 * count;
        double[][] m = new double[n][n];
        for (int j = 0; j < n; j++) {
            int at = 6 * (1 + j);
            for (int a = 0; a < count; a++) {
                m[a][j] =
                        y[at] * axes[a].getX()
                                + y[at + 1] * axes[a].getY()
                                + y[at + 2] * axes[a].getZ();
                m[count + a][j] =
                        (y[at + 3] * axes[a].getX()
                                        + y[at + 4] * axes[a].getY()
                                        + y[at + 5] * axes[a].getZ())
                                / unit;
            }
        }
        return m;
    }
}
