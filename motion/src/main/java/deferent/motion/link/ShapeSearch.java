package deferent.motion.link;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.hipparchus.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/**
 * Searches the rigid motion that brings one curve nearest another in the Fréchet sense.
 *
 * <p>First roughly, walked in {@value #ROUGH} steps: for every start and both ways round the
 * least-squares motion has a closed form, and its correlation peaks name the candidates. Each is
 * then drawn toward the least longest lead by turns: walk (which step goes with which), then the
 * minimax motion for that walk, by least squares whose weights grow with the lead (Lawson's
 * algorithm; Rice and Usow, Mathematics of Computation 22, 1968). The best few are polished by a
 * simplex on the distance itself, and the best of them again, walked in {@value #FINE} steps and
 * started between steps.
 *
 * <p>Two flat paths are compared on one sheet, which may be turned over; others in space. The
 * search is local about its candidates, so its result is an upper bound; {@link Extent} gives the
 * lower.
 */
final class ShapeSearch {
    private static final int ROUGH = 64;
    private static final int FINE = 360;
    private static final double DONE = 1e-5;

    private final Curve head;
    private final Curve hand;
    private final boolean flat;
    private final double size;

    /** A way to lay the hand's curve on the head's, and how far apart they then are (squared). */
    private record Fit(double start, boolean reversed, Rigid motion, double squared) {
        Fit better(Fit o) {
            return o.squared < squared ? o : this;
        }
    }

    private record Peak(int start, boolean reversed, boolean mirrored, double score) {}

    private ShapeSearch(Curve head, Curve hand) {
        this.head = head;
        this.hand = hand;
        this.flat = head.dimension() < 3 && hand.dimension() < 3;
        this.size = Math.max(head.length(), hand.length());
    }

    static ShapeSearch of(Curve head, Curve hand) {
        return new ShapeSearch(head, hand);
    }

    ShapeGap quick() {
        Extent a = extent(head, 48);
        Extent b = extent(hand, 48);
        if (head.dimension() == 0 || hand.dimension() == 0) {
            return new ShapeGap(
                    a.radius() + b.radius(), Double.NaN, a.gapAtLeast(b), a.radius(), b.radius());
        }
        int n = 48;
        Fit best = null;
        for (Peak peak : peaks(n, 2)) {
            Fit fit = drawn(between(start(peak, n), n), n, n / 4, 2);
            best = best == null ? fit : best.better(fit);
        }
        double gap = best == null ? Double.NaN : Math.sqrt(best.squared);
        return new ShapeGap(gap, Double.NaN, a.gapAtLeast(b), a.radius(), b.radius());
    }

    ShapeGap certified() {
        Extent a = extent(head, 240);
        Extent b = extent(hand, 240);
        double atLeast = a.gapAtLeast(b);
        if (head.dimension() == 0 || hand.dimension() == 0) {
            double sag = Math.max(a.sag(), b.sag());
            return new ShapeGap(a.radius() + b.radius(), sag, atLeast, a.radius(), b.radius());
        }
        List<Fit> fits = new ArrayList<>();
        for (Peak peak : peaks(ROUGH, 8)) {
            Fit fit = drawn(start(peak, ROUGH), ROUGH, ROUGH, 4);
            fits.add(drawn(restarted(fit), ROUGH, ROUGH, 4));
        }
        fits.sort(Comparator.comparingDouble(Fit::squared));
        Fit best = null;
        for (Fit rough : fits.subList(0, Math.min(2, fits.size()))) {
            Fit polished =
                    Math.sqrt(rough.squared) - atLeast < DONE ? rough : polished(rough, ROUGH, 120);
            Fit fine = fine(polished, atLeast);
            best = best == null ? fine : best.better(fine);
        }
        if (best == null) {
            throw new IllegalStateException("every pair of curves has a correlation peak");
        }
        double[] p = head.walked(FINE, best.start, false);
        double[] h = hand.walked(FINE, 0, best.reversed);
        best.motion.move(h.clone(), h);
        double gap = Frechet.distance(p, h);
        double sag = Math.max(head.sag(FINE), hand.sag(FINE));
        double spacing = size / FINE;
        double error = Math.max(sag, Math.min(spacing + sag, gap - atLeast));
        return new ShapeGap(gap, error, Math.min(atLeast, gap), a.radius(), b.radius());
    }

