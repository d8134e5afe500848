package deferent.reading.tether;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Origin;
import deferent.motion.trace.State;
import deferent.motion.trace.TimedBreak;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A poi dropped into a pattern: from any state of the head the hand keeps its path, and the head
 * does what a cord lets it.
 *
 * <p>While the cord pulls, {@link Swinging}'s equations hold. When its tension would pass below
 * zero it goes slack and the head flies, p″ = g + D/m, until its distance from the hand is the
 * cord's length again. Then the cord snaps taut: an impulse along it takes the head's outward speed
 * u against the hand's, and ½mu² is lost; the speed across the cord stays. A corner in the hand's
 * path is such a snap too, or the start of a slack stretch, by its direction. Both kinds of moment
 * are found to rounding by shortening the step that passes over them. A slack cord's own mass is
 * left out.
 *
 * @param side whose
 * @param cord the poi
 * @param followed the trace whose hand was followed
 * @param trace the simulated time, this side simulated, the other as it was
 * @param events what happened, by time
 */
public record LetGo(Side side, Cord cord, Trace followed, Trace trace, List<Event> events) {

    /** What happens to a cord. */
    public enum Kind {
        /** It goes slack. */
        SLACK,
        /** It snaps taut and takes the head's outward speed. */
        SNAP
    }

    /**
     * One event.
     *
     * @param time seconds
     * @param kind what
     * @param speed for a snap, the outward speed it took, m/s; else 0
     * @param loss for a snap, the energy it took, joules; else 0
     */
    public record Event(double time, Kind kind, double speed, double loss) {}

    /**
     * Where a simulation starts.
     *
     * @param time seconds, on the trace's clock
     * @param head in the frame, metres; at most a cord's length from the hand
     * @param velocity m/s
     */
    public record Start(double time, Vector3D head, Vector3D velocity) {
        /** On a trace as it is. */
        public static Start on(Trace trace, Side side, double time) {
            State head = trace.head(side).at(time);
            return new Start(time, head.position(), head.velocity());
        }

        /**
         * On a trace, but with the head slipped {@code metres} along its way (negative: behind),
         * the cord as long as before.
         */
        public static Start slipped(Trace trace, Side side, double time, double metres) {
            State hand = trace.hand(side).at(time);
            State head = trace.head(side).at(time);
            Vector3D cord = head.position().subtract(hand.position());
            Vector3D way = head.velocity().subtract(hand.velocity());
            Vector3D axis = cord.crossProduct(way);
            if (axis.getNorm() < 1e-9 * cord.getNorm()) {
                axis = trace.pairing().part(side).place().plane().normal();
            }
            double angle = metres / cord.getNorm();
            var turn = new Rotation(axis, angle, RotationConvention.VECTOR_OPERATOR);
            return new Start(
                    time,
                    hand.position().add(turn.applyTo(cord)),
                    hand.velocity().add(turn.applyTo(way)));
        }
    }

    /** Steps a cycle where nothing else is said. */
    public static final int USUAL_STEPS = 96;

    // Speeds along the cord below this share count as none: no event is told of them.
    private static final double FAINT = 1e-6;

    /** Longest simulation, seconds. */
    public static final double LONGEST = 600;

    public static LetGo of(Trace followed, Side side, Kit kit, Start start, double seconds) {
        Cord cord = Cord.of(followed, side, kit);
        int turns =
                Math.abs(
                        Turning.of(followed, side).turns(followed.hand(side), followed.head(side)));
        return of(followed, side, cord, start, seconds, Math.max(USUAL_STEPS, 24 * turns));
    }

    /**
     * The same, followed as closely as asked.
     *
     * @param steps of the integrator a cycle of the trace
     */
    public static LetGo of(
            Trace followed, Side side, Cord cord, Start start, double seconds, int steps) {
        Refusal.positive(seconds, LONGEST, "time to simulate", "s");
        if (!followed.periodic()) {
            throw new Refusal("has an end", "trace to follow", "follow one that repeats");
        }
        Run run = new Run(followed, side, cord, steps);
        run.run(start, start.time() + seconds);
        return run.answer(new Interval(start.time(), start.time() + seconds));
    }

    /** Whether the cord never went slack. */
    public boolean taut() {
        return events.isEmpty();
    }

    /** Distance of the head from where the followed trace has it, metres. */
    public double away(double time) {
        return trace.head(side)
                .at(time)
                .position()
                .distance(followed.head(side).at(time).position());
    }

    /** Greatest such distance, at sixty instants a cycle. */
    public double farthest() {
        double most = 0;
        int count = samples();
        for (int i = 0; i <= count; i++) {
            most = Math.max(most, away(instant(i, count)));
        }
        return most;
    }

