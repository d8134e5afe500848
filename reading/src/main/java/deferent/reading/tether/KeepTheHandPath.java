package deferent.reading.tether;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Origin;
import deferent.motion.trace.State;
import deferent.motion.trace.TimedBreak;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What the poi really does behind a hand that keeps its ideal path: the periodic motions of a cord
 * pendulum on that moving pivot with the wanted number of turns.
 *
 * <p>They are looked for by shooting from a stated grid of starts.
 *
 * <ul>
 *   <li>A poi that gets round in a plane ({@link PlaneShooting}): the ideal's start while gravity
 *       is turned up from nothing; then the ideal's direction turned, the way the poi goes round,
 *       by every thirty-sixth of a turn, each with the rate that brings it back to itself after the
 *       wanted turns. Where what its speed then lacks changes sign between neighbours, a periodic
 *       motion lies between them; where every direction closes, as with a still hand, the one
 *       nearest the ideal is given; where no such rate is found, every third start is tried as it
 *       is.
 *   <li>A swing in a plane: the ideal's direction turned by every twelfth of a turn, at the ideal's
 *       rate, none, and its opposite.
 *   <li>Out of a plane ({@link Shooting}): what the first of the upright plane's becomes as that is
 *       tipped ({@link Tipping}), and what becomes of every twenty-fourth of a turn there, a motion
 *       lying between neighbours as above; where none of these works, the ideal's start turned by
 *       every sixth of a turn about its plane's normal, as it is and dropped by an eighth of a half
 *       turn.
 * </ul>
 *
 * <p>They start at the beginning of the cycle; at every eighth of it where the ideal's turning
 * jumps, or where in a plane nothing works and some direction closes at no rate that is found.
 *
 * <p>From each, Newton's method. Starts that do not settle, or settle on another number of turns,
 * are counted in {@link Tried}; an empty list of solutions means just that and no more: no start of
 * the grid led to one.
 *
 * <p>What is found is polished on three times finer steps; halving those once more tells its error.
 *
 * @param side whose
 * @param cord the poi
 * @param turns wanted turns of the cord over one of the hand's own cycles, over which the motions
 *     are periodic too
 * @param solutions those that pull throughout and are as meant first, then by how near the head
 *     stays to the ideal, to two centimetres, then the one that holds better
 * @param hangs whether a poi can hang from this hand, its cord within an eighth of a turn of
 *     straight down all the time; asked where none of the solutions is the one meant
 * @param tried what the search did
 */
