package deferent.search.transition;

import deferent.motion.pairing.Gravity;
import java.util.Arrays;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Works out one passage of one side, from a time on the one pattern's clock to a time on the
 * other's: the smoothest that its beginning leads to.
 *
 * <p>It begins with the blend of the two: over the passage the share of the next pattern grows by
 * {@link Ease}, of the hand and of the tether's angle, the angle with whole turns chosen, in a
 * plane that bends from the one to the other where they differ. What the head draws fixes where the
 * hand of a cord must be, hand = p + L·b/|b| with b = p″ − g, since the head is a flat output
 * (Sreenath, Lee and Kumar, CDC 2013). Then what {@link Swell} adds to the head is made such that
 * the hand's jerk is least, in the mean of its square, which is what people's reaches come near to
 * (Flash and Hogan, The Journal of Neuroscience 5, 1985): direct transcription to {@value
 * Swell#FREE} unknowns, by Gauss and Newton with Levenberg's damping, since with b the hand's
 * derivatives by the unknowns are closed forms. A hand that strays from where the two patterns'
 * hands would blend and a pull that is lost are held off by penalties.
 *
 * <p>One attempt serves one thread; its numbers are those of the last passage.
 */
final class Attempt {
    /** Instants a beat. */
    static final int STEPS = 24;

    private static final int MOST = 64 * STEPS;
    private static final int BESIDE = 3;
    private static final int FREE = Swell.FREE;
    private static final double GRAVITY = Gravity.STANDARD;

    /** Jerk is counted in these, m/s³. */
    private static final double A_JERK = 1000;

    /** By so much more pull than is needed at least the search holds, head weights. */
    private static final double HELD = 0.12;

    /** A hand that strays less is let, metres. */
    private static final double NEAR = 0.9 * Grade.EASY.stray();

    /** What it costs to be out of reach, in grades. */
    private static final double BEYOND = 4;

    private static final double PENALTY = 60;

    /** What a hand costs that quickens by twice the livelier pattern's most. */
    private static final double HURRY = 10;

    /**
     * What a hand quickens by at most in an unhurried reach, m/s²: 0.4 m in 0.4 s by least jerk has
     * a peak of 5.77·0.4/0.4² = 14, and a jerk of 26.8·0.4/0.4³ = 168 m/s³ in the root mean square
     * (Flash and Hogan 1985, from their closed form).
     */
    private static final double A_REACH = 14;

    private static final double REACH_JERK = 168;

    private final SpunSide from;
    private final SpunSide to;
    private final Reachable reach;
    private final double beat;
    private final double bend;
    private final double live;
    private final double[] axis = new double[3];
    private final double[] u;
    private final double[] v;
    private final double[] a = new double[SpunSide.COLUMNS];
    private final double[] b = new double[SpunSide.COLUMNS];
    private final double[] out = new double[3];
    private final double[] rate = new double[3];
    private final double[] quick = new double[3];
    // With BESIDE instants of either pattern before and after: hand, head and force of the plain
    // blend, then force and hand of what was drawn last.
    private final double[] plain = new double[3 * (MOST + 1 + 2 * BESIDE)];
    private final double[] head = new double[plain.length];
    private final double[] force = new double[plain.length];
    private final double[] pulling = new double[plain.length];
    private final double[] hand = new double[plain.length];
    private final double[] pull = new double[MOST + 1];
    private final double[] off = new double[MOST + 1];
    private final double[][] slope = new double[FREE][plain.length];
    private final double[] size = new double[FREE];
    private final double[] tried = new double[FREE];
    private final double[][] normal = new double[FREE][FREE];
    private final double[] pulled = new double[FREE];
    private final double[][] root = new double[FREE][FREE];
    private final double[] quickOf = new double[FREE];
    private final double[] farOf = new double[FREE];
    private int steps;
    private double dt;
    private double seconds;
    private Basis basis = Basis.of(STEPS);

    private double stray;
    private boolean reached;
    private double least;
    private double greatest;
    private double quickening;
    private double jerk;

    /** The polynomials of a swell at even shares of a passage: values and second derivatives. */
    private record Basis(double[][] value, double[][] second) {
        private static final Basis[] MADE = new Basis[MOST / STEPS + 1];

        static Basis of(int steps) {
            int i = steps / STEPS;
            Basis made = MADE[i];
            if (made == null) {
                double[][] value = new double[Swell.ORDERS][steps + 1];
                double[][] second = new double[Swell.ORDERS][steps + 1];
                for (int k = 0; k < Swell.ORDERS; k++) {
                    for (int j = 0; j <= steps; j++) {
                        value[k][j] = Swell.basis(k, 0, (double) j / steps);
                        second[k][j] = Swell.basis(k, 2, (double) j / steps);
                    }
                }
                made = new Basis(value, second);
                MADE[i] = made;
            }
            return made;
        }
    }

    Attempt(SpunSide from, SpunSide to, Reachable reach) {
        this.from = from;
        this.to = to;
        this.reach = reach;
        this.beat = (from.beat() + to.beat()) / 2;
        Rotation turn = new Rotation(from.u(), from.v(), to.u(), to.v());
        this.bend = turn.getAngle();
        this.live = max(A_REACH, from.handQuick(), to.handQuick());
        put(turn.getAxis(RotationConvention.VECTOR_OPERATOR), axis);
        this.u = from.u().toArray();
        this.v = from.v().toArray();
    }

    /** Mean of both patterns' poi beats, seconds. */
    double beat() {
        return beat;
    }

    /** How far the hand is at most from the blend of both hands, metres. */
    double stray() {
        return stray;
    }

    /** Least pull, head weights. */
    double least() {
        return least / GRAVITY;
    }

    /** Greatest pull, head weights. */
    double greatest() {
        return greatest / GRAVITY;
    }

    /** By which factor it is livelier than the livelier of the two patterns. */
    double quickening() {
        return quickening;
    }

    /** Root mean square of the hand's jerk, m/s³. */
    double jerk() {
        return jerk;
    }

    double hardness() {
        return reached ? Grade.hardness(stray, least(), quickening) : Double.POSITIVE_INFINITY;
    }

    /** The same, running on past what is possible. */
    double outlook() {
        return Grade.outlook(stray, least(), quickening) + (reached ? 0 : BEYOND);
    }

    Swell swell() {
        return new Swell(size.clone());
    }

    /** Whole turns that bring the next tether's angle nearest to this one's in mid passage. */
    int nearestTurns(double leaves, double later, double length) {
        from.at(leaves + length / 2, a);
        to.at(leaves + later + length / 2, b);
        return (int) Math.rint((a[SpunSide.ANGLE] - b[SpunSide.ANGLE]) / (2 * Math.PI));
    }

    /**
     * The smoothest passage found from the plain blend.
     *
     * @param leaves when it begins on the one pattern's clock, seconds
     * @param later how much the other's clock is ahead, seconds
     * @param length how long it takes, seconds
     * @param turns whole turns added to the next tether's angle
     * @param rounds of Gauss and Newton
     * @return how hard it is; infinite where it is not possible
     */
    double run(double leaves, double later, double length, int turns, int rounds) {
        Arrays.fill(size, 0);
        blend(leaves, later, length, turns, false);
        smooth(rounds);
        return measured();
    }

    /** The numbers of a passage that is known, from the courses themselves. */
    double again(double leaves, double later, double length, int turns, Swell swell) {
        System.arraycopy(swell.size(), 0, size, 0, FREE);
        blend(leaves, later, length, turns, true);
        hands(size);
        return measured();
    }

    private void blend(double leaves, double later, double length, int turns, boolean exactly) {
        seconds = length;
        steps = Math.min(MOST, STEPS * Math.max(1, (int) Math.ceil(length / beat - 1e-9)));
        dt = length / steps;
        basis = Basis.of(steps);
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
            double s = Ease.share(x);
            for (int k = 0; k < 3; k++) {
                plain[at + k] = blended(SpunSide.HAND + k, s);
                hand[at + k] = plain[at + k];
            }
            if (j >= 0 && j <= steps) {
                b[SpunSide.ANGLE] += 2 * Math.PI * turns;
                draw(at, x, s);
            }
        }
    }

    /** Writes head and force of the plain blend. */
    private void draw(int at, double x, double s) {
        double growth = Ease.slope(x) / seconds;
        double curve = Ease.bend(x) / (seconds * seconds);
        double angle = blended(SpunSide.ANGLE, s);
        double turning = blended(SpunSide.ANGLE + 1, s) + growth * gap(SpunSide.ANGLE);
        double quickens =
                blended(SpunSide.ANGLE + 2, s)
                        + 2 * growth * gap(SpunSide.ANGLE + 1)
                        + curve * gap(SpunSide.ANGLE);
        double c = Math.cos(angle);
        double d = Math.sin(angle);
        for (int k = 0; k < 3; k++) {
            double along = c * u[k] + d * v[k];
            double aside = c * v[k] - d * u[k];
            out[k] = along;
            rate[k] = turning * aside;
            quick[k] = quickens * aside - turning * turning * along;
        }
        if (bend > 1e-9) {
            bent(s * bend, growth * bend, curve * bend);
        }
        double length = from.length();
        for (int k = 0; k < 3; k++) {
            int h = SpunSide.HAND + k;
            head[at + k] = plain[at + k] + length * out[k];
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

    /** Writes the hands that a swell asks for; returns what is to be made least. */
    private double hands(double[] swell) {
        double rates = 1 / (seconds * seconds);
        double sum = 0;
        for (int j = 0; j <= steps; j++) {
            int at = 3 * (j + BESIDE);
            double alongU = 0;
            double alongV = 0;
            double quickU = 0;
            double quickV = 0;
            for (int i = 0; i < Swell.ORDERS; i++) {
                double value = basis.value()[i][j];
                double second = rates * basis.second()[i][j];
                alongU += swell[i] * value;
                alongV += swell[i + Swell.ORDERS] * value;
                quickU += swell[i] * second;
                quickV += swell[i + Swell.ORDERS] * second;
            }
            double square = 0;
            for (int k = 0; k < 3; k++) {
                pulling[at + k] = force[at + k] + quickU * u[k] + quickV * v[k];
                square += pulling[at + k] * pulling[at + k];
            }
            pull[j] = Math.sqrt(square);
            double strays = 0;
            for (int k = 0; k < 3; k++) {
                double p = head[at + k] + alongU * u[k] + alongV * v[k];
                hand[at + k] = p + from.length() * pulling[at + k] / pull[j];
                double by = hand[at + k] - plain[at + k];
                strays += by * by;
            }
            off[j] = Math.sqrt(strays);
            double lost = Math.max(0, Grade.EASY.leastPull() + HELD - pull[j] / GRAVITY);
            double far = Math.max(0, off[j] - NEAR);
            sum += PENALTY * PENALTY * (lost * lost + far * far);
        }
        for (int j = 0; j < steps + 2 * BESIDE - 1; j++) {
            double over = quick(j) / live - 1;
            if (over > 0) {
                sum += HURRY * HURRY * over * over;
            }
        }
        double third = 1 / (dt * dt * dt * A_JERK);
        for (int i = 0; i < 3 * (steps + 2 * BESIDE - 2); i++) {
            double here = third * third(hand, i);
            sum += here * here;
        }
        return sum;
    }

    /** The hand's acceleration in the middle of three instants, m/s². */
    private double quick(int j) {
        double square = 0;
        for (int k = 0; k < 3; k++) {
            double two = second(hand, 3 * j + k);
            square += two * two;
        }
        return Math.sqrt(square) / (dt * dt);
    }

    private static double second(double[] of, int i) {
        return of[i + 6] - 2 * of[i + 3] + of[i];
    }

    private static double third(double[] of, int i) {
        return of[i + 9] - 3 * of[i + 6] + 3 * of[i + 3] - of[i];
    }

    /** Leaves the hands as the swell that was found asks for them. */
    private void smooth(int rounds) {
        double cost = hands(size);
        double damping = 1e-3;
        for (int round = 0; round < rounds; round++) {
            equations();
            boolean better = false;
            double before = cost;
            for (int tries = 0; tries < 4 && !better && solve(damping); tries++) {
                double next = hands(tried);
                better = next < cost;
                if (better) {
                    cost = next;
                    System.arraycopy(tried, 0, size, 0, FREE);
                    damping = Math.max(1e-6, damping / 10);
                } else {
                    damping *= 20;
                }
            }
            if (!better) {
                hands(size);
                return;
            }
            if (cost > before * (1 - 1e-3)) {
                return;
            }
        }
    }

    /** The normal equations about the present swell; the hands are those of it. */
    private void equations() {
        double rates = 1 / (seconds * seconds);
        for (double[] row : normal) {
            Arrays.fill(row, 0);
        }
        Arrays.fill(pulled, 0);
        for (double[] of : slope) {
            // Beside the passage nothing depends on the swell.
            Arrays.fill(of, 3 * (steps + 1 + BESIDE), 3 * (steps + 1 + 2 * BESIDE), 0);
        }
        for (int j = 0; j <= steps; j++) {
            int at = 3 * (j + BESIDE);
            double alongU = along(at, u) / pull[j];
            double alongV = along(at, v) / pull[j];
            double leads = from.length() / pull[j];
            double lost = Grade.EASY.leastPull() + HELD - pull[j] / GRAVITY;
            double over = off[j] - NEAR;
            for (int i = 0; i < FREE; i++) {
                int order = i % Swell.ORDERS;
                double[] e = i < Swell.ORDERS ? u : v;
                double along = i < Swell.ORDERS ? alongU : alongV;
                double value = basis.value()[order][j];
                double second = rates * basis.second()[order][j];
                for (int k = 0; k < 3; k++) {
                    slope[i][at + k] =
                            value * e[k]
                                    + leads * second * (e[k] - along * pulling[at + k] / pull[j]);
                }
                quickOf[i] = -PENALTY * second * along / GRAVITY;
                double aside = 0;
                for (int k = 0; k < 3; k++) {
                    aside += (hand[at + k] - plain[at + k]) * slope[i][at + k];
                }
                farOf[i] = off[j] > 0 ? PENALTY * aside / off[j] : 0;
            }
            if (lost > 0) {
                add(quickOf, PENALTY * lost);
            }
            if (over > 0) {
                add(farOf, PENALTY * over);
            }
        }
        for (int j = 0; j < steps + 2 * BESIDE - 1; j++) {
            double most = quick(j);
            if (most > live) {
                for (int i = 0; i < FREE; i++) {
                    double along = 0;
                    for (int k = 0; k < 3; k++) {
                        along += second(hand, 3 * j + k) * second(slope[i], 3 * j + k);
                    }
                    quickOf[i] = HURRY * along / (most * live * dt * dt * dt * dt);
                }
                add(quickOf, HURRY * (most / live - 1));
            }
        }
        double third = 1 / (dt * dt * dt * A_JERK);
        for (int i = 0; i < 3 * (steps + 2 * BESIDE - 2); i++) {
            for (int k = 0; k < FREE; k++) {
                quickOf[k] = third * third(slope[k], i);
            }
            add(quickOf, third * third(hand, i));
        }
    }

    private double along(int at, double[] e) {
        return pulling[at] * e[0] + pulling[at + 1] * e[1] + pulling[at + 2] * e[2];
    }

    private void add(double[] row, double value) {
        for (int i = 0; i < FREE; i++) {
            double here = row[i];
            if (here == 0) {
                continue;
            }
            pulled[i] -= here * value;
            double[] line = normal[i];
            for (int k = 0; k <= i; k++) {
                line[k] += here * row[k];
            }
        }
    }

    /** Cholesky's; writes the next swell to try. */
    private boolean solve(double damping) {
        for (int i = 0; i < FREE; i++) {
            for (int k = 0; k <= i; k++) {
                double sum = normal[i][k];
                if (i == k) {
                    sum += damping * (normal[i][i] + 1e-9);
                }
                for (int m = 0; m < k; m++) {
                    sum -= root[i][m] * root[k][m];
                }
                if (i == k) {
                    if (!(sum > 0)) {
                        return false;
                    }
                    root[i][i] = Math.sqrt(sum);
                } else {
                    root[i][k] = sum / root[k][k];
                }
            }
        }
        for (int i = 0; i < FREE; i++) {
            double sum = pulled[i];
            for (int m = 0; m < i; m++) {
                sum -= root[i][m] * tried[m];
            }
            tried[i] = sum / root[i][i];
        }
        for (int i = FREE - 1; i >= 0; i--) {
            double sum = tried[i];
            for (int m = i + 1; m < FREE; m++) {
                sum -= root[m][i] * tried[m];
            }
            tried[i] = sum / root[i][i];
        }
        for (int i = 0; i < FREE; i++) {
            tried[i] += size[i];
        }
        return true;
    }

    private double measured() {
        stray = 0;
        least = Double.POSITIVE_INFINITY;
        greatest = 0;
        double quickest = 0;
        boolean beyond = false;
        for (int j = 0; j <= steps; j++) {
            int at = 3 * (j + BESIDE);
            least = Math.min(least, pull[j]);
            greatest = Math.max(greatest, pull[j]);
            if (j > 0) {
                quickest = Math.max(quickest, Math.abs(pull[j] - pull[j - 1]) / dt);
            }
            stray = Math.max(stray, off[j]);
            beyond |= reach.beyond(hand[at], hand[at + 1], hand[at + 2]);
        }
        double quickMost = 0;
        double jerks = 0;
        int count = steps + 2 * BESIDE - 2;
        for (int j = 0; j < count; j++) {
            for (int k = 0; k < 3; k++) {
                double three = third(hand, 3 * j + k);
                jerks += three * three;
            }
            quickMost = Math.max(quickMost, quick(j));
        }
        jerk = Math.sqrt(jerks / count) / (dt * dt * dt);
        quickening =
                max(
                        greatest / Math.max(from.pull(), to.pull()),
                        quickest / Math.max(from.quickening(), to.quickening()),
                        quickMost / live,
                        jerk / max(REACH_JERK, from.handJerk(), to.handJerk()));
        reached = !beyond;
        return hardness();
    }

    private static double max(double... values) {
        double most = 0;
        for (double v : values) {
            most = Math.max(most, v);
        }
        return most;
    }

    private static void put(Vector3D from, double[] to) {
        to[0] = from.getX();
        to[1] = from.getY();
        to[2] = from.getZ();
    }

    private double blended(int column, double s) {
        return a[column] + s * (b[column] - a[column]);
    }

    private double gap(int column) {
        return b[column] - a[column];
    }
}
