package deferent.reading.closest;

/**
 * From the flat point of a poi to its hand, with exact derivatives and how they change.
 *
 * <p>A cord's centre of oscillation y obeys y″ − g − D/m = s·n with n from head to hand (see {@link
 * deferent.reading.tether.Cord}; without cord mass it is the head itself), so that hand = y + ℓ·n,
 * ℓ being the swing length, and head = hand − L·n. That the head of a weightless cable is a flat
 * output: Sreenath, Lee and Kumar, CDC 2013; that the centre of oscillation is one of a body pushed
 * at a point: Martin, Devasia and Paden, Automatica 32 (1996).
 *
 * <p>With F = y″ − g − D/m and F = s·n, differentiating again and again gives s⁽ᵏ⁾ from n·F⁽ᵏ⁾ and
 * then n⁽ᵏ⁾, up to the third. One for one thread: it holds one instant at a time.
 */
final class Flatness {
    /** Derivatives of the direction that are worked out: of F up to the third. */
    static final int LEVELS = 4;

    private final int size;
    private final double[][] f;
    private final double[][] n;
    private final double[] s = new double[LEVELS];
    private final double[][][][] change;
    private final double[][] dn;
    private final double[] ds = new double[LEVELS];

    /**
     * @param size components: 2 in a plane, 3 in space
     */
    Flatness(int size) {
        this.size = size;
        this.f = new double[LEVELS][size];
        this.n = new double[LEVELS][size];
        this.change = new double[LEVELS][LEVELS][size][size];
        this.dn = new double[LEVELS][size];
    }

    /** F and its derivatives, to be written before {@link #solve}. */
    double[][] f() {
        return f;
    }

    /** The direction from head to hand and its derivatives. */
    double[][] n() {
        return n;
    }

    /** |F|, m/s². */
    double size() {
        return s[0];
    }

    /** Works out the direction and its derivatives up to {@code most}. */
    void solve(int most) {
        double sum = 0;
        for (int d = 0; d < size; d++) {
            sum += f[0][d] * f[0][d];
        }
        s[0] = Math.sqrt(sum);
        for (int d = 0; d < size; d++) {
            n[0][d] = f[0][d] / s[0];
        }
        if (most >= 1) {
            s[1] = dot(n[0], f[1]);
            for (int d = 0; d < size; d++) {
                n[1][d] = (f[1][d] - s[1] * n[0][d]) / s[0];
            }
        }
        if (most >= 2) {
            s[2] = dot(n[0], f[2]) + dot(n[1], f[1]);
            for (int d = 0; d < size; d++) {
                n[2][d] = (f[2][d] - s[2] * n[0][d] - 2 * s[1] * n[1][d]) / s[0];
            }
        }
        if (most >= 3) {
            s[3] = dot(n[0], f[3]) + 2 * dot(n[1], f[2]) + dot(n[2], f[1]);
            for (int d = 0; d < size; d++) {
                n[3][d] =
                        (f[3][d] - s[3] * n[0][d] - 3 * s[2] * n[1][d] - 3 * s[1] * n[2][d]) / s[0];
            }
        }
    }

    /**
     * How component {@code e} of the direction's derivative {@code level} changes with component
     * {@code d} of F's derivative {@code by}: [level][by][e][d], once {@link #differentiate} has
     * been asked.
     */
    double[][][][] change() {
        return change;
    }

    /** Works out {@link #change} up to {@code most}. */
    void differentiate(int most) {
        for (int by = 0; by <= most; by++) {
            for (int d = 0; d < size; d++) {
                along(by, d, most);
                for (int level = by; level <= most; level++) {
                    for (int e = 0; e < size; e++) {
                        change[level][by][e][d] = dn[level][e];
                    }
                }
            }
        }
    }

    private void along(int by, int d, int most) {
        for (int level = 0; level <= most; level++) {
            if (level < by) {
                ds[level] = 0;
                for (int e = 0; e < size; e++) {
                    dn[level][e] = 0;
                }
                continue;
            }
            double sum = 0;
            for (int j = 0; j <= level; j++) {
                // s⁽ᵏ⁾ = Σ C(k−1, j)·n⁽ʲ⁾·F⁽ᵏ⁻ʲ⁾, the last term of which is 0 for k ≥ 1.
                int weight = level == 0 ? 1 : binomial(level - 1, j);
                if (weight == 0) {
                    continue;
                }
                sum += weight * n[j][d] * (level - j == by ? 1 : 0);
                if (level > 0) {
                    sum += weight * dot(dn[j], f[level - j]);
                }
            }
            ds[level] = sum;
            for (int e = 0; e < size; e++) {
                double r = (by == level && e == d ? 1 : 0) - ds[level] * n[0][e];
                for (int j = 0; j < level; j++) {
                    int weight = binomial(level, j);
                    // n⁽ᵏ⁾·s = F⁽ᵏ⁾ − Σ C(k, j)·s⁽ᵏ⁻ʲ⁾·n⁽ʲ⁾ over j < k
                    r -= weight * s[level - j] * dn[j][e];
                    if (j > 0) {
                        r -= weight * ds[level - j] * n[j][e];
                    }
                }
                dn[level][e] = (level == 0 ? r : r - ds[0] * n[level][e]) / s[0];
            }
        }
    }

    private static int binomial(int n, int k) {
        if (k > n) {
            return 0;
        }
        return k == 0 || k == n ? 1 : n == 2 ? 2 : 3;
    }

    private double dot(double[] a, double[] b) {
        double sum = 0;
        for (int d = 0; d < size; d++) {
            sum += a[d] * b[d];
        }
        return sum;
    }
}
