package deferent.search.set;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import deferent.search.set.Suggestion.Outcome;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class SuggestionSearchTest {
    private static final double[] HARDER_AND_HARDER = {1, 2, 3, 4, 5, 6};

    private static double[][] all(int size, double weight) {
        double[][] weights = new double[size][size];
        for (double[] row : weights) {
            Arrays.fill(row, weight);
        }
        return weights;
    }

    private static Suggestion suggest(
            double[] difficulty, double[][] weights, int length, OptionalInt first) {
        return new SuggestionSearch(
                        difficulty, weights, length, first, SuggestionSearch.BUDGET, () -> false)
                .run();
    }

    @Test
    void theHardestStandsInTheMiddleAndItGetsEasierToBothEnds() {
        Suggestion found = suggest(HARDER_AND_HARDER, all(6, 0), 5, OptionalInt.empty());
        assertThat(found.outcome()).isEqualTo(Outcome.BEST);
        assertThat(found.order()).hasSize(5).doesNotHaveDuplicates();
        assertThat(found.order().get(2)).isEqualTo(5);
        assertThat(found.order().subList(0, 3)).isSorted();
        assertThat(found.order().get(3)).isGreaterThan(found.order().get(4));
    }

    @Test
    void aHarderTransitionIsNotTakenForAHigherHill() {
        double[][] weights = all(6, 0);
        for (int i = 0; i < 6; i++) {
            weights[i][5] = 4.1;
        }
        assertThat(suggest(HARDER_AND_HARDER, weights, 5, OptionalInt.empty()).order())
                .doesNotContain(5);
    }

    @Test
    void whereNothingLeadsOnThereIsNone() {
        double[][] weights = all(6, Double.POSITIVE_INFINITY);
        weights[0][1] = 0;
        Suggestion found = suggest(HARDER_AND_HARDER, weights, 3, OptionalInt.empty());
        assertThat(found.outcome()).isEqualTo(Outcome.NONE);
        assertThat(found.order()).isEmpty();
    }

    @Test
    void aSetBeginsWithThePatternThatIsSaid() {
        assertThat(suggest(HARDER_AND_HARDER, all(6, 0), 4, OptionalInt.of(2)).order().get(0))
                .isEqualTo(2);
        // The hardest cannot be climbed from.
        assertThat(suggest(HARDER_AND_HARDER, all(6, 0), 5, OptionalInt.of(5)).outcome())
                .isEqualTo(Outcome.NONE);
    }

    @Test
    void aSearchThatIsStoppedSaysThatItDidNotSeeAll() {
        Suggestion early =
                new SuggestionSearch(
                                HARDER_AND_HARDER,
                                all(6, 0),
                                5,
                                OptionalInt.empty(),
                                4,
                                () -> false)
                        .run();
        assertThat(early.outcome()).isIn(Outcome.FOUND, Outcome.UNKNOWN);
        assertThat(early.looked()).isLessThan(20);
    }

    @Property(tries = 150)
    void noOtherOrderIsBetter(Any any) {
        int size = any.whole(3, 6);
        double[] difficulty = new double[size];
        double[][] weights = new double[size][size];
        for (int i = 0; i < size; i++) {
            difficulty[i] = any.number(0, 5);
            for (int j = 0; j < size; j++) {
                weights[i][j] =
                        any.of(true, true, false) ? any.number(0, 8) : Double.POSITIVE_INFINITY;
            }
        }
        int length = any.whole(3, Math.min(5, size));
        Suggestion found = suggest(difficulty, weights, length, OptionalInt.empty());
        double best = Double.POSITIVE_INFINITY;
        for (List<Integer> order : orders(size, length)) {
            best = Math.min(best, cost(difficulty, weights, order));
        }
        assertThat(found.outcome()).isEqualTo(best < 1e9 ? Outcome.BEST : Outcome.NONE);
        if (best < 1e9) {
            assertThat(found.cost()).isCloseTo(best, within(1e-9));
            assertThat(cost(difficulty, weights, found.order())).isCloseTo(best, within(1e-9));
        }
    }

    private static List<List<Integer>> orders(int size, int length) {
        List<List<Integer>> all = new ArrayList<>(List.of(List.of()));
        for (int k = 0; k < length; k++) {
            List<List<Integer>> longer = new ArrayList<>();
            for (List<Integer> one : all) {
                for (int i = 0; i < size; i++) {
                    if (!one.contains(i)) {
                        List<Integer> more = new ArrayList<>(one);
                        more.add(i);
                        longer.add(more);
                    }
                }
            }
            all = longer;
        }
        return all;
    }

    /** Of the better of its two middles; infinite where it is no hill. */
    private static double cost(double[] difficulty, double[][] weights, List<Integer> order) {
        double best = Double.POSITIVE_INFINITY;
        int last = order.size() - 1;
        double spread =
                Arrays.stream(difficulty).max().orElseThrow()
                        - Arrays.stream(difficulty).min().orElseThrow();
        for (int middle : List.of(last / 2, order.size() / 2)) {
            double sum = 0;
            for (int i = 0; i < last; i++) {
                double rise = difficulty[order.get(i + 1)] - difficulty[order.get(i)];
                sum += weights[order.get(i)][order.get(i + 1)];
                sum += (i < middle ? rise : -rise) >= 0 ? 0 : Double.POSITIVE_INFINITY;
            }
            double ends = (difficulty[order.get(0)] + difficulty[order.get(last)]) / 2;
            double height = (difficulty[order.get(middle)] - ends) / spread;
            best = Math.min(best, sum - SetPlan.GRADE * height);
        }
        return best;
    }
}
