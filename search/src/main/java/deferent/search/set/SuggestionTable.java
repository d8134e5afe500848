package deferent.search.set;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.search.transition.Transition;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * Which of some patterns lead into which, and how hard each is: what an order of them is looked for
 * in.
 *
 * @param difficulty of each pattern
 * @param weights how much the gentlest transition from one to another is shunned, in counts;
 *     infinite where there is none
 */
public record SuggestionTable(List<Double> difficulty, List<List<Double>> weights) {
    /** More patterns take minutes to compare. */
    public static final int MOST = 60;

    public SuggestionTable {
        difficulty = List.copyOf(difficulty);
        weights = List.copyOf(weights);
    }

    /**
     * Compares every two.
     *
     * @param listener hears how many pairs were looked at
     * @param stop asked between them
     * @return empty where it was stopped
     */
    public static Optional<SuggestionTable> of(
            List<Pairing> patterns,
            PairBook book,
            Consumer<SetPlan.Progress> listener,
            BooleanSupplier stop) {
        int size = patterns.size();
        if (size > MOST) {
            throw new Refusal(
                    "are " + size + " patterns",
                    "what a set is suggested from",
                    "keep at most " + MOST + " of them on one shelf");
        }
        Double[][] weights = new Double[size][size];
        int all = size * (size - 1);
        int done = 0;
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                weights[i][j] = Double.POSITIVE_INFINITY;
                if (i != j) {
                    if (stop.getAsBoolean()) {
                        return Optional.empty();
                    }
                    weights[i][j] = gentlest(book, patterns.get(i), patterns.get(j));
                    listener.accept(new SetPlan.Progress(++done, all));
                }
            }
        }
        return Optional.of(
                new SuggestionTable(
                        patterns.stream().map(p -> Difficulty.of(book.readings(p))).toList(),
                        Arrays.stream(weights).map(List::of).toList()));
    }

    private static double gentlest(PairBook book, Pairing from, Pairing to) {
        if (from.equals(to)) {
            return Double.POSITIVE_INFINITY;
        }
        List<Transition> all = book.between(from, to).list();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < all.size(); i++) {
            least = Math.min(least, SetPlan.weight(all.get(i), i));
        }
        return least;
    }

    /**
     * The best order of so many.
     *
     * @param first the pattern it begins with, by its place, where that is said
     */
    public Suggestion suggest(int length, OptionalInt first, BooleanSupplier stop) {
        return new SuggestionSearch(
                        difficulty.stream().mapToDouble(d -> d).toArray(),
                        weights.stream()
                                .map(row -> row.stream().mapToDouble(w -> w).toArray())
                                .toArray(double[][]::new),
                        length,
                        first,
                        SuggestionSearch.BUDGET,
                        stop)
                .run();
    }
}
