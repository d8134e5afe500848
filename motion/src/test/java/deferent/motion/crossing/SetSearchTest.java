package deferent.motion.crossing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.crossing.FlowingSet.Outcome;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

class SetSearchTest {
    private static List<List<Way>> ways(int patterns, double share, Random random) {
        List<List<Way>> out = new ArrayList<>();
        for (int i = 0; i < patterns; i++) {
            List<Way> mine = new ArrayList<>();
            for (int j = 0; j < patterns; j++) {
                if (i != j && random.nextDouble() < share) {
                    mine.add(new Way(i, j, 0, 0, 0, 0, random.nextDouble()));
                }
            }
            out.add(mine);
        }
        return out;
    }

    private static FlowingSet found(List<List<Way>> out, int length, long budget) {
        return new SetSearch(0, length, budget, () -> false, new double[out.size()], out).run();
    }

    private static double cheapest(
            List<List<Way>> out, int at, int left, boolean[] used, double spent) {
        double best = Double.POSITIVE_INFINITY;
        for (Way way : out.get(at)) {
            if (left == 1 && way.to() == 0) {
                best = Math.min(best, spent + way.roughness());
            } else if (left > 1 && way.to() != 0 && !used[way.to()]) {
                used[way.to()] = true;
                best =
                        Math.min(
                                best,
                                cheapest(out, way.to(), left - 1, used, spent + way.roughness()));
                used[way.to()] = false;
            }
        }
        return best;
    }

    @RepeatedTest(30)
    void theSetIsTheGentlestOfAllOrThereIsNone(RepetitionInfo info) {
        Random random = new Random(info.getCurrentRepetition());
        List<List<Way>> out = ways(9, 0.15 + 0.02 * info.getCurrentRepetition(), random);
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
        List<List<Way>> out = ways(60, 0.5, new Random(3));
        FlowingSet set = found(out, 8, 3);
        assertThat(set.outcome()).isEqualTo(Outcome.UNKNOWN);
        assertThat(found(out, 8, 9).outcome()).isIn(Outcome.FOUND, Outcome.BEST);
    }
}
