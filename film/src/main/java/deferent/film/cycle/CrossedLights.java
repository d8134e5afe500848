package deferent.film.cycle;

import deferent.film.light.LitSpot;
import deferent.film.light.RollingShutter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.jspecify.annotations.Nullable;

/**
 * Where in the cycle two heads come so near each other that one might have gone on as the other,
 * and which of both ways their sights tell. Parabolas through what all cycles show just before and
 * just after a meeting say with what velocity each head came and went: a cord's head goes smoothly
 * through, two exchanged ones both turn sharply.
 */
final class CrossedLights {
    private static final int MOMENTS = 360;
    private static final double NEAR = 40; // pixels between two heads that may be exchanged
    private static final int MOST = 6; // meetings a cycle that are looked into
    private static final double WINDOW = 0.11; // of a cycle, on either side
    private static final int LEAST = 6; // sights on a side
    private static final double CLEAR = 2; // times as large one way's jump must be as the other's

    private final List<List<@Nullable LitSpot>> given;
    private final RollingShutter shutter;
    private final Drift drift;
    private final double period;

    private CrossedLights(
            List<List<@Nullable LitSpot>> given,
            Drift drift,
            double period,
            RollingShutter shutter) {
        this.given = given;
        this.drift = drift;
        this.period = period;
        this.shutter = shutter;
    }

    /**
     * What came of it.
     *
     * @param given the spots, some perhaps given the other way round
     * @param unsure shares of a cycle at which it is not clear which way is right
     */
    record Told(List<List<@Nullable LitSpot>> given, List<Double> unsure) {}

    static Told of(
            List<List<@Nullable LitSpot>> given,
            List<Wave> waves,
            Drift drift,
            double period,
            RollingShutter shutter) {
        CrossedLights crossings = new CrossedLights(given, drift, period, shutter);
        List<Double> exchanges = new ArrayList<>();
        List<Double> unsure = new ArrayList<>();
        for (double at : meetings(waves)) {
            double[] jumps = crossings.jumps(at);
            double least = Math.min(jumps[0], jumps[1]);
            if (Math.max(jumps[0], jumps[1]) < CLEAR * least) {
                unsure.add(at);
            } else if (jumps[1] < jumps[0]) {
                exchanges.add(at);
            }
        }
        if (exchanges.size() % 2 == 1) {
            // Heads that change places once a cycle would have no cycle.
            unsure.addAll(exchanges);
            exchanges.clear();
        }
        return new Told(
                exchanges.isEmpty() ? given : crossings.exchanged(exchanges), List.copyOf(unsure));
    }

    /** Shares of a cycle at which both mean cycles come nearest each other. */
    static List<Double> meetings(List<Wave> waves) {
        double[] apart = new double[MOMENTS];
        for (int i = 0; i < MOMENTS; i++) {
            double time = waves.get(0).period() * i / MOMENTS;
            double[] a = waves.get(0).at(time)[0];
            double[] b = waves.get(1).at(time)[0];
            apart[i] = Math.hypot(a[0] - b[0], a[1] - b[1]);
        }
        List<Double> at = new ArrayList<>();
        for (int i = 0; i < MOMENTS; i++) {
            double before = apart[(i + MOMENTS - 1) % MOMENTS];
            double after = apart[(i + 1) % MOMENTS];
            if (apart[i] < NEAR && apart[i] < before && apart[i] <= after && at.size() < MOST) {
                at.add((double) i / MOMENTS);
            }
        }
        return at;
    }

    // By how much both heads jump, pixels, if they go on as they are given, and if exchanged; alike
    // where too little is seen to tell.
    private double[] jumps(double share) {
        List<Optional<double[]>> sides = new ArrayList<>();
        for (int h = 0; h < 2; h++) {
            sides.add(state(h, share, -1));
            sides.add(state(h, share, 1));
        }
        if (sides.stream().anyMatch(Optional::isEmpty)) {
            return new double[] {0, 1};
        }
        double[][] s = sides.stream().map(Optional::get).toArray(double[][]::new);
        return new double[] {
            Math.hypot(jump(s[0], s[1]), jump(s[2], s[3])),
            Math.hypot(jump(s[0], s[3]), jump(s[2], s[1]))
        };
    }

    // Place and how far it goes in a window, before against after.
    private static double jump(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += (a[i] - b[i]) * (a[i] - b[i]);
        }
        return Math.sqrt(sum);
    }

    private Optional<double[]> state(int head, double share, int side) {
        List<double[]> near = new ArrayList<>();
        for (LitSpot spot : given.get(head)) {
            if (spot != null) {
                double time = shutter.time(spot);
                double off = (time + drift.at(time)) / period - share;
                double by = (off - Math.rint(off)) / WINDOW;
                if (by * side > 0 && Math.abs(by) < 1) {
                    near.add(new double[] {by, spot.x(), spot.y()});
                }
            }
        }
        if (near.size() < LEAST) {
            return Optional.empty();
        }
        double[][] rows = new double[near.size()][];
        double[] x = new double[near.size()];
        double[] y = new double[near.size()];
        for (int i = 0; i < rows.length; i++) {
            double by = near.get(i)[0];
            rows[i] = new double[] {1, by, by * by};
            x[i] = near.get(i)[1];
            y[i] = near.get(i)[2];
        }
        QRDecomposition parabola = new QRDecomposition(new Array2DRowRealMatrix(rows, false), 1e-6);
        if (!parabola.getSolver().isNonSingular()) {
            return Optional.empty();
        }
        double[] cx = parabola.getSolver().solve(new ArrayRealVector(x, false)).toArray();
        double[] cy = parabola.getSolver().solve(new ArrayRealVector(y, false)).toArray();
        return Optional.of(new double[] {cx[0], cy[0], cx[1], cy[1]});
    }

    private List<List<@Nullable LitSpot>> exchanged(List<Double> at) {
        List<@Nullable LitSpot> one = new ArrayList<>(given.get(0));
        List<@Nullable LitSpot> other = new ArrayList<>(given.get(1));
        for (int i = 0; i < one.size(); i++) {
            LitSpot a = one.get(i);
            LitSpot b = other.get(i);
            LitSpot seen = a != null ? a : b;
            if (seen == null) {
                continue;
            }
            double time = shutter.time(seen);
            double share = (time + drift.at(time)) / period;
            double part = share - Math.floor(share);
            if (at.stream().filter(m -> part >= m).count() % 2 == 1) {
                one.set(i, b);
                other.set(i, a);
            }
        }
        return Stream.of(one, other).toList();
    }
}
