package deferent.film.hand;

import deferent.film.light.LitSpot;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One spot followed through a film, large and going evenly: of all ways through the frames the one
 * that jumps least and sees most (Viterbi, IEEE Transactions on Information Theory 13 (1967), from
 * memory).
 */
final class SwingingSpot {
    private static final double SMALL = 4; // most that a small spot costs
    private static final double LARGER = 1; // a spot e times as large counts as so much nearer
    private static final double STEP = 0.04; // of the picture, that costs as much as a unit
    private static final double FARTHEST = 12;
    private static final int MOST = 6; // spots of a frame that are looked at

    private SwingingSpot() {}

    /** Its spot in each frame, null where it is not seen. */
    static List<@Nullable LitSpot> of(List<List<LitSpot>> frames) {
        double step = Math.max(1, STEP * size(frames));
        double largest =
                frames.stream().flatMap(List::stream).mapToDouble(LitSpot::glow).max().orElse(1);
        List<int[]> came = new ArrayList<>();
        double[] costs = {0};
        List<LitSpot> last = List.of();
        for (List<LitSpot> all : frames) {
            List<LitSpot> spots = all.subList(0, Math.min(MOST, all.size()));
            if (spots.isEmpty()) {
                came.add(null);
                continue;
            }
            double[] next = new double[spots.size()];
            int[] from = new int[spots.size()];
            for (int i = 0; i < next.length; i++) {
                LitSpot spot = spots.get(i);
                double own = LARGER * Math.log(largest / Math.max(1, spot.glow()));
                next[i] = Double.POSITIVE_INFINITY;
                for (int k = 0; k < costs.length; k++) {
                    double far =
                            last.isEmpty()
                                    ? 0
                                    : Math.hypot(
                                                    spot.x() - last.get(k).x(),
                                                    spot.y() - last.get(k).y())
                                            / step;
                    double cost = costs[k] + Math.min(far * far, FARTHEST) + Math.min(own, SMALL);
                    if (cost < next[i]) {
                        next[i] = cost;
                        from[i] = k;
                    }
                }
            }
            came.add(from);
            costs = next;
            last = spots;
        }
        int at = 0;
        for (int k = 1; k < costs.length; k++) {
            at = costs[k] < costs[at] ? k : at;
        }
        @Nullable LitSpot[] way = new LitSpot[frames.size()];
        for (int i = frames.size() - 1; i >= 0; i--) {
            int[] from = came.get(i);
            if (from != null) {
                way[i] = frames.get(i).get(at);
                at = from[at];
            }
        }
        return Collections.unmodifiableList(Arrays.asList(way));
    }

    private static double size(List<List<LitSpot>> frames) {
        double[] xs =
                frames.stream().flatMap(List::stream).mapToDouble(LitSpot::x).sorted().toArray();
        return xs.length == 0 ? 0 : xs[xs.length - 1 - xs.length / 50] - xs[xs.length / 50];
    }
}
