package deferent.reading.link;

import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Head and hand at the same instants, nothing moved.
 *
 * @param gap greatest distance, metres
 * @param inPlane greatest distance seen in the plane, metres
 * @param depth greatest distance across it, metres
 * @param offset mean vector from head to hand, metres
 * @param wander how far that vector strays from its mean, metres
 * @param stretch how far the distance strays from its mean, metres
 * @param worst the first sample at which the distance in the plane is greatest
 * @param over distance in the plane at each sample, metres
 */
record Placed(
        double gap,
        double inPlane,
        double depth,
        Vector3D offset,
        double wander,
        double stretch,
        int worst,
        double[] over) {

    /** Positions at the same times, x, y, z, x, …; {@code across} is the plane's unit normal. */
    static Placed of(double[] head, double[] hand, Vector3D across) {
        int count = head.length / 3;
        double nx = across.getX();
        double ny = across.getY();
        double nz = across.getZ();
        double mx = 0;
        double my = 0;
        double mz = 0;
        double mean = 0;
        double least = Double.MAX_VALUE;
        double gap = 0;
        double inPlane = 0;
        double depth = 0;
        int worst = 0;
        double[] over = new double[count];
        for (int i = 0; i < count; i++) {
            double x = hand[3 * i] - head[3 * i];
            double y = hand[3 * i + 1] - head[3 * i + 1];
            double z = hand[3 * i + 2] - head[3 * i + 2];
            double deep = x * nx + y * ny + z * nz;
            double all = Math.sqrt(x * x + y * y + z * z);
            mx += x / count;
            my += y / count;
            mz += z / count;
            mean += all / count;
            // What is left beside the depth; a difference of squares would leave their rounding.
            double px = x - deep * nx;
            double py = y - deep * ny;
            double pz = z - deep * nz;
            over[i] = Math.sqrt(px * px + py * py + pz * pz);
            least = Math.min(least, all);
            gap = Math.max(gap, all);
            depth = Math.max(depth, Math.abs(deep));
            if (over[i] > inPlane + 1e-9) {
                worst = i;
            }
            inPlane = Math.max(inPlane, over[i]);
        }
        double wander = 0;
        for (int i = 0; i < count; i++) {
            double x = hand[3 * i] - head[3 * i] - mx;
            double y = hand[3 * i + 1] - head[3 * i + 1] - my;
            double z = hand[3 * i + 2] - head[3 * i + 2] - mz;
            wander = Math.max(wander, x * x + y * y + z * z);
        }
        return new Placed(
                gap,
                inPlane,
                depth,
                new Vector3D(mx, my, mz),
                Math.sqrt(wander),
                Math.max(gap - mean, mean - least),
                worst,
                over);
    }

    /** Periodic positions as they were {@code lag} of a cycle ago, at the same times. */
    static double[] later(double[] points, double lag) {
        int count = points.length / 3;
        double back = -lag * count;
        int whole = (int) Math.floor(back);
        double share = back - whole;
        double[] out = new double[points.length];
        for (int i = 0; i < count; i++) {
            int a = 3 * Math.floorMod(i + whole, count);
            int b = 3 * Math.floorMod(i + whole + 1, count);
            for (int c = 0; c < 3; c++) {
                out[3 * i + c] = points[a + c] + share * (points[b + c] - points[a + c]);
            }
        }
        return out;
    }
}
