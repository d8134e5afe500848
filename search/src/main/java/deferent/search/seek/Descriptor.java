package deferent.search.seek;

/**
 * What of a curve no turn, shift, mirror or lag changes, in {@value #SIZE} numbers: for the lowest
 * turns |k| the longer and the shorter of the two terms k and −k, and the root sum of squares of
 * all the rest.
 *
 * <p>Two curves' descriptors are never further apart than the curves' clock gap (moduli can only
 * come nearer than the terms themselves, sorting a pair likewise, and a norm is 1-Lipschitz), so a
 * search within a radius over descriptors misses nothing.
 */
final class Descriptor {
    static final int SIZE = 8;

    private Descriptor() {}

    static void write(SeriesCurve curve, double[] out, int at) {
        for (int i = 0; i < SIZE; i++) {
            out[at + i] = 0;
        }
        double rest = curve.tail();
        for (int i = 0; i < curve.terms(); i++) {
            int k = Math.abs(curve.k(i));
            double modulus = curve.modulus(i);
            if (k <= 2) {
                int long_ = at + 2 * (k - 1);
                if (modulus > out[long_]) {
                    out[long_ + 1] = out[long_];
                    out[long_] = modulus;
                } else {
                    out[long_ + 1] = modulus;
                }
            } else if (k <= 5) {
                int slot = at + k + 1;
                double shorter = Math.min(out[slot], modulus);
                out[slot] = Math.max(out[slot], modulus);
                rest += shorter * shorter;
            } else {
                rest += modulus * modulus;
            }
        }
        out[at + 7] = Math.sqrt(rest);
    }

    static double[] of(SeriesCurve curve) {
        double[] out = new double[SIZE];
        write(curve, out, 0);
        return out;
    }

    static double distance(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += (a[i] - b[i]) * (a[i] - b[i]);
        }
        return Math.sqrt(sum);
    }
}
