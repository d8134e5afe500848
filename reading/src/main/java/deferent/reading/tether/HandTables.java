package deferent.reading.tether;

import deferent.motion.trace.Course;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * One hand's {@link HandTable}s by their number of steps, each made when first asked for. At other
 * tempos they are the same tables with another measure of time: a hand path is a function of phase.
 */
final class HandTables {
    private interface Made {
        HandTable of(int steps);
    }

    private static final int FEW = 32;

    private final Made made;
    private final Map<Integer, HandTable> bySteps = new ConcurrentHashMap<>();

    private HandTables(Made made) {
        this.made = made;
    }

    /**
     * @param cuts start, the breaks between, end; read, not written
     */
    static HandTables of(Course hand, double[] cuts) {
        return new HandTables(steps -> HandTable.of(hand, cuts, steps));
    }

    /** Of the same hand path, all times {@code slower} times as long. */
    HandTables slowed(double slower, Course slowed) {
        return new HandTables(steps -> of(steps).slowed(slower, slowed));
    }

    /** About that many steps over the whole. */
    HandTable of(int steps) {
        return bySteps.computeIfAbsent(steps, made::of);
    }

    /** About the greatest acceleration of the hand, m/s². */
    double quickest() {
        double[] ends = of(FEW).ends();
        double most = 0;
        for (int i = 0; i < ends.length; i += 6) {
            most = Math.max(most, Math.hypot(Math.hypot(ends[i + 3], ends[i + 4]), ends[i + 5]));
        }
        return most;
    }
}
