package deferent.film.held;

/**
 * Where something was over one mean cycle, at {@link Shape#COUNT} even moments.
 *
 * @param x metres to the performer's left
 * @param y metres up
 * @param weight how much each moment counts; 0 where nothing is known
 */
record MeanTrack(double[] x, double[] y, double[] weight) {
    /** Share of the cycle of which something is known. */
    double known() {
        int known = 0;
        for (double w : weight) {
            known += w > 0 ? 1 : 0;
        }
        return (double) known / weight.length;
    }

    /** Weighted mean of one of its axes. */
    double mean(double[] axis) {
        double sum = 0;
        double all = 0;
        for (int i = 0; i < axis.length; i++) {
            sum += weight[i] * axis[i];
            all += weight[i];
        }
        return all > 0 ? sum / all : 0;
    }

    /** Root mean square distance from its mean. */
    double spread() {
        double mx = mean(x);
        double my = mean(y);
        double sum = 0;
        double all = 0;
        for (int i = 0; i < x.length; i++) {
            sum += weight[i] * ((x[i] - mx) * (x[i] - mx) + (y[i] - my) * (y[i] - my));
            all += weight[i];
        }
        return all > 0 ? Math.sqrt(sum / all) : 0;
    }
}
