package deferent.reading.body;

import deferent.motion.trace.Interval;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoublePredicate;
import java.util.function.IntPredicate;

/**
 * The spells of a trace in which something holds: found on the samples, their ends halved down on
 * the exact trace. A spell shorter than the samples' step may be missed.
 */
final class Spells {
    private static final int HALVINGS = 30;

    private Spells() {}

    /**
     * By start. A spell that runs over a periodic trace's end is one, and its end lies beyond the
     * period; one that never stops is the whole interval.
     */
    static List<Interval> of(
            Trace trace, Samples samples, IntPredicate sampled, DoublePredicate exact) {
        int count = samples.count();
        double step = samples.time(1) - samples.time(0);
        int first = 0;
        while (trace.periodic() && first < count && sampled.test(first)) {
            first++;
        }
        if (first == count) {
            return List.of(trace.interval());
        }
        List<Interval> found = new ArrayList<>();
        double from = Double.NaN;
        for (int i = first; i <= first + count; i++) {
            double time = samples.time(0) + i * step;
            boolean holds =
                    trace.periodic() ? sampled.test(i % count) : i < count && sampled.test(i);
            if (holds && Double.isNaN(from)) {
                from = i == 0 ? time : edge(exact, time - step, time);
            } else if (!holds && !Double.isNaN(from)) {
                double to =
                        i == count && !trace.periodic()
                                ? trace.interval().end()
                                : edge(exact, time, time - step);
                double start = Nearness.within(trace, from);
                double length = Math.min(to, from + trace.period()) - from;
                found.add(new Interval(start, start + Math.max(length, 0)));
                from = Double.NaN;
            }
        }
        found.sort(Comparator.comparingDouble(Interval::start));
        return List.copyOf(found);
    }

    private static double edge(DoublePredicate exact, double without, double with) {
        double a = without;
        double b = with;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (a + b) / 2;
            if (exact.test(middle)) {
                b = middle;
            } else {
                a = middle;
            }
        }
        return b;
    }
}
