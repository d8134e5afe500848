package deferent.reading.tether;

import java.util.Arrays;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What small slips of a poi and its hand together obey over a cycle, the motion's own clock left
 * out of them.
 *
 * <p>Here the hand is not put where it should be, as in {@link SlipLaw}, but has an acceleration of
 * its own. A slip is ten numbers: how far the hand is off its path and at which speed, (δh, δh′),
 * and how far the cord is turned on two axes a₁, a₂ across it, δe = Σcᵢaᵢ, and c′. The axes turn
 * the shortest way with the cord, w = e′, so with F = (f − h″)/ℓ, f gravity and drag over the mass,
 * and κ = F·e + |w|² the pull over mass and length,
 *
 * <pre>  δh″ = u,    cₖ″ = (w·aₖ) Σ(w·aᵢ)cᵢ − κcₖ + (δf − u)·aₖ/ℓ . </pre>
 *
 * The hand also moves along the cord: that turns a turning cord as a skater's arms do, with no pull
 * needed.
 *
 * <p>A motion begun a moment δ later is as good, so a slip along f = (h′, h″, w·a, w′·a) is none:
 * of every slip as much is left out as brings it across f (transverse linearization: Shiriaev,
 * Perram and Canudas-de-Wit, IEEE Trans. Automatic Control 50 (2005); Banaszuk and Hauser, Systems
 * and Control Letters 26 (1995)). What is left out is δ = l·z, by which the hand is to go on as if
 * it were that much earlier or later. Places count against speeds as the cycle's rate has it.
 */
final class UntimedLaw {
    /** Numbers of a slip. */
    static final int SLIP = 10;

    /** Numbers of the hand's own part of it, which it knows without looking. */
    static final int HAND = 6;

    /** Numbers of what the hand does. */
    static final int PUSH = 3;

    private final MeantMotion meant;
    private final double[][] own;
    private final double[][] pushed;
    private final double[][] late;
    private final double[][] share;
    private final double[][] jerk;

    private UntimedLaw(
            MeantMotion meant,
            double[][] own,
            double[][] pushed,
            double[][] late,
            double[][] share,
            double[][] jerk) {
        this.meant = meant;
        this.own = own;
        this.pushed = pushed;
        this.late = late;
        this.share = share;
        this.jerk = jerk;
    }

    static UntimedLaw of(MeantMotion meant) {
        int steps = meant.steps();
        double[][] own = new double[steps][SLIP * SLIP];
        double[][] pushed = new double[steps][SLIP * PUSH];
        double[][] late = new double[steps][];
        double[][] share = new double[steps][];
        double[][] jerk = new double[steps][PUSH];
        double rate = 2 * Math.PI / meant.period();
        for (int i = 0; i < steps; i++) {
            for (int j = 0; j < SLIP + PUSH; j++) {
                double[] z = new double[SLIP];
                double[] u = new double[PUSH];
                if (j < SLIP) {
                    z[j] = 1;
                } else {
                    u[j - SLIP] = 1;
                }
                z = step(meant, i, z, u);
                if (i + 1 == steps) {
                    turn(meant, z, 1);
                }
                for (int k = 0; k < SLIP; k++) {
                    if (j < SLIP) {
                        own[i][k * SLIP + j] = z[k];
                    } else {
                        pushed[i][k * PUSH + j - SLIP] = z[k];
                    }
                }
            }
            late[i] = late(meant.start(i));
            share[i] = share(late[i], rate, meant.cord().length());
            double h = meant.times()[i + 1] - meant.times()[i];
            Vector3D by =
                    meant.end(i)
                            .hand()
                            .acceleration()
                            .subtract(meant.start(i).hand().acceleration())
                            .scalarMultiply(1 / h);
            jerk[i] = by.toArray();
        }
        return new UntimedLaw(meant, own, pushed, late, share, jerk);
    }

    /** What a moment's delay is as a slip. */
    private static double[] late(MeantMotion.Instant at) {
        double[] f = new double[SLIP];
        System.arraycopy(at.hand().velocity().toArray(), 0, f, 0, 3);
        System.arraycopy(at.hand().acceleration().toArray(), 0, f, 3, 3);
        for (int a = 0; a < 2; a++) {
            f[6 + a] = at.rate().dotProduct(at.axes()[a]);
            f[8 + a] = at.bend().dotProduct(at.axes()[a]);
        }
        return f;
    }

    private static double[] share(double[] f, double rate, double length) {
        double[] l = new double[SLIP];
        double sum = 0;
        for (int k = 0; k < SLIP; k++) {
            double unit = (k < HAND ? 1 : length) / (k < 3 || k == 6 || k == 7 ? 1 : rate);
            l[k] = f[k] * unit * unit;
            sum += l[k] * f[k];
        }
        for (int k = 0; k < SLIP; k++) {
            l[k] /= sum;
        }
        return l;
    }

