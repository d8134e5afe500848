package deferent.reading.tether;

/**
 * Steps of a poi's cord behind a hand whose acceleration A is held over each: its direction obeys
 * e″ = F − (F·e)e − |e′|²e, F = (f − A)/ℓ, by the classic Runge-Kutta method. Where the cord would
 * have to push it is slack and the head flies, until it comes back on the cord with a snap that
 * takes its outward speed.
 *
 * <p>A poi is six numbers: from hand to head in cords' lengths, a unit vector where the cord is
 * straight, and the speed of that. A hand is nine: place, speed and acceleration, metres and
 * seconds. Components stand written out and what is passed on is kept in fields because runs of
 * thousands of steps are most of what a reading takes. One is used by one thread.
 */
final class CordStep {
    /** How many numbers a poi is. */
    static final int POI = 6;

    private static final double STRAIGHT = 1 - 1e-9;

    private final Cord cord;
    private final double swing;
    private final double h;
    private final double[] fall;
    private final double[] k1 = new double[POI];
    private final double[] k2 = new double[POI];
    private final double[] k3 = new double[POI];
    private final double[] k4 = new double[POI];
    private final double[] between = new double[POI];

    /**
     * @param h seconds of a step
     */
    CordStep(Cord cord, double h) {
        this.cord = cord;
        this.swing = cord.swingLength();
        this.h = h;
        this.fall = cord.fall().toArray();
    }

    /** Whether the head is as far from the hand as the cord lets it be. */
    static boolean straight(double[] poi) {
        return norm(poi) >= STRAIGHT;
    }

    /** The pull over mass behind a hand as it is, m/s². */
    double pull(double[] poi, double[] hand) {
        return swing * rate(poi, hand, 0, k1);
    }

    /** Moves a poi on by a step; {@code to} may be {@code from}. */
    void step(double[] hand, double[] from, double[] to) {
        if (!straight(from) || rate(from, hand, 0, k1) < 0) {
            fly(hand, from, to);
            return;
        }
        rate(between(from, k1, h / 2), hand, h / 2, k2);
        rate(between(from, k2, h / 2), hand, h / 2, k3);
        rate(between(from, k3, h), hand, h, k4);
        for (int k = 0; k < POI; k++) {
            to[k] = from[k] + h / 6 * (k1[k] + 2 * k2[k] + 2 * k3[k] + k4[k]);
        }
        straighten(to);
    }

    private void fly(double[] hand, double[] from, double[] to) {
        for (int d = 0; d < 3; d++) {
            double change = (fall[d] - hand[6 + d]) / cord.length();
            double speed = from[3 + d];
            to[d] = from[d] + h * speed + h * h / 2 * change;
            to[3 + d] = speed + h * change;
        }
        double far = norm(to);
        if (far >= 1) {
            double outward = along(to) / far;
            scale(to, 1 / far);
            for (int d = 0; d < 3 && outward > 0; d++) {
                to[3 + d] -= outward * to[d];
            }
        }
    }

    /** Takes a poi back to the cord's length, its speed along the cord away. */
    static void straighten(double[] poi) {
        scale(poi, 1 / norm(poi));
        double along = along(poi);
        poi[3] -= along * poi[0];
        poi[4] -= along * poi[1];
        poi[5] -= along * poi[2];
    }

    private double[] between(double[] poi, double[] k, double by) {
        between[0] = poi[0] + by * k[0];
        between[1] = poi[1] + by * k[1];
        between[2] = poi[2] + by * k[2];
        between[3] = poi[3] + by * k[3];
        between[4] = poi[4] + by * k[4];
        between[5] = poi[5] + by * k[5];
        return between;
    }

    /**
     * Rates of e and e′; the pull over mass and swing length, 1/s².
     *
     * @param into seconds into the step at whose start the hand's numbers are
     */
    private double rate(double[] poi, double[] hand, double into, double[] out) {
        double x = poi[0];
        double y = poi[1];
        double z = poi[2];
        double vx = poi[3];
        double vy = poi[4];
        double vz = poi[5];
        double fx = fall[0] - hand[6];
        double fy = fall[1] - hand[7];
        double fz = fall[2] - hand[8];
        if (cord.kit().air()) {
            double wx = hand[3] + into * hand[6] + cord.length() * vx;
            double wy = hand[4] + into * hand[7] + cord.length() * vy;
            double wz = hand[5] + into * hand[8] + cord.length() * vz;
            double k =
                    cord.dragOverSpeed(Math.sqrt(wx * wx + wy * wy + wz * wz)) / cord.swingMass();
            fx -= k * wx;
            fy -= k * wy;
            fz -= k * wz;
        }
        fx /= swing;
        fy /= swing;
        fz /= swing;
        double pull = fx * x + fy * y + fz * z + (vx * vx + vy * vy + vz * vz);
        out[0] = vx;
        out[1] = vy;
        out[2] = vz;
        out[3] = fx - pull * x;
        out[4] = fy - pull * y;
        out[5] = fz - pull * z;
        return pull;
    }

    private static double along(double[] poi) {
        return poi[0] * poi[3] + poi[1] * poi[4] + poi[2] * poi[5];
    }

    private static double norm(double[] poi) {
        return Math.sqrt(poi[0] * poi[0] + poi[1] * poi[1] + poi[2] * poi[2]);
    }

    private static void scale(double[] poi, double by) {
        poi[0] *= by;
        poi[1] *= by;
        poi[2] *= by;
    }
}
