package deferent.reading.body;

import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Lowest;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * The least value of a distance over a trace, and when: every low point of the samples that could
 * still beat the best is narrowed by golden section on the exact distance.
 *
 * @param distance metres; below zero where the one is inside the other
 * @param time seconds, the first of several
 */
public record Nearness(double distance, double time) {
    public Nearness {
        Refusal.numbers("a distance", distance, time);
    }

    private static final int STEPS = 26;
    // A low point that could win less than this is not narrowed, metres.
    private static final double WORTHWHILE = 1e-6;
    // Of so many samples one low point is narrowed: of 720 at most 48, of more as many more.
    private static final int SAMPLES_A_LOW = 15;

    /**
     * @param sampled the distance at each sample's time
     * @param exact the distance at any time of the trace
     */
    static Nearness of(Trace trace, Samples samples, double[] sampled, DoubleUnaryOperator exact) {
        int count = sampled.length;
        boolean round = trace.periodic();
        double stride = 0;
        List<Integer> lows = new ArrayList<>();
        int least = 0;
        for (int i = 0; i < count; i++) {
            double here = sampled[i];
            double before = sampled[i > 0 ? i - 1 : round ? count - 1 : 0];
            double after = sampled[i + 1 < count ? i + 1 : round ? 0 : count - 1];
            stride = Math.max(stride, Math.abs(after - here));
            if (here < before && here <= after) {
                lows.add(i);
            }
            if (here < sampled[least]) {
                least = i;
            }
        }
        if (!lows.contains(least)) {
            lows.add(least);
        }
        lows.sort(Comparator.comparingDouble((Integer i) -> sampled[i]).thenComparing(i -> i));
        Nearness best = new Nearness(sampled[least], samples.time(least));
        double step = samples.time(1) - samples.time(0);
        for (int i : lows.subList(0, Math.min(count / SAMPLES_A_LOW, lows.size()))) {
            if (sampled[i] - stride > best.distance() - WORTHWHILE) {
                break;
            }
            double from = samples.time(i) - step;
            double to = samples.time(i) + step;
            if (!round) {
                from = Math.max(from, trace.interval().start());
                to = Math.min(to, trace.interval().end());
            }
            Lowest narrowed = Lowest.within(exact, from, to, STEPS);
            Nearness low = new Nearness(narrowed.value(), narrowed.at());
            if (low.distance() < best.distance() - 1e-12) {
                best = low;
            }
        }
        return new Nearness(best.distance(), within(trace, best.time()));
    }

    /** A time brought into the trace's interval by whole periods, where it is periodic. */
    static double within(Trace trace, double time) {
        if (!trace.periodic()) {
            return time;
        }
        double start = trace.interval().start();
        double since = time - start;
        since -= trace.period() * Math.floor(since / trace.period());
        return start + (since >= trace.period() ? 0 : since);
    }
}
