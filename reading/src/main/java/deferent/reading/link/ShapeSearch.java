package deferent.reading.link;

import deferent.motion.trace.Lowest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
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
 * simplex on the distance itself, and the best of them again, walked in {@value #FINE} steps within
 * a corridor about the rough walk and started between steps.
 *
 * <p>Two flat paths are compared on one sheet, which may be turned over; others in space. The
 * search is local about its candidates, so its result is an upper bound; {@link Extent} gives the
 * lower. Loops that nearly repeat have many candidates of one height: of 400 flowers against nearly
 * the same flower, turned and timed otherwise, seven came out more than three hundredths apart, the
 * worst by a quarter. Curves of one shape are always found: of 5000, none was left above 0.04 mm.
 */
final class ShapeSearch {
    private static final int ROUGH = 96;
    private static final int FINER = 4;
    private static final int FINE = FINER * ROUGH;
    private static final int MARGIN = 12;
    private static final int FAN = 12;
    private static final int QUICK = 48;
    // Points at which extents are measured: enough for their sag to be hundredths of a millimetre.
    private static final int MEASURED = 720;
    private static final double DONE = 1e-5;
    // How nearly the polygons' own distance is sought where that of their points says less, metres.
    private static final double TOLD = 2e-3;

    private final WalkedCurve head;
    private final WalkedCurve hand;
    private final boolean flat;
    private final double size;

    /** A way to lay the hand's curve on the head's, and how far apart they then are (squared). */
    private record Fit(double start, boolean reversed, Rigid motion, double squared) {
        boolean within(double gap) {
            return squared <= gap * gap;
        }

        Fit better(Fit o) {
            return o.squared < squared ? o : this;
        }
    }

    private record Peak(int start, boolean reversed, boolean mirrored, double score) {}

    private ShapeSearch(WalkedCurve head, WalkedCurve hand) {
        this.head = head;
        this.hand = hand;
        this.flat = head.dimension() < 3 && hand.dimension() < 3;
        this.size = Math.max(head.length(), hand.length());
    }

    static ShapeSearch of(WalkedCurve head, WalkedCurve hand) {
        return new ShapeSearch(head, hand);
    }

    ShapeGap quick() {
        Extent a = extent(head, QUICK);
        Extent b = extent(hand, QUICK);
        if (head.dimension() == 0 || hand.dimension() == 0) {
            return new ShapeGap(
                    a.radius() + b.radius(), Double.NaN, a.gapAtLeast(b), a.radius(), b.radius());
        }
        return new ShapeGap(estimated(), Double.NaN, a.gapAtLeast(b), a.radius(), b.radius());
    }

    /** The quick gap alone. */
    double estimated() {
        if (head.dimension() == 0 || hand.dimension() == 0) {
            return extent(head, QUICK).radius() + extent(hand, QUICK).radius();
        }
        double least = Double.POSITIVE_INFINITY;
        for (Peak peak : peaks(QUICK, 2)) {
            Fit fit = drawn(between(start(peak, QUICK), QUICK), whole(QUICK), 1, 12);
            least = Math.min(least, fit.squared);
        }
        return Math.sqrt(least);
    }

    /**
     * The gap that the best of a few candidates comes to without a polish: as near as the certified
     * one where the curves are of one shape, elsewhere somewhat above it, at a tenth of its cost.
     */
    double refined() {
        if (head.dimension() == 0 || hand.dimension() == 0) {
            return extent(head, QUICK).radius() + extent(hand, QUICK).radius();
        }
        List<Fit> fits = new ArrayList<>();
        for (Peak peak : peaks(ROUGH, 4)) {
            fits.add(drawn(start(peak, ROUGH), whole(ROUGH), 3, 30));
        }
        Fit rough = nearest(fits, 1).get(0);
        Fit best = drawn(rough, corridor(rough), 2, 20).better(between(rough, FINE));
        return Math.sqrt(best.squared);
    }

    ShapeGap certified() {
        Extent a = extent(head, MEASURED);
        Extent b = extent(hand, MEASURED);
        double atLeast = Math.max(a.gapAtLeast(b), returningAtLeast(a.sag() + b.sag()));
        if (head.dimension() == 0 || hand.dimension() == 0) {
            double sag = Math.max(a.sag(), b.sag());
            return new ShapeGap(a.radius() + b.radius(), sag, atLeast, a.radius(), b.radius());
        }
        Fit best = best(atLeast + DONE + Math.min(2 * (a.sag() + b.sag()), 10 * DONE));
        double[] p = head.walked(FINE, best.start, false);
        double[] h = hand.walked(FINE, 0, best.reversed);
        best.motion.move(h.clone(), h);
        double gap = Frechet.distance(p, h);
        double sags = head.sag(FINE) + hand.sag(FINE);
        // Walkers of the curves may step anywhere between the points.
        double between = (head.length() + hand.length()) / (2 * FINE);
        double low = Math.max(gap - between, atLeast);
        double high = gap;
        double never = low;
        double tried = high - TOLD;
        while (high - never > TOLD) {
            if (Frechet.within(tried, p, h)) {
                high = tried;
            } else {
                never = tried;
                low = Math.max(low, never - sags);
            }
            tried = (never + high) / 2;
        }
        double error = Math.max(Math.max(head.sag(FINE), hand.sag(FINE)), high - low);
        return new ShapeGap(high, error, Math.min(atLeast, high), a.radius(), b.radius());
    }

    // Stops at once when nothing better can be had.
    private Fit best(double enough) {
        List<Fit> fits = new ArrayList<>();
        for (Peak peak : peaks(ROUGH, 12)) {
            // Curves of one shape are told at once: they fit when both walk in step.
            Fit together = between(start(peak, ROUGH), FINE);
            if (together.within(enough)) {
                return together;
            }
            Fit fit = drawn(start(peak, ROUGH), whole(ROUGH), 3, 30);
            if (fit.within(enough)) {
                Fit fine = drawn(fit, corridor(fit), 2, 20);
                if (fine.within(enough)) {
                    return fine;
                }
            }
            fits.add(fit);
        }
        if (flat) {
            for (Fit fit : nearest(turnedAbout(), 5)) {
                fits.add(drawn(fit, whole(ROUGH), 3, 30));
            }
        }
        List<Fit> few = new ArrayList<>();
        for (Fit fit : nearest(fits, 6)) {
            few.add(drawn(restarted(fit), whole(ROUGH), 3, 30));
        }
        List<Fit> fine = new ArrayList<>();
        for (Fit fit : nearest(few, 4)) {
            Fit inStep = between(fit, FINE);
            if (inStep.squared < 4 * fit.squared) {
                inStep = drawn(inStep, corridor(inStep), 2, 20);
                if (inStep.within(enough)) {
                    return inStep;
                }
            }
            Fit polished = polished(fit, whole(ROUGH), flat ? 120 : 300);
            fine.add(inStep.better(drawn(polished, corridor(polished), 2, 20)));
        }
        Fit best = nearest(fine, 1).get(0);
        return polished(best, corridor(best), flat ? 60 : 120);
    }

    private static Corridor whole(int n) {
        return Corridor.whole(n + 1, n + 1);
    }

    // For the fine walk, about the rough one.
    private Corridor corridor(Fit fit) {
        double[] h = hand.walked(ROUGH, 0, fit.reversed);
        fit.motion.move(h.clone(), h);
        int[] pairs = new int[4 * ROUGH + 8];
        int count =
                Frechet.walk(
                        head.walked(ROUGH, fit.start, false),
                        h,
                        whole(ROUGH),
                        fit.squared + DONE * DONE,
                        pairs);
        return Corridor.about(pairs, count, ROUGH, FINER, MARGIN);
    }

    private static List<Fit> nearest(List<Fit> fits, int most) {
        return fits.stream().sorted(Comparator.comparingDouble(Fit::squared)).limit(most).toList();
    }

    // A path that goes back the way it came is an arc walked twice. A loop laid on an arc brings
    // some
    // two points half the loop's length apart onto one (Borsuk and Ulam, in one dimension), and
    // both
    // are within the gap of it. What keeps the path from going back exactly is taken off, as are
    // the
    // sags.
    private double returningAtLeast(double sags) {
        if (!head.closed() || !hand.closed()) {
            return 0;
        }
        double handRound = hand.waist(FINE) / 2 - head.offReturning(MEASURED);
        double headRound = head.waist(FINE) / 2 - hand.offReturning(MEASURED);
        return Math.max(handRound, headRound) - sags;
    }

    private static Extent extent(WalkedCurve curve, int n) {
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

    // Where paths differ much the correlation misleads: so every turn out of a fan, each with the
    // start that correlates best there, drawn a little at low resolution.
    private List<Fit> turnedAbout() {
        int n = ROUGH / 2;
        double[] p = middled(head.walked(n, 0, false), n);
        double[] c = new double[9];
        List<Fit> found = new ArrayList<>();
        for (boolean reversed : new boolean[] {false, true}) {
            double[] h = middled(hand.walked(n, 0, reversed), n);
            double[][] sums = new double[head.closed() && hand.closed() ? n : 1][];
            for (int s = 0; s < sums.length; s++) {
                correlate(p, h, s, n, c);
                sums[s] = c.clone();
            }
            for (int turn = 0; turn < 2 * FAN; turn++) {
                boolean mirrored = turn >= FAN;
                double angle = 2 * Math.PI * turn / FAN;
                Rigid motion = Rigid.flat(angle, mirrored, 0, 0);
                int best = 0;
                for (int s = 1; s < sums.length; s++) {
                    if (along(motion, sums[s]) > along(motion, sums[best])) {
                        best = s;
                    }
                }
                double start = (double) best / n;
                double[] there = mean(head.walked(n, start, false), n);
                double[] here = mean(hand.walked(n, 0, reversed), n);
                double[] moved = new double[3];
                motion.move(here, moved);
                motion = Rigid.flat(angle, mirrored, there[0] - moved[0], there[1] - moved[1]);
                found.add(drawn(new Fit(start, reversed, motion, size * size), whole(n), 2, 12));
            }
        }
        return found;
    }

    private static double along(Rigid motion, double[] c) {
        double[] t = motion.turn();
        return t[0] * c[0] + t[1] * c[1] + t[3] * c[3] + t[4] * c[4];
    }

    private static double[] mean(double[] points, int n) {
        double[] mean = new double[3];
        for (int i = 0; i < 3 * n; i++) {
            mean[i % 3] += points[i] / n;
        }
        return mean;
    }

    private static double[] middled(double[] points, int n) {
        double[] mean = mean(points, n);
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
        double found =
                lowest(
                        x -> apart(x, fit.reversed, mirrored, n),
                        fit.start,
                        1.0 / Math.min(n, ROUGH),
                        n < FINE ? 12 : 36);
        if (n >= FINE) {
            // The correlation is flat at its top, where the samples' sag can shift it by
            // millimetres.
            found =
                    lowest(
                            x -> stepForStep(x, fit.reversed, mirrored, n).squared,
                            found,
                            2.0 / FINE,
                            28);
        }
        return fit.better(stepForStep(found, fit.reversed, mirrored, n));
    }

    private static double lowest(DoubleUnaryOperator f, double middle, double reach, int steps) {
        return Lowest.within(f, middle - reach, middle + reach, steps).at();
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
    private Fit drawn(Fit from, Corridor corridor, int rounds, int leanings) {
        int n = corridor.low().length - 1;
        double[] p = head.walked(n, from.start, false);
        double[] h = hand.walked(n, 0, from.reversed);
        boolean mirrored = from.motion.mirrored();
        double[] moved = new double[h.length];
        long[] row = new long[n + 1];
        int[] pairs = new int[4 * n + 8];
        from.motion.move(h, moved);
        Fit best =
                new Fit(
                        from.start,
                        from.reversed,
                        from.motion,
                        Frechet.squared(p, moved, corridor, row, Double.MAX_VALUE));
        Rigid motion = from.motion;
        for (int round = 0; round < rounds && best.squared > DONE * DONE; round++) {
            motion.move(h, moved);
            int count = Frechet.walk(p, moved, corridor, best.squared, pairs);
            motion = minimax(p, h, pairs, count, mirrored, moved, leanings);
            motion.move(h, moved);
            double squared = Frechet.squared(p, moved, corridor, row, Double.MAX_VALUE);
            boolean stuck = squared > best.squared * (1 - 1e-4);
            best = best.better(new Fit(from.start, from.reversed, motion, squared));
            if (stuck) {
                break;
            }
        }
        return best;
    }

    private Rigid minimax(
            double[] p,
            double[] h,
            int[] pairs,
            int count,
            boolean mirrored,
            double[] moved,
            int leanings) {
        double[] weight = new double[count];
        Arrays.fill(weight, 1);
        double least = Double.MAX_VALUE;
        Rigid best = Rigid.best(p, h, pairs, count, weight, flat, mirrored);
        Rigid motion = best;
        double[] lead = new double[count];
        for (int i = 0; i < (flat ? leanings : leanings / 2); i++) {
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
        long[] row = new long[ROUGH + 1];
        double[] around = head.walked(ROUGH, fit.start, false);
        double[] p = new double[around.length];
        Corridor all = whole(ROUGH);
        Fit best = fit;
        for (int s = 1; s < ROUGH; s++) {
            if (square(around, s, moved, 0) >= best.squared) {
                continue;
            }
            for (int i = 0; i <= ROUGH; i++) {
                System.arraycopy(around, 3 * ((i + s) % ROUGH), p, 3 * i, 3);
            }
            double squared = Frechet.squared(p, moved, all, row, best.squared);
            double start = fit.start + (double) s / ROUGH;
            best = best.better(new Fit(start, fit.reversed, fit.motion, squared));
        }
        return best;
    }

    // Nelder and Mead's simplex on the distance itself: its kinks rule out gradients.
    private Fit polished(Fit from, Corridor corridor, int evaluations) {
        int n = corridor.low().length - 1;
        double[] h = hand.walked(n, 0, from.reversed);
        double[] moved = new double[h.length];
        long[] row = new long[n + 1];
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
                                    Frechet.squared(p[0], moved, corridor, row, Double.MAX_VALUE);
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
