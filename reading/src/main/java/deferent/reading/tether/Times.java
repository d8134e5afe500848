package deferent.reading.tether;

import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Lowest;
import deferent.motion.trace.TimedBreak;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * Times over a trace, piece by piece between one side's breaks, so that no sum, extreme or root is
 * taken across a jump. A piece's outermost times stand a hair inside it.
 */
final class Times {
    // Ten times as far as a trace takes a time for its break's own: nearer, rounding would decide
    // on which side of a jump a piece's last sample stands.
    private static final double INSET = 1e-10;

    /** So near the lowest sample, as a share of their range, another dip may be lower. */
    private static final double NEARLY = 0.01;

    private static final int MOST_DIPS = 8;

    /**
     * A dip is narrowed to some millionth of the gap between two samples: in the square of that
     * lies the error of a smooth dip's value.
     */
    private static final int REFINING = 28;

    private final double[] times;
    private final int[] starts;
    private final Interval over;

    private Times(double[] times, int[] starts, Interval over) {
        this.times = times;
        this.starts = starts;
        this.over = over;
    }

    /** About {@code count} times; breaks of order up to {@code order} part the pieces. */
    static Times of(Trace trace, Side side, int order, int count) {
        return of(trace.interval(), cuts(trace, side, order), count);
    }

    /** Start, the breaks between, end. */
    static double[] cuts(Trace trace, Side side, int order) {
        Interval over = trace.interval();
        TreeSet<Double> cuts = new TreeSet<>();
        double hair = 1e-9 * over.length();
        for (TimedBreak b : trace.breaks()) {
            if (b.side() == side
                    && b.order() <= order
                    && b.time() > over.start() + hair
                    && b.time() < over.end() - hair
                    && cuts.subSet(b.time() - hair, b.time() + hair).isEmpty()) {
                cuts.add(b.time());
            }
        }
        cuts.add(over.start());
        cuts.add(over.end());
        return cuts.stream().mapToDouble(Double::doubleValue).toArray();
    }

    static Times of(Interval over, double[] cuts, int count) {
        List<double[]> pieces = new ArrayList<>();
        int total = 0;
        int[] starts = new int[cuts.length];
        double inset = INSET * over.length();
        for (int p = 0; p + 1 < cuts.length; p++) {
            double length = cuts[p + 1] - cuts[p];
            int n = Math.max(4, (int) Math.ceil(count * length / over.length() - 1e-9));
            double[] piece = new double[n + 1];
            for (int i = 0; i <= n; i++) {
                piece[i] = cuts[p] + length * i / n;
            }
            piece[0] += inset;
            piece[n] -= inset;
            pieces.add(piece);
            starts[p] = total;
            total += n + 1;
        }
        starts[cuts.length - 1] = total;
        double[] times = new double[total];
        for (int p = 0; p < pieces.size(); p++) {
            System.arraycopy(pieces.get(p), 0, times, starts[p], pieces.get(p).length);
        }
        return new Times(times, starts, over);
    }

    int count() {
        return times.length;
    }

    double at(int i) {
        return times[i];
    }

    double[] of(DoubleUnaryOperator f) {
        double[] values = new double[times.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = f.applyAsDouble(times[i]);
        }
        return values;
    }

    /**
     * Integral over the whole, trapezia; spectrally exact where the trace is smooth and periodic.
     */
    double integral(double[] values) {
        double sum = 0;
        for (int p = 0; p + 1 < starts.length; p++) {
            for (int i = starts[p]; i + 1 < starts[p + 1]; i++) {
                sum += (values[i] + values[i + 1]) / 2 * (times[i + 1] - times[i]);
            }
        }
        return sum;
    }

    double mean(double[] values) {
        return integral(values) / over.length();
    }

