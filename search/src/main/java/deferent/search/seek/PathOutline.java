package deferent.search.seek;

/**
 * A figure without its timing: a curve walked at constant speed, brought to size one about its
 * mean. Two outlines are as far apart as their points of equal arc length, root mean square, after
 * the best turn, shift, mirror, start and direction of travel. Size is forgotten, as a figure on
 * paper has none.
 */
final class PathOutline {
    private PathOutline() {}

    /** The outline of a curve from {@code points} points; its size in metres is lost. */
    static SeriesCurve of(SeriesCurve curve, int points) {
        SeriesCurve even = even(curve, points);
        return even.size() > 0 ? even.scaled(1 / even.size()) : even;
    }

    /** Root mean square distance from the mean of the walked curve, in the curve's unit. */
    static double size(SeriesCurve curve, int points) {
        return even(curve, points).size();
    }

    private static SeriesCurve even(SeriesCurve curve, int points) {
        int most = Math.min(SeriesCurve.WIDEST, points / 8);
        int fine = 4 * points;
        double[] u = new double[fine + 1];
        double[] v = new double[fine + 1];
        double[] along = new double[fine + 1];
        fill(curve, fine, u, v);
        for (int i = 1; i <= fine; i++) {
            along[i] = along[i - 1] + Math.hypot(u[i] - u[i - 1], v[i] - v[i - 1]);
        }
        double[] evenU = new double[points];
        double[] evenV = new double[points];
        int at = 0;
        for (int i = 0; i < points; i++) {
            double wanted = along[fine] * i / points;
            while (at < fine - 1 && along[at + 1] < wanted) {
                at++;
            }
            double share =
                    along[at + 1] > along[at]
                            ? (wanted - along[at]) / (along[at + 1] - along[at])
                            : 0;
            evenU[i] = u[at] + share * (u[at + 1] - u[at]);
            evenV[i] = v[at] + share * (v[at + 1] - v[at]);
        }
        return SeriesCurve.ofSamples(evenU, evenV, most);
    }

    // Points of the curve, each term stepping on by a fixed turn.
    private static void fill(SeriesCurve curve, int fine, double[] u, double[] v) {
        for (int t = 0; t < curve.terms(); t++) {
            double cos = Math.cos(2 * Math.PI * curve.k(t) / fine);
            double sin = Math.sin(2 * Math.PI * curve.k(t) / fine);
            double re = curve.re(t);
            double im = curve.im(t);
            for (int i = 0; i <= fine; i++) {
                u[i] += re;
                v[i] += im;
                double next = re * cos - im * sin;
                im = re * sin + im * cos;
                re = next;
            }
        }
    }

    /**
     * Distance of two outlines, as a share of their size. What lies beyond the terms kept (cusps
     * and corners have endless ones) is taken to agree as well as its power allows, so figures with
     * cusps may come out a hair nearer than they are, never further.
     */
    static double gap(SeriesCurve a, SeriesCurve b) {
        double apart = Math.min(Alignment.gap(a, b), Alignment.gap(a, b.backwards()));
        return Math.sqrt(Math.max(0, apart * apart - 2 * Math.sqrt(a.tail() * b.tail())));
    }
}
