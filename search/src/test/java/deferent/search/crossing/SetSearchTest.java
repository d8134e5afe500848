package deferent.search.crossing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.search.crossing.FlowingSet.Outcome;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

class SetSearchTest {
    private static List<List<ShelfCrossing>> crossings(int patterns, double share, Random random) {
        List<List<ShelfCrossing>> out = new ArrayList<>();
        for (int i = 0; i < patterns; i++) {
            List<ShelfCrossing> mine = new ArrayList<>();
            for (int j = 0; j < patterns; j++) {
                if (i != j && random.nextDouble() < share) {
                    mine.add(new ShelfCrossing(i, j, 0, 0, 0, 0, random.nextDouble()));
                }
            }
            out.add(mine);
        }
        return out;
    }

    private static FlowingSet found(List<List<ShelfCrossing>> out, int length, long budget) {
        return new SetSearch(0, length, budget, () -> false, new double[out.size()], out).run();
    }

    private static double cheapest(
            List<List<ShelfCrossing>> out, int at, int left, boolean[] used, double spent) {
        double best = Double.POSITIVE_INFINITY;
        for (ShelfCrossing crossing : out.get(at)) {
            if (left == 1 && crossing.to() == 0) {
                best = Math.min(best, spent + crossing.roughness());
            } else if (left > 1 && crossing.to() != 0 && !used[crossing.to()]) {
                used[crossing.to()] = true;
                best =
                        Math.min(
                                best,
                                cheapest(
                                        out,
                                        crossing.to(),
                                        left - 1,
                                        used,
                                        spent + crossing.roughness()));
                used[crossing.to()] = false;
            }
        }
        return best;
    }

    @RepeatedTest(30)
    void theSetIsTheGentlestOfAllOrThereIsNone(RepetitionInfo info) {
        Random random = new Random(info.getCurrentRepetition());
        List<List<ShelfCrossing>> out =
                crossings(9, 0.15 + 0.02 * info.getCurrentRepetition(), random);
        int length = 3 + info.getCurrentRepetition() % 6;
        double best = cheapest(out, 0, length, new boolean[9], 0);
        FlowingSet set = found(out, length, Long.MAX_VALUE);
        if (Double.isInfinite(best)) {
            assertThat(set.outcome()).isEqualTo(Outcome.NONE);
            assertThat(set.route()).isEmpty();
        } else {
            assertThat(set.outcome()).isEqualTo(Outcome.BEST);
            Route route = set.route().orElseThrow();
            assertThat(route.roughness()).isCloseTo(best, within(1e-12));
            assertThat(route.patterns()).hasSize(length + 1).startsWith(0).endsWith(0);
            assertThat(route.patterns().stream().distinct()).hasSize(length);
        }
    }

    @Test
    void aSearchThatMustStopSaysSo() {
        List<List<ShelfCrossing>> out = crossings(60, 0.5, new Random(3));
        FlowingSet set = found(out, 8, 3);
        assertThat(set.outcome()).isEqualTo(Outcome.UNKNOWN);
        assertThat(found(out, 8, 9).outcome()).isIn(Outcome.FOUND, Outcome.BEST);
    }
}
