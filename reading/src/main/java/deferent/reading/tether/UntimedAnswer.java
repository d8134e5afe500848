package deferent.reading.tether;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * What a cycle leaves of a slip when a hand that knows the motion answers it a delay τ late and
 * holds the figure, not its clock: from where it saw the poi at t − τ, and from what it did itself
 * since, it feels where the poi is by now, goes on from the moment of the motion that this is
 * nearest to, and pushes by u = −K·z against what is left ({@link UntimedLaw}). That practised
 * balancers go by such a forward model is what Mehta and Schaal (J. Neurophysiol. 88 (2002)) and
 * Milton and others (J. R. Soc. Interface 13:20160212 (2016)) found.
 *
 * <p>The gains K keep ∫(d² + u²/ω⁴)dt least, d how far the head is off across its figure: the
 * linear quadratic regulator step by step, from the periodic solution of Riccati's difference
 * equation (Bittanti and Colaneri, Periodic Systems: Filtering and Control, 2009). ω says how eager
 * a hand is.
 *
 * <p>If slips were felt as they are, the delay would not matter. They are not: how far the poi is
 * off is felt a share too small or too great, and what that does grows over the delay as a slip
 * does. Delays are rounded up to whole steps.
 */
final class UntimedAnswer {
    /** Cycles after which Riccati's solution has forgotten its beginning. */
    private static final int CYCLES = 6;

    /** So slow a head goes no way of its own, m/s. */
    private static final double SLOW = 0.1;

    private static final int SLIP = UntimedLaw.SLIP;
    private static final int PUSH = UntimedLaw.PUSH;

    private final UntimedLaw law;
    private final double[][] gains;
    private final int back;

    /**
     * @param gains of {@link #gains}
     * @param delay seconds
     */
    UntimedAnswer(UntimedLaw law, double[][] gains, double delay) {
        this.law = law;
        this.gains = gains;
        this.back = (int) Math.ceil(delay / law.step() - 1e-9);
    }

    /**
     * K at every step, rows one after another.
     *
     * @param eager ω, rad/s
     */
    static double[][] gains(UntimedLaw law, double eager) {
        int steps = law.steps();
        double[][] gains = new double[steps][PUSH * SLIP];
        RealMatrix worth = MatrixUtils.createRealMatrix(SLIP, SLIP);
        RealMatrix dear =
                MatrixUtils.createRealIdentityMatrix(PUSH)
                        .scalarMultiply(law.step() / Math.pow(eager, 4));
        RealMatrix[] own = new RealMatrix[steps];
        RealMatrix[] pushed = new RealMatrix[steps];
        RealMatrix[] off = new RealMatrix[steps];
        for (int i = 0; i < steps; i++) {
            RealMatrix clock = clock(law, (i + 1) % steps);
            own[i] = clock.multiply(matrix(law.own(i), SLIP));
            pushed[i] = clock.multiply(matrix(law.pushed(i), PUSH));
            off[i] = off(law.meant().start(i)).scalarMultiply(law.step());
        }
        for (int cycle = 0; cycle < CYCLES; cycle++) {
            for (int i = steps - 1; i >= 0; i--) {
                RealMatrix effect = pushed[i].transposeMultiply(worth);
                RealMatrix k =
                        new LUDecomposition(effect.multiply(pushed[i]).add(dear))
                                .getSolver()
                                .solve(effect.multiply(own[i]));
                RealMatrix rest = own[i].subtract(pushed[i].multiply(k));
                worth = own[i].transposeMultiply(worth).multiply(rest).add(off[i]);
                worth = worth.add(worth.transpose()).scalarMultiply(0.5);
                for (int a = 0; a < PUSH; a++) {
                    System.arraycopy(k.getRow(a), 0, gains[i], a * SLIP, SLIP);
                }
            }
        }
        return gains;
    }

