package deferent.search.seek;

import java.util.Arrays;

/**
 * A closed plane path run through in time, as a Fourier series without its mean: the sum of
 * c·e^{2πiks} over k, s from 0 to 1 once over the path's least period. Lengths are in tethers where
 * a {@link Space} made it, in metres where it was sampled.
 *
 * <p>What a series this short leaves out (paths with kinks have endless ones) is kept as {@link
 * #tail()}, the power of the missing terms, so that powers and gaps stay exact.
 */
final class SeriesCurve {
    /** Terms are kept for −WIDEST ≤ k ≤ WIDEST. */
    static final int WIDEST = 32;

    /** A term shorter than this, in the unit of the curve, counts as rounding. */
    static final double ROUNDING = 1e-9;

    private final int[] k;
    private final double[] re;
    private final double[] im;
    private final double tail;
    private final double power;
    private final int rounds;

    private SeriesCurve(int[] k, double[] re, double[] im, double tail, int rounds) {
        this.k = k;
        this.re = re;
        this.im = im;
        this.tail = tail;
        this.rounds = rounds;
        double sum = tail;
        for (int i = 0; i < k.length; i++) {
            sum += re[i] * re[i] + im[i] * im[i];
        }
        this.power = sum;
    }

    /**
     * The curve of these terms, by rising k; those of k = 0 and those that are rounding are
     * dropped, and a path gone round several times is taken once.
     */
    static SeriesCurve of(int[] k, double[] re, double[] im, int count, double tail) {
        int kept = 0;
        int common = 0;
        for (int i = 0; i < count; i++) {
            if (kept(k[i], re[i], im[i])) {
                kept++;
                common = gcd(common, Math.abs(k[i]));
            }
        }
        int rounds = tail > 0 || common == 0 ? 1 : common;
        int[] ks = new int[kept];
        double[] res = new double[kept];
        double[] ims = new double[kept];
        int at = 0;
        for (int i = 0; i < count; i++) {
            if (kept(k[i], re[i], im[i])) {
                ks[at] = k[i] / rounds;
                res[at] = re[i];
                ims[at++] = im[i];
            }
        }
        return new SeriesCurve(ks, res, ims, tail, rounds);
    }

    private static boolean kept(int k, double re, double im) {
        return k != 0 && Math.abs(re) + Math.abs(im) > ROUNDING;
    }

    /** The curve through evenly timed points. */
    static SeriesCurve ofSamples(double[] u, double[] v) {
        return ofSamples(u, v, WIDEST);
    }

    /** The same with no more than {@code most} turns either way; the rest is tail. */
    static SeriesCurve ofSamples(double[] u, double[] v, int most) {
        int count = u.length;
        int widest = Math.min(most, (count - 1) / 2);
        int[] k = new int[2 * widest + 1];
        double[] re = new double[k.length];
        double[] im = new double[k.length];
        double power = 0;
        double meanU = Arrays.stream(u).sum() / count;
        double meanV = Arrays.stream(v).sum() / count;
        double[] cos = new double[count];
        double[] sin = new double[count];
        for (int i = 0; i < count; i++) {
            cos[i] = Math.cos(2 * Math.PI * i / count);
            sin[i] = Math.sin(2 * Math.PI * i / count);
            power += (Math.pow(u[i] - meanU, 2) + Math.pow(v[i] - meanV, 2)) / count;
        }
        double held = 0;
        for (int j = 0; j < k.length; j++) {
            k[j] = j - widest;
            for (int i = 0; i < count; i++) {
                int a = Math.floorMod(k[j] * i, count);
                re[j] += (u[i] * cos[a] + v[i] * sin[a]) / count;
                im[j] += (v[i] * cos[a] - u[i] * sin[a]) / count;
            }
            held += k[j] == 0 ? 0 : re[j] * re[j] + im[j] * im[j];
        }
        double tail = power - held;
        return of(k, re, im, k.length, tail > 1e-13 * power ? tail : 0);
    }

    int terms() {
        return k.length;
    }

    /** Turns of term {@code i} over the least period. */
    int k(int i) {
        return k[i];
    }

    double re(int i) {
        return re[i];
    }

    double im(int i) {
        return im[i];
    }

    double modulus(int i) {
        return Math.sqrt(re[i] * re[i] + im[i] * im[i]);
    }

    double angle(int i) {
        return Math.atan2(im[i], re[i]);
    }

    /** Where the term of {@code turns} stands, or below 0. */
    int find(int turns) {
        if (k.length <= 8) {
            for (int i = 0; i < k.length; i++) {
                if (k[i] == turns) {
                    return i;
                }
            }
            return -1;
        }
        return Arrays.binarySearch(k, turns);
    }

    /** Power of what the terms leave out. */
    double tail() {
        return tail;
    }

    /** Mean squared distance from the mean. */
    double power() {
        return power;
    }

    /** Root mean square distance from the mean: the curve's size. */
    double size() {
        return Math.sqrt(power);
    }

    /** How many times the motion goes round this curve in one of its cycles. */
    int rounds() {
        return rounds;
    }

    SeriesCurve scaled(double factor) {
        double[] res = re.clone();
        double[] ims = im.clone();
        for (int i = 0; i < res.length; i++) {
            res[i] *= factor;
            ims[i] *= factor;
        }
        return new SeriesCurve(k, res, ims, tail * factor * factor, rounds);
    }

    /** The same path run the other way. */
    SeriesCurve backwards() {
        int count = k.length;
        int[] ks = new int[count];
        double[] res = new double[count];
        double[] ims = new double[count];
        for (int i = 0; i < count; i++) {
            ks[i] = -k[count - 1 - i];
            res[i] = re[count - 1 - i];
            ims[i] = im[count - 1 - i];
        }
        return new SeriesCurve(ks, res, ims, tail, rounds);
    }

    /**
     * Order of turning symmetry: a turn by its share of a circle is the same as a lag; 0 for a
     * circle.
     */
    int symmetry() {
        int order = 0;
        for (int i = 1; i < k.length; i++) {
            order = gcd(order, k[i] - k[0]);
        }
        return tail > 0 ? 1 : order;
    }

    /**
     * The point at phase {@code s} of the least period: u into {@code out[0]}, v into {@code
     * out[1]}.
     */
    void at(double s, double[] out) {
        out[0] = 0;
        out[1] = 0;
        for (int i = 0; i < k.length; i++) {
            double c = Math.cos(2 * Math.PI * k[i] * s);
            double d = Math.sin(2 * Math.PI * k[i] * s);
            out[0] += re[i] * c - im[i] * d;
            out[1] += re[i] * d + im[i] * c;
        }
    }

    static int gcd(int a, int b) {
        int x = Math.abs(a);
        int y = Math.abs(b);
        while (y != 0) {
            int r = x % y;
            x = y;
            y = r;
        }
        return x;
    }
}