    /**
     * When the head is first half a tether away from where the followed trace has it; empty where
     * it never is.
     */
    public OptionalDouble lostAt() {
        int count = samples();
        for (int i = 0; i <= count; i++) {
            if (away(instant(i, count)) > cord.length() / 2) {
                return OptionalDouble.of(instant(i, count));
            }
        }
        return OptionalDouble.empty();
    }

    private int samples() {
        return (int) Math.min(36_000, Math.ceil(60 * trace.period() / followed.period()) + 1);
    }

    private double instant(int i, int count) {
        return trace.interval().start() + trace.period() * i / count;
    }

    /** This simulation and another's, of the other side over the same time, in one trace. */
    public Trace with(LetGo other) {
        return Replaced.in(
                trace,
                Origin.SIMULATED,
                other.side,
                other.trace.hand(other.side),
                other.trace.head(other.side),
                trace.breaks(),
                other.trace.slack(other.side),
                List.of());
    }

    /**
     * Where the energy went.
     *
     * @param start kinetic and potential energy of the head at the start, joules
     * @param end and at the end
     * @param hand what the hand gave through the cord
     * @param air what the air took
     * @param snaps what snaps took
     * @param unaccounted end − start − hand + air + snaps: the integrator's error
     */
    public record Audit(
            double start, double end, double hand, double air, double snaps, double unaccounted) {}

    /** Adds up the energy, by Gauss's four-point rule on ninety-six parts a cycle. */
    public Audit audit() {
        return Energy.audit(this);
    }

    /** One simulation. */
    private static final class Run {
        private final Trace followed;
        private final Side side;
        private final Cord cord;
        private final Course hand;
        private final HandTable table;
        private final Swinging swinging;
        private final Marching marching;
        private final EighthOrder flight = new EighthOrder(Flying.SIZE);
        private final List<Event> events = new ArrayList<>();
        private final List<Interval> slack = new ArrayList<>();
        private final List<Course> pieces = new ArrayList<>();
        private final List<Double> from = new ArrayList<>();

        private double time;
        private double end;
        private boolean taut;
        private double[] y = new double[6];
        private double[] times = new double[256];
        private double[] notes = new double[256 * Following.WIDTH];
        private int count;

        Run(Trace followed, Side side, Cord cord, int steps) {
            this.followed = followed;
            this.side = side;
            this.cord = cord;
            this.hand = followed.hand(side);
            this.table = HandTable.of(hand, Times.cuts(followed, side, 3), steps);
            this.swinging = new Swinging(cord);
            this.marching = new Marching(cord, 0);
        }

        void run(Start start, double until) {
            time = start.time();
            end = until;
            begin(start);
            while (time < end - 1e-12) {
                if (taut) {
                    swing();
                } else {
                    fly();
                }
                if (events.size() > 5000) {
                    throw new Refusal(
                            "goes slack and taut more than 2500 times",
                            "simulation",
                            "simulate a shorter time");
                }
            }
        }

        private void begin(Start start) {
            State h = hand.at(time);
            Vector3D along = start.head().subtract(h.position());
            double distance = along.getNorm();
            if (distance > cord.length() * (1 + 1e-6)) {
                throw new Refusal(
                        "is " + distance + " m from the hand",
                        "start of the head",
                        "give at most the tether's " + cord.length() + " m");
            }
            if (distance >= cord.length() * (1 - 1e-6)) {
                tighten(h, along, start.velocity());
            } else {
                taut = false;
                y =
                        new double[] {
                            start.head().getX(),
                            start.head().getY(),
                            start.head().getZ(),
                            start.velocity().getX(),
                            start.velocity().getY(),
                            start.velocity().getZ()
                        };
                events.add(new Event(time, Kind.SLACK, 0, 0));
            }
        }

        /** Taut again: the outward speed against the hand's is lost. */
        private void tighten(State h, Vector3D along, Vector3D velocity) {
            Vector3D e = along.normalize();
            Vector3D way = velocity.subtract(h.velocity());
            double outward = way.dotProduct(e);
            Vector3D w = way.subtract(e.scalarMultiply(outward)).scalarMultiply(1 / cord.length());
            if (outward < -FAINT * (1 + velocity.getNorm())) {
                // Moving inward with the cord just stretched: it is slack from here.
                taut = false;
                Vector3D p = h.position().add(e.scalarMultiply(cord.length()));
                y =
                        new double[] {
                            p.getX(), p.getY(), p.getZ(),
                            velocity.getX(), velocity.getY(), velocity.getZ()
                        };
                events.add(new Event(time, Kind.SLACK, 0, 0));
                return;
            }
            if (outward > FAINT * (1 + velocity.getNorm())) {
                events.add(
                        new Event(
                                time,
                                Kind.SNAP,
                                outward,
                                0.5 * cord.kit().headMass() * outward * outward));
            }
            taut = true;
            y = Following.state(h.velocity(), cord, e, w);
        }