    /** Leaves out of a slip what is only late. */
    private static RealMatrix clock(UntimedLaw law, int step) {
        RealMatrix m = MatrixUtils.createRealIdentityMatrix(SLIP);
        double[] one = new double[SLIP];
        for (int j = 0; j < SLIP; j++) {
            one[j] = 1;
            double by = law.lateBy(step, one, 0);
            one[j] = 0;
            for (int k = 0; k < SLIP; k++) {
                m.addToEntry(k, j, -by * law.late(step)[k]);
            }
        }
        return m;
    }

    private static RealMatrix matrix(double[] rows, int width) {
        RealMatrix m = MatrixUtils.createRealMatrix(rows.length / width, width);
        for (int i = 0; i < rows.length; i++) {
            m.setEntry(i / width, i % width, rows[i]);
        }
        return m;
    }

    /** d² as a form of the slip. */
    private static RealMatrix off(MeantMotion.Instant at) {
        RealMatrix head = MatrixUtils.createRealMatrix(3, SLIP);
        for (int d = 0; d < 3; d++) {
            head.setEntry(d, d, 1);
            for (int a = 0; a < 2; a++) {
                head.setEntry(d, 6 + a, at.cord().length() * at.axes()[a].toArray()[d]);
            }
        }
        Vector3D v = at.head().velocity();
        RealMatrix across = MatrixUtils.createRealIdentityMatrix(3);
        for (int d = 0; d < 3; d++) {
            for (int e = 0; e < 3; e++) {
                across.addToEntry(
                        d, e, -v.toArray()[d] * v.toArray()[e] / (v.getNormSq() + SLOW * SLOW));
            }
        }
        return head.transposeMultiply(across.multiply(head));
    }

    /** The greatest multiplier's modulus at the worst of slips felt so much too small or great. */
    double left(double unsure) {
        return unsure == 0 ? felt(1) : Math.max(felt(1 - unsure), felt(1 + unsure));
    }

    private double felt(double share) {
        int kept = back + 1;
        int width = SLIP + PUSH;
        double[] buffer = new double[(kept + law.steps()) * width];
        return Multipliers.of(start -> cycle(start, share, buffer), kept * width, Multipliers.FEW)[
                0]
                .norm();
    }

    // Each node of the buffer is the slip there and the push over the step that follows it.
    private double[] cycle(double[] start, double felt, double[] buffer) {
        int width = SLIP + PUSH;
        System.arraycopy(start, 0, buffer, 0, start.length);
        double[] y = new double[SLIP];
        double[] next = new double[SLIP];
        for (int step = 0; step < law.steps(); step++) {
            int seen = step * width;
            for (int k = 0; k < SLIP; k++) {
                y[k] = (k < UntimedLaw.HAND ? 1 : felt) * buffer[seen + k];
            }
            for (int i = 0; i < back; i++) {
                int at = Math.floorMod(step - back + i, law.steps());
                law.step(at, y, 0, buffer, seen + i * width + SLIP, next, 0);
                System.arraycopy(next, 0, y, 0, SLIP);
            }
            double by = law.lateBy(step, y, 0);
            for (int i = 0; i <= back; i++) {
                int at = Math.floorMod(step - back + i, law.steps());
                for (int k = 0; k < SLIP; k++) {
                    buffer[seen + i * width + k] -= by * law.late(at)[k];
                }
                if (i < back) {
                    for (int k = 0; k < PUSH; k++) {
                        buffer[seen + i * width + SLIP + k] -= by * law.jerk(at)[k];
                    }
                }
            }
            for (int k = 0; k < SLIP; k++) {
                y[k] -= by * law.late(step)[k];
            }
            int now = seen + back * width;
            push(gains[step], y, buffer, now + SLIP);
            law.step(step, buffer, now, buffer, now + SLIP, buffer, now + width);
        }
        double[] end = new double[start.length];
        System.arraycopy(buffer, law.steps() * width, end, 0, end.length);
        return end;
    }

    /** The push that a slip asks for. */
    static void push(double[] gains, double[] slip, double[] out, int at) {
        for (int a = 0; a < PUSH; a++) {
            double sum = 0;
            for (int k = 0; k < SLIP; k++) {
                sum += gains[a * SLIP + k] * slip[k];
            }
            out[at + a] = -sum;
        }
    }
}