    /**
     * Time of the least value of {@code f}, whose samples are {@code values}, refined: in the dip
     * of the lowest sample, and in those that may reach nearly as low.
     */
    double least(double[] values, DoubleUnaryOperator f) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        int lowest = 0;
        for (int i = 0; i < values.length; i++) {
            if (values[i] < low) {
                low = values[i];
                lowest = i;
            }
            high = Math.max(high, values[i]);
        }
        double nearly = low + NEARLY * (high - low);
        int first = lowest;
        IntStream others =
                dips(values)
                        .filter(i -> i != first && mayReach(i, values) <= nearly)
                        .boxed()
                        .sorted(Comparator.comparingDouble(i -> mayReach(i, values)))
                        .mapToInt(i -> i)
                        .limit(MOST_DIPS);
        double best = times[lowest];
        double value = Double.POSITIVE_INFINITY;
        for (int dip : IntStream.concat(IntStream.of(lowest), others).toArray()) {
            double time = refined(dip, values, f);
            double here = f.applyAsDouble(time);
            if (here < value) {
                best = time;
                value = here;
            }
        }
        return best;
    }

    /** The samples no neighbour of which in the same piece is lower. */
    IntStream dips(double[] values) {
        return IntStream.range(0, values.length).filter(i -> dips(i, values));
    }

    private boolean dips(int i, double[] values) {
        int piece = piece(i);
        return (i == starts[piece] || values[i] < values[i - 1])
                && (i == starts[piece + 1] - 1 || values[i] <= values[i + 1]);
    }

    /**
     * How low a narrow dip between sample {@code i} and its neighbours may reach, if it is no
     * steeper than the samples about it.
     */
    static double mayReach(int i, double[] values) {
        double steepest = 0;
        for (int j = Math.max(i - 2, 0); j < Math.min(i + 2, values.length - 1); j++) {
            steepest = Math.max(steepest, Math.abs(values[j + 1] - values[j]));
        }
        return values[i] - steepest;
    }

    /** As {@link #least}, for the dip about sample {@code i}. */
    double refined(int i, double[] values, DoubleUnaryOperator f) {
        if (i == 0 && starts.length == 2) {
            return refinedAcrossStart(values, f);
        }
        int piece = piece(i);
        double a = times[Math.max(i - 1, starts[piece])];
        double b = times[Math.min(i + 1, starts[piece + 1] - 1)];
        return golden(f, a, b, times[i], values[i]);
    }

    // A periodic piece's least value may stand at the seam, where start and end meet.
    private double refinedAcrossStart(double[] values, DoubleUnaryOperator f) {
        double left =
                golden(f, times[times.length - 2], times[times.length - 1], times[0], values[0]);
        return golden(f, times[0], times[1], left, f.applyAsDouble(left));
    }

    private static double golden(
            DoubleUnaryOperator f, double from, double to, double best, double valueThere) {
        Lowest found = Lowest.within(f, from, to, REFINING);
        return found.value() < valueThere ? found.at() : best;
    }

    /** Stretches in which {@code f}, whose samples are {@code values}, is below zero. */
    List<Interval> below(double[] values, DoubleUnaryOperator f) {
        List<Interval> found = new ArrayList<>();
        double from = Double.NaN;
        for (int i = 0; i < values.length; i++) {
            if (values[i] < 0 && Double.isNaN(from)) {
                from = isStart(i) ? times[i] : root(f, times[i - 1], times[i]);
            } else if (values[i] >= 0 && !Double.isNaN(from)) {
                double to = isStart(i) ? times[i - 1] : root(f, times[i - 1], times[i]);
                found.add(new Interval(from, Math.max(from, to)));
                from = Double.NaN;
            }
        }
        if (!Double.isNaN(from)) {
            found.add(new Interval(from, times[times.length - 1]));
        }
        return List.copyOf(found);
    }

    /** As {@link #below}, with those that may lie between two samples alone. */
    List<Interval> allBelow(double[] values, DoubleUnaryOperator f) {
        List<Interval> found = new ArrayList<>(below(values, f));
        for (int i : dips(values).toArray()) {
            if (values[i] >= 0 && mayReach(i, values) < 0) {
                double at = refined(i, values, f);
                if (f.applyAsDouble(at) < 0) {
                    found.add(dip(at, f));
                }
            }
        }
        return found;
    }

    /** The stretch about {@code at}, where {@code f} is below zero between two samples alone. */
    Interval dip(double at, DoubleUnaryOperator f) {
        double from = over.start();
        double to = over.end();
        for (double time : times) {
            if (time < at) {
                from = Math.max(from, time);
            } else if (time > at) {
                to = Math.min(to, time);
            }
        }
        return new Interval(root(f, from, at), root(f, at, to));
    }

    private boolean isStart(int i) {
        return starts[piece(i)] == i;
    }

    private int piece(int i) {
        int p = 0;
        while (starts[p + 1] <= i) {
            p++;
        }
        return p;
    }

    private static double root(DoubleUnaryOperator f, double from, double to) {
        double a = from;
        double b = to;
        boolean below = f.applyAsDouble(a) < 0;
        for (int i = 0; i < 40 && b - a > 1e-12 * (1 + Math.abs(a)); i++) {
            double middle = (a + b) / 2;
            if (f.applyAsDouble(middle) < 0 == below) {
                a = middle;
            } else {
                b = middle;
            }
        }
        return (a + b) / 2;
    }
}
