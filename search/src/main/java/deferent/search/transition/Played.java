package deferent.search.transition;

import deferent.motion.pairing.Jet;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.SmoothStep;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Heading;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Origin;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.jspecify.annotations.Nullable;

/**
 * Patterns and the transitions between them, one after the other, as one trace on cords: the heads
 * draw the patterns' figures and the passages between, and each hand goes where a hand must go to
 * give its head that path.
 *
 * @param trace from time 0, corded, not periodic; it bears the first pattern's pairing
 * @param entered when each pattern stands with both hands, seconds; the first at 0
 * @param left when each pattern is left by the first hand, seconds; the last at the end
 */
public record Played(Trace trace, List<Double> entered, List<Double> left) {
    public Played {
        entered = List.copyOf(entered);
        left = List.copyOf(left);
    }

    private static final int KNOTS = 96;
    private static final int KNOTS_A_SECOND = 320;

    /** A stretch of one side: two courses on a clock of their own. */
    private record Span(double start, double ahead, Course hand, Course head) {}

    /** Through one transition alone, from the first leaving to the last joining. */
    static Played of(Transition transition, SpunPattern from, SpunPattern to) {
        return of(List.of(transition), List.of(from, to), transition.leaves(), new double[] {0, 0});
    }

    /**
     * Transitions one after the other, each from the pattern that the one before led to.
     *
     * @param patterns one more than transitions
     * @param starts when it starts on the first pattern's clock, seconds
     * @param stays how long each pattern is kept by both hands, seconds, one more than transitions;
     *     those in the middle must end when their transition leaves
     */
    static Played of(
            List<Transition> transitions,
            List<SpunPattern> patterns,
            double starts,
            double[] stays) {
        if (stays.length != transitions.size() + 1 || patterns.size() != stays.length) {
            throw new Refusal(
                    "has " + transitions.size() + " transitions and " + stays.length + " stays",
                    "what is played",
                    "give one stay more than transitions");
        }
        SpunPattern from = patterns.get(0);
        Trace first = from.trace();
        Map<Side, List<Span>> spans = new EnumMap<>(Side.class);
        for (Side side : Side.values()) {
            spans.put(side, new ArrayList<>(List.of(pattern(first, side, 0, starts))));
        }
        List<Double> entered = new ArrayList<>(List.of(0.0));
        List<Double> left = new ArrayList<>();
        double now = 0;
        Faced faced = new Faced(first, starts);
        for (int i = 0; i < transitions.size(); i++) {
            Transition transition = transitions.get(i);
            now += stays[i];
            left.add(now);
            SpunPattern to = patterns.get(i + 1);
            for (Side side : Side.values()) {
                Bridge bridge = transition.bridge(side);
                List<Span> list = require(spans.get(side));
                double begins = now;
                double ends = now;
                if (!bridge.keeps()) {
                    begins += bridge.leaves() - transition.leaves();
                    ends = begins + bridge.seconds();
                    list.add(passage(BlendedSide.of(from, to, bridge), bridge.seconds(), begins));
                }
                double there = transition.leaves() + transition.later() + ends - now;
                list.add(pattern(to.trace(), side, ends, there));
            }
            faced.next(
                    to.trace(),
                    now,
                    now + transition.seconds(),
                    transition.leaves() + transition.later() - now);
            now += transition.seconds();
            entered.add(now);
            from = to;
        }
        now += stays[stays.length - 1];
        left.add(now);
        return new Played(trace(first, spans, now, faced), entered, left);
    }

    private static <T> T require(@Nullable T value) {
        if (value == null) {
            throw new IllegalStateException("both sides are played");
        }
        return value;
    }

    private static Span pattern(Trace trace, Side side, double start, double clock) {
        return new Span(start, clock - start, trace.hand(side), trace.head(side));
    }

    private static Span passage(BlendedSide blend, double seconds, double start) {
        int cells = Math.max(KNOTS, (int) Math.ceil(KNOTS_A_SECOND * seconds));
        return new Span(
                start,
                -start,
                TabledCourse.stretch(blend.hand(), seconds, cells),
                TabledCourse.stretch(blend.head(), seconds, cells));
    }

    private static Trace trace(Trace first, Map<Side, List<Span>> spans, double end, Faced faced) {
        Map<Side, Course> hands = new EnumMap<>(Side.class);
        Map<Side, Course> heads = new EnumMap<>(Side.class);
        for (Side side : Side.values()) {
            List<Span> list = require(spans.get(side));
            hands.put(side, new Joined(list, end, true));
            heads.put(side, new Joined(list, end, false));
        }
        return new Trace(
                first.pairing(),
                Origin.CORDED,
                new Interval(0, end),
                false,
                hands,
                heads,
                List.of(),
                Map.of(),
                List.of(),
                0,
                faced.heading());
    }

    /**
     * How the performer faces meanwhile: as each pattern has it, and over a passage softly from the
     * one to the other, the shorter way round.
     */
    private static final class Faced {
        private Heading heading;

        Faced(Trace first, double starts) {
            this.heading = first.turned() ? time -> first.heading(time + starts) : Heading.AHEAD;
        }

        /** {@code ahead} is what is to be added to this clock for the pattern's own. */
        void next(Trace to, double begins, double ends, double ahead) {
            if (heading == Heading.AHEAD && !to.turned()) {
                return;
            }
            Heading before = heading;
            double middle = (begins + ends) / 2;
            double apart = before.at(middle).value() - to.heading(middle + ahead).value();
            double whole = 2 * Math.PI * Math.rint(apart / (2 * Math.PI));
            Heading after = time -> to.heading(time + ahead).plus(whole);
            double seconds = Math.max(ends - begins, 1e-9);
            heading =
                    time -> {
                        if (time <= begins) {
                            return before.at(time);
                        }
                        if (time >= ends) {
                            return after.at(time);
                        }
                        Jet share =
                                SmoothStep.share(Jet.line((time - begins) / seconds, 1 / seconds));
                        Jet here = before.at(time);
                        return here.plus(after.at(time).minus(here).times(share));
                    };
        }

        Heading heading() {
            return heading;
        }
    }

    /** Spans one after the other as one course; beyond its ends it stands at them. */
    private record Joined(List<Span> spans, double end, boolean hand) implements Course {
        @Override
        public State at(double time) {
            double t = Math.max(0, Math.min(end, time));
            Span span = span(t, t >= end);
            return course(span).at(t + span.ahead());
        }

        @Override
        public Vector3D position(double time) {
            double t = Math.max(0, Math.min(end, time));
            Span span = span(t, t >= end);
            return course(span).position(t + span.ahead());
        }

        @Override
        public State before(double time) {
            double t = Math.max(0, Math.min(end, time));
            Span span = span(t, true);
            return course(span).before(t + span.ahead());
        }

        private Course course(Span span) {
            return hand ? span.hand() : span.head();
        }

        private Span span(double time, boolean before) {
            int low = 0;
            int high = spans.size() - 1;
            while (low < high) {
                int middle = (low + high + 1) >>> 1;
                double start = spans.get(middle).start();
                if (before ? start < time : start <= time) {
                    low = middle;
                } else {
                    high = middle - 1;
                }
            }
            return spans.get(low);
        }
    }
}
