package deferent.search.set;

import deferent.motion.pairing.Refusal;
import deferent.search.set.Suggestion.Outcome;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.BooleanSupplier;

/**
 * Looks for patterns in an order that can be spun, depth first from the first pattern on, and gives
 * up every beginning that could not get better than the best known even if all that is still to
 * come went by the gentlest transition and up the highest hill (branch and bound: Land and Doig,
 * 1960).
 *
 * <p>The middle of an even number of patterns is either of the two. A hill from the easiest pattern
 * of the shelf to its hardest is worth as much as a grade of one transition (our choice).
 */
public final class SuggestionSearch {
    /** Fewer have no middle. */
    public static final int FEWEST = 3;

    /** More than these are no set that is taken in at a glance. */
    public static final int MOST = 24;

    /** Beginnings looked at before the best known has to do. */
    public static final long BUDGET = 2_000_000;

    private static final int ASK = 4096;

    private final double[] difficulty;
    private final double[][] weights;
    private final int length;
    private final OptionalInt first;
    private final long budget;
    private final BooleanSupplier stop;
    private final double gentlest;
    private final double spread;
    private final Integer[] easiestFirst;
    private final boolean[] used;
    private final List<Integer> path = new ArrayList<>();
    private List<Integer> found = List.of();
    private double best = Double.POSITIVE_INFINITY;
    private long looked;
    private boolean ended;
    private int middle;

    /**
     * @param difficulty of each pattern
     * @param weights how much the transition from one to another is shunned, in counts, 0 or more;
     *     infinite where there is none
     * @param length how many patterns
     * @param first the one it begins with, where that is said
     * @param stop asked every little while
     */
    public SuggestionSearch(
            double[] difficulty,
            double[][] weights,
            int length,
            OptionalInt first,
            long budget,
            BooleanSupplier stop) {
        if (length < FEWEST || length > MOST) {
            throw new Refusal(
                    "is to have " + length + " patterns",
                    "a suggested set",
                    "give " + FEWEST + " to " + MOST);
        }
        this.difficulty = difficulty.clone();
        this.weights = weights;
        this.length = length;
        this.first = first;
        this.budget = budget;
        this.stop = stop;
        this.used = new boolean[difficulty.length];
        this.gentlest = Arrays.stream(weights).flatMapToDouble(Arrays::stream).min().orElse(0);
        double low = Arrays.stream(difficulty).min().orElse(0);
        double high = Arrays.stream(difficulty).max().orElse(0);
        this.spread = high > low ? high - low : 1;
        this.easiestFirst = new Integer[difficulty.length];
        Arrays.setAll(easiestFirst, i -> i);
        Arrays.sort(easiestFirst, Comparator.comparingDouble(i -> difficulty[i]));
    }

    public Suggestion run() {
        for (int m = (length - 1) / 2; m <= length / 2; m++) {
            middle = m;
            for (int i : easiestFirst) {
                if (first.orElse(i) == i) {
                    step(i, 0);
                }
            }
        }
        Outcome outcome =
                found.isEmpty()
                        ? ended ? Outcome.UNKNOWN : Outcome.NONE
                        : ended ? Outcome.FOUND : Outcome.BEST;
        return new Suggestion(outcome, found, found.isEmpty() ? 0 : best, looked);
    }

    private void step(int pattern, double spent) {
        used[pattern] = true;
        path.add(pattern);
        descend(spent);
        path.remove(path.size() - 1);
        used[pattern] = false;
    }

    private void descend(double spent) {
        int placed = path.size();
        if (placed == length) {
            double cost = spent - SetPlan.GRADE * height();
            if (cost < best) {
                best = cost;
                found = List.copyOf(path);
            }
            return;
        }
        int at = path.get(placed - 1);
        List<Integer> next = new ArrayList<>();
        for (int to : easiestFirst) {
            boolean up = placed <= middle;
            double rise = difficulty[to] - difficulty[at];
            if (!used[to]
                    && weights[at][to] < Double.POSITIVE_INFINITY
                    && (up ? rise : -rise) >= 0) {
                next.add(to);
            }
        }
        next.sort(Comparator.comparingDouble(to -> weights[at][to]));
        for (int to : next) {
            double sum = spent + weights[at][to];
            if (!(sum + (length - 1 - placed) * gentlest - SetPlan.GRADE < best)) {
                return;
            }
            looked++;
            ended |= looked > budget || (looked % ASK == 0 && stop.getAsBoolean());
            if (ended) {
                return;
            }
            step(to, sum);
        }
    }

    /** How high the hill is, of all that the shelf spans. */
    private double height() {
        double ends = (difficulty[path.get(0)] + difficulty[path.get(length - 1)]) / 2;
        return (difficulty[path.get(middle)] - ends) / spread;
    }
}