        private void loosen(State h) {
            Vector3D e = new Vector3D(y[0], y[1], y[2]);
            Vector3D p = h.position().add(e.scalarMultiply(cord.length()));
            Vector3D v =
                    h.velocity()
                            .add(
                                    Following.rate(h.velocity(), cord, y)
                                            .scalarMultiply(cord.length()));
            taut = false;
            y = new double[] {p.getX(), p.getY(), p.getZ(), v.getX(), v.getY(), v.getZ()};
            events.add(new Event(time, Kind.SLACK, 0, 0));
        }

        /** A taut stretch, until slack or the end. */
        private void swing() {
            count = 0;
            double[] kept = new double[6];
            double[] handNow = new double[6];
            double begun = time;
            int step = stepAt(time);
            double cycle = cycleAt(time);
            boolean stopped = false;
            while (!stopped && time < end - 1e-12) {
                double stepEnd = cycle + table.time(step + 1);
                boolean whole = Math.abs(time - cycle - table.time(step)) < 1e-12 && stepEnd <= end;
                double to = Math.min(stepEnd, end);
                room();
                if (whole) {
                    swinging.note(table.ends(), 12 * step, y, notes, count * Following.WIDTH);
                } else {
                    HandTable.put(hand.at(time), handNow, 0);
                    swinging.note(handNow, 0, y, notes, count * Following.WIDTH);
                }
                System.arraycopy(y, 0, kept, 0, 6);
                double tension;
                if (whole) {
                    marching.step(table, step, y);
                    tension =
                            swinging.note(
                                    table.ends(),
                                    12 * step + 6,
                                    y,
                                    notes,
                                    count * Following.WIDTH + 9);
                } else {
                    marching.step(table, time, to, y);
                    tension = noted(to, y, count * Following.WIDTH + 9);
                }
                times[count++] = time;
                if (tension < 0) {
                    to = slackens(kept, to);
                    time = to;
                    loosen(hand.before(to));
                    stopped = true;
                } else {
                    time = to;
                    if (to == stepEnd) {
                        step++;
                        if (step == table.steps()) {
                            step = 0;
                            cycle += table.period();
                        }
                        stopped = time < end - 1e-12 && !passes(step, cycle);
                    }
                }
            }
            times[count] = time;
            pieces.add(
                    Following.stretch(
                            hand,
                            cord,
                            Arrays.copyOf(times, count + 1),
                            Arrays.copyOf(notes, count * Following.WIDTH)));
            from.add(begun);
        }

        private double noted(double at, double[] state, int to) {
            double[] handThen = new double[6];
            HandTable.put(hand.before(at), handThen, 0);
            return swinging.note(handThen, 0, state, notes, to);
        }

        /**
         * Passes a step's joint, where the hand may have a corner or its acceleration jump; false
         * where that begins a slack stretch.
         */
        private boolean passes(int step, double cycle) {
            double[] ends = table.ends();
            int before = 12 * ((step + table.steps() - 1) % table.steps()) + 6;
            int after = 12 * step;
            double jump =
                    (ends[after] - ends[before]) * y[0]
                            + (ends[after + 1] - ends[before + 1]) * y[1]
                            + (ends[after + 2] - ends[before + 2]) * y[2];
            if (Math.abs(jump) > 1e-9) {
                Vector3D v = head(before, ends);
                State h = hand.at(cycle + table.time(step));
                Vector3D e = new Vector3D(y[0], y[1], y[2]);
                tighten(h, e, v);
                return taut;
            }
            double[] scratch = new double[9];
            if (swinging.note(ends, after, y, scratch, 0) < 0) {
                loosen(hand.at(cycle + table.time(step)));
                return false;
            }
            return true;
        }

        private Vector3D head(int at, double[] ends) {
            Vector3D h = new Vector3D(ends[at], ends[at + 1], ends[at + 2]);
            return h.add(Following.rate(h, cord, y).scalarMultiply(cord.length()));
        }

        /** Shortens the last step to end where the tension reaches zero; returns that time. */
        private double slackens(double[] kept, double to) {
            double a = time;
            double b = to;
            int at = (count - 1) * Following.WIDTH + 9;
            double[] trial = new double[6];
            for (int i = 0; i < 60 && b - a > 1e-13 * (1 + Math.abs(a)); i++) {
                double middle = (a + b) / 2;
                System.arraycopy(kept, 0, trial, 0, 6);
                marching.step(table, time, middle, trial);
                if (noted(middle, trial, at) < 0) {
                    b = middle;
                } else {
                    a = middle;
                }
            }
            System.arraycopy(kept, 0, y, 0, 6);
            marching.step(table, time, b, y);
            noted(b, y, at);
            return b;
        }

