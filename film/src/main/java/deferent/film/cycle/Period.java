package deferent.film.cycle;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;

/**
 * The period that two heads have in common.
 *
 * <p>First the shortest whose fit of a few turns leaves about as little as the best one, over a
 * grid of frequencies (least squares at each, as Bretthorst, Bayesian Spectrum Analysis (1988), has
 * it). Then Gauss and Newton's steps on the frequency, of whose effect that part alone counts which
 * no change of the mean cycles can copy (Kaufman, BIT 15 (1975)).
 */
final class Period {
    private static final double SHORTEST = 0.3;
    private static final double LONGEST = 6;
    private static final int SEARCHED = 5; // turns in the search
    private static final int SETTLED = 9; // turns while settling
    private static final double AS_GOOD = 2.5; // of the best's squares
    private static final double FEW = 1; // pixels that no fit need be better than
    private static final double ENOUGH = 13; // seconds that the search looks at
    private static final double RATE = 32; // sights a second that it looks at
    private static final double BAD = 0.02; // of the heads' own squares
    private static final int LEAST = 24; // sights a head
    private static final int DIPS = 14; // of the grid that are looked into
    private static final int STEPS = 12;

    private Period() {}

    static double of(List<Sights> heads) {
        double begin = heads.stream().mapToDouble(s -> s.times()[0]).min().orElse(0);
        double end = heads.stream().mapToDouble(s -> s.times()[s.count() - 1]).max().orElse(0);
        double from = Math.max(begin, (begin + end - ENOUGH) / 2);
        double lasting = Math.min(ENOUGH, end - begin);
        double size = heads.stream().mapToDouble(Period::square).sum();
        Found best = within(heads, from, lasting);
        // Where heads were exchanged on the way, a part may do what the whole does not.
        for (int parts = 2; parts <= 4 && best.left() > BAD * size; parts++) {
            double part = lasting / parts;
            for (int k = 0; k < 2 * parts - 1 && part > SHORTEST * 4; k++) {
                Found found = within(heads, from + k * part / 2, part);
                best = found.left() < best.left() ? found : best;
            }
        }
        return best.period();
    }

    /**
     * A period found.
     *
     * @param left mean square that it leaves, both heads' added, pixels²
     */
    private record Found(double period, double left) {}

    private static double square(Sights s) {
        double mx = Arrays.stream(s.x()).average().orElse(0);
        double my = Arrays.stream(s.y()).average().orElse(0);
        double sum = 0;
        for (int i = 0; i < s.count(); i++) {
            sum += Math.pow(s.x()[i] - mx, 2) + Math.pow(s.y()[i] - my, 2);
        }
        return sum / s.count();
    }

    private static Found within(List<Sights> heads, double from, double lasting) {
        List<Sights> few =
                heads.stream()
                        .map(s -> s.between(from, from + lasting))
                        .filter(s -> s.count() > 0)
                        .map(s -> s.every(step(s)))
                        .toList();
        if (few.size() < heads.size() || few.stream().anyMatch(s -> s.count() < LEAST)) {
            return new Found(0, Double.POSITIVE_INFINITY);
        }
        double least = 1 / Math.min(LONGEST, lasting / 1.5);
        double step = 0.12 / (lasting * SEARCHED);
        int count = Math.max(2, (int) ((1 / SHORTEST - least) / step) + 1);
        double[] left = new double[count];
        for (Sights s : few) {
            add(left, s, least, step);
        }
        return shortest(few, dips(left, least, step));
    }

    // The deepest dips of the grid, the shortest period first.
    private static double[] dips(double[] left, double least, double step) {
        return IntStream.range(0, left.length)
                .filter(i -> i == 0 || left[i - 1] >= left[i])
                .filter(i -> i == left.length - 1 || left[i + 1] > left[i])
                .boxed()
                .sorted(Comparator.comparingDouble(i -> left[i]))
                .limit(DIPS)
                .mapToDouble(i -> 1 / (least + i * step))
                .sorted()
                .toArray();
    }

    private static Found shortest(List<Sights> few, double[] dips) {
        double[] left = new double[dips.length];
        double[] at = new double[dips.length];
        for (int i = 0; i < dips.length; i++) {
            at[i] = settled(few, Drift.NONE, dips[i], SEARCHED);
            double[] one = new double[1];
            for (Sights s : few) {
                add(one, s, 1 / at[i], 0);
            }
            left[i] = one[0];
        }
        double best = Arrays.stream(left).min().orElse(0);
        for (int i = 0; i < dips.length; i++) {
            if (left[i] <= AS_GOOD * best + FEW * few.size()) {
                return new Found(at[i], left[i]);
            }
        }
        throw new IllegalStateException("no dip is as deep as the deepest");
    }

    private static int step(Sights s) {
        double lasting = s.times()[s.count() - 1] - s.times()[0];
        return Math.max(1, (int) Math.round(s.count() / Math.max(0.1, lasting) / RATE));
    }

