package deferent.search.seek;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Nothing that links is missed: every head path against every hand path, point by point. */
class RecallTest {
    @Test
    void theIndexFindsEveryLinkThatComparingAllWithAllFinds() {
        for (double tolerance : new double[] {0.02, 0.12}) {
            Space space = Space.of(new Space.Grid(5, 2, 2, 2, 8, 1, true));
            Seek seek = new Seek(SeekRequest.of(space).withTolerance(tolerance * 0.6));
            seek.run();
            Answers answers = seek.answers();
            long[] keys = space.build(0, space.keys());
            double[][] hands = new double[space.paths()][];
            long[] rider = new long[space.paths()];
            for (int p = 0; p < hands.length; p++) {
                long[] riders = space.riders(p);
                if (riders.length > 0 && space.hand(p).size() > 0) {
                    hands[p] = Sampled.points(space.hand(p), Sampled.POINTS);
                    rider[p] = riders[0];
                }
            }
            List<String> wrong = new ArrayList<>();
            int[] links = new int[1];
            IntStream.range(0, keys.length)
                    .filter(i -> i % 20 == 0)
                    .forEach(
                            i -> {
                                SeriesCurve head = space.head(keys[i]);
                                if (head.size() < Look.POINT) {
                                    return;
                                }
                                double[] points = Sampled.points(head, Sampled.POINTS);
                                for (int p = 0; p < hands.length; p++) {
                                    if (hands[p] == null) {
                                        continue;
                                    }
                                    boolean told = answers.links(keys[i], rider[p]);
                                    double slow = Sampled.gap(points, hands[p]);
                                    // whole samples of lag leave some tenths
                                    boolean clear = slow <= tolerance || slow > tolerance + 0.4;
                                    if (slow <= tolerance) {
                                        links[0]++;
                                    }
                                    if (clear && told != slow <= tolerance) {
                                        wrong.add(keys[i] + " " + p + " " + slow);
                                    }
                                }
                            });
            assertThat(links[0]).isGreaterThan(10);
            assertThat(wrong).isEmpty();
            exhaustively(space, answers, keys, tolerance);
        }
    }

    /** The same with the exact gap, so that the edge of the tolerance counts too. */
    private static void exhaustively(Space space, Answers answers, long[] keys, double tolerance) {
        TreeSet<Long> wanted = new TreeSet<>();
        TreeSet<Long> found = new TreeSet<>();
        for (int p = 0; p < space.paths(); p++) {
            long[] riders = space.riders(p);
            SeriesCurve hand = space.hand(p);
            if (riders.length == 0 || hand.size() == 0) {
                continue;
            }
            for (long key : keys) {
                SeriesCurve head = space.head(key);
                if (head.size() >= Look.POINT
                        && Math.abs(head.size() - hand.size()) <= tolerance
                        && Alignment.gap(head, hand) <= tolerance) {
                    wanted.add(key << 32 | p);
                }
                if (answers.links(key, riders[0])) {
                    found.add(key << 32 | p);
                }
            }
        }
        assertThat(found).isEqualTo(wanted);
    }

    @Test
    void pairingsThatLinkBothWaysAreCountedOnce() {
        Space space = Space.of(new Space.Grid(2, 1, 2, 2, 8, 1, false));
        Seek seek = new Seek(SeekRequest.of(space).withTolerance(0));
        seek.run();
        Answers answers = seek.answers();
        long[] keys = space.build(0, space.keys());
        TreeSet<Long> unordered = new TreeSet<>();
        long ordered = 0;
        for (long carrier : keys) {
            for (long rider : keys) {
                if (answers.links(carrier, rider)) {
                    ordered++;
                    unordered.add(Math.min(carrier, rider) << 32 | Math.max(carrier, rider));
                }
            }
        }
        assertThat(answers.exactPairs()).isEqualTo(ordered);
        assertThat(answers.exactPairings()).isEqualTo(unordered.size()).isLessThan(ordered);
        TreeSet<Long> told = new TreeSet<>();
        int count = 0;
        for (Answer answer :
                new Seek(SeekRequest.of(space).withTolerance(0).withLimit(100_000, 100_000))
                        .found()
                        .list()) {
            for (long[] pair : answers.pairings(answer)) {
                count++;
                told.add(Math.min(pair[0], pair[1]) << 32 | Math.max(pair[0], pair[1]));
            }
        }
        assertThat(count).isEqualTo(unordered.size());
        assertThat(told).isEqualTo(unordered);
        assertThat(Arrays.stream(keys).distinct().count()).isEqualTo(keys.length);
    }
}
