package deferent.search.set;

import deferent.motion.pairing.Jet;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Heading;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Origin;
import deferent.motion.trace.State;
import deferent.motion.trace.TimedBreak;
import deferent.motion.trace.Trace;
import deferent.search.transition.Transition;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A set as it is played: its patterns and the passages between them one after the other as one
 * trace on cords, turned with the body as far as it has turned by then. Where nothing leads on,
 * hands and heads jump, and the trace breaks there.
 */
public final class SetTrace {
    private final SetPlan plan;
    private final PairBook book;
    private final List<Piece> pieces = new ArrayList<>();

    private SetTrace(SetPlan plan, PairBook book) {
        this.plan = plan;
        this.book = book;
    }

    /**
     * What hangs together.
     *
     * @param start seconds of the set
     * @param ahead what is to be added to the set's time for the trace's
     */
    private record Piece(double start, double ahead, Trace trace) {}

    /** The whole set, from time 0. */
    public static Trace of(SetPlan plan, PairBook book) {
        return of(plan, book, 0, plan.seconds());
    }

    /**
     * A part of it, whose trace begins at time 0.
     *
     * @param from seconds from the set's start
     * @param to seconds from the set's start
     */
    public static Trace of(SetPlan plan, PairBook book, double from, double to) {
        Heading heading = plan.heading();
        return unturned(plan, book, from, to)
                .turnedBy(
                        heading == Heading.AHEAD ? heading : time -> heading.at(time + from),
                        book.performer().axis());
    }

    /** The same without its turns of the body, as the body has it. */
    public static Trace unturned(SetPlan plan, PairBook book, double from, double to) {
        double end = plan.seconds();
        if (!(from >= 0 && to <= end + 1e-6 && to - from > 1e-3)) {
            throw new Refusal(
                    "is from " + from + " to " + to + " s",
                    "a part of a set of " + end + " s",
                    "give a part of it");
        }
        return new SetTrace(plan, book).part(from, Math.min(to, end));
    }

    private Trace part(double from, double to) {
        int at = 0;
        while (at < plan.stays().size()) {
            int end = at + 1;
            while (end < plan.stays().size() && onward(end - 1)) {
                end++;
            }
            if (plan.stays().get(at).isPresent()) {
                piece(at, end, from, to);
            }
            at = end;
        }
        return joined(from, to);
    }

    private boolean onward(int after) {
        Joint.Way way = plan.joints().get(after).way();
        return way == Joint.Way.LED || way == Joint.Way.SAME;
    }

    private Stay stay(int step) {
        return plan.stays().get(step).orElseThrow();
    }

    private Optional<Transition> after(int step) {
        return step < plan.joints().size()
                ? plan.joints().get(step).transition()
                : Optional.empty();
    }

    /** Of the steps that hang together, from one to before another, those that are played. */
    private void piece(int first, int end, double from, double to) {
        int[] played =
                IntStream.range(first, end)
                        .filter(i -> stay(i).starts() < to && over(i, end) > from)
                        .toArray();
        if (played.length == 0) {
            return;
        }
        int begin = played[0];
        int last = played[played.length - 1];
        List<Transition> transitions = new ArrayList<>();
        List<Double> stays = new ArrayList<>(List.of(0.0));
        for (int i = begin; i <= last; i++) {
            int now = stays.size() - 1;
            stays.set(now, stays.get(now) + stay(i).seconds());
            Optional<Transition> led = after(i);
            // In a round the last one's passage back is played as well.
            if (led.isPresent() && (i < last || stay(i).ends() < to)) {
                transitions.add(led.get());
                stays.add(0.0);
            }
        }
        double starts = stay(begin).starts();
        if (transitions.isEmpty()) {
            Trace spun = book.finder().spun(stay(begin).wanted().pairing());
            pieces.add(new Piece(starts, stay(begin).entered() - starts, spun));
        } else {
            double[] each = stays.stream().mapToDouble(s -> s).toArray();
            Trace trace = book.finder().play(transitions, stay(begin).entered(), each).trace();
            pieces.add(new Piece(starts, -starts, trace));
        }
    }

    /** When a step and what leads on from it within the same piece are over. */
    private double over(int step, int end) {
        return stay(step).ends()
                + (step + 1 < end || plan.round()
                        ? after(step).map(Transition::seconds).orElse(0.0)
                        : 0);
    }

    private Trace joined(double from, double to) {
        Map<Side, Course> hands = new EnumMap<>(Side.class);
        Map<Side, Course> heads = new EnumMap<>(Side.class);
        List<TimedBreak> breaks = new ArrayList<>();
        for (Side side : Side.values()) {
            hands.put(side, new Along(pieces, from, to - from, side, true));
            heads.put(side, new Along(pieces, from, to - from, side, false));
        }
        for (Piece piece : pieces.subList(1, pieces.size())) {
            for (Side side : Side.values()) {
                breaks.add(new TimedBreak(piece.start() - from, 0, side, "another pattern begins"));
            }
        }
        Pairing pairing = stay(plan.at(from)).wanted().pairing();
        return new Trace(
                pairing,
                Origin.CORDED,
                new Interval(0, to - from),
                false,
                hands,
                heads,
                breaks,
                Map.of(),
                List.of(),
                0,
                pieces.stream().anyMatch(piece -> piece.trace().turned())
                        ? new Faced(pieces, from, to - from)
                        : Heading.AHEAD);
    }

    /** Of patterns under which the body turns by itself. */
    private record Faced(List<Piece> pieces, double from, double length) implements Heading {
        @Override
        public Jet at(double time) {
            double t = from + Math.max(0, Math.min(length, time));
            Piece on = on(pieces, t, false);
            return on.trace().heading(t + on.ahead());
        }
    }

    private static Piece on(List<Piece> pieces, double time, boolean before) {
        Piece on = pieces.get(0);
        for (Piece piece : pieces) {
            on = before ? piece.start() < time ? piece : on : piece.start() <= time ? piece : on;
        }
        return on;
    }

    private record Along(List<Piece> pieces, double from, double length, Side side, boolean hand)
            implements Course {
        @Override
        public State at(double time) {
            double t = within(time);
            Piece on = on(pieces, t, false);
            return course(on).at(t + on.ahead());
        }

        @Override
        public Vector3D position(double time) {
            double t = within(time);
            Piece on = on(pieces, t, false);
            return course(on).position(t + on.ahead());
        }

        @Override
        public State before(double time) {
            double t = within(time);
            Piece on = on(pieces, t, true);
            return course(on).before(t + on.ahead());
        }

        private double within(double time) {
            return from + Math.max(0, Math.min(length, time));
        }

        private Course course(Piece piece) {
            return hand ? piece.trace().hand(side) : piece.trace().head(side);
        }
    }
}
