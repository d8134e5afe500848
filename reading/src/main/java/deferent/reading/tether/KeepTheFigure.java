package deferent.reading.tether;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Origin;
import deferent.motion.trace.State;
import deferent.motion.trace.TimedBreak;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.jspecify.annotations.Nullable;

/**
 * The one hand path that gives a head its figure and timing on a cord.
 *
 * <p>From m·p″ = m·g + D − T·e with T &gt; 0, the direction n = −e from head to hand is that of b =
 * p″ − g − D/m, and T = m|b|: of the two signs, the one that pulls. So hand = p + L·b/|b|, with no
 * equation to solve: the head is a flat output of the poi (Sreenath, Lee and Kumar, CDC 2013). With
 * n′ = (b′ − n(n·b′))/|b| and b′ from the head's jerk, place and velocity of the hand are exact;
 * its acceleration and jerk, which would take the head's fourth and fifth derivative, come from a
 * {@link Smooth} stand-in for that velocity.
 *
 * <p>Where b = 0 the figure asks the head to fall freely and the cord has no direction; such
 * instants are told as {@link FreeFall}. Where the head's acceleration jumps, the hand would have
 * to jump.
 *
 * <p>With a cord of mass the direction obeys n ∥ b + δ·n″ with δ = length − {@link
 * Cord#swingLength} and the drag on {@link Cord#swingMass} (the moment equation of {@link Cord}
 * with the head given instead of the hand): {@link HeavyDirection}; {@link #mismatch} is what
 * remains.
 *
 * @param side whose
 * @param cord the poi
 * @param hand the hand that keeps the figure
 * @param head the figure
 * @param away how far that hand strays from the ideal one
 * @param leastPull least pull on the head, newtons, never negative
 * @param leastPullTime when, seconds
 * @param handSpeed greatest speed of the hand, m/s
 * @param turns whole turns the cord makes over the trace, in its motion's plane
 * @param idealTurns those it makes in the ideal trace
 * @param freeFalls instants at which the cord has no direction
 * @param jumps times at which the hand would have to jump, seconds
 * @param mismatch for a cord of mass, what both sides of the direction's equation differ by at
 *     most, as a share; else 0
 * @param cuts start, breaks between and end of the cycle, seconds; read, do not write
 * @param normal of the plane everything stays in; the zero vector where it does not
 */
