package deferent.search.transition;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Jet;
import deferent.motion.pairing.SmoothStep;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The plain blend of two figures over a passage of one side, at even instants: the share of the
 * next pattern grows by {@link SmoothStep}, of the hand and of the tether's angle, the angle with
 * whole turns chosen, and its lean out of its plane, in a plane that bends from the one to the
 * other where they differ. It serves one thread, and its numbers are those of the last passage.
 */
final class Blend {
    /** Instants of either pattern before and after a passage that are looked at too. */
    static final int BESIDE = 3;

    private static final double GRAVITY = Gravity.STANDARD;

    private final SpunSide from;
    private final SpunSide to;
    private final double bend;
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
            double s = SmoothStep.share(x);
            for (int k = 0; k < 3; k++) {
                hand[at + k] = blended(SpunSide.HAND + k, s);
            }
            if (j >= 0 && j <= steps) {
                b[SpunSide.ANGLE] += 2 * Math.PI * turns;
                draw(at, x, s);
            }
        }
    }

    /** Writes head and force. */
    private void draw(int at, double x, double s) {
        double growth = SmoothStep.slope(x) / seconds;
        double curve = SmoothStep.bend(x) / (seconds * seconds);
        Jet angle = blended(SpunSide.ANGLE, s, growth, curve);
        Jet lean = blended(SpunSide.LEAN, s, growth, curve);
        Jet flat = TetherLean.inPlane(lean);
        Jet c = flat.times(angle.cos());
        Jet d = flat.times(angle.sin());
        for (int k = 0; k < 3; k++) {
            out[k] = c.value() * u[k] + d.value() * v[k] + lean.value() * normal[k];
            rate[k] = c.d1() * u[k] + d.d1() * v[k] + lean.d1() * normal[k];
            quick[k] = c.d2() * u[k] + d.d2() * v[k] + lean.d2() * normal[k];
        }
        if (bend > 1e-9) {
            bent(s * bend, growth * bend, curve * bend);
        }
        double length = from.length();
        for (int k = 0; k < 3; k++) {
            int h = SpunSide.HAND + k;
            head[at + k] = hand[at + k] + length * out[k];
            force[at + k] =
                    blended(h + 6, s)
                            + 2 * growth * gap(h + 3)
                            + curve * gap(h)
                            + length * quick[k]
                            + (k == 1 ? GRAVITY : 0);
        }
    }

    /** Turns direction, its rate and acceleration with the bending plane. */
    private void bent(double angle, double growth, double curve) {
        Vector3D w = new Vector3D(axis);
        Rotation turn = new Rotation(w, angle, RotationConvention.VECTOR_OPERATOR);
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

    private Jet blended(int column, double s, double growth, double curve) {
        return new Jet(
                blended(column, s),
                blended(column + 1, s) + growth * gap(column),
                blended(column + 2, s) + 2 * growth * gap(column + 1) + curve * gap(column),
                0);
    }

    private double blended(int column, double s) {
        return a[column] + s * (b[column] - a[column]);
    }

    private double gap(int column) {
        return b[column] - a[column];
    }
}
