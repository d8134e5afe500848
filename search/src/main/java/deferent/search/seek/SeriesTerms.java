package deferent.search.seek;

import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.PlaneJet;
import deferent.motion.pairing.SpinLaw;

/**
 * Fourier terms of a hand path or of a tether's direction, by rising k, the mean (k = 0) among
 * them.
 *
 * @param k turns a cycle
 * @param re real parts (along u)
 * @param im imaginary parts (along v)
 * @param tail power of the terms left out
 */
record SeriesTerms(int[] k, double[] re, double[] im, double tail) {
    private static final double DROPPED = 1e-12;

    static SeriesTerms ofPath(HandPath.Course course, int samples) {
        double[] u = new double[samples];
        double[] v = new double[samples];
        for (int i = 0; i < samples; i++) {
            PlaneJet at = course.at((double) i / samples);
            u[i] = at.u().value();
            v[i] = at.v().value();
        }
        return ofSamples(u, v);
    }

    static SeriesTerms ofSpin(SpinLaw law, int samples) {
        double[] u = new double[samples];
        double[] v = new double[samples];
        SpinLaw.Course course = law.course();
        for (int i = 0; i < samples; i++) {
            double angle = course.at((double) i / samples).value();
            u[i] = Math.cos(angle);
            v[i] = Math.sin(angle);
        }
        return ofSamples(u, v);
    }

    private static SeriesTerms ofSamples(double[] u, double[] v) {
        int count = u.length;
        int widest = SeriesCurve.WIDEST;
        int[] k = new int[2 * widest + 1];
        double[] re = new double[k.length];
        double[] im = new double[k.length];
        double power = 0;
        for (int i = 0; i < count; i++) {
            power += (u[i] * u[i] + v[i] * v[i]) / count;
        }
        double held = 0;
        double[] cos = new double[count];
        double[] sin = new double[count];
        for (int i = 0; i < count; i++) {
            cos[i] = Math.cos(2 * Math.PI * i / count);
            sin[i] = Math.sin(2 * Math.PI * i / count);
        }
        for (int j = 0; j < k.length; j++) {
            k[j] = j - widest;
            for (int i = 0; i < count; i++) {
                int at = Math.floorMod(k[j] * i, count);
                re[j] += (u[i] * cos[at] + v[i] * sin[at]) / count;
                im[j] += (v[i] * cos[at] - u[i] * sin[at]) / count;
            }
            held += re[j] * re[j] + im[j] * im[j];
        }
        double tail = power - held;
        return new SeriesTerms(k, re, im, tail > 1e-13 ? tail : 0).trimmed();
    }

    private SeriesTerms trimmed() {
        int kept = 0;
        for (int i = 0; i < k.length; i++) {
            kept += Math.hypot(re[i], im[i]) > DROPPED ? 1 : 0;
        }
        int[] ks = new int[kept];
        double[] res = new double[kept];
        double[] ims = new double[kept];
        int at = 0;
        for (int i = 0; i < k.length; i++) {
            if (Math.hypot(re[i], im[i]) > DROPPED) {
                ks[at] = k[i];
                res[at] = re[i];
                ims[at++] = im[i];
            }
        }
        return new SeriesTerms(ks, res, ims, tail);
    }

    SeriesTerms scaled(double factor) {
        double[] res = re.clone();
        double[] ims = im.clone();
        for (int i = 0; i < k.length; i++) {
            res[i] *= factor;
            ims[i] *= factor;
        }
        return new SeriesTerms(k, res, ims, tail * factor * factor);
    }

    SeriesCurve curve() {
        return SeriesCurve.of(k, re, im, k.length, tail);
    }

    /** This path plus {@code spin}, the latter turned by (cos, sin) and {@code length} long. */
    SeriesCurve plus(SeriesTerms spin, double cos, double sin, double length) {
        int[] ks = new int[k.length + spin.k.length];
        double[] res = new double[ks.length];
        double[] ims = new double[ks.length];
        int count = 0;
        int i = 0;
        int j = 0;
        while (i < k.length || j < spin.k.length) {
            int a = i < k.length ? k[i] : Integer.MAX_VALUE;
            int b = j < spin.k.length ? spin.k[j] : Integer.MAX_VALUE;
            ks[count] = Math.min(a, b);
            if (a <= b) {
                res[count] += re[i];
                ims[count] += im[i++];
            }
            if (b <= a) {
                res[count] += length * (cos * spin.re[j] - sin * spin.im[j]);
                ims[count] += length * (sin * spin.re[j] + cos * spin.im[j++]);
            }
            count++;
        }
        return SeriesCurve.of(ks, res, ims, count, tail + length * length * spin.tail);
    }

    /** Mean squared distance from the mean, but for the tail. */
    double power() {
        double sum = 0;
        for (int i = 0; i < k.length; i++) {
            sum += k[i] == 0 ? 0 : re[i] * re[i] + im[i] * im[i];
        }
        return sum;
    }

    /**
     * What this path and a spin have in common, the mean apart: the sum of a·conj(b), real and
     * imaginary part. The power of their sum, the spin turned by an angle α, is both their powers
     * and 2·(cos α·re + sin α·im).
     */
    double[] common(SeriesTerms spin) {
        double[] out = new double[2];
        int j = 0;
        for (int i = 0; i < k.length; i++) {
            while (j < spin.k.length && spin.k[j] < k[i]) {
                j++;
            }
            if (k[i] != 0 && j < spin.k.length && spin.k[j] == k[i]) {
                out[0] += re[i] * spin.re[j] + im[i] * spin.im[j];
                out[1] += im[i] * spin.re[j] - re[i] * spin.im[j];
            }
        }
        return out;
    }

    /** The mean, into {@code out[0]} and {@code out[1]}. */
    double[] mean() {
        for (int i = 0; i < k.length; i++) {
            if (k[i] == 0) {
                return new double[] {re[i], im[i]};
            }
        }
        return new double[2];
    }
}