public record KeepTheHandPath(
        Side side, Cord cord, int turns, List<Solution> solutions, boolean hangs, Tried tried) {

    /**
     * One periodic motion.
     *
     * @param orbit the motion itself
     * @param head its head's course
     * @param away how far that head strays from the ideal head
     * @param lead by how much the cord runs ahead of the ideal's about its plane's normal: a figure
     *     that is only turned or late shows here
     * @param joined whether it is joined to what is spun faster, as far as is known
     * @param leastPull least tension at the head, newtons; below 0 the cord would have to push
     * @param leastPullTime when, seconds
     * @param greatestPull newtons
     * @param growth how much the fastest-growing slip grows over a cycle: the greatest Floquet
     *     multiplier's modulus
     * @param error how far the start moved when the integrator's steps were halved, radians
     */
    public record Solution(
            Orbit orbit,
            Course head,
            Away away,
            Lead lead,
            boolean joined,
            double leastPull,
            double leastPullTime,
            double greatestPull,
            double growth,
            double error) {
        public Solution {
            Refusal.numbers(
                    "the poi behind its hand",
                    lead.angle(),
                    leastPull,
                    leastPullTime,
                    greatestPull,
                    growth);
        }

        /**
         * Whether a cord can do it; a pull that only touches zero, as at the end of a swing of a
         * quarter turn, still counts.
         */
        public boolean pulls() {
            return leastPull >= -1e-6 * orbit.cord().headWeight();
        }

        /**
         * Whether it is still the motion that was said: on average its cord is within a third of a
         * turn of the ideal's, and it is no other motion that no faster tempo comes down to.
         */
        public boolean asMeant() {
            return joined && lead.meant();
        }

        private Solution apart() {
            return new Solution(
                    orbit,
                    head,
                    away,
                    lead,
                    false,
                    leastPull,
                    leastPullTime,
                    greatestPull,
                    growth,
                    error);
        }

        public double leastPullWeights() {
            return leastPull / orbit.cord().headWeight();
        }
    }

    /** A periodic motion as it was found, before all that is told of it is worked out. */
    record Settled(Orbit orbit, Course head, Lead lead, Pulls pulls, OptionalDouble error) {
        boolean works() {
            return pulls.least() >= -1e-6 * orbit.cord().headWeight() && lead.meant();
        }
    }

    /**
     * What a search did.
     *
     * @param starts how many were tried
     * @param settled how many led to a periodic motion
     * @param otherTurns how many of these had another number of turns than wanted
     * @param everyDirection whether every direction the cord may start in closes, as with a still
     *     hand and nearly so for hands that turn much slower than the poi; then the one nearest the
     *     ideal is given
     * @param coarse steps a cycle while searching
     * @param fine steps a cycle of what is kept
     */
    public record Tried(
            int starts,
            int settled,
            int otherTurns,
            boolean everyDirection,
            int coarse,
            int fine) {}

    /** Directions of a cord's shadow, out of a plane. */
    private static final int ALL_ROUND = 24;

    private static final int FEW_ROUND = 12;

    /** A cord that keeps so near to straight down only hangs, radians. */
    private static final double HANGING = Math.PI / 4;

    private static final double SAME = 1e-5;

    /** A cord that swings oftener in a cycle is followed no closer. */
    private static final int MOST_SWINGS = 32;

    private static final int BEGINS = 8;

    /** A cycle of more steps is looked at from its beginning alone; from more would take long. */
    private static final int MOST_AGAIN = 64;

    /** So little a change of the start, radians and turns a cycle, leads to no other motion. */
    private static final double LITTLE = 0.1;

    public static KeepTheHandPath of(Trace ideal, Side side, Kit kit) {
        return of(ideal, side, Cord.of(ideal, side, kit));
    }

    public static KeepTheHandPath of(Trace ideal, Side side, Cord cord) {
        return new Search(ideal, side, cord).answer();
    }

    /**
     * The same from fewer starts, for where it is asked at many tempos: from the ideal's own start
     * while gravity is turned up (and the plane is tipped), and from the others only where that
     * does not lead to the motion meant, a swing's by every sixth of a turn.
     *
     * @param tables of the ideal's hand over its own cycle
     */
    static List<Settled> near(Trace ideal, Side side, Cord cord, HandTables tables) {
        return new Search(ideal, side, cord, tables, false).working();
    }

    /** Those motions of {@link #of} that work, in the order in which they were found. */
    static List<Settled> everywhere(Trace ideal, Side side, Cord cord, HandTables tables) {
        return new Search(ideal, side, cord, tables, true).working();
    }

    /**
     * Steps a cycle of what is kept, for a cord that turns so often in it and that a hand of so
     * quick a start, m/s², swings.
     */
    static int fine(int turns, Cord cord, double period, double quickest) {
        return 3 * coarse(turns, cord, period, quickest);
    }

    // Four for each of a cord's own swings, by powers of two so that other tempos share tables.
    private static int coarse(int turns, Cord cord, double period, double quickest) {
        double pulled = cord.gravity() + quickest;
        double swings = period * Math.sqrt(pulled / cord.swingLength()) / (2 * Math.PI);
        int twos = 1;
        while (twos < swings && twos < MOST_SWINGS) {
            twos *= 2;
        }
        return Math.max(32, Math.max(12 * Math.abs(turns), 4 * twos));
    }

    /** With one motion more, found another way, by its state at the start. */
    KeepTheHandPath and(Trace ideal, double[] state) {
        Search search = new Search(ideal, side, cord);
        search.settled = tried.settled();
        search.otherTurns = tried.otherTurns();
        search.adrift = tried.everyDirection();
        search.keep(state);
        List<Solution> all = new ArrayList<>(solutions);
        all.addAll(search.solutions());
        return search.told(all, tried.starts());
    }

    /** The same, where what works is another motion than the one meant. */
    KeepTheHandPath apart(Trace ideal) {
        return new KeepTheHandPath(
                side,
                cord,
                turns,
                solutions.stream().map(s -> s.pulls() ? s.apart() : s).toList(),
                new Search(ideal, side, cord).hangs(),
                tried);
    }

    /** The solution a spinner means: it pulls throughout, as meant, and nearest to the ideal. */
    public Optional<Solution> best() {
        return solutions.stream().filter(s -> s.pulls() && s.asMeant()).findFirst();
    }

    /** The trace with this side's head following a solution; corded. */
    public Trace in(Trace trace, Solution solution) {
        List<TimedBreak> breaks = new ArrayList<>();
        for (TimedBreak b : trace.breaks()) {
            if (b.side() != side || b.order() >= 2) {
                breaks.add(b);
            }
        }
        return Replaced.in(
                trace,
                Origin.CORDED,
                side,
                solution.orbit().hand(),
                solution.head(),
                breaks,
                trace.slack(side),
                trace.gaps());
    }

    /** One search. */
    private static final class Search {
        private final Trace ideal;
        private final boolean everywhere;
        private final Side side;
        private final Cord cord;
        private final Course hand;
        private final HandTables tables;
        private final double[] cuts;
        private final Shadow shadow;
        private final boolean planar;
        private final Turning turning;
        private final int wanted;
        private final int coarse;
        private int settled;
        private int otherTurns;
        private boolean adrift;
        private boolean incomplete;
        private final List<double[]> seen = new ArrayList<>();
        private final List<Settled> found = new ArrayList<>();

        Search(Trace ideal, Side side, Cord cord) {
            this(ideal, side, cord, tables(ideal, side), true);
        }

        Search(Trace ideal, Side side, Cord cord, HandTables tables, boolean everywhere) {
            Corners.refuseHand(ideal, side);
            // The hand's own cycle is enough, and a common one of many takes many times as long.
            this.ideal = ideal.ownCycle(side);
            this.tables = tables;
            this.everywhere = everywhere;
            this.side = side;
            this.cord = cord;
            this.hand = ideal.hand(side);
            this.cuts = Times.cuts(this.ideal, side, 3);
            this.shadow = Shadow.of(this.ideal, side, cord);
            this.planar = shadow.planar();
            this.turning = Turning.of(this.ideal, side);
            this.wanted = Turning.wanted(this.ideal, side);
            this.coarse = coarse(wanted, cord, this.ideal.period(), tables.quickest());
        }

        KeepTheHandPath answer() {
            // Beside an ideal whose turning jumps, its own starts lead elsewhere from every moment.
            boolean jumps = jump().isPresent();
            int starts = 0;
            for (int begin : begins()) {
                if (starts == 0 || !adrift && (jumps || missed())) {
                    starts += look(begin);
                }
            }
            return told(solutions(), starts);
        }

        /**
         * Whether one may have been missed: none works, and for some direction no rate was found
         * that closes. From another moment of the cycle one may be.
         */
        private boolean missed() {
            return incomplete && coarse <= MOST_AGAIN && found.stream().noneMatch(Settled::works);
        }

        List<Settled> working() {
            look(0);
            return found.stream().filter(Settled::works).toList();
        }

        /**
         * Steps of the rough table to look from: eighths of the cycle, from the first moment on at
         * which the ideal's turning jumps.
         */
        private int[] begins() {
            double first = jump().orElse(ideal.interval().start());
            HandTable rough = tables.of(coarse);
            return IntStream.range(0, planar ? BEGINS : 1)
                    .map(i -> rough.nearest(first + i * rough.period() / BEGINS))
                    .distinct()
                    .toArray();
        }

        private OptionalDouble jump() {
            return ideal.breaks().stream()
                    .filter(b -> b.side() == side && b.order() <= 1)
                    .mapToDouble(TimedBreak::time)
                    .findFirst();
        }

        /** Looks for motions from a step of the cycle; returns how many starts it had. */
        private int look(int begin) {
            HandTable rough = tables.of(coarse).begun(begin);
            List<double[]> starts = starts(rough.start());
            if (planar && wanted != 0) {
                weighed(rough, shadow.axis(), starts.get(0)).ifPresent(y -> keep(y, begin));
                if (!everywhere && works()) {
                    return starts.size();
                }
            }
            if (planar && wanted != 0) {
                inPlane(rough, begin, starts);
                return starts.size();
            }
            if (shadow.held()) {
                tipped(rough, starts.get(0));
                if (works()) {
                    return starts.size();
                }
            }
            for (double[] start : starts) {
                shadow.from(rough, cord, start, planar ? 1e-6 : 1e-7)
                        .ifPresent(y -> keep(y, begin));
            }
            return starts.size();
        }

        private boolean works() {
            return found.stream().anyMatch(Settled::works);
        }

        /** Begun hanging straight down, the way the hand goes. */
        boolean hangs() {
            HandTable table = tables.of(3 * coarse);
            if (cord.gravity() == 0) {
                return false;
            }
            Vector3D down = Vector3D.MINUS_J;
            double[] start =
                    Following.state(hand.at(table.start()).velocity(), cord, down, Vector3D.ZERO);
            return new Shadow(shadow.normal(), planar ? shadow.axis() : Vector3D.ZERO, 0)
                    .from(table, cord, start, 1e-7)
                    .map(y -> new Orbit(table, cord, y, shadow.normal()).head())
                    .filter(
                            head ->
                                    IntStream.range(0, table.steps())
                                            .mapToObj(table::time)
                                            .map(t -> head.position(t).subtract(hand.position(t)))
                                            .allMatch(c -> Vector3D.angle(c, down) < HANGING))
                    .filter(
                            head ->
                                    Pulls.of(table, cord, head, ideal.interval(), cuts).least()
                                            >= 0)
                    .isPresent();
        }

        List<Solution> solutions() {
            return found.stream().map(this::solution).toList();
        }

        KeepTheHandPath told(List<Solution> all, int starts) {
            List<Solution> sorted =
                    all.stream()
                            .sorted(
                                    Comparator.comparing(
                                                    (Solution s) -> !(s.pulls() && s.asMeant()))
                                            .thenComparingLong(
                                                    s -> Math.round(s.away().mean() / 0.02))
                                            .thenComparingDouble(Solution::growth))
                            .toList();
            return new KeepTheHandPath(
                    side,
                    cord,
                    wanted,
                    withoutShifted(sorted),
                    sorted.stream().noneMatch(s -> s.pulls() && s.asMeant()) && hangs(),
                    new Tried(starts, settled, otherTurns, adrift, coarse, 3 * coarse));
        }

        /**
         * Of motions that are one another's shift along a continuum (a still hand's in time, a
         * level circle's about the upright) keeps the nearest to the ideal: they pull alike.
         */
        private List<Solution> withoutShifted(List<Solution> sorted) {
            List<Solution> kept = new ArrayList<>();
            for (Solution one : sorted) {
                boolean alike =
                        kept.stream()
                                .anyMatch(
                                        k ->
                                                near(k.leastPull(), one.leastPull())
                                                        && near(
                                                                k.greatestPull(),
                                                                one.greatestPull()));
                if (!alike) {
                    kept.add(one);
                }
            }
            return List.copyOf(kept);
        }

        private boolean near(double a, double b) {
            return Math.abs(a - b) < 1e-4 * cord.headWeight();
        }

        /** From a step to the cycle's end, where it begins. */
        private double[] carried(double[] state, int begin) {
            HandTable rough = tables.of(coarse);
            double[] y = state.clone();
            Marching marching = new Marching(cord, 0);
            for (int i = begin; begin > 0 && i < rough.steps(); i++) {
                marching.step(rough, i, y);
            }
            return y;
        }

        private List<double[]> starts(double t0) {
            State h = hand.at(t0);
            State p = ideal.head(side).at(t0);
            double[] first = Orbit.state(h, p, cord);
            Vector3D e = new Vector3D(first[0], first[1], first[2]);
            Vector3D w = Following.rate(h.velocity(), cord, first);
            List<double[]> out = new ArrayList<>();
            Vector3D axis = ideal.pairing().part(side).place().plane().normal();
            double[] rates = {1};
            if (planar && wanted == 0) {
                rates = new double[] {1, 0, -1};
            } else if (planar && everywhere) {
                rates = new double[] {1, 0.5, 1.5};
            }
            int turns = planar && (wanted != 0 || everywhere) ? 12 : 6;
            for (double rate : rates) {
                for (int j = 0; j < (planar || everywhere ? turns : 1); j++) {
                    Rotation by =
                            new Rotation(
                                    axis,
                                    round() * 2 * Math.PI * j / turns,
                                    RotationConvention.VECTOR_OPERATOR);
                    Vector3D turned = by.applyTo(e);
                    Vector3D turning = by.applyTo(w).scalarMultiply(rate);
                    out.add(Following.state(h.velocity(), cord, turned, turning));
                    if (!planar) {
                        Vector3D dropped =
                                turned.scalarMultiply(Math.cos(Math.PI / 8))
                                        .add(new Vector3D(0, -Math.sin(Math.PI / 8), 0))
                                        .normalize();
                        out.add(
                                Following.state(
                                        h.velocity(),
                                        cord,
                                        dropped,
                                        turning.subtract(
                                                dropped.scalarMultiply(
                                                        dropped.dotProduct(turning)))));
                    }
                }
            }
            return out;
        }

        // The way the poi goes round, so that a mirrored motion is looked for by mirrored steps.
        private int round() {
            return wanted < 0 ? -1 : 1;
        }

        /**
         * From the ideal's start, gravity turned up from nothing: at once where that changes the
         * start by little, else in eight steps.
         */
        private Optional<double[]> weighed(HandTable table, Vector3D across, double[] start) {
            Optional<double[]> last = weighed(table, across, start, 0);
            if (last.isEmpty()) {
                return last;
            }
            double[] weightless = last.get();
            Optional<double[]> atOnce =
                    weighed(table, across, weightless, 8)
                            .filter(y -> apart(y, weightless) < LITTLE);
            if (atOnce.isPresent()) {
                return atOnce;
            }
            for (int i = 1; i <= 8 && last.isPresent(); i++) {
                last = weighed(table, across, last.get(), i);
            }
            return last;
        }

        private Optional<double[]> weighed(
                HandTable table, Vector3D across, double[] from, int eighths) {
            Cord lighter = new Cord(cord.length(), cord.kit(), cord.gravity() * eighths / 8);
            return new Shadow(across, across, shadow.turn()).from(table, lighter, from, 1e-6);
        }

        /**
         * Of starts all round in a plane, keeps the motions that must lie between them, and tries
         * every third of those for which no closing rate is found; keeps one alone where every
         * direction closes.
         */
        private void inPlane(HandTable rough, int begin, List<double[]> starts) {
            Directions shooting = shadow.directions(rough, cord);
            List<Optional<PlaneShooting.Closed>> closed = closed(shooting, starts);
            incomplete |= closed.contains(Optional.<PlaneShooting.Closed>empty());
            List<double[]> next = between(shooting, closed);
            for (int i = 0; i < starts.size() && !adrift; i += 3) {
                if (closed.get(i).isEmpty()) {
                    next.add(starts.get(i));
                }
            }
            next.forEach(start -> keepBetween(rough, begin, start));
        }

        /**
         * What starts all round in the plane stood upright become as that is tipped: keeps the
         * motions that must lie between them.
         */
        private void tipped(HandTable rough, double[] start) {
            Tipping tipping = Tipping.of(ideal.pairing().part(side).place().plane());
            Rotation back = tipping.back(1);
            HandTable stood = rough.turned(back);
            Vector3D axis = back.applyTo(shadow.axis());
            double[] first = Tipping.turned(start, back);
            weighed(stood, axis, first)
                    .flatMap(y -> tipping.followed(rough, cord, shadow, y, false))
                    .ifPresent(c -> keep(c.state()));
            if (!everywhere && works()) {
                return;
            }
            Directions upright = new PlaneShooting(stood, cord, axis, shadow.turn());
            int count = everywhere ? ALL_ROUND : FEW_ROUND;
            List<Optional<PlaneShooting.Closed>> closed =
                    closed(
                                    upright,
                                    IntStream.range(0, count)
                                            .mapToObj(
                                                    i ->
                                                            upright.turned(
                                                                    first,
                                                                    round() * 2 * Math.PI * i
                                                                            / count))
                                            .toList())
                            .stream()
                            .map(
                                    one ->
                                            one.flatMap(
                                                    c ->
                                                            tipping.followed(
                                                                    rough, cord, shadow, c.state(),
                                                                    true)))
                            .toList();
            for (double[] y : between(shadow.directions(rough, cord), closed)) {
                keepBetween(rough, 0, y);
            }
        }

        private void keepBetween(HandTable rough, int begin, double[] start) {
            if (adrift) {
                found.clear();
                settled = 0;
                keepAligned(carried(start, begin));
            } else {
                shadow.from(rough, cord, start, planar ? 1e-6 : 1e-7)
                        .ifPresent(y -> keep(y, begin));
            }
        }

        /** What closes in each of directions all round; empty where no such rate is found. */
        private List<Optional<PlaneShooting.Closed>> closed(
                Directions shooting, List<double[]> starts) {
            int count = starts.size();
            List<Optional<PlaneShooting.Closed>> closed = new ArrayList<>();
            double step = round() * 2 * Math.PI / count;
            for (int i = 0; i < count; i++) {
                // The neighbour's closing rate is the better guess; the ideal's the other.
                Optional<PlaneShooting.Closed> by = i == 0 ? Optional.empty() : closed.get(i - 1);
                Optional<PlaneShooting.Closed> one = by.flatMap(c -> beside(shooting, c, step));
                closed.add(
                        one.isPresent()
                                ? one
                                : shooting.closed(starts.get(i), 1e-7, Shadow.CLOSING));
            }
            for (int way : new int[] {1, count - 1}) {
                for (int k = 0; k < 2 * count; k++) {
                    int i = way == 1 ? k % count : (2 * count - k) % count;
                    Optional<PlaneShooting.Closed> by = closed.get((i + count - way) % count);
                    if (closed.get(i).isEmpty() && by.isPresent()) {
                        closed.set(i, beside(shooting, by.get(), way == 1 ? step : -step));
                    }
                }
            }
            return closed;
        }

        private static Optional<PlaneShooting.Closed> beside(
                Directions shooting, PlaneShooting.Closed one, double step) {
            return shooting.closed(shooting.turned(one.state(), step), 1e-7, Shadow.CLOSING);
        }

        /** Where nothing is lacking between neighbours; one alone where every direction closes. */
        private List<double[]> between(
                Directions shooting, List<Optional<PlaneShooting.Closed>> closed) {
            int count = closed.size();
            List<PlaneShooting.Closed> all = closed.stream().flatMap(Optional::stream).toList();
            double most = all.stream().mapToDouble(c -> Math.abs(c.missing())).max().orElse(1);
            List<double[]> out = new ArrayList<>();
            if (3 * all.size() >= count && most < Shadow.ADRIFT) {
                adrift = true;
                out.add(all.get(0).state());
                return out;
            }
            for (int i = 0; i < count; i++) {
                Optional<PlaneShooting.Closed> one = closed.get(i);
                Optional<PlaneShooting.Closed> two = closed.get((i + 1) % count);
                if (one.isPresent()
                        && two.isPresent()
                        && one.get().missing() < 0 != two.get().missing() < 0) {
                    shooting.between(one.get(), two.get(), 1e-8).ifPresent(c -> out.add(c.state()));
                }
            }
            return out;
        }

        /**
         * Where every direction closes, the one whose cord runs ahead of the ideal's as much as
         * behind it.
         */
        private void keepAligned(double[] start) {
            HandTable fine = tables.of(3 * coarse);
            Directions shooting = shadow.directions(fine, cord);
            double[] from = start;
            Optional<Orbit> last = Optional.empty();
            double missing = 0;
            double lead = 0;
            // By the secant method: the lead changes by more than the start is turned, or by less.
            double turned = 0;
            double slope = 1;
            for (int i = 0; i < 12; i++) {
                double before = lead;
                Optional<PlaneShooting.Closed> closed = shooting.closed(from, Shadow.CLOSE, 20);
                if (closed.isEmpty()) {
                    break;
                }
                Orbit orbit = new Orbit(fine, cord, closed.get().state(), shadow.normal());
                last = Optional.of(orbit);
                missing = Math.abs(closed.get().missing());
                lead = Lead.of(turning, hand, orbit.head(), ideal, side).angle();
                if (Math.abs(lead) < 1e-9) {
                    break;
                }
                double found = (lead - before) / turned;
                if (i > 0 && found > 0.1 && found < 10) {
                    slope = found;
                }
                turned = -lead / slope;
                from = shooting.turned(closed.get().state(), turned);
            }
            if (last.isPresent()) {
                settled++;
                Orbit orbit = last.get();
                found.add(settled(orbit, orbit.head(), OptionalDouble.of(missing)));
            }
        }

        private void keep(double[] rough, int begin) {
            keep(carried(rough, begin));
        }

        private void keep(double[] rough) {
            settled++;
            if (known(rough)) {
                return;
            }
            HandTable fine = tables.of(3 * coarse);
            Optional<double[]> polished =
                    shadow.from(fine, cord, rough, Shadow.CLOSE)
                            .or(() -> shadow.drifting(fine, cord, rough));
            if (polished.isEmpty()) {
                return;
            }
            double[] state = polished.get();
            seen.add(state);
            Orbit orbit = new Orbit(fine, cord, state, shadow.normal());
            Course head = orbit.head();
            if (turning.turns(hand, head) != wanted
                    && ideal.pairing().part(side).place().turn().turns() == 0) {
                otherTurns++;
                return;
            }
            found.add(settled(orbit, head, OptionalDouble.empty()));
        }

        private boolean known(double[] state) {
            for (double[] other : seen) {
                if (apart(state, other) < SAME * 100) {
                    return true;
                }
            }
            return false;
        }

        private double apart(double[] a, double[] b) {
            double unit = cord.swingLength() * 2 * Math.PI / ideal.period();
            double sum = 0;
            for (int i = 0; i < 6; i++) {
                double d = (a[i] - b[i]) / (i < 3 ? 1 : unit);
                sum += d * d;
            }
            return Math.sqrt(sum);
        }

        private Settled settled(Orbit orbit, Course head, OptionalDouble error) {
            Pulls pulls = Pulls.of(orbit.table(), cord, head, ideal.interval(), cuts);
            Lead lead = Lead.of(turning, hand, head, ideal, side);
            return new Settled(orbit, head, lead, pulls, error);
        }

        private Solution solution(Settled one) {
            return new Solution(
                    one.orbit(),
                    one.head(),
                    Away.of(one.head(), ideal.head(side), ideal, side),
                    one.lead(),
                    true,
                    one.pulls().least(),
                    one.pulls().leastTime(),
                    one.pulls().greatest(),
                    Floquet.of(one.orbit()).growth(),
                    one.error().orElseGet(() -> error(one.orbit().start())));
        }

        private double error(double[] state) {
            return shadow.from(tables.of(6 * coarse), cord, state, Shadow.CLOSE)
                    .map(finer -> apart(finer, state))
                    .orElse(Double.POSITIVE_INFINITY);
        }
    }

    /** Of a side's hand over its own cycle. */
    static HandTables tables(Trace ideal, Side side) {
        return HandTables.of(ideal.hand(side), Times.cuts(ideal.ownCycle(side), side, 3));
    }

    /** Least and greatest tension at the head over a cycle, newtons. */
    record Pulls(double least, double leastTime, double greatest) {
        static Pulls of(HandTable table, Cord cord, Course head, Interval over, double[] cuts) {
            Tension tension = new Tension(table.hand(), head, cord);
            Times times = Times.of(over, cuts, 192);
            double[] pulls = times.of(tension::at);
            double least = times.least(pulls, tension::at);
            for (int i = 0; i < pulls.length; i++) {
                pulls[i] = -pulls[i];
            }
            double most = times.least(pulls, t -> -tension.at(t));
            return new Pulls(tension.at(least), least, tension.at(most));
        }
    }

    /** Tension at the head, newtons. */
    private record Tension(Course hand, Course head, Cord cord) {
        double at(double time) {
            State h = hand.at(time);
            State p = head.at(time);
            Vector3D e = p.position().subtract(h.position()).normalize();
            return e.dotProduct(
                    cord.fall()
                            .subtract(p.acceleration())
                            .scalarMultiply(cord.kit().headMass())
                            .add(cord.drag(p.velocity())));
        }
    }

    /**
     * Normal of the plane in which hand, cord and gravity all stay; the zero vector where there is
     * none.
     */
    public static Vector3D planeNormal(Trace trace, Side side, Cord cord) {
        Place place = trace.pairing().part(side).place();
        Vector3D normal = place.plane().normal();
        if (place.turn().turns() != 0
                || Math.abs(cord.fall().dotProduct(normal)) > 1e-12 * Gravity.STANDARD) {
            return Vector3D.ZERO;
        }
        for (int i = 0; i < 24; i++) {
            double t = trace.interval().start() + trace.period() * i / 24;
            State h = trace.hand(side).at(t);
            State p = trace.head(side).at(t);
            if (Math.abs(h.velocity().dotProduct(normal)) > 1e-9 * (1 + h.velocity().getNorm())
                    || Math.abs(p.position().subtract(h.position()).dotProduct(normal)) > 1e-9) {
                return Vector3D.ZERO;
            }
        }
        return normal;
    }
}
