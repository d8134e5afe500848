package deferent.reading.link;

import deferent.motion.trace.Samples;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;

/**
 * What kind of line a path is, to say in words why two of them differ: judged from samples, to a
 * millimetre.
 *
 * @param sort the kind
 * @param size radius of a circle or arc, half length of a line, else half the greatest extent;
 *     metres
 */
public record PathKind(Sort sort, double size) {
    private static final double SAME = 1e-3;

    /** Kinds of line. */
    public enum Sort {
        POINT,
        LINE,
        CIRCLE,
        ARC,
        FIGURE
    }

    public String noun() {
        return switch (sort) {
            case POINT -> "point";
            case LINE -> "line";
            case CIRCLE -> "circle";
            case ARC -> "arc";
            case FIGURE -> "figure";
        };
    }

    /**
     * What kind a sampled path is.
     *
     * @param xyz contiguous points of one whole cycle, metres
     */
    public static PathKind of(double[] xyz) {
        int count = xyz.length / 3;
        double[] least = {1e9, 1e9, 1e9};
        double[] most = {-1e9, -1e9, -1e9};
        for (int i = 0; i < xyz.length; i++) {
            least[i % 3] = Math.min(least[i % 3], xyz[i]);
            most[i % 3] = Math.max(most[i % 3], xyz[i]);
        }
        Vector3D middle =
                new Vector3D(
                        (least[0] + most[0]) / 2,
                        (least[1] + most[1]) / 2,
                        (least[2] + most[2]) / 2);
        double nearest = 1e9;
        double farthest = 0;
        for (int i = 0; i < count; i++) {
            double d = Samples.point(xyz, i).distance(middle);
            nearest = Math.min(nearest, d);
            farthest = Math.max(farthest, d);
        }
        if (farthest < SAME) {
            return new PathKind(Sort.POINT, 0);
        }
        double[][] spread = new double[3][3];
        for (int i = 0; i < count; i++) {
            double[] d = Samples.point(xyz, i).subtract(middle).toArray();
            for (int r = 0; r < 3; r++) {
                for (int c = 0; c < 3; c++) {
                    spread[r][c] += d[r] * d[c] / count;
                }
            }
        }
        double[] axes =
                new EigenDecompositionSymmetric(new Array2DRowRealMatrix(spread)).getEigenvalues();
        if (Math.sqrt(Math.max(0, axes[1]) + Math.max(0, axes[2])) < SAME / 2) {
            return new PathKind(Sort.LINE, farthest);
        }
        if (axes[2] < SAME * SAME) {
            if (farthest - nearest < SAME) {
                return new PathKind(Sort.CIRCLE, farthest);
            }
            double radius = commonRadius(xyz);
            if (radius > 0) {
                return new PathKind(Sort.ARC, radius);
            }
        }
        return new PathKind(Sort.FIGURE, farthest);
    }

    // Radius of the circle through three spread points when every point lies on it; 0 otherwise.
    private static double commonRadius(double[] xyz) {
        int count = xyz.length / 3;
        Vector3D a = Samples.point(xyz, 0);
        Vector3D b = a;
        for (int i = 1; i < count; i++) {
            Vector3D p = Samples.point(xyz, i);
            b = p.distance(a) > b.distance(a) ? p : b;
        }
        Vector3D chord = b.subtract(a);
        Vector3D c = a;
        double off = 0;
        for (int i = 1; i < count; i++) {
            Vector3D p = Samples.point(xyz, i);
            double away = chord.crossProduct(p.subtract(a)).getNorm() / chord.getNorm();
            if (away > off) {
                off = away;
                c = p;
            }
        }
        if (off < SAME) {
            return 0;
        }
        Vector3D ab = b.subtract(a);
        Vector3D ac = c.subtract(a);
        Vector3D n = ab.crossProduct(ac);
        Vector3D toCentre =
                n.crossProduct(ab)
                        .scalarMultiply(ac.getNormSq())
                        .add(ac.crossProduct(n).scalarMultiply(ab.getNormSq()))
                        .scalarMultiply(1 / (2 * n.getNormSq()));
        Vector3D centre = a.add(toCentre);
        double radius = toCentre.getNorm();
        for (int i = 0; i < count; i++) {
            if (Math.abs(Samples.point(xyz, i).distance(centre) - radius) > SAME) {
                return 0;
            }
        }
        return radius;
    }
}
