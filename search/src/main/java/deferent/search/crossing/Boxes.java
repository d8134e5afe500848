package deferent.search.crossing;

import java.util.Arrays;

/**
 * A pairing's samples in a binary tree of boxes, each box holding a stretch of the cycle, so that
 * two pairings' stretches that are nowhere near each other are put aside in one comparison.
 *
 * <p>The boxes stand in a space of features: numbers made of a state such that two states within
 * tolerance differ by at most 1 in each, whatever the freedoms do. With no freedom these are the
 * places and velocities in their tolerances; where one pairing may be shifted, the ways between its
 * points; where it may be turned, lengths and speeds alone. So nothing within tolerance is ever put
 * aside. (Dual-tree search: Gray and Moore, 2000.)
 */
final class Boxes {
    private static final int LEAF = 4;

    private final States states;
    private final int features;
    private final int leaves;
    private final double[] low;
    private final double[] high;
    private final double stride;

    private Boxes(States states, Gauge gauge) {
        this.states = states;
        int count = states.count();
        double[][] all = new double[count][];
        for (int i = 0; i < count; i++) {
            all[i] = features(states.samples(), State24.SIZE * i, gauge);
        }
        features = all[0].length;
        int n = 1;
        while (n * LEAF < count) {
            n *= 2;
        }
        leaves = n;
        low = new double[2 * n * features];
        high = new double[2 * n * features];
        for (int node = 2 * n - 1; node >= 1; node--) {
            for (int f = 0; f < features; f++) {
                double lo = Double.POSITIVE_INFINITY;
                double hi = Double.NEGATIVE_INFINITY;
                if (node >= n) {
                    for (int i = start(node); i < end(node); i++) {
                        lo = Math.min(lo, all[i][f]);
                        hi = Math.max(hi, all[i][f]);
                    }
                } else {
                    lo = Math.min(low[2 * node * features + f], low[(2 * node + 1) * features + f]);
                    hi =
                            Math.max(
                                    high[2 * node * features + f],
                                    high[(2 * node + 1) * features + f]);
                }
                low[node * features + f] = lo;
                high[node * features + f] = hi;
            }
        }
        stride = stride(states, gauge);
    }

    static Boxes of(States states, Gauge gauge) {
        return new Boxes(states, gauge);
    }

    private int start(int node) {
        return Math.min((node - leaves) * LEAF, states.count());
    }

    private int end(int node) {
        return Math.min((node - leaves + 1) * LEAF, states.count());
    }

    private static double[] features(double[] s, int at, Gauge gauge) {
        CrossingRequest request = gauge.request();
        double place = request.place();
        double speed = request.speed();
        double[] out = new double[64];
        int n = 0;
        boolean speeds = Double.isFinite(speed) && gauge.tempoMost() <= 1;
        for (int p = 0; p < State24.POINTS; p++) {
            if (!request.compares(p)) {
                continue;
            }
            int x = at + 3 * p;
            int dx = x + State24.VELOCITY;
            if (!gauge.turns()) {
                double margin = place + request.freedom().shift();
                for (int k = 0; k < 3; k++) {
                    out[n++] = s[x + k] / margin;
                }
            }
            if (speeds) {
                if (gauge.turns()) {
                    out[n++] = length(s[dx], s[dx + 1], s[dx + 2]) / speed;
                } else {
                    for (int k = 0; k < 3; k++) {
                        out[n++] = s[dx + k] / speed;
                    }
                }
            }
            if (!gauge.turnsOrShifts()) {
                continue;
            }
            for (int q = 0; q < p; q++) {
                if (request.compares(q)) {
                    int y = at + 3 * q;
                    double a = s[x] - s[y];
                    double b = s[x + 1] - s[y + 1];
                    double c = s[x + 2] - s[y + 2];
                    if (gauge.turns()) {
                        out[n++] = length(a, b, c) / (2 * place);
                    } else {
                        out[n++] = a / (2 * place);
                        out[n++] = b / (2 * place);
                        out[n++] = c / (2 * place);
                    }
                }
            }
        }
        return Arrays.copyOf(out, n);
    }

    private static double length(double x, double y, double z) {
        return Math.sqrt(x * x + y * y + z * z);
    }

    // How far, in tolerances, a state gets away from the nearest sample on its side of a jump: half
    // the longest step, or the whole of it where there are jumps.
    private static double stride(States states, Gauge gauge) {
        CrossingRequest request = gauge.request();
        double most = 0;
        double[] s = states.samples();
        double[] rates = states.accelerations();
        double speed = request.speed() / gauge.tempoMost();
        for (int i = 0; i < states.count(); i++) {
            for (int p = 0; p < State24.POINTS; p++) {
                if (request.compares(p)) {
                    int v = State24.SIZE * i + State24.VELOCITY + 3 * p;
                    int a = State24.VELOCITY * i + 3 * p;
                    most = Math.max(most, length(s[v], s[v + 1], s[v + 2]) / request.place());
                    most = Math.max(most, length(rates[a], rates[a + 1], rates[a + 2]) / speed);
                }
            }
        }
        boolean jumps = states.trace().breaks().stream().anyMatch(b -> b.order() <= 1);
        // The rates are the samples' own; between samples they may be a little greater.
        return 1.05 * most * states.step() * (jumps ? 1 : 0.5);
    }

    /** A pair of samples that may be within tolerance. */
    interface Pairs {
        void near(int i, int j);
    }

    /** How far beyond tolerance two nearest samples of states within tolerance may be. */
    double slack(Boxes other) {
        return stride + other.stride;
    }

    /** Tells every pair of samples whose features differ by at most {@code within}. */
    void join(Boxes other, double within, Pairs pairs) {
        join(1, other, 1, within, pairs);
    }

    private void join(int node, Boxes other, int its, double within, Pairs pairs) {
        if (apart(node, other, its, within)) {
            return;
        }
        boolean leaf = node >= leaves;
        boolean itsLeaf = its >= other.leaves;
        if (leaf && itsLeaf) {
            for (int i = start(node); i < end(node); i++) {
                for (int j = other.start(its); j < other.end(its); j++) {
                    pairs.near(i, j);
                }
            }
        } else if (!leaf && (itsLeaf || node <= its)) {
            join(2 * node, other, its, within, pairs);
            join(2 * node + 1, other, its, within, pairs);
        } else {
            join(node, other, 2 * its, within, pairs);
            join(node, other, 2 * its + 1, within, pairs);
        }
    }

    private boolean apart(int node, Boxes other, int its, double within) {
        int x = node * features;
        int y = its * features;
        for (int f = 0; f < features; f++) {
            if (low[x + f] - other.high[y + f] > within
                    || other.low[y + f] - high[x + f] > within) {
                return true;
            }
        }
        return false;
    }
}