    private static Extent extent(Curve curve, int n) {
        return Extent.of(curve.walked(n, 0, false), curve.dimension(), curve.sag(n));
    }

    // Correlation of the two curves over all starts and both ways round.
    private List<Peak> peaks(int n, int most) {
        double[] p = middled(head.walked(n, 0, false), n);
        List<Peak> found = new ArrayList<>();
        int starts = head.closed() && hand.closed() ? n : 1;
        for (boolean reversed : new boolean[] {false, true}) {
            double[] h = middled(hand.walked(n, 0, reversed), n);
            double[][] score = new double[2][starts];
            double[] c = new double[9];
            for (int s = 0; s < starts; s++) {
                correlate(p, h, s, n, c);
                if (flat) {
                    score[0][s] = Math.hypot(c[0] + c[4], c[3] - c[1]);
                    score[1][s] = Math.hypot(c[0] - c[4], c[3] + c[1]);
                } else {
                    double[] v = Nuclear.singular(c);
                    double last = Nuclear.determinant(c) < 0 ? -v[2] : v[2];
                    score[0][s] = v[0] + v[1] + last;
                    score[1][s] = v[0] + v[1] - last;
                }
            }
            for (int mirror = 0; mirror < 2; mirror++) {
                double noise = 1e-9 * size * size;
                int before = found.size();
                for (int s = 0; s < starts; s++) {
                    double here = score[mirror][s];
                    if (here > score[mirror][(s + starts - 1) % starts] + noise
                            && here > score[mirror][(s + 1) % starts] - noise) {
                        found.add(new Peak(s, reversed, mirror == 1, here));
                    }
                }
                if (found.size() == before) {
                    found.add(new Peak(0, reversed, mirror == 1, score[mirror][0]));
                }
            }
        }
        found.sort(Comparator.comparingDouble(Peak::score).reversed());
        List<Peak> kept = new ArrayList<>();
        for (Peak peak : found) {
            // Equal peaks come from a symmetry of one curve and lead to equal distances.
            boolean again =
                    kept.stream()
                            .anyMatch(
                                    k -> Math.abs(k.score - peak.score) < 1e-7 * (k.score + 1e-9));
            if (!again && kept.size() < most) {
                kept.add(peak);
            }
        }
        return kept;
    }

    private static double[] middled(double[] points, int n) {
        double[] mean = new double[3];
        for (int i = 0; i < 3 * n; i++) {
            mean[i % 3] += points[i] / n;
        }
        for (int i = 0; i < points.length; i++) {
            points[i] -= mean[i % 3];
        }
        return points;
    }

    private void correlate(double[] p, double[] h, int start, int n, double[] c) {
        Arrays.fill(c, 0);
        for (int k = 0; k < n; k++) {
            int i = 3 * (k + start >= n ? k + start - n : k + start);
            int j = 3 * k;
            c[0] += p[i] * h[j];
            c[1] += p[i] * h[j + 1];
            c[3] += p[i + 1] * h[j];
            c[4] += p[i + 1] * h[j + 1];
            if (!flat) {
                c[2] += p[i] * h[j + 2];
                c[5] += p[i + 1] * h[j + 2];
                c[6] += p[i + 2] * h[j];
                c[7] += p[i + 2] * h[j + 1];
                c[8] += p[i + 2] * h[j + 2];
            }
        }
    }

    private Fit start(Peak peak, int n) {
        return stepForStep((double) peak.start / n, peak.reversed, peak.mirrored, n);
    }

    // The least-squares motion when both walk in step.
    private Fit stepForStep(double start, boolean reversed, boolean mirrored, int n) {
        double[] p = head.walked(n, start, false);
        double[] h = hand.walked(n, 0, reversed);
        int[] pairs = new int[2 * n + 2];
        double[] weight = new double[n + 1];
        for (int k = 0; k <= n; k++) {
            pairs[2 * k] = k;
            pairs[2 * k + 1] = k;
            weight[k] = head.closed() && k == n ? 0 : 1;
        }
        Rigid motion = Rigid.best(p, h, pairs, n + 1, weight, flat, mirrored);
        double[] moved = new double[h.length];
        motion.move(h, moved);
        double squared = 0;
        for (int k = 0; k <= n; k++) {
            squared = Math.max(squared, square(p, k, moved, k));
        }
        return new Fit(start, reversed, motion, squared);
    }