    private static double[] step(MeantMotion meant, int i, double[] z, double[] u) {
        double h = meant.times()[i + 1] - meant.times()[i];
        double[] k1 = rate(meant.start(i), z, u);
        double[] k2 = rate(meant.middle(i), plus(z, k1, h / 2), u);
        double[] k3 = rate(meant.middle(i), plus(z, k2, h / 2), u);
        double[] k4 = rate(meant.end(i), plus(z, k3, h), u);
        double[] out = z.clone();
        for (int k = 0; k < SLIP; k++) {
            out[k] += h / 6 * (k1[k] + 2 * k2[k] + 2 * k3[k] + k4[k]);
        }
        return out;
    }

    private static double[] plus(double[] z, double[] k, double h) {
        double[] out = z.clone();
        for (int i = 0; i < out.length; i++) {
            out[i] += h * k[i];
        }
        return out;
    }

    private static double[] rate(MeantMotion.Instant at, double[] z, double[] u) {
        double[] out = new double[SLIP];
        System.arraycopy(z, 3, out, 0, 3);
        System.arraycopy(u, 0, out, 3, 3);
        double swing = at.cord().swingLength();
        double[] w = {at.rate().dotProduct(at.axes()[0]), at.rate().dotProduct(at.axes()[1])};
        double turned = w[0] * z[6] + w[1] * z[7];
        Vector3D force = new Vector3D(u[0], u[1], u[2]).negate().add(drag(at, z, w));
        double pull = at.rates().pull();
        for (int a = 0; a < 2; a++) {
            out[6 + a] = z[8 + a];
            out[8 + a] = w[a] * turned - pull * z[6 + a] + force.dotProduct(at.axes()[a]) / swing;
        }
        return out;
    }

    /** How the drag over the mass changes with the head's speed. */
    private static Vector3D drag(MeantMotion.Instant at, double[] z, double[] w) {
        Cord cord = at.cord();
        if (!cord.kit().air()) {
            return Vector3D.ZERO;
        }
        Vector3D turning =
                at.axes()[0]
                        .scalarMultiply(z[8])
                        .add(at.axes()[1].scalarMultiply(z[9]))
                        .subtract(at.direction().scalarMultiply(w[0] * z[6] + w[1] * z[7]));
        Vector3D by = new Vector3D(z[3], z[4], z[5]).add(turning.scalarMultiply(cord.length()));
        Vector3D v = at.head().velocity();
        double speed = v.getNorm();
        double k = cord.dragOverSpeed(speed) / cord.swingMass();
        double slope = speed > 0 ? cord.dragOverSpeedSlope(speed) / cord.swingMass() / speed : 0;
        return by.scalarMultiply(-k).subtract(v.scalarMultiply(slope * v.dotProduct(by)));
    }

    /** From the axes of one cycle onto those of a later one, to which they turn. */
    private static void turn(MeantMotion meant, double[] z, int cycles) {
        if (meant.planar()) {
            return;
        }
        double sin = cycles > 0 ? meant.turnedSin() : -meant.turnedSin();
        for (int at = 6; at < SLIP; at += 2) {
            double first = z[at];
            double second = z[at + 1];
            z[at] = meant.turnedCos() * first - sin * second;
            z[at + 1] = sin * first + meant.turnedCos() * second;
        }
    }

    MeantMotion meant() {
        return meant;
    }

    int steps() {
        return own.length;
    }

    /** A step's length, the same all round. */
    double step() {
        return meant.period() / steps();
    }

    /** What a slip becomes over a step, rows one after another, on the axes of what follows. */
    double[] own(int step) {
        return own[step];
    }

    /** What a push held over it does. */
    double[] pushed(int step) {
        return pushed[step];
    }

    /** What a second's delay is as a slip, at a step's start. */
    double[] late(int step) {
        return late[step];
    }

    /** By how much a slip is late, seconds, at a step's start. */
    double lateBy(int step, double[] z, int at) {
        double sum = 0;
        for (int k = 0; k < SLIP; k++) {
            sum += share[step][k] * z[at + k];
        }
        return sum;
    }

    /** How much the hand's own acceleration changes in a second, over a step, m/s³. */
    double[] jerk(int step) {
        return jerk[step];
    }

    /** Moves a slip over a step. */
    void step(int step, double[] from, int at, double[] push, int pushAt, double[] to, int toAt) {
        double[] a = own[step];
        double[] b = pushed[step];
        for (int k = 0; k < SLIP; k++) {
            double sum = 0;
            for (int j = 0; j < SLIP; j++) {
                sum += a[k * SLIP + j] * from[at + j];
            }
            for (int j = 0; j < PUSH; j++) {
                sum += b[k * PUSH + j] * push[pushAt + j];
            }
            to[toAt + k] = sum;
        }
    }

    /** The greatest multiplier's modulus of slips that are let alone, the clock left out. */
    double growth() {
        return Multipliers.of(
                start -> {
                    double[] z = start;
                    for (int i = 0; i < steps(); i++) {
                        double[] next = new double[SLIP];
                        step(i, z, 0, new double[PUSH], 0, next, 0);
                        double by = lateBy((i + 1) % steps(), next, 0);
                        for (int k = 0; k < SLIP; k++) {
                            next[k] -= by * late[(i + 1) % steps()][k];
                        }
                        z = next;
                    }
                    return Arrays.copyOf(z, SLIP);
                },
                SLIP,
                SLIP)[0]
                .norm();
    }
}
