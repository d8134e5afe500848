package deferent.search.transition;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Jet;
import deferent.motion.pairing.SmoothStep;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The plain blend of two figures over a passage of one side, at even instants: the share of the
 * next pattern grows by {@link SmoothStep}, of where the middle of the hand's path is, of the hand
 * about it, of the tether's angle with whole turns chosen and of its lean out of its plane; hand
 * and tether in a plane that bends from the one to the other where they differ ({@link Stagger}).
 * It serves one thread, and its numbers are those of the last passage.
 */
final class Blend {
    /** Instants of either pattern before and after a passage that are looked at too. */
    static final int BESIDE = 3;

    private static final double GRAVITY = Gravity.STANDARD;

    private final SpunSide from;
    private final SpunSide to;
    private final double bend;
    private final Stagger stagger;
    private final double[][] back;
    private final double[] left;
    private final double[] joined;
    private final double[] axis = new double[3];
    private final double[] u;
    private final double[] v;
    private final double[] normal;
    private final double[] a = new double[SpunSide.COLUMNS];
    private final double[] b = new double[SpunSide.COLUMNS];
    private final double[] out = new double[3];
    private final double[] rate = new double[3];
    private final double[] quick = new double[3];
    private final double[] hand;
    private final double[] head;
    private final double[] force;
    private double seconds;

    /**
     * @param most instants of a passage at most
     */
    Blend(SpunSide from, SpunSide to, int most) {
        this.from = from;
        this.to = to;
        Rotation turn = new Rotation(from.u(), from.v(), to.u(), to.v());
        this.bend = turn.getAngle();
        this.back = turn.revert().getMatrix();
        this.left = from.middle().toArray();
        this.joined = to.middle().toArray();
        this.stagger = Stagger.of(from, to);
        put(turn.getAxis(RotationConvention.VECTOR_OPERATOR), axis);
        this.u = from.u().toArray();
        this.v = from.v().toArray();
        this.normal = from.u().crossProduct(from.v()).toArray();
        this.hand = new double[3 * (most + 2 * BESIDE)];
        this.head = new double[hand.length];
        this.force = new double[hand.length];
    }

    /** Hands in turn, x, y and z each, from {@value #BESIDE} instants before the passage on. */
    double[] hand() {
        return hand;
    }

    /** Heads likewise, over the passage alone. */
    double[] head() {
        return head;
    }

    /** Pulls over the heads' mass likewise, p″ − g, m/s². */
    double[] force() {
        return force;
    }

    double[] u() {
        return u;
    }

    double[] v() {
        return v;
    }

    /** Whole turns that bring the next tether's angle nearest to this one's in mid passage. */
    int nearestTurns(double leaves, double later, double length) {
        from.at(leaves + length / 2, a);
        to.at(leaves + later + length / 2, b);
        return (int) Math.rint((a[SpunSide.ANGLE] - b[SpunSide.ANGLE]) / (2 * Math.PI));
    }

    /**
     * Works one passage out.
     *
     * @param steps between its instants
     * @param exactly whether from the courses themselves, not from their tables
     */
    void run(double leaves, double later, double length, int turns, int steps, boolean exactly) {
        seconds = length;
        double dt = length / steps;
        for (int j = -BESIDE; j <= steps + BESIDE; j++) {
            double t = leaves + j * dt;
            if (exactly) {
                from.exact(t, a);
                to.exact(t + later, b);
            } else {
                from.at(t, a);
                to.at(t + later, b);
            }
            int at = 3 * (j + BESIDE);
            double x = Math.max(0, Math.min(1, (double) j / steps));
            about();
            double shape = SmoothStep.share(x);
            for (int k = 0; k < 3; k++) {
                out[k] = blended(SpunSide.HAND + k, shape);
            }
            double bends = SmoothStep.share(stagger.bend().share(x));
            if (bend > 1e-9) {
                put(turn(bends * bend).applyTo(new Vector3D(out)), out);
            }
            double goes = SmoothStep.share(stagger.hand().share(x));
            for (int k = 0; k < 3; k++) {
                hand[at + k] = left[k] + goes * (joined[k] - left[k]) + out[k];
            }
            if (j >= 0 && j <= steps) {
                b[SpunSide.ANGLE] += 2 * Math.PI * turns;
                draw(at, x);
            }
        }
    }