    // A start between the steps: where in-step correlation is greatest, by golden section.
    private Fit between(Fit fit, int n) {
        if (!head.closed() || !hand.closed()) {
            return fit;
        }
        boolean mirrored = fit.motion.mirrored();
        double a = fit.start - 1.0 / n;
        double b = fit.start + 1.0 / n;
        Fit best = fit;
        double golden = 0.3819660112501051;
        double x = a + golden * (b - a);
        double y = b - golden * (b - a);
        double atX = apart(x, fit.reversed, mirrored, n);
        double atY = apart(y, fit.reversed, mirrored, n);
        for (int i = 0; i < (n < FINE ? 12 : 36); i++) {
            if (atX < atY) {
                b = y;
                y = x;
                atY = atX;
                x = a + golden * (b - a);
                atX = apart(x, fit.reversed, mirrored, n);
            } else {
                a = x;
                x = y;
                atX = atY;
                y = b - golden * (b - a);
                atY = apart(y, fit.reversed, mirrored, n);
            }
        }
        return best.better(stepForStep((a + b) / 2, fit.reversed, mirrored, n));
    }

    private double apart(double start, boolean reversed, boolean mirrored, int n) {
        int m = Math.min(n, 96);
        double[] p = middled(head.walked(m, start, false), m);
        double[] h = middled(hand.walked(m, 0, reversed), m);
        double[] c = new double[9];
        correlate(p, h, 0, m, c);
        if (flat) {
            return -(mirrored
                    ? Math.hypot(c[0] - c[4], c[3] + c[1])
                    : Math.hypot(c[0] + c[4], c[3] - c[1]));
        }
        double[] v = Nuclear.singular(c);
        double last = (Nuclear.determinant(c) < 0) == mirrored ? v[2] : -v[2];
        return -(v[0] + v[1] + last);
    }

    private static double square(double[] p, int i, double[] h, int j) {
        double dx = p[3 * i] - h[3 * j];
        double dy = p[3 * i + 1] - h[3 * j + 1];
        double dz = p[3 * i + 2] - h[3 * j + 2];
        return dx * dx + dy * dy + dz * dz;
    }

    // By turns the walk and the minimax motion for it, as long as that helps.
    private Fit drawn(Fit from, int n, int band, int rounds) {
        double[] p = head.walked(n, from.start, false);
        double[] h = hand.walked(n, 0, from.reversed);
        boolean mirrored = from.motion.mirrored();
        double[] moved = new double[h.length];
        double[] row = new double[n + 1];
        int[] pairs = new int[4 * n + 8];
        from.motion.move(h, moved);
        Fit best =
                new Fit(
                        from.start,
                        from.reversed,
                        from.motion,
                        Frechet.squared(p, moved, band, row, Double.MAX_VALUE));
        Rigid motion = from.motion;
        for (int round = 0; round < rounds && best.squared > DONE * DONE; round++) {
            motion.move(h, moved);
            int count = Frechet.walk(p, moved, band, best.squared, pairs);
            motion = minimax(p, h, pairs, count, mirrored, moved);
            motion.move(h, moved);
            double squared = Frechet.squared(p, moved, band, row, Double.MAX_VALUE);
            boolean stuck = squared > best.squared * (1 - 1e-4);
            best = best.better(new Fit(from.start, from.reversed, motion, squared));
            if (stuck) {
                break;
            }
        }
        return best;
    }

