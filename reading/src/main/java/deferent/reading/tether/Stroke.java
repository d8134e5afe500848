package deferent.reading.tether;

import java.util.Arrays;
import org.hipparchus.complex.Complex;
import org.hipparchus.linear.EigenDecompositionNonSymmetric;
import org.hipparchus.linear.MatrixUtils;

/**
 * What a cycle leaves of a slip when the hand answers it once a cycle, at one place: a short stroke
 * out and back, v·sin²(π(t − t₀)/S), of a size v = −(P·x + D·x′) taken from the slip at t₀ − τ, and
 * no answer until the next. (Act and wait: Insperger, IEEE Trans. Control Systems Technology 14
 * (2006). It waits longer than the delay, so that the map from one look to the next is that of x
 * and x′ alone.)
 *
 * <p>From one look to the next, s becomes M·s + B·v: M the cycle's own transition and B what a
 * stroke of one metre leaves.
 */
final class Stroke implements Leaving {
    /** Seconds out and back; our choice. A third of a shorter cycle. */
    static final double LASTING = 0.2;

    private final int axes;
    private final double[] own;
    private final double[] struck;

    private Stroke(int axes, double[] own, double[] struck) {
        this.axes = axes;
        this.own = own;
        this.struck = struck;
    }

    /** Seconds that a stroke lasts in a cycle of so many. */
    static double lasting(double period) {
        return Math.min(LASTING, period / 3);
    }

    /** Whether a cycle is long enough to look, wait and strike once. */
    static boolean fits(double period, double delay) {
        return delay + lasting(period) <= period;
    }

    /**
     * @param node at which the stroke begins
     */
    static Stroke of(SlipLaw law, int node, double delay) {
        double lasting = lasting(law.period());
        double begun = law.half(2 * node);
        double look = begun - delay;
        // From the last node before the look; what lies between is less than a step.
        int first = node;
        while (law.at(first) > look) {
            first--;
        }
        int axes = law.axes();
        int n = 2 * axes;
        double[] y = new double[2 * n];
        double[] u = new double[3 * axes];
        double[] struck = new double[n * axes];
        for (int a = 0; a < axes; a++) {
            Arrays.fill(y, 0);
            // On axes that turn on past the cycle's end, as the look's own do.
            for (int i = first; i < first + law.steps(); i++) {
                for (int when = 0; when < 3; when++) {
                    double time = law.at(i) + (law.at(i + 1) - law.at(i)) * when / 2;
                    u[when * axes] = 0;
                    u[when * axes + axes - 1] = 0;
                    u[when * axes + a] = bump((time - begun) / lasting);
                }
                law.step(Math.floorMod(i, law.steps()), y, 0, u, y, n);
                System.arraycopy(y, n, y, 0, n);
                if (Math.floorMod(i + 1, law.steps()) == 0) {
                    law.begunAnew(y, 0);
                }
            }
            for (int k = 0; k < n; k++) {
                struck[k * axes + a] = y[k];
            }
        }
        return new Stroke(axes, law.between(first, first + law.steps()), struck);
    }

    /** Of a stroke of one metre, at a share of its time. */
    static double bump(double share) {
        double sin = share <= 0 || share >= 1 ? 0 : Math.sin(Math.PI * share);
        return sin * sin;
    }

    /** Its map costs little. */
    @Override
    public int followed() {
        return 12;
    }

    /** Also from the gains that would leave nothing if slips were felt as they are. */
    @Override
    public Best best(double unsure) {
        Best found = Leaving.super.best(unsure);
        if (axes != 1) {
            return found;
        }
        // (M − B·K) has trace and determinant nought where K·B and K·adj(M)B are those of M.
        double product = own[0] * own[3] - own[1] * own[2];
        double first = own[3] * struck[0] - own[1] * struck[1];
        double second = own[0] * struck[1] - own[2] * struck[0];
        double both = struck[0] * second - struck[1] * first;
        Gains none =
                new Gains(
                        ((own[0] + own[3]) * second - struck[1] * product) / both,
                        (struck[0] * product - (own[0] + own[3]) * first) / both);
        if (!none.within(Gains.MOST)) {
            return found;
        }
        Best beside = near(none, unsure);
        return beside.left() < found.left() ? beside : found;
    }

    @Override
    public double left(Gains gains) {
        int n = 2 * axes;
        double[][] m = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double gain = j < axes ? gains.place() : gains.speed();
                m[i][j] = own[i * n + j] - struck[i * axes + j % axes] * gain;
            }
        }
        if (n == 2) {
            return SlipLaw.greatest(m[0][0], m[0][1], m[1][0], m[1][1]);
        }
        double most = 0;
        for (Complex one :
                new EigenDecompositionNonSymmetric(MatrixUtils.createRealMatrix(m))
                        .getEigenvalues()) {
            most = Math.max(most, one.norm());
        }
        return most;
    }
}