    /** Counts either hand from the middle of its path, the next one's as before its plane bends. */
    private void about() {
        for (int k = 0; k < 3; k++) {
            a[SpunSide.HAND + k] -= left[k];
            b[SpunSide.HAND + k] -= joined[k];
        }
        if (bend > 1e-9) {
            for (int column = SpunSide.HAND; column < SpunSide.ANGLE; column += 3) {
                double x = b[column];
                double y = b[column + 1];
                double z = b[column + 2];
                for (int k = 0; k < 3; k++) {
                    b[column + k] = back[k][0] * x + back[k][1] * y + back[k][2] * z;
                }
            }
        }
    }

    /** A share that grows, with its first two derivatives in time. */
    private record Growing(double share, double growth, double curve) {}

    private Growing growing(Stagger.Span span, double x) {
        double here = span.share(x);
        double rate = span.rate() / seconds;
        return new Growing(
                SmoothStep.share(here),
                SmoothStep.slope(here) * rate,
                SmoothStep.bend(here) * rate * rate);
    }

    /** Writes head and force. */
    private void draw(int at, double x) {
        Growing tether = growing(Stagger.ALL, x);
        Jet angle = blended(SpunSide.ANGLE, tether);
        Jet lean = blended(SpunSide.LEAN, tether);
        Jet flat = TetherLean.inPlane(lean);
        Jet c = flat.times(angle.cos());
        Jet d = flat.times(angle.sin());
        double length = from.length();
        for (int k = 0; k < 3; k++) {
            Jet hand = blendedHand(k, tether);
            out[k] = hand.value() + length * along(k, c.value(), d.value(), lean.value());
            rate[k] = hand.d1() + length * along(k, c.d1(), d.d1(), lean.d1());
            quick[k] = hand.d2() + length * along(k, c.d2(), d.d2(), lean.d2());
        }
        if (bend > 1e-9) {
            Growing bends = growing(stagger.bend(), x);
            bent(bends.share() * bend, bends.growth() * bend, bends.curve() * bend);
        }
        Growing goes = growing(stagger.hand(), x);
        for (int k = 0; k < 3; k++) {
            double far = joined[k] - left[k];
            head[at + k] = left[k] + goes.share() * far + out[k];
            force[at + k] = goes.curve() * far + quick[k] + (k == 1 ? GRAVITY : 0);
        }
    }

    private double along(int k, double onU, double onV, double across) {
        return onU * u[k] + onV * v[k] + across * normal[k];
    }

    private Rotation turn(double angle) {
        return new Rotation(new Vector3D(axis), angle, RotationConvention.VECTOR_OPERATOR);
    }

    /** Turns a place about the middle, its rate and acceleration with the bending plane. */
    private void bent(double angle, double growth, double curve) {
        Vector3D w = new Vector3D(axis);
        Rotation turn = turn(angle);
        Vector3D c = turn.applyTo(new Vector3D(out));
        Vector3D c1 = turn.applyTo(new Vector3D(rate));
        Vector3D c2 = turn.applyTo(new Vector3D(quick));
        Vector3D wc = w.crossProduct(c);
        put(c, out);
        put(
                c2.add(w.crossProduct(c1).scalarMultiply(2 * growth))
                        .add(wc.scalarMultiply(curve))
                        .add(w.crossProduct(wc).scalarMultiply(growth * growth)),
                quick);
    }

    private static void put(Vector3D from, double[] to) {
        to[0] = from.getX();
        to[1] = from.getY();
        to[2] = from.getZ();
    }

    private Jet blended(int column, Growing by) {
        return blended(column, 1, by);
    }

    private Jet blendedHand(int k, Growing by) {
        return blended(SpunSide.HAND + k, 3, by);
    }

    /** Of a column whose derivatives stand so far on. */
    private Jet blended(int column, int on, Growing by) {
        int second = column + 2 * on;
        return new Jet(
                blended(column, by.share()),
                blended(column + on, by.share()) + by.growth() * gap(column),
                blended(second, by.share())
                        + 2 * by.growth() * gap(column + on)
                        + by.curve() * gap(column),
                0);
    }

    private double blended(int column, double s) {
        return a[column] + s * (b[column] - a[column]);
    }

    private double gap(int column) {
        return b[column] - a[column];
    }
}