        /** A slack stretch, until taut or the end. */
        private void fly() {
            count = 0;
            double begun = time;
            EighthOrder.Slope slope = (stage, state, rate) -> Flying.rate(cord, state, rate);
            double[] kept = new double[6];
            boolean stopped = false;
            noteFlight();
            while (!stopped && time < end - 1e-12) {
                double to = Math.min(end, nextJoint(time));
                System.arraycopy(y, 0, kept, 0, 6);
                flight.step(slope, to - time, y);
                if (slackness(to, y) > 0) {
                    to = tightens(slope, kept, to, time == begun);
                    stopped = true;
                }
                time = to;
                noteFlight();
            }
            slack.add(new Interval(begun, time));
            double[] states = new double[count * Flying.SIZE];
            System.arraycopy(notes, 0, states, 0, states.length);
            double[] at = Arrays.copyOf(times, count);
            if (count >= 2) {
                pieces.add(new Flying(cord, at, states));
                from.add(begun);
            }
            if (stopped) {
                State h = hand.at(time);
                tighten(
                        h,
                        new Vector3D(y[0], y[1], y[2]).subtract(h.position()),
                        new Vector3D(y[3], y[4], y[5]));
            }
        }

        private void noteFlight() {
            room();
            times[count] = time;
            System.arraycopy(y, 0, notes, count * Flying.SIZE, Flying.SIZE);
            count++;
        }

        /** How much farther the head is from the hand than the cord is long, metres. */
        private double slackness(double at, double[] state) {
            return new Vector3D(state[0], state[1], state[2]).distance(hand.before(at).position())
                    - cord.length();
        }

        private double tightens(EighthOrder.Slope slope, double[] kept, double to, boolean first) {
            double a = first ? time + 1e-7 * (to - time) : time;
            double b = to;
            double[] trial = new double[6];
            for (int i = 0; i < 60 && b - a > 1e-13 * (1 + Math.abs(a)); i++) {
                double middle = (a + b) / 2;
                System.arraycopy(kept, 0, trial, 0, 6);
                flight.step(slope, middle - time, trial);
                if (slackness(middle, trial) > 0) {
                    b = middle;
                } else {
                    a = middle;
                }
            }
            System.arraycopy(kept, 0, y, 0, 6);
            flight.step(slope, b - time, y);
            return b;
        }

        private void room() {
            if (count + 2 > times.length) {
                times = Arrays.copyOf(times, 2 * times.length);
                notes = Arrays.copyOf(notes, 2 * notes.length);
            }
        }

        private double cycleAt(double t) {
            return Math.floor((t - table.start()) / table.period() + 1e-12) * table.period();
        }

        private int stepAt(double t) {
            double local = t - cycleAt(t);
            int step = 0;
            while (step + 1 < table.steps() && table.time(step + 1) <= local + 1e-12) {
                step++;
            }
            return step;
        }

        private double nextJoint(double t) {
            return cycleAt(t) + table.time(stepAt(t) + 1);
        }

        LetGo answer(Interval over) {
            Course head = new Stitched(from, pieces);
            List<TimedBreak> breaks = new ArrayList<>();
            for (Event event : events) {
                breaks.add(
                        new TimedBreak(
                                event.time(),
                                event.kind() == Kind.SNAP ? 1 : 3,
                                side,
                                event.kind() == Kind.SNAP
                                        ? "the cord snaps taut"
                                        : "the cord goes slack"));
            }
            Map<Side, Course> hands = new EnumMap<>(Side.class);
            Map<Side, Course> heads = new EnumMap<>(Side.class);
            Map<Side, List<Interval>> slacks = new EnumMap<>(Side.class);
            hands.put(side, hand);
            heads.put(side, head);
            slacks.put(side, List.copyOf(slack));
            hands.put(side.other(), followed.hand(side.other()));
            heads.put(side.other(), followed.head(side.other()));
            Trace trace =
                    new Trace(
                            followed.pairing(),
                            Origin.SIMULATED,
                            over,
                            false,
                            hands,
                            heads,
                            breaks,
                            slacks,
                            List.of(),
                            0);
            return new LetGo(side, cord, followed, trace, List.copyOf(events));
        }
    }

    /** Courses one after another. */
    private static final class Stitched implements Course {
        private final double[] from;
        private final Course[] pieces;

        Stitched(List<Double> from, List<Course> pieces) {
            this.from = from.stream().mapToDouble(Double::doubleValue).toArray();
            this.pieces = pieces.toArray(new Course[0]);
        }

        @Override
        public State at(double time) {
            int i = Arrays.binarySearch(from, time);
            return pieces[Math.max(0, i >= 0 ? i : -i - 2)].at(time);
        }

        @Override
        public State before(double time) {
            int i = Arrays.binarySearch(from, time);
            return pieces[Math.max(0, i >= 0 ? i - 1 : -i - 2)].before(time);
        }
    }
}
