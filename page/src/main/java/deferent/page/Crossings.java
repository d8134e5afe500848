package deferent.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Where a line passes before another, or before itself, as somebody sees it. At such a place the
 * farther line gives way and is interrupted, as in drawings of knots, so that which is nearer is
 * read without colour. Lines of one depth only cross, and nothing is interrupted.
 *
 * <p>Segments are found through a grid of cells about as large as they are, so that long lines cost
 * as much as they are long. The stage does the same in {@code crossings.js}, for its camera stands
 * elsewhere at every frame; a test holds the two together.
 */
final class Crossings {
    /** What is nearer by no more than this counts as equally near, metres. */
    static final double LEVEL = 0.01;

    /**
     * Sine of the least angle under which two lines cross: below it they run along each other, and
     * a gap would be a stretch.
     */
    static final double ALONG = 0.2;

    private static final double CELL = 6;

    /**
     * A line as seen.
     *
     * @param x of its points, pixels
     * @param y the same
     * @param near to the onlooker, metres
     */
    record Lane(double[] x, double[] y, double[] near) {}

    /**
     * A place at which a lane gives way.
     *
     * @param lane which
     * @param at points from its start, with a fraction
     * @param over the lane that passes before it
     * @param sine of the angle between them
     */
    record Cut(int lane, double at, int over, double sine) {}

    private final List<Lane> lanes;
    private final List<Cut> cuts = new ArrayList<>();
    private final int[] lane;
    private final int[] point;
    private final double left;
    private final double top;
    private final double cell;
    private final int across;

    private Crossings(List<Lane> lanes) {
        this.lanes = lanes;
        int all = lanes.stream().mapToInt(one -> Math.max(0, one.x().length - 1)).sum();
        lane = new int[all];
        point = new int[all];
        double[] box = {1e9, 1e9, -1e9, -1e9};
        double length = 0;
        int segment = 0;
        for (int l = 0; l < lanes.size(); l++) {
            Lane one = lanes.get(l);
            for (int i = 0; i + 1 < one.x().length; i++) {
                lane[segment] = l;
                point[segment++] = i;
                length += Math.hypot(one.x()[i + 1] - one.x()[i], one.y()[i + 1] - one.y()[i]);
            }
            for (int i = 0; i < one.x().length; i++) {
                box[0] = Math.min(box[0], one.x()[i]);
                box[1] = Math.min(box[1], one.y()[i]);
                box[2] = Math.max(box[2], one.x()[i]);
                box[3] = Math.max(box[3], one.y()[i]);
            }
        }
        left = box[0];
        top = box[1];
        cell = Math.max(CELL, 2 * length / Math.max(1, all));
        across = (int) Math.max(1, Math.ceil((box[2] - left) / cell) + 1);
        int up = (int) Math.max(1, Math.ceil((box[3] - top) / cell) + 1);
        if (all > 1) {
            find(across * up);
        }
    }

    /** The places at which lanes give way to what passes before them. */
    static List<Cut> of(List<Lane> lanes) {
        return List.copyOf(new Crossings(lanes).cuts);
    }

    private int column(double x) {
        return (int) ((x - left) / cell);
    }

    private int row(double y) {
        return (int) ((y - top) / cell);
    }

    // Whoever enters a cell meets those who entered it before.
    private void find(int cells) {
        int[] latest = new int[cells];
        Arrays.fill(latest, -1);
        int room = 4 * lane.length;
        int[] entered = new int[room];
        int[] before = new int[room];
        int entries = 0;
        for (int s = 0; s < lane.length; s++) {
            Lane one = lanes.get(lane[s]);
            int i = point[s];
            int c0 = column(Math.min(one.x()[i], one.x()[i + 1]));
            int c1 = column(Math.max(one.x()[i], one.x()[i + 1]));
            int r0 = row(Math.min(one.y()[i], one.y()[i + 1]));
            int r1 = row(Math.max(one.y()[i], one.y()[i + 1]));
            for (int r = r0; r <= r1; r++) {
                for (int c = c0; c <= c1; c++) {
                    int at = r * across + c;
                    for (int e = latest[at]; e >= 0; e = before[e]) {
                        meet(entered[e], s, c, r);
                    }
                    if (entries == entered.length) {
                        entered = Arrays.copyOf(entered, 2 * entries);
                        before = Arrays.copyOf(before, 2 * entries);
                    }
                    entered[entries] = s;
                    before[entries] = latest[at];
                    latest[at] = entries++;
                }
            }
        }
    }

    // Two that share several cells meet in the one in which they cross.
    private void meet(int s, int t, int c, int r) {
        Lane a = lanes.get(lane[s]);
        Lane b = lanes.get(lane[t]);
        int i = point[s];
        int j = point[t];
        if (lane[s] == lane[t] && j - i < 2) {
            return;
        }
        double ax = a.x()[i + 1] - a.x()[i];
        double ay = a.y()[i + 1] - a.y()[i];
        double bx = b.x()[j + 1] - b.x()[j];
        double by = b.y()[j + 1] - b.y()[j];
        double cross = ax * by - ay * bx;
        double sine = Math.abs(cross) / Math.max(1e-12, Math.hypot(ax, ay) * Math.hypot(bx, by));
        if (sine < ALONG) {
            return;
        }
        double ox = b.x()[j] - a.x()[i];
        double oy = b.y()[j] - a.y()[i];
        double p = (ox * by - oy * bx) / cross;
        double q = (ox * ay - oy * ax) / cross;
        if (p < 0 || p >= 1 || q < 0 || q >= 1) {
            return;
        }
        if (column(a.x()[i] + p * ax) != c || row(a.y()[i] + p * ay) != r) {
            return;
        }
        double nearer =
                a.near()[i]
                        + p * (a.near()[i + 1] - a.near()[i])
                        - b.near()[j]
                        - q * (b.near()[j + 1] - b.near()[j]);
        if (nearer < -LEVEL) {
            cuts.add(new Cut(lane[s], i + p, lane[t], sine));
        } else if (nearer > LEVEL) {
            cuts.add(new Cut(lane[t], j + q, lane[s], sine));
        }
    }
}
