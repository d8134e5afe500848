package deferent.bench;

/**
 * Structural similarity of two pictures' luma: Z. Wang, A. C. Bovik, H. R. Sheikh, E. P.
 * Simoncelli, Image Quality Assessment: From Error Visibility to Structural Similarity, IEEE
 * Transactions on Image Processing 13 (2004), eqs. 13 to 17: a Gaussian window of 11 by 11 with a
 * standard deviation of 1.5, K1 = 0.01, K2 = 0.03.
 *
 * @param all mean over all places where the window fits
 * @param drawn mean over those of them where the first picture is not flat: an empty ground is easy
 *     to get right
 */
record Similarity(double all, double drawn) {
    private static final int WINDOW = 11;
    private static final double DEVIATION = 1.5;
    private static final double C1 = Math.pow(0.01 * 255, 2);
    private static final double C2 = Math.pow(0.03 * 255, 2);
    private static final double[] KERNEL = kernel();

    private static double[] kernel() {
        double[] kernel = new double[WINDOW];
        double sum = 0;
        for (int i = 0; i < WINDOW; i++) {
            double x = i - WINDOW / 2;
            kernel[i] = Math.exp(-x * x / (2 * DEVIATION * DEVIATION));
            sum += kernel[i];
        }
        for (int i = 0; i < WINDOW; i++) {
            kernel[i] /= sum;
        }
        return kernel;
    }

    /** How far a place's luma may vary at most to be flat, standard deviation squared. */
    private static final double FLAT = 1;

    /**
     * @param a luma of each pixel of what should be seen, 0 to 255, row by row
     * @param b of what is seen
     */
    static Similarity of(double[] a, double[] b, int width, int height) {
        int n = a.length;
        double[] aa = new double[n];
        double[] bb = new double[n];
        double[] ab = new double[n];
        for (int i = 0; i < n; i++) {
            aa[i] = a[i] * a[i];
            bb[i] = b[i] * b[i];
            ab[i] = a[i] * b[i];
        }
        double[] ma = blurred(a, width, height);
        double[] mb = blurred(b, width, height);
        double[] maa = blurred(aa, width, height);
        double[] mbb = blurred(bb, width, height);
        double[] mab = blurred(ab, width, height);
        double sum = 0;
        double drawn = 0;
        int count = 0;
        for (int i = 0; i < ma.length; i++) {
            double va = maa[i] - ma[i] * ma[i];
            double vb = mbb[i] - mb[i] * mb[i];
            double cov = mab[i] - ma[i] * mb[i];
            double here =
                    (2 * ma[i] * mb[i] + C1)
                            * (2 * cov + C2)
                            / ((ma[i] * ma[i] + mb[i] * mb[i] + C1) * (va + vb + C2));
            sum += here;
            if (va > FLAT) {
                drawn += here;
                count++;
            }
        }
        return new Similarity(sum / ma.length, count == 0 ? 1 : drawn / count);
    }

    private static double[] blurred(double[] from, int width, int height) {
        int across = width - WINDOW + 1;
        int down = height - WINDOW + 1;
        double[] rows = new double[across * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < across; x++) {
                double sum = 0;
                for (int k = 0; k < WINDOW; k++) {
                    sum += KERNEL[k] * from[y * width + x + k];
                }
                rows[y * across + x] = sum;
            }
        }
        double[] out = new double[across * down];
        for (int y = 0; y < down; y++) {
            for (int x = 0; x < across; x++) {
                double sum = 0;
                for (int k = 0; k < WINDOW; k++) {
                    sum += KERNEL[k] * rows[(y + k) * across + x];
                }
                out[y * across + x] = sum;
            }
        }
        return out;
    }
}
