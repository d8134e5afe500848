package deferent.search.crossing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Side;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class ShelfTableTest {
    private static final int COUNT = 90;

    /**
     * Every sampled state of one pairing beside every one of the other, by the plain definition.
     */
    private static List<boolean[]> windows(State[][] a, State[][] b, CrossingRequest request) {
        boolean[] meets = new boolean[COUNT * COUNT];
        for (int i = 0; i < COUNT; i++) {
            for (int j = 0; j < COUNT; j++) {
                boolean all = true;
                for (int p = 0; p < 4 && all; p++) {
                    Vector3D place = a[i][p].position().subtract(b[j][p].position());
                    Vector3D speed = a[i][p].velocity().subtract(b[j][p].velocity());
                    all = place.getNorm() <= request.place() && speed.getNorm() <= request.speed();
                }
                meets[i * COUNT + j] = all;
            }
        }
        return connected(meets);
    }

    private static State[][] sampled(Pairing pairing) {
        Trace trace = Trace.of(pairing);
        State[][] out = new State[COUNT][];
        for (int i = 0; i < COUNT; i++) {
            double t = trace.period() * i / COUNT;
            out[i] =
                    new State[] {
                        trace.hand(Side.LEFT).at(t),
                        trace.hand(Side.RIGHT).at(t),
                        trace.head(Side.LEFT).at(t),
                        trace.head(Side.RIGHT).at(t)
                    };
        }
        return out;
    }

    // A narrow window that slants over the torus falls between samples here and there, so states up
    // to three samples apart belong to one.
    private static List<boolean[]> connected(boolean[] meets) {
        List<boolean[]> windows = new ArrayList<>();
        boolean[] seen = new boolean[meets.length];
        for (int start = 0; start < meets.length; start++) {
            if (!meets[start] || seen[start]) {
                continue;
            }
            boolean[] window = new boolean[meets.length];
            Deque<Integer> open = new ArrayDeque<>(List.of(start));
            seen[start] = true;
            while (!open.isEmpty()) {
                int at = open.remove();
                window[at] = true;
                for (int k = 0; k < 49; k++) {
                    int i = Math.floorMod(at / COUNT + k / 7 - 3, COUNT);
                    int j = Math.floorMod(at % COUNT + k % 7 - 3, COUNT);
                    int next = i * COUNT + j;
                    if (meets[next] && !seen[next]) {
                        seen[next] = true;
                        open.add(next);
                    }
                }
            }
            windows.add(window);
        }
        return windows;
    }

    private static boolean liesIn(boolean[] window, double a, double b) {
        int i = (int) Math.rint(a * COUNT);
        int j = (int) Math.rint(b * COUNT);
        for (int k = 0; k < 25; k++) {
            int at =
                    Math.floorMod(i + k / 5 - 2, COUNT) * COUNT
                            + Math.floorMod(j + k % 5 - 2, COUNT);
            if (window[at]) {
                return true;
            }
        }
        return false;
    }

    private static int recalled(CrossingRequest request, long seed) {
        List<Pairing> shelf = AnyShelf.of(24, seed);
        ShelfTable table = new ShelfTable(shelf, request);
        assertThat(table.run()).isTrue();
        List<State[][]> states = shelf.stream().map(ShelfTableTest::sampled).toList();
        int all = 0;
        for (int i = 0; i < shelf.size(); i++) {
            for (int j = i + 1; j < shelf.size(); j++) {
                for (boolean[] window : windows(states.get(i), states.get(j), request)) {
                    all++;
                    boolean told = false;
                    for (int w = 0; w < table.crossings().count() && !told; w++) {
                        ShelfCrossing crossing = table.crossings().get(w);
                        told =
                                crossing.from() == i
                                        && crossing.to() == j
                                        && liesIn(
                                                window,
                                                crossing.fromTime() / shelf.get(i).period(),
                                                crossing.toTime() / shelf.get(j).period());
                    }
                    assertThat(told).as("patterns %d and %d", i, j).isTrue();
                }
            }
        }
        return all;
    }

    // Brute force over sampled states, by the definition: each window of states within tolerance
    // must hold a crossing of the table. All of them do.
    @Test
    void noWindowOfStatesWithinToleranceIsMissed() {
        int windows = 0;
        for (int seed = 0; seed < 4; seed++) {
            windows += recalled(CrossingRequest.USUAL, seed);
            windows += recalled(CrossingRequest.USUAL.withTolerance(0.25, 4), seed);
            windows += recalled(CrossingRequest.USUAL.withTolerance(0.15, 10), seed);
        }
        assertThat(windows).isGreaterThan(100);
    }

    @Test
    void everyCrossingOfAShelfIsWithinToleranceAndSaysWhatItSaysByItself() {
        CrossingRequest request = CrossingRequest.USUAL.withTolerance(0.15, 3);
        ShelfTable table = new ShelfTable(AnyShelf.of(24, 5), request);
        table.run();
        assertThat(table.crossings().count()).isPositive();
        for (int w = 0; w < table.crossings().count(); w++) {
            ShelfCrossing crossing = table.crossings().get(w);
            assertThat(crossing.placeGap()).isLessThanOrEqualTo(request.place() + 1e-9);
            assertThat(crossing.speedGap()).isLessThanOrEqualTo(request.speed() + 1e-9);
            Crossing whole = table.crossing(crossing);
            assertThat(whole.roughness().weights()).isCloseTo(crossing.roughness(), within(1e-9));
        }
    }

    @Test
    void aTableIsTheSameInSlicesAndCanBeStoppedAndGoOn() {
        List<Pairing> shelf = AnyShelf.of(20, 4);
        CrossingRequest request = CrossingRequest.USUAL.withTolerance(0.2, 3);
        ShelfTable whole = new ShelfTable(shelf, request);
        whole.run();
        ShelfCrossings slices = new ShelfCrossings();
        slices.addAll(new ShelfTable(shelf, request).slice(0, 7));
        slices.addAll(new ShelfTable(shelf, request).slice(7, 20));
        assertThat(slices.keys()).isEqualTo(whole.crossings().keys());
        assertThat(slices.numbers()).isEqualTo(whole.crossings().numbers());
        ShelfTable stopped = new ShelfTable(shelf, request);
        AtomicInteger asked = new AtomicInteger();
        assertThat(stopped.run(p -> {}, () -> asked.incrementAndGet() > 1)).isFalse();
        assertThat(stopped.crossings().count()).isLessThan(whole.crossings().count());
        List<TableProgress> heard = new ArrayList<>();
        assertThat(stopped.run(heard::add, () -> false)).isTrue();
        assertThat(stopped.crossings().numbers()).isEqualTo(whole.crossings().numbers());
        assertThat(heard.get(heard.size() - 1).done()).isEqualTo(20 * 19 / 2);
        assertThat(ShelfCrossings.of(slices.keys(), slices.numbers()).get(0))
                .isEqualTo(slices.get(0));
    }
}
