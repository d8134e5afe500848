package deferent.reading.tether;

import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * What a cycle leaves of a slip when a hand that knows the motion answers it a delay τ late: from
 * the slip seen at t − τ, and from what it did itself since, it feels what the slip is now, x̂, and
 * shifts by u = −K(t)·x̂. That practised balancers go by such a forward model is what Mehta and
 * Schaal (J. Neurophysiol. 88 (2002)) and Milton and others (J. R. Soc. Interface 13:20160212
 * (2016)) found.
 *
 * <p>The gains K follow the cycle. They are those that keep ∫(x² + r·u²)dt least, r being how much
 * the hand minds a metre of its own against one of the head: the linear quadratic regulator of the
 * slips' equation step by step, u held over each step, from the periodic solution of Riccati's
 * difference equation (Bittanti and Colaneri, Periodic Systems: Filtering and Control, 2009).
 *
 * <p>If slips were felt as they are, the delay would not matter. They are not: what is seen is off
 * by a share, and what that does grows over the delay as a slip does. A cycle takes the places and
 * speeds of the slip at the table's times over the last τ, and the hand's shifts since, to the
 * next; {@link Multipliers} finds that map's greatest multiplier.
 */
final class KnowingAnswer {
    /** Cycles after which Riccati's solution has forgotten its beginning. */
    private static final int CYCLES = 6;

    private final SlipLaw law;
    private final int axes;
    private final int width;
    private final int kept;
    private final double[] gains;
    private final int[] from;
    private final double[] share;

    /**
     * @param gains of {@link #gains}
     * @param delay seconds, no shorter than the law's longest step
     */
    KnowingAnswer(SlipLaw law, double[] gains, double delay) {
        if (delay < law.longestStep() * (1 - 1e-9)) {
            throw new IllegalArgumentException("a delay shorter than a step");
        }
        this.law = law;
        this.gains = gains;
        this.axes = law.axes();
        this.width = 2 * axes;
        int back = 1;
        while (law.at(-back) > law.at(0) - delay) {
            back++;
        }
        this.kept = back + 1;
        this.from = new int[law.steps()];
        this.share = new double[law.steps()];
        int node = -back;
        for (int i = 0; i < law.steps(); i++) {
            double seen = law.at(i) - delay;
            while (node + 1 < i && law.at(node + 1) <= seen) {
                node++;
            }
            from[i] = node;
            share[i] = (seen - law.at(node)) / (law.at(node + 1) - law.at(node));
        }
    }

    /**
     * K at every step, axes by twice as many.
     *
     * @param weight of the hand's shift against the head's
     */
    static double[] gains(SlipLaw law, double weight) {
        int n = 2 * law.axes();
        double[] gains = new double[law.steps() * law.axes() * n];
        RealMatrix worth = MatrixUtils.createRealIdentityMatrix(n);
        RealMatrix turned = law.turned();
        for (int cycle = 0; cycle < CYCLES; cycle++) {
            worth = turned.transposeMultiply(worth.multiply(turned));
            for (int step = law.steps() - 1; step >= 0; step--) {
                double lasting = law.at(step + 1) - law.at(step);
                RealMatrix own = law.own(step);
                RealMatrix held = law.held(step);
                RealMatrix effect = held.transposeMultiply(worth);
                RealMatrix k =
                        new LUDecomposition(
                                        effect.multiply(held)
                                                .add(
                                                        MatrixUtils.createRealIdentityMatrix(
                                                                        law.axes())
                                                                .scalarMultiply(weight * lasting)))
                                .getSolver()
                                .solve(effect.multiply(own));
                RealMatrix rest = own.subtract(held.multiply(k));
                worth = own.transposeMultiply(worth).multiply(rest);
                for (int a = 0; a < law.axes(); a++) {
                    worth.addToEntry(a, a, lasting);
                    System.arraycopy(k.getRow(a), 0, gains, (step * law.axes() + a) * n, n);
                }
            }
        }
        return gains;
    }

    /** The hand's shift at a step for the slip that is felt by then. */
    static void shift(SlipLaw law, double[] gains, int step, double[] felt, double[] u, int to) {
        int n = 2 * law.axes();
        for (int a = 0; a < law.axes(); a++) {
            double sum = 0;
            for (int k = 0; k < n; k++) {
                sum += gains[(step * law.axes() + a) * n + k] * felt[k];
            }
            u[to + a] = -sum;
        }
    }

    /** The greatest multiplier's modulus at the worst of slips felt so much too small or great. */
    double left(double unsure) {
        return unsure == 0 ? felt(1) : Math.max(felt(1 - unsure), felt(1 + unsure));
    }

    private double felt(double share) {
        int size = kept * (width + axes);
        double[] buffer = new double[(kept + law.steps()) * (width + axes)];
        return Multipliers.of(start -> cycle(start, share, buffer), size, Multipliers.FEW)[0]
                .norm();
    }

    private double[] cycle(double[] start, double felt, double[] buffer) {
        int shifts = (kept + law.steps()) * width;
        System.arraycopy(start, 0, buffer, 0, kept * width);
        System.arraycopy(start, kept * width, buffer, shifts, kept * axes);
        int last = kept - 1;
        double[] y = new double[width];
        for (int step = 0; step < law.steps(); step++) {
            feel(step, felt, buffer, shifts, y);
            shift(law, gains, step, y, buffer, shifts + (last + step) * axes);
            int at = (last + step) * width;
            law.held(step, buffer, at, buffer, shifts + (last + step) * axes, buffer, at + width);
        }
        double[] end = new double[start.length];
        System.arraycopy(buffer, law.steps() * width, end, 0, kept * width);
        System.arraycopy(buffer, shifts + law.steps() * axes, end, kept * width, kept * axes);
        for (int i = 0; i < kept; i++) {
            law.begunAnew(end, i * width);
            law.shiftBegunAnew(end, kept * width + i * axes);
        }
        return end;
    }

    /** What a slip seen a delay ago is felt to be now, with what the hand did since. */
    private void feel(int step, double felt, double[] buffer, int shifts, double[] y) {
        int last = kept - 1;
        int node = last + from[step];
        law.held(
                Math.floorMod(from[step], law.steps()),
                buffer,
                node * width,
                buffer,
                shifts + node * axes,
                y,
                0);
        for (int k = 0; k < width; k++) {
            y[k] = felt * ((1 - share[step]) * y[k] + share[step] * buffer[(node + 1) * width + k]);
        }
        double[] next = new double[width];
        for (int i = from[step] + 1; i < step; i++) {
            law.held(
                    Math.floorMod(i, law.steps()),
                    y,
                    0,
                    buffer,
                    shifts + (last + i) * axes,
                    next,
                    0);
            System.arraycopy(next, 0, y, 0, width);
        }
    }
}
