package deferent.search.crossing;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;

/**
 * Finds where two pairings' states meet.
 *
 * <ol>
 *   <li>All pairs of samples that may be within tolerance, from the trees of {@link Boxes}.
 *   <li>Those lower than their eight neighbours on the torus, from each of which the distance is
 *       gone down in continuous time.
 *   <li>Every window, a connected set of samples within tolerance, that none of these came to rest
 *       in, is searched once more for its least greatest difference; so each pair of sampled states
 *       within tolerance lies in a window that is told.
 *   <li>Low points with no ridge between them, as where two pairings share a stretch, are one.
 * </ol>
 */
final class CrossingSearch {
    /** A ridge lower than this, in tolerances, does not part two crossings. */
    static final double RIDGE = 0.1;

    private static final int LINKED_ALL = 64;

    private final States from;
    private final States to;
    private final Gauge gauge;
    private final Landscape land;
    private final int rows;
    private final int columns;
    private double[] square = new double[0];
    private float[] worst = new float[0];

    private CrossingSearch(States from, States to, CrossingRequest request) {
        this.from = from;
        this.to = to;
        this.gauge = new Gauge(request, to);
        this.land = new Landscape(from, to, gauge, false);
        this.rows = from.count();
        this.columns = to.count();
    }

    static List<Meeting> of(States from, States to, CrossingRequest request) {
        Gauge gauge = new Gauge(request, to);
        return of(from, Boxes.of(from, gauge), to, Boxes.of(to, gauge), request);
    }

    /** As {@link #of}, with trees that serve many searches. */
    static List<Meeting> of(
            States from, Boxes fromBoxes, States to, Boxes toBoxes, CrossingRequest request) {
        CrossingSearch search = new CrossingSearch(from, to, request);
        if (!search.sweep(fromBoxes, toBoxes)) {
            return List.of();
        }
        return search.meetings();
    }

    /** Measures every pair that may be near; false when there is none. */
    private boolean sweep(Boxes mine, Boxes its) {
        double within = 1 + mine.slack(its);
        double[] a = from.samples();
        double[] b = to.samples();
        mine.join(
                its,
                within,
                (i, j) -> {
                    gauge.measure(a, State24.SIZE * i, b, State24.SIZE * j);
                    if (gauge.worst() <= within) {
                        if (square.length == 0) {
                            square = new double[rows * columns];
                            Arrays.fill(square, Double.POSITIVE_INFINITY);
                            worst = new float[rows * columns];
                            Arrays.fill(worst, Float.POSITIVE_INFINITY);
                        }
                        square[i * columns + j] = gauge.square();
                        worst[i * columns + j] = (float) gauge.worst();
                    }
                });
        return square.length > 0;
    }

    private List<Meeting> meetings() {
        List<double[]> found = new ArrayList<>();
        for (int i = 0; i < rows; i++) {
            for (int j = 0; j < columns; j++) {
                if (square[i * columns + j] < Double.POSITIVE_INFINITY && low(i, j)) {
                    double[] x = land.descend(at(i, j));
                    land.at(x);
                    if (gauge.worst() <= 1) {
                        found.add(x);
                    }
                }
            }
        }
        found.addAll(missed(found));
        return told(land, found);
    }

    private double[] at(int i, int j) {
        return new double[] {(double) i / rows, (double) j / columns};
    }

    private boolean low(int i, int j) {
        double here = square[i * columns + j];
        for (int di = -1; di <= 1; di++) {
            for (int dj = -1; dj <= 1; dj++) {
                if (square[beside(i, di, rows) * columns + beside(j, dj, columns)] < here) {
                    return false;
                }
            }
        }
        return true;
    }

    private static int beside(int i, int by, int count) {
        int k = i + by;
        return k < 0 ? k + count : k >= count ? k - count : k;
    }

    /** A low point in every window that none of {@code found} lies in or beside. */
    private List<double[]> missed(List<double[]> found) {
        boolean[] seen = new boolean[rows * columns];
        for (double[] x : found) {
            int i = Math.floorMod((int) Math.rint(x[0] * rows), rows);
            int j = Math.floorMod((int) Math.rint(x[1] * columns), columns);
            for (int di = -1; di <= 1; di++) {
                for (int dj = -1; dj <= 1; dj++) {
                    window(beside(i, di, rows) * columns + beside(j, dj, columns), seen);
                }
            }
        }
        List<double[]> more = new ArrayList<>();
        for (int at = 0; at < seen.length; at++) {
            int least = window(at, seen);
            if (least >= 0) {
                more.add(
                        land.descendWorst(
                                at(least / columns, least % columns),
                                1.0 / Math.max(rows, columns)));
            }
        }
        return more;
    }

