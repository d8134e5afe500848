package deferent.reading.body;

import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** Distances over sampled points (x, y, z, x, y, z, …), sample by sample, in metres. */
final class Lengths {
    private Lengths() {}

    static double[] between(double[] a, double[] b) {
        double[] out = new double[a.length / 3];
        for (int i = 0; i < out.length; i++) {
            double x = a[3 * i] - b[3 * i];
            double y = a[3 * i + 1] - b[3 * i + 1];
            double z = a[3 * i + 2] - b[3 * i + 2];
            out[i] = Math.sqrt(x * x + y * y + z * z);
        }
        return out;
    }

    static double[] from(Vector3D point, double[] a) {
        double[] out = new double[a.length / 3];
        for (int i = 0; i < out.length; i++) {
            double x = a[3 * i] - point.getX();
            double y = a[3 * i + 1] - point.getY();
            double z = a[3 * i + 2] - point.getZ();
            out[i] = Math.sqrt(x * x + y * y + z * z);
        }
        return out;
    }
}
