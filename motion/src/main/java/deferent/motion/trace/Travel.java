package deferent.motion.trace;

import java.util.List;

/**
 * How far a head travels and what it goes round, by adaptive Gauss–Kronrod quadrature of the exact
 * speed and of Green's ½(u·v′ − v·u′). The cycle is cut where the path is not smooth and where the
 * head is slowest, because at a cusp the speed has a corner.
 *
 * @param length in space, metres
 * @param signedArea in the plane, square metres
 */
@SuppressWarnings("FloatingPointLiteralPrecision")
record Travel(double length, double signedArea) {
    private static final int PIECES = 8;
    private static final int DEEPEST = 18;

    // With all the digits of the source. The pair of 7 and 15 points on [-1, 1]: Piessens et al.,
    // QUADPACK (1983), qk15.
    private static final double[] NODE = {
        0.991455371120812639,
        0.949107912342758525,
        0.864864423359769073,
        0.741531185599394440,
        0.586087235467691130,
        0.405845151377397167,
        0.207784955007898468,
        0
    };
    private static final double[] KRONROD = {
        0.022935322010529225, 0.063092092629978553, 0.104790010322250184, 0.140653259715525919,
        0.169004726639267903, 0.190350578064785410, 0.204432940075298892, 0.209482141084727828
    };
    private static final double[] GAUSS = {
        0,
        0.129484966168869693,
        0,
        0.279705391489276668,
        0,
        0.381830050505118945,
        0,
        0.417959183673469388
    };

    /** {@code tolerance} is each piece's, as a share of the figure's size. */
    static Travel along(HeadPath path, double tolerance) {
        double size = path.width() + path.height();
        double[] sum = new double[2];
        double from = path.start();
        List<Double> joints = path.joints();
        joints.add(path.start() + path.period());
        for (double to : joints) {
            int pieces = (int) Math.ceil((to - from) / path.period() * PIECES);
            for (int i = 0; i < pieces; i++) {
                add(
                        path,
                        from + (to - from) * i / pieces,
                        from + (to - from) * (i + 1) / pieces,
                        tolerance * size,
                        0,
                        sum);
            }
            from = Math.max(from, to);
        }
        return new Travel(sum[0], sum[1]);
    }

    private static void add(
            HeadPath path, double a, double b, double tolerance, int depth, double[] sum) {
        double middle = (a + b) / 2;
        double half = (b - a) / 2;
        double length = 0;
        double area = 0;
        double coarseLength = 0;
        double coarseArea = 0;
        for (int i = 0; i < NODE.length; i++) {
            for (int way = -1; way <= (NODE[i] == 0 ? -1 : 1); way += 2) {
                State s = path.state(middle + way * half * NODE[i]);
                double speed = s.velocity().getNorm();
                double turned = path.swept(s);
                length += KRONROD[i] * speed;
                area += KRONROD[i] * turned;
                coarseLength += GAUSS[i] * speed;
                coarseArea += GAUSS[i] * turned;
            }
        }
        boolean enough =
                Math.abs(length - coarseLength) * half <= tolerance
                        && Math.abs(area - coarseArea) * half <= tolerance;
        if (enough || depth >= DEEPEST) {
            sum[0] += length * half;
            sum[1] += area * half;
            return;
        }
        add(path, a, middle, tolerance, depth + 1, sum);
        add(path, middle, b, tolerance, depth + 1, sum);
    }
}