    /** Marks the window about a sample; its least sample, or −1 where it is none or was seen. */
    private int window(int start, boolean[] seen) {
        if (seen[start] || !(worst[start] <= 1)) {
            return -1;
        }
        Deque<Integer> open = new ArrayDeque<>();
        open.add(start);
        seen[start] = true;
        int least = start;
        while (!open.isEmpty()) {
            int at = open.remove();
            if (worst[at] < worst[least]) {
                least = at;
            }
            for (int di = -1; di <= 1; di++) {
                for (int dj = -1; dj <= 1; dj++) {
                    int next =
                            beside(at / columns, di, rows) * columns
                                    + beside(at % columns, dj, columns);
                    if (!seen[next] && worst[next] <= 1) {
                        seen[next] = true;
                        open.add(next);
                    }
                }
            }
        }
        return least;
    }

    /** One meeting for each valley, lowest first in each, in order of the first's time. */
    static List<Meeting> told(Landscape land, List<double[]> points) {
        int n = points.size();
        double[] height = new double[n];
        for (int i = 0; i < n; i++) {
            height[i] = land.at(points.get(i));
        }
        int[] valley = new int[n];
        for (int i = 0; i < n; i++) {
            valley[i] = i;
        }
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                int p = root(valley, i);
                int q = root(valley, j);
                boolean asked = n <= LINKED_ALL || apart(points.get(i), points.get(j)) < 0.05;
                if (p != q && asked && land.sameValley(points.get(i), points.get(j), RIDGE)) {
                    if (height[p] <= height[q]) {
                        valley[q] = p;
                    } else {
                        valley[p] = q;
                    }
                }
            }
        }
        List<Meeting> meetings = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            if (root(valley, i) == i) {
                double[] x = points.get(i);
                land.exactly(x);
                double late = x.length == 3 ? x[2] - x[1] : 0;
                meetings.add(
                        new Meeting(
                                share(x[0]),
                                share(x[1]),
                                late - Math.rint(late),
                                land.gauge().worst()));
            }
        }
        meetings.sort(Comparator.comparingDouble(Meeting::a).thenComparingDouble(Meeting::b));
        return meetings;
    }

    private static int root(int[] valley, int i) {
        int at = i;
        while (valley[at] != at) {
            at = valley[at];
        }
        return at;
    }

    private static double apart(double[] x, double[] y) {
        double most = 0;
        for (int k = 0; k < x.length; k++) {
            double by = x[k] - y[k];
            most = Math.max(most, Math.abs(by - Math.rint(by)));
        }
        return most;
    }

    // In [0, 1); what rounding left a hair below a whole cycle is its start.
    private static double share(double cycles) {
        double s = cycles - Math.floor(cycles);
        return s > 1 - 1e-9 ? 0 : s;
    }

    /** Where the greatest difference is least, within tolerance or not. */
    static Meeting nearest(States from, States to, CrossingRequest request) {
        CrossingSearch search = new CrossingSearch(from, to, request);
        double least = Double.POSITIVE_INFINITY;
        double[] x = search.at(0, 0);
        for (int i = 0; i < search.rows; i++) {
            for (int j = 0; j < search.columns; j++) {
                search.gauge.measure(
                        from.samples(), State24.SIZE * i, to.samples(), State24.SIZE * j);
                if (search.gauge.worst() < least) {
                    least = search.gauge.worst();
                    x = search.at(i, j);
                }
            }
        }
        x = search.land.descendWorst(x, 1.0 / Math.max(search.rows, search.columns));
        search.land.exactly(x);
        return new Meeting(share(x[0]), share(x[1]), 0, search.gauge.worst());
    }

    /** The times, sample by sample, at which a hand may cross, and how far apart it then is. */
    static double[][] lows(States from, States to, CrossingRequest request) {
        CrossingSearch search = new CrossingSearch(from, to, request);
        Gauge gauge = search.gauge;
        double[][] byRow = new double[search.rows][];
        Arrays.fill(byRow, new double[0]);
        if (!search.sweep(Boxes.of(from, gauge), Boxes.of(to, gauge))) {
            return byRow;
        }
        for (int i = 0; i < search.rows; i++) {
            double[] row =
                    Arrays.copyOfRange(search.square, i * search.columns, (i + 1) * search.columns);
            List<Double> lows = new ArrayList<>();
            for (int j = 0; j < row.length; j++) {
                if (row[j] < Double.POSITIVE_INFINITY
                        && row[j] <= row[beside(j, -1, row.length)]
                        && row[j] < row[beside(j, 1, row.length)]) {
                    lows.add((double) j);
                }
            }
            // A hand whose distance does not depend on the time: any will do.
            if (lows.isEmpty() && row[0] < Double.POSITIVE_INFINITY) {
                lows.add(0.0);
            }
            byRow[i] = lows.stream().mapToDouble(Double::doubleValue).toArray();
        }
        return byRow;
    }
}