    private Rigid minimax(
            double[] p, double[] h, int[] pairs, int count, boolean mirrored, double[] moved) {
        double[] weight = new double[count];
        Arrays.fill(weight, 1);
        double least = Double.MAX_VALUE;
        Rigid best = Rigid.best(p, h, pairs, count, weight, flat, mirrored);
        Rigid motion = best;
        double[] lead = new double[count];
        for (int i = 0; i < (flat ? 40 : 15); i++) {
            motion.move(h, moved);
            double most = 0;
            for (int k = 0; k < count; k++) {
                lead[k] = square(p, pairs[2 * k], moved, pairs[2 * k + 1]);
                most = Math.max(most, lead[k]);
            }
            if (most < least) {
                least = most;
                best = motion;
            }
            if (most < DONE * DONE) {
                break;
            }
            double sum = 0;
            for (int k = 0; k < count; k++) {
                weight[k] *= Math.sqrt(lead[k] / most);
                sum += weight[k];
            }
            for (int k = 0; k < count; k++) {
                weight[k] = weight[k] / sum + 1e-12;
            }
            motion = Rigid.best(p, h, pairs, count, weight, flat, mirrored);
        }
        return best;
    }

    // The best start for a motion, over all steps.
    private Fit restarted(Fit fit) {
        if (!head.closed() || !hand.closed() || fit.squared < DONE * DONE) {
            return fit;
        }
        double[] h = hand.walked(ROUGH, 0, fit.reversed);
        double[] moved = new double[h.length];
        fit.motion.move(h, moved);
        double[] row = new double[ROUGH + 1];
        double[] around = head.walked(ROUGH, fit.start, false);
        double[] p = new double[around.length];
        Fit best = fit;
        for (int s = 1; s < ROUGH; s++) {
            if (square(around, s, moved, 0) >= best.squared) {
                continue;
            }
            for (int i = 0; i <= ROUGH; i++) {
                System.arraycopy(around, 3 * ((i + s) % ROUGH), p, 3 * i, 3);
            }
            double squared = Frechet.squared(p, moved, ROUGH + 1, row, best.squared);
            double start = fit.start + (double) s / ROUGH;
            best = best.better(new Fit(start, fit.reversed, fit.motion, squared));
        }
        return best;
    }

    private Fit fine(Fit rough, double atLeast) {
        int band = FINE / 8;
        Fit best = drawn(rough, FINE, band, 3);
        Fit inStep = between(rough, FINE);
        best = best.better(drawn(inStep, FINE, band, 3));
        return Math.sqrt(best.squared) - atLeast < DONE ? best : polished(best, FINE, 60);
    }

    // Nelder and Mead's simplex on the distance itself: its kinks rule out gradients.
    private Fit polished(Fit from, int n, int evaluations) {
        double[] h = hand.walked(n, 0, from.reversed);
        double[] moved = new double[h.length];
        double[] row = new double[n + 1];
        int band = n == FINE ? FINE / 8 : n;
        boolean slides = head.closed() && hand.closed();
        int own = flat ? 3 : 6;
        double length = Math.sqrt(from.squared) / 4;
        double[] step = new double[own + (slides ? 1 : 0)];
        for (int i = 0; i < own; i++) {
            step[i] = i < own / 2.0 - 0.9 || (!flat && i < 3) ? length / (size / 4) : length;
        }
        if (slides) {
            step[own] = 1.0 / n;
        }
        Fit[] best = {from};
        double[][] p = {head.walked(n, from.start, false)};
        double[] at = {from.start};
        ObjectiveFunction distance =
                new ObjectiveFunction(
                        x -> {
                            double start = slides ? from.start + x[own] : from.start;
                            if (start != at[0]) {
                                p[0] = head.walked(n, start, false);
                                at[0] = start;
                            }
                            Rigid motion = from.motion.nudged(Arrays.copyOf(x, own));
                            motion.move(h, moved);
                            double squared =
                                    Frechet.squared(p[0], moved, band, row, Double.MAX_VALUE);
                            best[0] =
                                    best[0].better(new Fit(start, from.reversed, motion, squared));
                            return squared;
                        });
        try {
            new SimplexOptimizer(1e-7, 1e-12)
                    .optimize(
                            new MaxEval(evaluations),
                            distance,
                            GoalType.MINIMIZE,
                            new InitialGuess(new double[step.length]),
                            new NelderMeadSimplex(step));
        } catch (MathIllegalStateException ranOut) {
            return best[0];
        }
        return best[0];
    }
}
