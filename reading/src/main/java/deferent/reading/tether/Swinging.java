package deferent.reading.tether;

/**
 * The taut cord's equations of motion, with the equations of small slips beside them.
 *
 * <p>State: the direction e (hand to head, unit) and q, the part across the cord of the velocity of
 * the {@link Cord#swingLength} point (without cord mass, of the head). Written with q instead of e′
 * the equations need the hand's velocity only, never its acceleration:
 *
 * <pre>
 *   s  = e·h′                        the hand's speed along the cord, and so the head's
 *   e′ = w = (q − h′ + s·e)/ℓ
 *   q′ = f − (f·e)e − s·w − (w·q)e,   f = g − κ(|v|)·v,   v = h′ + L·w
 * </pre>
 *
 * because q = v − (v·e)e, so q′ takes the forces across the cord, and the rest is the turning of
 * the direction that "across" refers to. A corner in the hand's path changes s at once and leaves e
 * and q as they are: the cord's jerk acts along the cord. Small slips (δe, δq) obey the same
 * equations differentiated, drag included. |e| = 1 and e·q = 0 are kept by the equations and put
 * right again after each step ({@link #tidy}).
 */
final class Swinging {
    private final double length;
    private final double swing;
    private final double gravity;
    private final Cord cord;
    private final boolean air;
    private final double mass;

    Swinging(Cord cord) {
        this.cord = cord;
        this.length = cord.length();
        this.swing = cord.swingLength();
        this.gravity = cord.gravity();
        this.air = cord.kit().air();
        this.mass = cord.swingMass();
    }

    /**
     * Rates of change.
     *
     * @param h hand velocities
     * @param at where this one stands in them
     * @param y e, q, then (δe, δq) a slip
     * @param slips how many
     */
    void rate(double[] h, int at, double[] y, int slips, double[] out) {
        double hx = h[at];
        double hy = h[at + 1];
        double hz = h[at + 2];
        double ex = y[0];
        double ey = y[1];
        double ez = y[2];
        double qx = y[3];
        double qy = y[4];
        double qz = y[5];
        double s = ex * hx + ey * hy + ez * hz;
        double wx = (qx - hx + s * ex) / swing;
        double wy = (qy - hy + s * ey) / swing;
        double wz = (qz - hz + s * ez) / swing;
        double fx = 0;
        double fy = -gravity;
        double fz = 0;
        double vx = 0;
        double vy = 0;
        double vz = 0;
        double kappa = 0;
        double bend = 0;
        if (air) {
            vx = hx + length * wx;
            vy = hy + length * wy;
            vz = hz + length * wz;
            double speed = Math.sqrt(vx * vx + vy * vy + vz * vz);
            Drag.Both drag = cord.dragAndSlope(speed);
            kappa = drag.overSpeed() / mass;
            bend = speed > 0 ? drag.slope() / mass / speed : 0;
            fx -= kappa * vx;
            fy -= kappa * vy;
            fz -= kappa * vz;
        }
        double fe = fx * ex + fy * ey + fz * ez;
        double wq = wx * qx + wy * qy + wz * qz;
        out[0] = wx;
        out[1] = wy;
        out[2] = wz;
        out[3] = fx - (fe + wq) * ex - s * wx;
        out[4] = fy - (fe + wq) * ey - s * wy;
        out[5] = fz - (fe + wq) * ez - s * wz;
        for (int k = 1; k <= slips; k++) {
            int j = 6 * k;
            double dex = y[j];
            double dey = y[j + 1];
            double dez = y[j + 2];
            double dqx = y[j + 3];
            double dqy = y[j + 4];
            double dqz = y[j + 5];
            double ds = dex * hx + dey * hy + dez * hz;
            double dwx = (dqx + ds * ex + s * dex) / swing;
            double dwy = (dqy + ds * ey + s * dey) / swing;
            double dwz = (dqz + ds * ez + s * dez) / swing;
            double dfx = 0;
            double dfy = 0;
            double dfz = 0;
            if (air) {
                double dvx = length * dwx;
                double dvy = length * dwy;
                double dvz = length * dwz;
                double along = bend * (vx * dvx + vy * dvy + vz * dvz);
                dfx = -kappa * dvx - along * vx;
                dfy = -kappa * dvy - along * vy;
                dfz = -kappa * dvz - along * vz;
            }
            double dfe = dfx * ex + dfy * ey + dfz * ez + fx * dex + fy * dey + fz * dez;
            double dwq = dwx * qx + dwy * qy + dwz * qz + wx * dqx + wy * dqy + wz * dqz;
            out[j] = dwx;
            out[j + 1] = dwy;
            out[j + 2] = dwz;
            out[j + 3] = dfx - (dfe + dwq) * ex - (fe + wq) * dex - ds * wx - s * dwx;
            out[j + 4] = dfy - (dfe + dwq) * ey - (fe + wq) * dey - ds * wy - s * dwy;
            out[j + 5] = dfz - (dfe + dwq) * ez - (fe + wq) * dez - ds * wz - s * dwz;
        }
    }

    /**
     * Writes e, e′ and e″ of a taut state.
     *
     * @param hand the hand's velocity and acceleration
     * @param at where they stand
     * @return tension at the head over its mass, m/s²; below zero the cord is about to go slack
     */
    double note(double[] hand, int at, double[] y, double[] out, int to) {
        double hx = hand[at];
        double hy = hand[at + 1];
        double hz = hand[at + 2];
        double ex = y[0];
        double ey = y[1];
        double ez = y[2];
        double s = ex * hx + ey * hy + ez * hz;
        double wx = (y[3] - hx + s * ex) / swing;
        double wy = (y[4] - hy + s * ey) / swing;
        double wz = (y[5] - hz + s * ez) / swing;
        double px = -hand[at + 3];
        double py = -gravity - hand[at + 4];
        double pz = -hand[at + 5];
        double onHead = 0;
        if (air) {
            double vx = hx + length * wx;
            double vy = hy + length * wy;
            double vz = hz + length * wz;
            double k = cord.dragOverSpeed(Math.sqrt(vx * vx + vy * vy + vz * vz));
            px -= k / cord.swingMass() * vx;
            py -= k / cord.swingMass() * vy;
            pz -= k / cord.swingMass() * vz;
            // What the head's own drag is more than the swing's share of it, along the cord.
            onHead = -(k / cord.kit().headMass() - k / cord.swingMass()) * s;
        }
        double along = px * ex + py * ey + pz * ez;
        double square = wx * wx + wy * wy + wz * wz;
        out[to] = ex;
        out[to + 1] = ey;
        out[to + 2] = ez;
        out[to + 3] = wx;
        out[to + 4] = wy;
        out[to + 5] = wz;
        out[to + 6] = (px - along * ex) / swing - square * ex;
        out[to + 7] = (py - along * ey) / swing - square * ey;
        out[to + 8] = (pz - along * ez) / swing - square * ez;
        return along + length * square + onHead;
    }

    /** Puts |e| = 1 and e·q = 0 right after rounding and the step's error moved them. */
    static void tidy(double[] y) {
        double size = Math.sqrt(y[0] * y[0] + y[1] * y[1] + y[2] * y[2]);
        y[0] /= size;
        y[1] /= size;
        y[2] /= size;
        double along = y[0] * y[3] + y[1] * y[4] + y[2] * y[5];
        y[3] -= along * y[0];
        y[4] -= along * y[1];
        y[5] -= along * y[2];
    }
}
