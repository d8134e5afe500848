package deferent.reading.tether;

import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Origin;
import deferent.motion.trace.TimedBreak;
import deferent.motion.trace.Trace;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** A trace with one side's courses put in the place of its own. */
final class Replaced {
    private Replaced() {}

    static Trace in(
            Trace trace,
            Origin origin,
            Side side,
            Course hand,
            Course head,
            List<TimedBreak> breaks,
            List<Interval> slack,
            List<Interval> gaps) {
        Map<Side, Course> hands = new EnumMap<>(Side.class);
        Map<Side, Course> heads = new EnumMap<>(Side.class);
        Map<Side, List<Interval>> slacks = new EnumMap<>(Side.class);
        hands.put(side, hand);
        heads.put(side, head);
        slacks.put(side, slack);
        hands.put(side.other(), trace.hand(side.other()));
        heads.put(side.other(), trace.head(side.other()));
        slacks.put(side.other(), trace.slack(side.other()));
        return new Trace(
                trace.pairing(),
                origin,
                trace.interval(),
                trace.periodic(),
                hands,
                heads,
                breaks.stream()
                        .sorted(
                                Comparator.comparingDouble(TimedBreak::time)
                                        .thenComparing(TimedBreak::side))
                        .toList(),
                slacks,
                gaps.stream().sorted(Comparator.comparingDouble(Interval::start)).toList(),
                trace.uncertainty());
    }
}
