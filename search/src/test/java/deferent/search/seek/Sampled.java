package deferent.search.seek;

/**
 * Clock gaps the slow way, for tests: points, every lag of a fine grid refined, no Fourier series.
 * Shares nothing with the search but the question.
 */
final class Sampled {
    static final int POINTS = 48;

    private Sampled() {}

    /** Points of a curve about their mean, u and v in turn. */
    static double[] points(SeriesCurve curve, int count) {
        double[] out = new double[2 * count];
        double[] at = new double[2];
        for (int i = 0; i < count; i++) {
            curve.at((double) i / count, at);
            out[2 * i] = at[0];
            out[2 * i + 1] = at[1];
        }
        return out;
    }

    /** Least root mean square distance over turns, mirror and lags of whole samples. */
    static double gap(double[] a, double[] b) {
        int count = a.length / 2;
        double power = 0;
        for (int i = 0; i < a.length; i++) {
            power += a[i] * a[i] + b[i] * b[i];
        }
        double most = 0;
        for (int lag = 0; lag < count; lag++) {
            double re = 0;
            double im = 0;
            double mirroredRe = 0;
            double mirroredIm = 0;
            for (int i = 0; i < count; i++) {
                int j = i + lag < count ? i + lag : i + lag - count;
                double x = a[2 * i];
                double y = a[2 * i + 1];
                double u = b[2 * j];
                double v = b[2 * j + 1];
                re += x * u + y * v;
                im += y * u - x * v;
                mirroredRe += x * u - y * v;
                mirroredIm += y * u + x * v;
            }
            most =
                    Math.max(
                            most,
                            Math.max(
                                    re * re + im * im,
                                    mirroredRe * mirroredRe + mirroredIm * mirroredIm));
        }
        return Math.sqrt(Math.max(0, power - 2 * Math.sqrt(most)) / count);
    }
}