    // Mean squares that a fit of a few turns leaves at each frequency, pixels².
    private static void add(double[] left, Sights s, double least, double step) {
        int n = s.count();
        int m = 2 * SEARCHED + 1;
        double[] c = new double[n];
        double[] d = new double[n];
        double[] stepC = new double[n];
        double[] stepD = new double[n];
        for (int i = 0; i < n; i++) {
            double t = 2 * Math.PI * (s.times()[i] - s.times()[0]);
            c[i] = Math.cos(t * least);
            d[i] = Math.sin(t * least);
            stepC[i] = Math.cos(t * step);
            stepD[i] = Math.sin(t * step);
        }
        double[] weights = new double[n];
        Arrays.fill(weights, 1);
        double[][] rows = new double[n][m];
        double[] off = new double[n];
        for (int f = 0; f < left.length; f++) {
            for (int i = 0; i < n; i++) {
                turns(rows[i], c[i], d[i]);
                double next = c[i] * stepC[i] - d[i] * stepD[i];
                d[i] = d[i] * stepC[i] + c[i] * stepD[i];
                c[i] = next;
            }
            double[][] fit = WaveFit.Normal.of(rows, weights, s, m).coefficients(m);
            for (int i = 0; i < n; i++) {
                off[i] =
                        Math.hypot(
                                s.x()[i] - product(rows[i], fit[0]),
                                s.y()[i] - product(rows[i], fit[1]));
            }
            // A few wrong lights are not to decide: what is far off counts as so far.
            double most = 4 * Math.max(0.5, WaveFit.median(off));
            double sum = 0;
            for (double o : off) {
                double capped = Math.min(o, most);
                sum += capped * capped;
            }
            left[f] += sum / n;
        }
    }

    private static void turns(double[] row, double cos, double sin) {
        row[0] = 1;
        double c = 1;
        double s = 0;
        for (int k = 1; 2 * k < row.length; k++) {
            double next = c * cos - s * sin;
            s = s * cos + c * sin;
            c = next;
            row[2 * k - 1] = c;
            row[2 * k] = s;
        }
    }

    private static double product(double[] row, double[] c) {
        double sum = 0;
        for (int a = 0; a < c.length; a++) {
            sum += row[a] * c[a];
        }
        return sum;
    }

    /** The period near one at which what the mean cycles leave is least. */
    static double settled(List<Sights> heads, Drift drift, double near) {
        return settled(heads, drift, near, SETTLED);
    }

    private static double settled(List<Sights> heads, Drift drift, double near, int turns) {
        double rate = 2 * Math.PI / near;
        double lasting = 0;
        for (Sights s : heads) {
            lasting = Math.max(lasting, s.times()[s.count() - 1] - s.times()[0]);
        }
        double most = 1 / lasting; // radians a second: a sixth of a turn in all
        for (int step = 0; step < STEPS; step++) {
            double top = 0;
            double bottom = 0;
            for (Sights s : heads) {
                double[] both = step(s, drift.at(s.times()), rate, turns);
                top += both[0];
                bottom += both[1];
            }
            double by = bottom > 0 ? top / bottom : 0;
            rate += Math.max(-most, Math.min(most, by));
            if (Math.abs(by) * lasting < 1e-5) {
                break;
            }
        }
        return 2 * Math.PI / rate;
    }

    // One head's part of a step: effect times what is left, and effect squared.
    private static double[] step(Sights s, double[] shift, double rate, int turns) {
        int n = s.count();
        int order = Math.max(1, Math.min(turns, (n - 3) / 4));
        int m = 2 * order + 1;
        double[][] rows = new double[n][];
        double[] weights = new double[n];
        for (int i = 0; i < n; i++) {
            rows[i] = Wave.row(rate * (s.times()[i] + shift[i]), rate, m, 0);
            weights[i] = 1;
        }
        double[][] fit = new double[0][];
        double[] off = new double[n];
        WaveFit.Normal normal = WaveFit.Normal.of(rows, weights, s, m);
        for (int round = 0; round < 3; round++) {
            fit = normal.coefficients(m);
            for (int i = 0; i < n; i++) {
                off[i] =
                        Math.hypot(
                                s.x()[i] - product(rows[i], fit[0]),
                                s.y()[i] - product(rows[i], fit[1]));
            }
            double far = 4.685 * Math.max(1e-3, WaveFit.median(off) / 1.1774);
            for (int i = 0; i < n; i++) {
                double u = off[i] / far;
                weights[i] = u < 1 ? (1 - u * u) * (1 - u * u) : 0;
            }
            normal = WaveFit.Normal.of(rows, weights, s, m);
        }
        DecompositionSolver solver = normal.factor(m).getSolver();
        fit = normal.coefficients(m);
        double top = 0;
        double bottom = 0;
        double middle = (s.times()[0] + s.times()[n - 1]) / 2;
        for (int axis = 0; axis < 2; axis++) {
            double[] seen = axis == 0 ? s.x() : s.y();
            double[] effect = new double[n];
            double[] with = new double[m];
            for (int i = 0; i < n; i++) {
                double t = s.times()[i] + shift[i];
                double pace = product(Wave.row(rate * t, rate, m, 1), fit[axis]) / rate;
                effect[i] = (t - middle) * pace;
                for (int a = 0; a < m; a++) {
                    with[a] += weights[i] * rows[i][a] * effect[i];
                }
            }
            double[] copied = solver.solve(new ArrayRealVector(with, false)).toArray();
            for (int i = 0; i < n; i++) {
                double own = effect[i] - product(rows[i], copied);
                top += weights[i] * own * (seen[i] - product(rows[i], fit[axis]));
                bottom += weights[i] * own * own;
            }
        }
        return new double[] {top, bottom};
    }
}
