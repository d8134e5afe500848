package deferent.reading.tether;

import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * {@link Shooting} where hand, cord and gravity stay in one plane: two numbers, the cord's angle θ
 * and its q = u, instead of six. With t across the cord the positive way round and s = h′·e,
 *
 * <pre>  θ′ = (u − h′·t)/ℓ,   u′ = f·t − s·θ′,   f = g − κ(|v|)·v. </pre>
 *
 * Angles count through whole turns, so the wanted number of turns is part of the target. Without
 * drag the map over a cycle keeps area in (θ, u), and faster means more turning: for every
 * direction there is a rate that closes the angle ({@link #closed}), and periodic motions stand
 * where what u then lacks passes zero. That finds even those that are nearly neutral, which
 * Newton's method alone does not.
 */
final class PlaneShooting implements Directions {
    private static final double FLAT = 1e-6;
    private static final double LONGEST = 0.6;

    /** What no longer halves and is less than this is rounding. */
    static final double ROUNDING = 1e-9;

    /** Steps after which an angle that is to close lacks little: of those that did, 99 in 100. */
    private static final int SOON = 4;

    /** Radians. */
    private static final double NEARLY = 0.3;

    private final HandTable table;
    private final Cord cord;
    private final Vector3D a;
    private final Vector3D b;
    private final double turn;
    private final double unit;
    private final double[] hand;
    private final double swing;
    private final double ratio;
    private final double ga;
    private final double gb;
    private final boolean air;
    private final double mass;
    private final EighthOrder twoSlips = new EighthOrder(6);
    private final EighthOrder oneSlip = new EighthOrder(4);
    private final double[] y = new double[6];
    private final EighthOrder.Slope slope = this::rate;
    private int at;
    private int shots;

    /**
     * @param normal of the plane; θ turns positively about it
     * @param turn what θ is to grow by over the cycle, radians
     */
    PlaneShooting(HandTable table, Cord cord, Vector3D normal, double turn) {
        this.table = table;
        this.cord = cord;
        this.a = normal.orthogonal();
        this.b = normal.crossProduct(a);
        this.turn = turn;
        this.swing = cord.swingLength();
        this.ratio = cord.length() / swing;
        this.unit = swing * 2 * Math.PI / table.period();
        this.ga = cord.fall().dotProduct(a);
        this.gb = cord.fall().dotProduct(b);
        this.air = cord.kit().air();
        this.mass = cord.swingMass();
        double[] v = table.velocity();
        this.hand = new double[v.length / 3 * 2];
        for (int i = 0; i < hand.length / 2; i++) {
            hand[2 * i] = v[3 * i] * a.getX() + v[3 * i + 1] * a.getY() + v[3 * i + 2] * a.getZ();
            hand[2 * i + 1] =
                    v[3 * i] * b.getX() + v[3 * i + 1] * b.getY() + v[3 * i + 2] * b.getZ();
        }
    }

    /** A state whose direction closes after the wanted turns, and what u misses, in units. */
    record Closed(double[] state, double missing) {}

    /** A periodic state. */
    record Found(double[] state, double residual, int iterations) {}

    /** How many cycles have been integrated so far. */
    int shots() {
        return shots;
    }

    /** With a step halved while that does harm. */
    @Override
    public Optional<Found> from(double[] start, double tolerance, int most) {
        return from(start, tolerance, most, true);
    }

    @Override
    public Optional<Found> near(double[] start, double tolerance, int most) {
        return from(start, tolerance, most, false);
    }

    private Optional<Found> from(double[] start, double tolerance, int most, boolean patient) {
        double theta = angle(start);
        double u = across(start, theta);
        Shot shot = shoot(theta, u);
        for (int i = 0; i < most; i++) {
            if (!(shot.size() < 1e6)) {
                return Optional.empty();
            }
            if (shot.size() < tolerance) {
                return Optional.of(new Found(state(theta, u), shot.size(), i));
            }
            double[] step = step(shot);
            double share = 1;
            Shot next = shoot(theta + step[0], u + step[1] * unit);
            for (int k = 0; patient && k < 3 && !(next.size() < 2 * shot.size()); k++) {
                share /= 2;
                next = shoot(theta + share * step[0], u + share * step[1] * unit);
            }
            if (!patient && !(next.size() < Math.max(tolerance, shot.size() / 2))) {
                return shot.size() < ROUNDING
                        ? Optional.of(new Found(state(theta, u), shot.size(), i))
                        : Optional.empty();
            }
            theta += share * step[0];
            u += share * step[1] * unit;
            shot = next;
        }
        return shot.size() < tolerance
                ? Optional.of(new Found(state(theta, u), shot.size(), most))
                : Optional.empty();
    }

    /** The rate that closes the angle from the start's direction, by Newton's method in u alone. */
    @Override
    public Optional<Closed> closed(double[] start, double tolerance, int most) {
        double theta = angle(start);
        double u = across(start, theta);
        for (int i = 0; i < most; i++) {
            Shot shot = quickened(theta, u);
            if (Math.abs(shot.angle()) < tolerance) {
                return Optional.of(new Closed(state(theta, u), shot.rate()));
            }
            if (i >= SOON && Math.abs(shot.angle()) > NEARLY) {
                return Optional.empty();
            }
            double by = -shot.angle() / shot.m01();
            if (!Double.isFinite(by)) {
                return Optional.empty();
            }
            u += unit * Math.max(-1, Math.min(1, by));
        }
        return Optional.empty();
    }

    @Override
    public double[] turned(double[] start, double by) {
        double theta = angle(start);
        double rate = across(start, theta) - handAcross(theta);
        return state(theta + by, rate + handAcross(theta + by));
    }

    @Override
    public double angle(Closed from, Closed to) {
        return Math.IEEEremainder(angle(to.state()) - angle(from.state()), 2 * Math.PI);
    }

    private double handAcross(double theta) {
        return -hand[0] * Math.sin(theta) + hand[1] * Math.cos(theta);
    }

    private record Shot(double angle, double rate, double m00, double m01, double m10, double m11) {
        double size() {
            return Math.hypot(angle, rate);
        }
    }

    private Shot shoot(double theta, double u) {
        y[4] = 1;
        y[5] = 0;
        cycle(twoSlips, theta, u);
        return new Shot(
                y[0] - theta - turn, (y[1] - u) / unit, y[4], y[2], y[5] / unit, y[3] / unit);
    }

    /** Without what a slip of the angle comes to. */
    private Shot quickened(double theta, double u) {
        cycle(oneSlip, theta, u);
        return new Shot(
                y[0] - theta - turn, (y[1] - u) / unit, Double.NaN, y[2], Double.NaN, y[3] / unit);
    }

    private void cycle(EighthOrder method, double theta, double u) {
        shots++;
        y[0] = theta;
        y[1] = u;
        y[2] = 0;
        y[3] = unit;
        for (int i = 0; i < table.steps(); i++) {
            at = i * EighthOrder.STAGES * 2;
            method.step(slope, table.length(i), y);
        }
    }

    private void rate(int stage, double[] in, double[] out) {
        double ha = hand[at + 2 * stage];
        double hb = hand[at + 2 * stage + 1];
        double sin = Math.sin(in[0]);
        double cos = Math.cos(in[0]);
        double s = ha * cos + hb * sin;
        double ht = hb * cos - ha * sin;
        double ge = ga * cos + gb * sin;
        double turning = (in[1] - ht) / swing;
        double force = gb * cos - ga * sin;
        double kappa = 0;
        double bend = 0;
        double vt = 0;
        if (air) {
            vt = ht + ratio * (in[1] - ht);
            double speed = Math.sqrt(vt * vt + s * s);
            Drag.Both drag = cord.dragAndSlope(speed);
            kappa = drag.overSpeed() / mass;
            bend = speed > 0 ? drag.slope() / mass / speed : 0;
            force -= kappa * vt;
        }
        out[0] = turning;
        out[1] = force - s * turning;
        for (int k = 2; k < out.length; k += 2) {
            double dTurning = (in[k + 1] + s * in[k]) / swing;
            double dForce = -ge * in[k];
            if (air) {
                double dvt = ratio * in[k + 1] - s * (1 - ratio) * in[k];
                dForce -= kappa * dvt + bend * vt * (vt * dvt + s * ht * in[k]);
            }
            out[k] = dTurning;
            out[k + 1] = dForce - s * dTurning - turning * ht * in[k];
        }
    }

    // (M − 1)δ = −r; where M − 1 is all but singular, the shortest δ that does the most.
    private static double[] step(Shot shot) {
        double p = shot.m00() - 1;
        double q = shot.m01();
        double r = shot.m10();
        double t = shot.m11() - 1;
        double square = p * p + q * q + r * r + t * t;
        double det = p * t - q * r;
        double c;
        double d;
        if (Math.abs(det) > FLAT * square) {
            c = (-shot.angle() * t + shot.rate() * q) / det;
            d = (-shot.rate() * p + shot.angle() * r) / det;
        } else {
            c = -(p * shot.angle() + r * shot.rate()) / square;
            d = -(q * shot.angle() + t * shot.rate()) / square;
        }
        double size = Math.hypot(c, d);
        double limit = size > LONGEST ? LONGEST / size : 1;
        return new double[] {limit * c, limit * d};
    }

    private double angle(double[] state) {
        return Math.atan2(
                state[0] * b.getX() + state[1] * b.getY() + state[2] * b.getZ(),
                state[0] * a.getX() + state[1] * a.getY() + state[2] * a.getZ());
    }

    private double across(double[] state, double theta) {
        Vector3D t = new Vector3D(-Math.sin(theta), a, Math.cos(theta), b);
        return state[3] * t.getX() + state[4] * t.getY() + state[5] * t.getZ();
    }

    private double[] state(double theta, double u) {
        double sin = Math.sin(theta);
        double cos = Math.cos(theta);
        Vector3D e = new Vector3D(cos, a, sin, b);
        Vector3D q = new Vector3D(-sin * u, a, cos * u, b);
        return new double[] {e.getX(), e.getY(), e.getZ(), q.getX(), q.getY(), q.getZ()};
    }
}
