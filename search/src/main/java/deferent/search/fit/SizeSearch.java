package deferent.search.fit;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Size;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleBounds;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.BOBYQAOptimizer;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;

/**
 * Searches sizes for the least gap where no closed form is known: one size by a scan and Brent's
 * method, several by BOBYQA (Powell, 2009), both from Hipparchus, which asks for no derivatives.
 */
final class SizeSearch {
    private static final double IMPOSSIBLE = 10;

    private final Limits limits;
    private final ToDoubleFunction<Pairing> gap;

    /**
     * @param gap what is to be least, metres
     */
    SizeSearch(Limits limits, ToDoubleFunction<Pairing> gap) {
        this.limits = limits;
        this.gap = gap;
    }

    double gap(Pairing pairing) {
        return gap.applyAsDouble(pairing);
    }

    /** The trial with {@code size} where the gap is least, after a scan of its whole range. */
    Trial overAll(Trial from, Size size, int scanned, int evaluations) {
        Limits.Range range = limits.of(size);
        int best = 0;
        double[] gaps = new double[scanned + 1];
        for (int i = 0; i <= scanned; i++) {
            gaps[i] = at(from, size, along(range, i, scanned));
            if (gaps[i] < gaps[best]) {
                best = i;
            }
        }
        return about(
                from,
                size,
                along(range, Math.max(best - 1, 0), scanned),
                along(range, best, scanned),
                along(range, Math.min(best + 1, scanned), scanned),
                evaluations);
    }

    // Lengths by equal ratios, angles by equal steps.
    private static double along(Limits.Range range, int i, int of) {
        double share = (double) i / of;
        return range.least() > 0
                ? Math.min(
                        range.least() * Math.pow(range.most() / range.least(), share), range.most())
                : range.least() + share * (range.most() - range.least());
    }

    /** The same between two values, from a first guess. */
    Trial about(Trial from, Size size, double low, double guess, double high, int evaluations) {
        double[] best = {guess, at(from, size, guess)};
        UnivariateFunction f =
                x -> {
                    double here = at(from, size, x);
                    if (here < best[1]) {
                        best[0] = x;
                        best[1] = here;
                    }
                    return here;
                };
        try {
            new BrentOptimizer(1e-7, 1e-7)
                    .optimize(
                            new MaxEval(evaluations),
                            new UnivariateObjectiveFunction(f),
                            GoalType.MINIMIZE,
                            new SearchInterval(low, high, Math.min(Math.max(guess, low), high)));
        } catch (MathRuntimeException ranOut) {
            // The best so far stands.
        }
        return best[1] < gap(from.pairing())
                ? from.with(size, best[0], limits, false).orElse(from)
                : from;
    }

    private double at(Trial from, Size size, double value) {
        Optional<Pairing> set =
                limits.of(size).holds(value)
                        ? FitLink.set(from.pairing(), size, value)
                        : Optional.empty();
        return set.map(this::gap).orElse(IMPOSSIBLE);
    }

    /** The trial with all of {@code sizes} where the gap is least, from where they are. */
    Trial together(Trial from, List<Size> sizes, double radius, int evaluations) {
        int n = sizes.size();
        if (n < 2) {
            return from;
        }
        double[] start = new double[n];
        double[] low = new double[n];
        double[] high = new double[n];
        for (int i = 0; i < n; i++) {
            Limits.Range range = limits.of(sizes.get(i));
            low[i] = Math.max(range.least(), -20);
            high[i] = Math.min(range.most(), 20);
            start[i] =
                    Math.min(
                            Math.max(sizes.get(i).read(from.pairing()).orElse(low[i]), low[i]),
                            high[i]);
        }
        double[] best = start.clone();
        double[] least = {gap(from.pairing())};
        ObjectiveFunction f =
                new ObjectiveFunction(
                        x -> {
                            Trial trial = set(from, sizes, x);
                            double here = gap(trial.pairing());
                            if (here < least[0]) {
                                least[0] = here;
                                System.arraycopy(x, 0, best, 0, n);
                            }
                            return here;
                        });
        try {
            new BOBYQAOptimizer(2 * n + 1, radius, 1e-7)
                    .optimize(
                            new MaxEval(evaluations),
                            f,
                            GoalType.MINIMIZE,
                            new InitialGuess(start),
                            new SimpleBounds(low, high));
        } catch (MathRuntimeException ranOut) {
            // The best so far stands.
        }
        return set(from, sizes, best);
    }

    private Trial set(Trial from, List<Size> sizes, double[] values) {
        Trial trial = from;
        for (int i = 0; i < values.length; i++) {
            trial = trial.with(sizes.get(i), values[i], limits, false).orElse(trial);
        }
        return trial;
    }

    /** The trials, nearest first. */
    List<Trial> sorted(List<Trial> trials) {
        Map<Trial, Double> gaps = new HashMap<>();
        trials.forEach(t -> gaps.computeIfAbsent(t, x -> gap(x.pairing())));
        return gaps.entrySet().stream()
                .sorted(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .toList();
    }
}
