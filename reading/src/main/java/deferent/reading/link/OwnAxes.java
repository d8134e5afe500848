package deferent.reading.link;

import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealVector;

/**
 * Points of a path seen along its own axes, longest first, about its mean: paths that live in
 * different planes come onto one sheet and can be compared there.
 *
 * @param xyz the points, x, y, z, x, …, metres; z is 0 throughout for a flat path
 * @param dimension 0 for a point, 1 a line, 2 a flat path, 3 one that leaves every plane
 */
record OwnAxes(double[] xyz, int dimension) {
    // A path this much thinner than it is long counts as flat, or as a line.
    private static final double THIN = 1e-6;
    private static final double POINT = 1e-7;

    static OwnAxes of(double[] points) {
        int count = points.length / 3;
        double[] mean = new double[3];
        for (int i = 0; i < points.length; i++) {
            mean[i % 3] += points[i] / count;
        }
        double[][] spread = new double[3][3];
        for (int i = 0; i < points.length; i += 3) {
            for (int a = 0; a < 3; a++) {
                for (int b = 0; b < 3; b++) {
                    spread[a][b] += (points[i + a] - mean[a]) * (points[i + b] - mean[b]) / count;
                }
            }
        }
        double size = spread[0][0] + spread[1][1] + spread[2][2];
        double[] out = new double[points.length];
        if (size < POINT * POINT) {
            return new OwnAxes(out, 0);
        }
        for (double[] row : spread) {
            for (int b = 0; b < 3; b++) {
                row[b] /= size;
            }
        }
        EigenDecompositionSymmetric own =
                new EigenDecompositionSymmetric(MatrixUtils.createRealMatrix(spread));
        double[] most = new double[3];
        for (int a = 0; a < 3; a++) {
            RealVector axis = own.getEigenvector(a);
            double ax = axis.getEntry(0);
            double ay = axis.getEntry(1);
            double az = axis.getEntry(2);
            for (int i = 0; i < points.length; i += 3) {
                double along =
                        ax * (points[i] - mean[0])
                                + ay * (points[i + 1] - mean[1])
                                + az * (points[i + 2] - mean[2]);
                out[i + a] = along;
                most[a] = Math.max(most[a], Math.abs(along));
            }
        }
        int dimension = most[2] > THIN * most[0] ? 3 : most[1] > THIN * most[0] ? 2 : 1;
        if (dimension < 3) {
            for (int i = 2; i < out.length; i += 3) {
                out[i] = 0;
            }
        }
        return new OwnAxes(out, dimension);
    }
}