public record KeepTheFigure(
        Side side,
        Cord cord,
        Course hand,
        Course head,
        Away away,
        double leastPull,
        double leastPullTime,
        double handSpeed,
        int turns,
        int idealTurns,
        List<FreeFall> freeFalls,
        List<Double> jumps,
        double mismatch,
        double[] cuts,
        Vector3D normal) {
    public KeepTheFigure {
        Refusal.numbers(
                "the " + side.word() + " hand that keeps the figure",
                leastPull,
                leastPullTime,
                handSpeed);
    }

    /**
     * An instant at which the figure asks for free fall.
     *
     * @param time seconds
     * @param weights what the pull would be there, head weights
     */
    public record FreeFall(double time, double weights) {}

    /** Below this pull, in head weights, the cord's direction counts as lost. */
    public static final double LOST = 1e-3;

    /** What a heavy cord's direction may still miss, as a share. */
    private static final double SETTLED = 1e-3;

    private static final int COUNT = 360;
    private static final int STEPS = 96;

    /** A step of the integrator turns the cord by no more than this, radians. */
    private static final double STEP_TURN = 0.4;

    private static final int MOST_STEPS = 20_000;

    public static KeepTheFigure of(Trace ideal, Side side, Kit kit) {
        return of(ideal, side, Cord.of(ideal, side, kit));
    }

    public static KeepTheFigure of(Trace ideal, Side side, Cord cord) {
        Corners.refuse(ideal, side);
        Course head = ideal.head(side);
        Flat flat = new Flat(head, cord, ideal.interval());
        double[] cuts = Times.cuts(ideal, side, 3);
        Times times = Times.of(ideal.interval(), cuts, Pull.samples(ideal, side, COUNT));
        double[] pulls = times.of(flat::pull);
        double leastTime = times.least(pulls, flat::pull);
        List<FreeFall> falls = falls(times, pulls, flat, cord);
        Course hand =
                cord.swingLength() == cord.length()
                        ? new Exact(flat, cuts)
                        : heavy(ideal.ownCycle(side), side, cord)
                                .orElseThrow(
                                        () ->
                                                new Refusal(
                                                        "finds no direction for so heavy a cord, where its pull is nearly lost",
                                                        "the "
                                                                + side.word()
                                                                + " hand that keeps the figure",
                                                        "spin faster, or take a lighter cord"));
        double[] speeds = times.of(t -> -hand.at(t).velocity().getNorm());
        Turning turning = Turning.of(ideal, side);
        List<Double> jumps = new ArrayList<>();
        for (TimedBreak b : ideal.breaks()) {
            if (b.side() == side && b.order() == 2) {
                jumps.add(b.time());
            }
        }
        return new KeepTheFigure(
                side,
                cord,
                hand,
                head,
                Away.of(hand, ideal.hand(side), ideal, side),
                flat.pull(leastTime),
                leastTime,
                -min(speeds),
                turning.turns(hand, head),
                turning.turns(ideal.hand(side), head),
                falls,
                List.copyOf(jumps),
                hand instanceof Heavy heavy ? heavy.mismatch() : 0,
                cuts,
                KeepTheHandPath.planeNormal(ideal, side, cord));
    }

    private static Optional<Heavy> heavy(Trace own, Side side, Cord cord) {
        Flat flat = new Flat(own.head(side), cord, own.interval());
        return Heavy.of(flat, Times.cuts(own, side, 3));
    }

    /**
     * Where the hand must be for one state of a head, for searches that ask at many instants; a
     * cord's own mass counts only with its drag and weight, not with its turning.
     */
    public static Vector3D place(State head, Cord cord) {
        return new Flat(time -> head, cord, new Interval(0, 0)).hand(head, new double[3]);
    }

    /** Whether a hand can do it: no free fall, no jump. */
    public boolean possible() {
        return freeFalls.isEmpty() && jumps.isEmpty();
    }

    /** Whether the poi still gets round as often as said. */
    public boolean getsRound() {
        return turns == idealTurns;
    }

    public double leastPullWeights() {
        return leastPull / cord.headWeight();
    }

    /** The trace with this side's hand and head put in the place of its own; corded. */
    public Trace in(Trace trace) {
        List<Interval> gaps = new ArrayList<>(trace.gaps());
        double hair = 1e-6 * trace.period();
        for (FreeFall fall : freeFalls) {
            gaps.add(new Interval(fall.time() - hair, fall.time() + hair));
        }
        List<TimedBreak> breaks = new ArrayList<>();
        for (TimedBreak b : trace.breaks()) {
            // The hand follows the head's acceleration, so it breaks two orders earlier.
            breaks.add(
                    b.side() == side
                            ? new TimedBreak(b.time(), Math.max(b.order() - 2, 0), side, b.why())
                            : b);
        }
        return Replaced.in(trace, Origin.CORDED, side, hand, head, breaks, trace.slack(side), gaps);
    }

    /** The same as a periodic motion of the cord behind that hand. */
    public Orbit orbit() {
        return orbit(STEPS);
    }

    /**
     * @param steps of the integrator over the cycle
     */
    Orbit orbit(int steps) {
        double whole = cuts[cuts.length - 1] - cuts[0];
        double turning = swiftest() * whole / STEP_TURN;
        if (turning > MOST_STEPS) {
            throw new Refusal(
                    "asks the cord to turn about all but at once, where its pull is nearly lost",
                    side.word() + " hand that keeps the figure",
                    "spin faster, or change the figure");
        }
        double trembling = trembling() * whole / STEP_TURN;
        if (trembling > MOST_STEPS) {
            throw new Refusal(
                    "trembles too fast to follow on so short a cord",
                    side.word() + " hand that keeps the figure",
                    "take a longer tether");
        }
        int wanted = (int) Math.ceil(Math.max(turning, trembling));
        HandTable table =
                HandTable.of(hand, cuts, Math.max(Math.max(steps, 32 * Math.abs(turns)), wanted));
        return new Orbit(table, cord, head, normal);
    }

    /**
     * How fast a slip swings to and fro at most, rad/s: as a pendulum's, √(pull/(mass·length)), so
     * that a short cord's is fast however slowly its hand goes.
     */
    private double trembling() {
        Flat flat = new Flat(head, cord, new Interval(cuts[0], cuts[cuts.length - 1]));
        double most = 0;
        for (double pull : Times.of(flat.over(), cuts, COUNT).of(flat::pull)) {
            most = Math.max(most, pull);
        }
        return Math.sqrt(most / (cord.swingMass() * cord.length()));
    }

    /** How fast the cord turns at most, rad/s: fast where the pull is nearly lost. */
    private double swiftest() {
        Interval cycle = new Interval(cuts[0], cuts[cuts.length - 1]);
        double most = turning(leastPullTime);
        for (double turning : Times.of(cycle, cuts, COUNT).of(this::turning)) {
            most = Math.max(most, turning);
        }
        return most;
    }

    private double turning(double time) {
        return hand.at(time).velocity().subtract(head.at(time).velocity()).getNorm()
                / cord.length();
    }

    private static double min(double[] values) {
        double least = Double.POSITIVE_INFINITY;
        for (double v : values) {
            least = Math.min(least, v);
        }
        return least;
    }

    private static List<FreeFall> falls(Times times, double[] pulls, Flat flat, Cord cord) {
        List<FreeFall> found = new ArrayList<>();
        double lost = LOST * cord.headWeight();
        double whole = flat.over().length();
        for (int i : times.dips(pulls).toArray()) {
            if (Math.min(pulls[i] - 0.5 * cord.headWeight(), Times.mayReach(i, pulls)) > lost) {
                continue;
            }
            double time = times.refined(i, pulls, flat::pull);
            // One at a break, or at the seam of a periodic trace, is met from either side.
            boolean again =
                    found.stream()
                            .anyMatch(
                                    f ->
                                            Math.abs(Math.IEEEremainder(f.time() - time, whole))
                                                    < 1e-6 * whole);
            if (!again && flat.pull(time) < lost) {
                found.add(new FreeFall(time, flat.pull(time) / cord.headWeight()));
            }
        }
        return List.copyOf(found);
    }

    /** The flat map: b and its first derivative from the head's state. */
    private record Flat(Course head, Cord cord, Interval over) {
        double pull(double time) {
            return b(head.at(time)).getNorm() * cord.swingMass();
        }

        Vector3D b(double time, boolean last) {
            return b(last ? head.before(time) : head.at(time));
        }

        Vector3D b(State head) {
            double k = cord.dragOverSpeed(head.velocity().getNorm()) / cord.swingMass();
            return head.acceleration().subtract(cord.fall()).add(head.velocity().scalarMultiply(k));
        }

        Vector3D rate(State head) {
            if (!cord.kit().air()) {
                return head.jerk();
            }
            double speed = head.velocity().getNorm();
            double k = cord.dragOverSpeed(speed) / cord.swingMass();
            double slope = cord.dragOverSpeedSlope(speed) / cord.swingMass();
            double quickening =
                    speed > 0 ? head.velocity().dotProduct(head.acceleration()) / speed : 0;
            return head.jerk()
                    .add(head.acceleration().scalarMultiply(k))
                    .add(head.velocity().scalarMultiply(slope * quickening));
        }

        /** Writes the hand's velocity; returns its place. */
        Vector3D hand(State head, double[] velocity) {
            Vector3D b = b(head);
            double size = b.getNorm();
            if (size == 0) {
                return head.position();
            }
            Vector3D n = b.scalarMultiply(1 / size);
            Vector3D rate = rate(head);
            Vector3D turn =
                    rate.subtract(n.scalarMultiply(n.dotProduct(rate))).scalarMultiply(1 / size);
            Vector3D v = head.velocity().add(turn.scalarMultiply(cord.length()));
            velocity[0] = v.getX();
            velocity[1] = v.getY();
            velocity[2] = v.getZ();
            return head.position().add(n.scalarMultiply(cord.length()));
        }
    }

    /** The hand of a cord without mass. */
    private static final class Exact implements Course {
        private final Flat flat;
        private final double[] cuts;
        private volatile @Nullable Smooth velocity;

        Exact(Flat flat, double[] cuts) {
            this.flat = flat;
            this.cuts = cuts;
        }

        @Override
        public State at(double time) {
            return state(time, flat.head().at(time), false);
        }

        @Override
        public State before(double time) {
            return state(time, flat.head().before(time), true);
        }

        private State state(double time, State head, boolean before) {
            double[] v = new double[3];
            Vector3D place = flat.hand(head, v);
            double[] smooth = new double[9];
            stand().at(wrapped(time, flat.over(), before), before, smooth);
            return new State(
                    place,
                    new Vector3D(v),
                    new Vector3D(smooth[3], smooth[4], smooth[5]),
                    new Vector3D(smooth[6], smooth[7], smooth[8]));
        }

        // Made when first asked for; two threads may both make it and either will do.
        private Smooth stand() {
            Smooth made = velocity;
            if (made == null) {
                made =
                        Smooth.of(
                                (time, last, out) ->
                                        flat.hand(
                                                last
                                                        ? flat.head().before(time)
                                                        : flat.head().at(time),
                                                out),
                                cuts,
                                8);
                velocity = made;
            }
            return made;
        }
    }

    /** The hand of a cord with mass: n and all its derivatives from a stand-in. */
    private record Heavy(Flat flat, Smooth direction, double mismatch) implements Course {
        /** Elements over the cycle to begin with, and at most. */
        private static final int ELEMENTS = 8;

        private static final int MOST_ELEMENTS = 128;

        /** With so many elements a direction settles, if ever. */
        private static final int ENOUGH = 64;

        /** A mismatch that more elements need not better. */
        private static final double FINE = 1e-6;

        /** Empty where no direction settles. */
        static Optional<Heavy> of(Flat flat, double[] cuts) {
            double delta = flat.cord().length() - flat.cord().swingLength();
            Optional<Heavy> best = Optional.empty();
            for (int about = ELEMENTS; about <= MOST_ELEMENTS; about *= 2) {
                Optional<Heavy> next =
                        HeavyDirection.of(flat::b, delta, cuts, about, best.map(Heavy::direction))
                                .map(n -> new Heavy(flat, n, mismatch(flat, n, delta)));
                if (best.isEmpty() || next.isPresent() && next.get().better(best.get())) {
                    best = next;
                }
                if (best.isEmpty() ? about >= ENOUGH : best.get().mismatch < FINE) {
                    break;
                }
            }
            return best.filter(heavy -> heavy.mismatch <= SETTLED);
        }

        private boolean better(Heavy other) {
            return mismatch < other.mismatch;
        }

        /**
         * The greatest share of b, or of gravity where that is more, by which b + δn″ misses n, and
         * n a unit's length; infinite where the cord would have to push.
         */
        private static double mismatch(Flat flat, Smooth direction, double delta) {
            double[] out = new double[9];
            double most = 0;
            for (double time : direction.between()) {
                direction.at(time, false, out);
                Vector3D n = new Vector3D(out[0], out[1], out[2]);
                Vector3D b = flat.b(time, false);
                if (n.dotProduct(b) < 0) {
                    return Double.POSITIVE_INFINITY;
                }
                Vector3D along = b.add(new Vector3D(delta, new Vector3D(out[6], out[7], out[8])));
                double size = Math.max(b.getNorm(), Gravity.STANDARD);
                most = Math.max(most, n.crossProduct(along).getNorm() / size);
                most = Math.max(most, Math.abs(n.getNorm() - 1));
            }
            return most;
        }

        @Override
        public State at(double time) {
            return state(time, flat.head().at(time), false);
        }

        @Override
        public State before(double time) {
            return state(time, flat.head().before(time), true);
        }

        private State state(double time, State head, boolean before) {
            double[] n = new double[12];
            direction.at(wrapped(time, flat.over(), before), before, n);
            double length = flat.cord().length();
            return new State(
                    head.position().add(new Vector3D(length * n[0], length * n[1], length * n[2])),
                    head.velocity().add(new Vector3D(length * n[3], length * n[4], length * n[5])),
                    head.acceleration()
                            .add(new Vector3D(length * n[6], length * n[7], length * n[8])),
                    head.jerk().add(new Vector3D(length * n[9], length * n[10], length * n[11])));
        }
    }

    /** A time brought into the interval; the end stays the end where the value before is meant. */
    static double wrapped(double time, Interval over, boolean before) {
        if (before
                ? time > over.start() && time <= over.end()
                : time >= over.start() && time < over.end()) {
            return time;
        }
        double turns = (time - over.start()) / over.length();
        double whole = before ? Math.ceil(turns) - 1 : Math.floor(turns);
        return over.start() + (turns - whole) * over.length();
    }
}
