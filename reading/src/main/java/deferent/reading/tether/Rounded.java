package deferent.reading.tether;

import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.PlaneJet;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Series;
import java.util.ArrayList;
import java.util.List;

/**
 * A hand path with its corners rounded off: what is offered where a path with corners would take an
 * infinite force.
 *
 * <p>The path's Fourier coefficients up to a highest harmonic, each lowered by Lanczos's factor
 * sin(x)/x, x = πk/(highest + 1), which keeps the sum from ringing about the corners (Lanczos,
 * Applied Analysis, 1956, section 4.6; from memory). A {@link Series} is smooth to every order.
 *
 * @param path the rounded path
 * @param farthest how far it leaves the corners out, metres
 */
public record Rounded(Series path, double farthest) {
    private static final int COUNT = 4096;

    /**
     * A path rounded by leaving out what wiggles faster.
     *
     * @param path of any kind but a rider's, whose path is its carrier's
     * @param highest harmonic, 1 to 24; fewer is rounder
     */
    public static Rounded of(HandPath path, int highest) {
        Refusal.within(highest, 1, 24, "highest harmonic of a rounded path", "turns");
        if (path.rides()) {
            throw new Refusal(
                    "has no path of its own", "rider's hand", "round the corners of its carrier");
        }
        HandPath.Course course = path.course();
        double[] u = new double[COUNT];
        double[] v = new double[COUNT];
        for (int i = 0; i < COUNT; i++) {
            PlaneJet at = course.at((i + 0.5) / COUNT);
            u[i] = at.u().value();
            v[i] = at.v().value();
        }
        List<Series.Term> terms = new ArrayList<>();
        for (int k = -highest; k <= highest; k++) {
            if (k != 0) {
                double x = Math.PI * k / (highest + 1);
                terms.add(term(u, v, k, Math.sin(x) / x));
            }
        }
        Series series = new Series(terms);
        HandPath.Course smooth = series.course();
        double farthest = 0;
        for (int i = 0; i < COUNT; i++) {
            PlaneJet at = smooth.at((i + 0.5) / COUNT);
            farthest = Math.max(farthest, Math.hypot(at.u().value() - u[i], at.v().value() - v[i]));
        }
        return new Rounded(series, farthest);
    }

    // Coefficient of e^{2πiks} of u + iv; their mean sums to nought against every k but nought.
    private static Series.Term term(double[] u, double[] v, int k, double factor) {
        double real = 0;
        double imaginary = 0;
        for (int i = 0; i < COUNT; i++) {
            double angle = -2 * Math.PI * k * (i + 0.5) / COUNT;
            double cos = Math.cos(angle);
            double sin = Math.sin(angle);
            real += u[i] * cos - v[i] * sin;
            imaginary += u[i] * sin + v[i] * cos;
        }
        double size = Math.hypot(real, imaginary) / COUNT * factor;
        return new Series.Term(k, size < 1e-12 ? 0 : size, Math.atan2(imaginary, real));
    }
}
