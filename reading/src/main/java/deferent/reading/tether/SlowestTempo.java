package deferent.reading.tether;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The slowest tempo at which a hand's cord stays taut and its poi still gets round.
 *
 * <p>Time scales out of the ideal figure: at a period P its accelerations are α(φ)/P², φ the phase.
 * So without drag
 *
 * <ul>
 *   <li>the ideal's pull over the mass is −α·e/P² + g·e, and the slowest tempo is the least of
 *       √(−α·e/(−g·e)) over the phases where the cord points up (g·e &lt; 0);
 *   <li>a figure asks for free fall where α(φ) points straight down with |α| = gP²; in a plane the
 *       cord's number of turns can change there and nowhere else;
 *   <li>a still hand needs √(gL) at the top of the circle, which takes the period 2π/agm(√5,
 *       1)·√(L/g) a turn: from energy, θ′² = (g/L)(3 − 2cos θ), θ from the top, and ∫dθ/√(3 − 2cos
 *       θ) over a turn is 2π/agm(√5, 1), DLMF 19.8(i).
 * </ul>
 *
 * <p>A still hand keeps no tilted plane; its cord goes round on a cone.
 *
 * <p>With drag the tempo is stepped down from one that works and the place where it stops working
 * is bisected. For a hand that keeps a moving path a motion is looked for at a ladder of tempos,
 * the fastest first, and followed down from there until it ends; what gave way is the reason. That
 * search has its limits: a motion that stands between two rungs alone is missed, and following ends
 * after a stated number of steps.
 *
 * @param side whose
 * @param ideal for the ideal figure, cord along its tether
 * @param figureKept for a hand that keeps the figure
 * @param handPathKept for a hand that keeps its own path
 * @param gravityAlone for a swing, seconds of one cycle at which gravity alone does the work, hand
 *     still; empty for other motions
 */
public record SlowestTempo(
        Side side, Limit ideal, Limit figureKept, Limit handPathKept, OptionalDouble gravityAlone) {

    /** What gives way below the slowest tempo, or why there is none. */
    public enum Reason {
        /** Slower, the cord would have to push. */
        SLACK,
        /** Slower, the figure asks for free fall and the cord no longer gets round. */
        FREE_FALL,
        /** Slower, no periodic motion with the wanted turns is found. */
        VANISHES,
        /** Nothing down to the slowest tempo there is. */
        NONE,
        /**
         * No tempo works: even at the fastest, the cord would have to push or does not get round.
         */
        NEVER,
        /** A pendulum that nobody drives sets the tempo; it works there. */
        OWN_TEMPO
    }

    /**
     * One slowest tempo.
     *
     * @param reason what gives way
     * @param tempo slowest that works, a minute, as the pairing counts; empty where there is no
     *     slowest tempo or nothing works
     * @param period seconds of the common cycle at that tempo; empty with it
     * @param phase where in the cycle it gives way, in cycles from the start; empty where the
     *     reason has no place
     * @param fastest fastest that works, a minute; empty where the fastest tempo there is does
     */
    public record Limit(
            Reason reason,
            OptionalDouble tempo,
            OptionalDouble period,
            OptionalDouble phase,
            OptionalDouble fastest) {
        public Limit {
            for (OptionalDouble number : List.of(tempo, period, phase, fastest)) {
                Refusal.numbers("the slowest tempo", number.orElse(0));
            }
        }

        static Limit without(Reason reason) {
            return new Limit(
                    reason,
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty());
        }

        Limit upTo(double fastestTempo) {
            return new Limit(reason, tempo, period, phase, OptionalDouble.of(fastestTempo));
        }

        /** Whether the pairing's tempo is fast enough, and not too fast. */
        public boolean met(double atTempo) {
            return reason != Reason.NEVER
                    && (tempo.isEmpty() || atTempo >= tempo.getAsDouble() * (1 - 1e-9))
                    && (fastest.isEmpty() || atTempo <= fastest.getAsDouble() * (1 + 1e-9));
        }

        /** Whether it works however slow or fast. */
        public boolean always() {
            return reason == Reason.NONE && fastest.isEmpty();
        }
    }

    private static final double SLOWEST = 1;
    private static final double FASTEST = 600;

    public static SlowestTempo of(Pairing pairing, Side side, Kit kit) {
        Trace trace = Trace.of(pairing);
        return of(trace, side, Cord.of(trace, side, kit));
    }

    /**
     * The slowest tempos of one cord.
     *
     * @param ideal the ideal trace of its pairing, at any tempo
     */
    public static SlowestTempo of(Trace ideal, Side side, Cord cord) {
        Corners.refuse(ideal, side);
        Looking looking = new Looking(ideal, side, cord);
        return new SlowestTempo(
                side,
                looking.ideal(),
                looking.figureKept(),
                looking.handPathKept(),
                gravityAlone(ideal.pairing().part(side), cord));
    }

    /**
     * The slowest tempo of a hand that keeps the figure alone: without drag a closed form, cheap
     * enough to rank many pairings by.
     */
    public static Limit figureKept(Trace ideal, Side side, Cord cord) {
        Corners.refuse(ideal, side);
        return new Looking(ideal, side, cord).figureKept();
    }

    /** A slowest tempo and a kept hand path's motions that agree on whether one works. */
    public record Agreed(SlowestTempo slowest, KeepTheHandPath handPathKept) {}

    /**
     * Brings this into agreement with what a search at the ideal's tempo alone found. A motion that
     * comes down from the fastest tempo is added to a search that missed it. Where it ends before
     * it comes so far, that is the slowest tempo. And a motion found at tempos at which none comes
     * down has limits of its own in an upright plane; they are told instead, since they are about
     * what is spun here. In another plane it is not the motion meant.
     */
    public Agreed agreed(Trace ideal, KeepTheHandPath searched) {
        boolean found = searched.best().isPresent();
        if (handPathKept.reason() == Reason.OWN_TEMPO
                || found == handPathKept.met(ideal.pairing().tempo())) {
            return new Agreed(this, searched);
        }
        Looking looking = new Looking(ideal, side, searched.cord());
        Looking.Branches branches = looking.new Branches();
        if (found) {
            // Out of a plane there are far ones at most tempos; only what is come down to is meant.
            return looking.normal.getNormSq() > 0
                    ? new Agreed(with(branches.about(searched)), searched)
                    : new Agreed(this, searched.apart(ideal));
        }
        Looking.Down down = branches.down(looking.period);
        KeepTheHandPath more = down.state().map(s -> searched.and(ideal, s)).orElse(searched);
        return more.best().isPresent()
                ? new Agreed(this, more)
                : new Agreed(with(down.before()), searched);
    }

    private SlowestTempo with(Limit otherHandPath) {
        return new SlowestTempo(side, ideal, figureKept, otherHandPath, gravityAlone);
    }

    /**
     * Seconds for one turn of the slowest full circle about a still hand with a taut cord:
     * 2π/agm(√5, 1)·√(length/gravity).
     */
    public static double loop(double length, double gravity) {
        double a = Math.sqrt(5);
        double b = 1;
        while (Math.abs(a - b) > 1e-15 * a) {
            double mean = (a + b) / 2;
            b = Math.sqrt(a * b);
            a = mean;
        }
        return 2 * Math.PI / a * Math.sqrt(length / gravity);
    }

    private static OptionalDouble gravityAlone(Part part, Cord cord) {
        double pulled = cord.gravity() * part.place().plane().v().getY();
        return part.motion()
                .spin()
                .swing()
                .filter(swing -> pulled > 0.01 * cord.gravity())
                .map(swing -> OptionalDouble.of(swing.period(cord.swingLength(), pulled)))
                .orElse(OptionalDouble.empty());
    }

    /** One look. */
    private static final class Looking {
        private static final int COUNT = 720;
        private static final double STRIDE = 1.04;

        /**
         * From one tempo at which a motion is looked for to the next, while none is found; where
         * the cord turns often in a cycle every look takes long, and they are fewer.
         */
        private static final double LADDER = 1.6;

        private static final double LONG_LADDER = 2;
        private static final int OFTEN = 8;

        /**
         * A poi that gets round is looked for where gravity is at most so many times what turning
         * and hand ask of the cord at the mean: a still hand's slowest circle has 0.41.
         */
        private static final double HEAVY = 8;

        /** How much slower at once a motion is followed at most, by its logarithm. */
        private static final double LONGEST = Math.log(1.25);

        /** How near losing its pull is told, by the period's logarithm. */
        private static final double NARROW = 1e-7;

        /** And where a motion merely vanishes, whose place is a blur. */
        private static final double BLUR = 3e-5;

        /** A pull that only touches zero still counts; in weights. */
        private static final double SLIGHT = 1e-6;

        /**
         * Steps of the integrator over which motions are followed in all, Newton's tries counted
         * once: some twenty times what most take. What is not followed further counts as vanished.
         */
        private static final int PATIENCE = 100_000;

        /** What a step out of a plane, with its four slips, costs in steps within one. */
        private static final int OUT_OF_PLANE = 12;

        /** How often a motion is taken up again where one ended, and how much slower. */
        private static final int FORKS = 3;

        private static final double BELOW = 1.003;

        /** From one sample to the next, radians: no cord turns so far in a seven-hundredth. */
        private static final double THROUGH_NOTHING = 2;

        private static final double LOST = KeepTheFigure.LOST;

        /** Where an acceleration grazes straight down it is looked at so often. */
        private static final int GRAZED = 8;

        private final Trace ideal;
        private final double cycles;
        private final Side side;
        private final Cord cord;
        private final Pairing pairing;
        private final double period;
        private final double shortest;
        private final double longest;
        private final Times times;
        private final List<Sample> samples;
        private final int turns;
        private final Vector3D normal;

        Looking(Trace ideal, Side side, Cord cord) {
            this.ideal = ideal.ownCycle(side);
            this.cycles = ideal.pairing().period() / this.ideal.period();
            this.side = side;
            this.cord = cord;
            this.pairing = ideal.pairing();
            this.period = this.ideal.period();
            this.shortest = period * pairing.tempo() / FASTEST;
            this.longest = period * pairing.tempo() / SLOWEST;
            this.times = Times.of(this.ideal, side, 2, COUNT);
            this.samples =
                    IntStream.range(0, times.count()).mapToObj(i -> sample(times.at(i))).toList();
            this.turns = Turning.wanted(this.ideal, side);
            this.normal = KeepTheHandPath.planeNormal(ideal, side, cord);
        }

        /** The ideal at one instant: at other tempos it is the same, but quicker or slower. */
        private record Sample(State head, Vector3D e) {}

        private Sample sample(double time) {
            State head = ideal.head(side).at(time);
            return new Sample(
                    head, head.position().subtract(ideal.hand(side).position(time)).normalize());
        }

        private double[] of(ToDoubleFunction<Sample> f) {
            return samples.stream().mapToDouble(f).toArray();
        }

        private Limit at(Reason reason, double found, double time) {
            double phase = (time - ideal.interval().start()) / period;
            return new Limit(
                    reason,
                    OptionalDouble.of(tempo(found)),
                    OptionalDouble.of(found * cycles),
                    OptionalDouble.of((phase - Math.floor(phase)) / cycles),
                    OptionalDouble.empty());
        }

        private double tempo(double found) {
            return pairing.tempo() * period / found;
        }

        private Limit own(boolean works) {
            return Limit.without(works ? Reason.OWN_TEMPO : Reason.NEVER);
        }

        // --- the ideal figure ---

        /** Pull over mass there were the trace's period {@code p}. */
        private double pull(Sample there, double p) {
            double quick = period / p;
            Vector3D drag = cord.drag(there.head().velocity().scalarMultiply(quick));
            return there.e()
                    .dotProduct(
                            cord.fall()
                                    .subtract(
                                            there.head()
                                                    .acceleration()
                                                    .scalarMultiply(quick * quick))
                                    .add(drag.scalarMultiply(1 / cord.kit().headMass())));
        }

        private double leastTime(double p) {
            return times.least(of(s -> pull(s, p)), t -> pull(sample(t), p));
        }

        private boolean taut(double p) {
            return samples.stream().allMatch(s -> pull(s, p) >= -1e-9)
                    && pull(sample(leastTime(p)), p) >= -1e-9;
        }

        Limit ideal() {
            if (pairing.setsOwnTempo()) {
                return own(taut(period));
            }
            if (!cord.kit().air()) {
                return idealWithoutAir();
            }
            return stepped(this::taut, p -> at(Reason.SLACK, p, leastTime(p)));
        }

        private Limit idealWithoutAir() {
            // Longest period there, squared; infinite where the cord hangs.
            ToDoubleFunction<Sample> longestSquared =
                    there -> {
                        double inward = (pull(there, period) - pullAtRest(there)) * period * period;
                        double weight = pullAtRest(there);
                        return weight < -1e-12 ? inward / -weight : inward >= -1e-12 ? 1e12 : -1;
                    };
            double time =
                    times.least(of(longestSquared), t -> longestSquared.applyAsDouble(sample(t)));
            double square = longestSquared.applyAsDouble(sample(time));
            if (square > longest * longest) {
                return Limit.without(Reason.NONE);
            }
            if (square < shortest * shortest) {
                // A hanging cord that is pushed at speed may yet be taut when slow enough.
                return stepped(this::taut, p -> at(Reason.SLACK, p, leastTime(p)));
            }
            return at(Reason.SLACK, Math.sqrt(square), time);
        }

        private double pullAtRest(Sample there) {
            return there.e().dotProduct(cord.fall());
        }

        // --- the figure ---

        private Vector3D asked(State head, double p) {
            double quick = period / p;
            Vector3D v = head.velocity().scalarMultiply(quick);
            return head.acceleration()
                    .scalarMultiply(quick * quick)
                    .subtract(cord.fall())
                    .subtract(cord.drag(v).scalarMultiply(1 / cord.swingMass()));
        }

        private boolean getsRound(double p) {
            if (pairing.part(side).place().turn().turns() == 0 && !asManyTurns(p)) {
                return false;
            }
            // Between the samples too: a head that runs on a line passes through nothing quickly.
            return fall(fallTime(p), p) >= LOST * Gravity.STANDARD;
        }

        // A cord whose shadow all but passes through nothing has turned neither way.
        private boolean asManyTurns(double p) {
            Turning turning = Turning.of(ideal, side);
            double[] angles = of(s -> turning.angle(asked(s.head(), p).negate()));
            double sum = 0;
            double last = angles[angles.length - 1];
            for (double angle : angles) {
                double by = Math.IEEEremainder(angle - last, 2 * Math.PI);
                if (Math.abs(by) > THROUGH_NOTHING) {
                    return false;
                }
                sum += by;
                last = angle;
            }
            return (int) Math.rint(sum / (2 * Math.PI)) == turns;
        }

        private double fall(double time, double p) {
            return asked(ideal.head(side).at(time), p).getNorm();
        }

        private double fallTime(double p) {
            return times.least(of(s -> asked(s.head(), p).getNorm()), t -> fall(t, p));
        }

        Limit figureKept() {
            if (pairing.setsOwnTempo()) {
                return own(getsRound(period));
            }
            // Where the head's acceleration jumps the hand would have to, at any tempo.
            if (ideal.breaks().stream().anyMatch(b -> b.side() == side && b.order() == 2)) {
                return Limit.without(Reason.NEVER);
            }
            if (!cord.kit().air() && normal.getNormSq() > 0 && getsRound(shortest)) {
                return figureKeptWithoutAir();
            }
            return stepped(this::getsRound, p -> at(Reason.FREE_FALL, p, fallTime(p)));
        }

        private Limit figureKeptWithoutAir() {
            Vector3D level = normal.crossProduct(Vector3D.PLUS_J).normalize();
            double best = Double.POSITIVE_INFINITY;
            double bestTime = 0;
            // From just before the seam, at which a cycle may well begin with the head at its top.
            for (int i = -1; i + 1 < times.count(); i++) {
                double a = i < 0 ? times.at(times.count() - 1) - period : times.at(i);
                double b = times.at(i + 1);
                double fa = across(a, level);
                double fb = across(b, level);
                if (fa == 0 || fa < 0 != fb < 0) {
                    double t = fa == 0 ? a : root(a, b, level);
                    double down = down(t);
                    double p = period * Math.sqrt(Math.max(down, 0) / cord.gravity());
                    if (down > 0 && p < best) {
                        best = p;
                        bestTime = t;
                    }
                }
            }
            // All but straight down is lost, too, which tells where the head grazes it.
            DoubleUnaryOperator beside = t -> Math.abs(across(t, level)) - LOST * down(t);
            for (Interval grazed : times.allBelow(times.of(beside), beside)) {
                for (int i = 0; i <= GRAZED; i++) {
                    double t = grazed.start() + grazed.length() * i / GRAZED;
                    double p = period * Math.sqrt(down(t) / cord.gravity());
                    if (p < best * (1 - 2 * LOST)) {
                        best = p;
                        bestTime = t;
                    }
                }
            }
            return best > longest
                    ? Limit.without(Reason.NONE)
                    : at(Reason.FREE_FALL, best, bestTime);
        }

        private double down(double time) {
            return -ideal.head(side).at(time).acceleration().getY();
        }

        private double across(double time, Vector3D level) {
            return ideal.head(side).at(time).acceleration().dotProduct(level);
        }

        private double root(double from, double to, Vector3D level) {
            double a = from;
            double b = to;
            boolean below = across(a, level) < 0;
            for (int i = 0; i < 60; i++) {
                double middle = (a + b) / 2;
                if (across(middle, level) < 0 == below) {
                    a = middle;
                } else {
                    b = middle;
                }
            }
            return (a + b) / 2;
        }

        // --- stepping and halving ---

        private interface Works {
            boolean at(double p);
        }

        private interface Told {
            Limit at(double p);
        }

        /**
         * From the fastest tempo down to the first that does not work, then halved. Where even the
         * fastest does not work, from the first that does, and no faster.
         */
        private Limit stepped(Works works, Told told) {
            double p = shortest;
            while (p <= longest && !works.at(p)) {
                p *= STRIDE;
            }
            if (p > longest) {
                return Limit.without(Reason.NEVER);
            }
            Limit slowest = slowest(works, told, p);
            return p == shortest ? slowest : slowest.upTo(tempo(edge(works, p, p / STRIDE)));
        }

        /** Between a period that works and one that does not, the last that does. */
        private static double edge(Works works, double from, double fails) {
            double good = from;
            double bad = fails;
            while (Math.abs(bad - good) > 1e-12 * bad) {
                double middle = (good + bad) / 2;
                if (middle == good || middle == bad) {
                    break;
                }
                if (works.at(middle)) {
                    good = middle;
                } else {
                    bad = middle;
                }
            }
            return good;
        }

        private Limit slowest(Works works, Told told, double from) {
            double p = from;
            while (p * STRIDE <= longest) {
                if (!works.at(p * STRIDE)) {
                    return told.at(edge(works, p, p * STRIDE));
                }
                p *= STRIDE;
            }
            return Limit.without(Reason.NONE);
        }

        // --- the kept hand ---

        Limit handPathKept() {
            if (pairing.setsOwnTempo()) {
                return own(KeepTheHandPath.of(ideal, side, cord).best().isPresent());
            }
            Part part = pairing.part(side);
            int turns = Math.abs(part.motion().spin().turns());
            boolean stillCircle =
                    part.still() && turns > 0 && normal.getNormSq() > 0 && !cord.kit().air();
            if (stillCircle && cord.gravity() > 0) {
                double down = Math.sqrt(1 - normal.getY() * normal.getY());
                double p = turns * loop(cord.swingLength(), cord.gravity() * down);
                return p > longest
                        ? Limit.without(Reason.NONE)
                        : p < shortest
                                ? Limit.without(Reason.NEVER)
                                : at(Reason.SLACK, p, topTime());
            }
            // A still hand puts no work in, and air takes some every turn.
            if (part.still() && turns > 0 && cord.kit().air()) {
                return Limit.without(Reason.NEVER);
            }
            if (part.still() && turns > 0 && cord.gravity() > 0) {
                return conical(turns);
            }
            return new Branches().limit();
        }

        /**
         * A still hand cannot keep a tilted plane: its cord goes round on a cone about the plumb
         * line, or on a circle in the upright plane. ω² = g/(L·cos α), α the cone's half angle
         * (Landau and Lifshitz, Mechanics, §14; from memory), and its shadow on the plane goes
         * round while α is more than the angle between the plane's normal and the plumb line.
         */
        private Limit conical(int turns) {
            double level = Math.abs(pairing.part(side).place().plane().normal().getY());
            double cone =
                    turns * 2 * Math.PI * Math.sqrt(cord.swingLength() * level / cord.gravity());
            double circle = level < 1 - 1e-9 ? turns * loop(cord.swingLength(), cord.gravity()) : 0;
            double p = Math.max(cone, circle);
            return p > longest
                    ? Limit.without(Reason.NONE)
                    : p < shortest
                            ? Limit.without(Reason.NEVER)
                            : at(cone > circle ? Reason.VANISHES : Reason.SLACK, p, topTime());
        }

        // When the ideal cord points straight up.
        private double topTime() {
            return times.least(of(this::pullAtRest), t -> pullAtRest(sample(t)));
        }

        /** Follows periodic motions down in tempo. */
        private final class Branches {
            private final HandTables tables = KeepTheHandPath.tables(ideal, side);
            private final Shadow shadow = Shadow.of(ideal, side, cord);
            private int patience = PATIENCE;

            /**
             * From the fastest tempo down, so that the answer is of the motion alone and not of the
             * tempo asked at.
             */
            Limit limit() {
                for (double p = shortest; p <= slowestLookedAt(); p = slower(p)) {
                    List<KeepTheHandPath.Settled> here = near(p);
                    if (!here.isEmpty()) {
                        return range(marks(p, here), true);
                    }
                }
                return Limit.without(Reason.NEVER);
            }

            /** The next tempo at which a motion is looked for. */
            private double slower(double p) {
                Part part = pairing.part(side);
                int spun =
                        Math.abs(part.motion().spin().turns())
                                * (int) Math.rint(part.cycles() / cycles);
                return p * (spun > OFTEN ? LONG_LADDER : LADDER);
            }

            private double slowestLookedAt() {
                double asked =
                        shadow.turn() * shadow.turn() * cord.swingLength()
                                + tables.quickest() * period * period;
                return turns == 0
                        ? longest
                        : Math.min(Math.sqrt(HEAVY * asked / cord.gravity()), longest);
            }

            /** How slow and how fast those motions can be that a search found at one tempo. */
            Limit about(KeepTheHandPath searched) {
                return range(
                        searched.solutions().stream()
                                .filter(one -> one.pulls() && one.asMeant())
                                .map(one -> Mark.of(period, one))
                                .toList(),
                        false);
            }

            /**
             * How slow and how fast the motion can be that gets furthest.
             *
             * @param forks whether another counts that goes on where it ends
             */
            private Limit range(List<Mark> starts, boolean forks) {
                Way furthest = furthest(starts);
                Limit slowest = told(forks ? beyond(furthest) : furthest);
                if (furthest.first().period() <= shortest * (1 + 1e-9)) {
                    return slowest;
                }
                Way faster = follow(furthest.first(), shortest);
                return faster.failed().isPresent()
                        ? slowest.upTo(tempo(faster.last().period()))
                        : slowest;
            }

            /**
             * Where a motion vanishes another may go on: a triquetra's forks in two at a tempo
             * where it cannot be followed itself. So it is looked for anew just below, as long as
             * that leads further. Where the cord goes slack the motion has come to its end.
             */
            private Way beyond(Way first) {
                Way slowest = first;
                for (int i = 0; i < FORKS && slowest.vanished(); i++) {
                    double p = slowest.last().period() * BELOW;
                    List<KeepTheHandPath.Settled> here = p > longest ? List.of() : everywhere(p);
                    if (here.isEmpty()) {
                        break;
                    }
                    slowest = furthest(marks(p, here));
                }
                return slowest;
            }

            /** Of motions at one tempo, the one that can be followed slowest. */
            private Way furthest(List<Mark> starts) {
                Way furthest = follow(starts.get(0), longest);
                for (int i = 1; i < starts.size() && furthest.failed().isPresent(); i++) {
                    Way way = follow(starts.get(i), longest);
                    furthest = way.last().period() > furthest.last().period() ? way : furthest;
                }
                return furthest;
            }

            private List<Mark> marks(double p, List<KeepTheHandPath.Settled> here) {
                return here.stream().map(one -> Mark.of(p, one)).toList();
            }

            /** The motion that comes down from the fastest tempo to a period. */
            Down down(double end) {
                double p = shortest;
                List<KeepTheHandPath.Settled> here = near(p);
                while (here.isEmpty() && slower(p) < Math.min(end, slowestLookedAt())) {
                    p = slower(p);
                    here = near(p);
                }
                Limit before = Limit.without(Reason.NEVER);
                for (int i = 0; i <= FORKS && !here.isEmpty(); i++) {
                    double furthest = p;
                    for (KeepTheHandPath.Settled one : here) {
                        Way way = follow(Mark.of(p, one), end);
                        if (way.failed().isEmpty()) {
                            return new Down(Optional.of(way.last().state()), before);
                        }
                        if (way.last().period() > furthest) {
                            furthest = way.last().period();
                            before = told(way);
                        }
                    }
                    p = furthest * BELOW;
                    here = p < end ? everywhere(p) : List.of();
                }
                return new Down(Optional.empty(), before);
            }

            private Limit told(Way way) {
                if (way.failed().isEmpty()) {
                    return Limit.without(Reason.NONE);
                }
                Mark last = way.last();
                Step failed = way.failed().get();
                double phase =
                        Double.isNaN(failed.place())
                                ? last.weakest() / last.period()
                                : failed.place();
                return new Limit(
                        failed.reason(),
                        OptionalDouble.of(tempo(last.period())),
                        OptionalDouble.of(last.period() * cycles),
                        OptionalDouble.of((phase - Math.floor(phase)) / cycles),
                        OptionalDouble.empty());
            }

            /**
             * Slower or faster in strides, shorter ones where one fails and longer ones again where
             * two did not, until they are too short to tell. Where the cord would have to push, the
             * next tempo is where the pull, on a straight line, is lost (false position, the
             * Illinois variant).
             */
            private Way follow(Mark start, double end) {
                double way = end > start.period() ? 1 : -1;
                double stride = LONGEST;
                Mark good = start;
                Optional<Mark> before = Optional.empty();
                Optional<Step> push = Optional.empty();
                int row = 0;
                while (good.period() != end) {
                    double to = push.map(Step::period).orElse(end);
                    double left = Math.abs(Math.log(to / good.period()));
                    if (push.isPresent() && left < NARROW) {
                        return new Way(start, good, push);
                    }
                    double on = stride;
                    if (push.isPresent()) {
                        on = Math.min(stride, left * held(good.pull(), push.get().pull(), row));
                        on = Math.max(NARROW / 2, Math.min(on, left - NARROW / 2));
                    }
                    Step step =
                            step(good, before, on < left ? good.period() * Math.exp(way * on) : to);
                    if (step.mark().isPresent()) {
                        before = Optional.of(good);
                        good = step.mark().get();
                        row = Math.max(row, 0) + 1;
                        stride = row > 1 ? Math.min(2 * stride, LONGEST) : stride;
                    } else if (step.reason() == Reason.SLACK) {
                        push = Optional.of(step);
                        row = Math.min(row, 0) - 1;
                    } else {
                        row = 0;
                        stride = Math.min(on, left) / 2;
                        if (stride < BLUR) {
                            return new Way(start, good, Optional.of(step));
                        }
                    }
                }
                return new Way(start, good, Optional.empty());
            }

            /**
             * How far from a cord that pulls to one that would push the pull is lost, as a share.
             *
             * @param row how often in a row the one end was moved, or below zero the other
             */
            private double held(double pull, double push, int row) {
                double nought = -SLIGHT * cord.headWeight();
                double here = (pull - nought) * Math.pow(0.5, Math.max(0, -row - 1));
                double there = (nought - push) * Math.pow(0.5, Math.max(0, row - 1));
                return here / (here + there);
            }

            private Step step(Mark from, Optional<Mark> before, double p) {
                if (patience < 0) {
                    return Step.vanished(p);
                }
                Trace trace = traced(p);
                HandTable table =
                        slowed(p, trace)
                                .of(
                                        KeepTheHandPath.fine(
                                                turns,
                                                cord,
                                                p,
                                                tables.quickest() * period * period / p / p));
                patience -= table.steps() * (normal.getNormSq() > 0 ? 1 : OUT_OF_PLANE);
                double[] guess = before.map(b -> from.beyond(b, p)).orElseGet(() -> from.at(p));
                Optional<double[]> found = shadow.near(table, cord, guess);
                // What is followed drifts from the first step on, or never.
                Optional<double[]> state =
                        found.or(
                                        () ->
                                                from.drifts()
                                                        ? shadow.drifting(table, cord, guess)
                                                        : Optional.empty())
                                .filter(y -> !far(y, guess));
                if (state.isEmpty()) {
                    return Step.vanished(p);
                }
                Following head = Following.cycle(table, cord, state.get());
                if (!Lead.of(Turning.of(trace, side), table.hand(), head, trace, side).meant()) {
                    return Step.vanished(p);
                }
                KeepTheHandPath.Pulls pulls =
                        KeepTheHandPath.Pulls.of(
                                table, cord, head, table.over(), Times.cuts(trace, side, 3));
                double phase = pulls.leastTime() / p;
                Optional<Mark> mark =
                        pulls.least() < -SLIGHT * cord.headWeight()
                                ? Optional.empty()
                                : Optional.of(
                                        new Mark(
                                                p,
                                                state.get(),
                                                pulls.least(),
                                                pulls.leastTime(),
                                                found.isEmpty()));
                return new Step(mark, Reason.SLACK, phase, p, pulls.least());
            }

            // A jump to another branch is no continuation.
            private boolean far(double[] a, double[] b) {
                double dot = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
                return dot < Math.cos(0.5);
            }

            private List<KeepTheHandPath.Settled> near(double p) {
                Trace trace = traced(p);
                return KeepTheHandPath.near(trace, side, cord, slowed(p, trace));
            }

            private List<KeepTheHandPath.Settled> everywhere(double p) {
                Trace trace = traced(p);
                return KeepTheHandPath.everywhere(trace, side, cord, slowed(p, trace));
            }

            private HandTables slowed(double p, Trace trace) {
                return tables.slowed(p / period, trace.hand(side));
            }

            private Trace traced(double p) {
                return p == period
                        ? ideal
                        : Trace.of(
                                        pairing.withTempo(
                                                OptionalDouble.of(
                                                        Math.max(
                                                                SLOWEST,
                                                                Math.min(FASTEST, tempo(p))))))
                                .ownCycle(side);
            }
        }

        /** A motion's state at a tempo; where none comes down so far, where it ended before. */
        private record Down(Optional<double[]> state, Limit before) {}

        /** A motion followed as far as it goes, and what then failed if anything did. */
        private record Way(Mark first, Mark last, Optional<Step> failed) {
            boolean vanished() {
                return failed.isPresent() && failed.get().reason() == Reason.VANISHES;
            }
        }

        /**
         * @param pull least, newtons
         * @param weakest when, seconds
         * @param drifts whether it may close but for a drift too slow to matter
         */
        private record Mark(
                double period, double[] state, double pull, double weakest, boolean drifts) {
            /** The same turning at another tempo. */
            double[] at(double p) {
                double[] y = state.clone();
                for (int i = 3; i < 6; i++) {
                    y[i] *= period / p;
                }
                return y;
            }

            /** Where an even turn over the period's logarithm from an earlier mark leads. */
            double[] beyond(Mark earlier, double p) {
                double share = Math.log(p / period) / Math.log(period / earlier.period);
                double[] is = at(p);
                double[] was = earlier.at(p);
                Rotation turned = new Rotation(vector(was, 0), vector(is, 0));
                Rotation on =
                        new Rotation(
                                turned.getAxis(RotationConvention.VECTOR_OPERATOR),
                                share * turned.getAngle(),
                                RotationConvention.VECTOR_OPERATOR);
                Vector3D e = on.applyTo(vector(is, 0));
                Vector3D q =
                        on.applyTo(
                                new Vector3D(
                                        1 + share,
                                        vector(is, 3),
                                        -share,
                                        turned.applyTo(vector(was, 3))));
                double[] y = {e.getX(), e.getY(), e.getZ(), q.getX(), q.getY(), q.getZ()};
                Swinging.tidy(y);
                return y;
            }

            private static Vector3D vector(double[] y, int from) {
                return new Vector3D(y[from], y[from + 1], y[from + 2]);
            }

            static Mark of(double period, KeepTheHandPath.Settled settled) {
                return new Mark(
                        period,
                        settled.orbit().start(),
                        settled.pulls().least(),
                        settled.pulls().leastTime(),
                        true);
            }

            static Mark of(double period, KeepTheHandPath.Solution solution) {
                return new Mark(
                        period,
                        solution.orbit().start(),
                        solution.leastPull(),
                        solution.leastPullTime(),
                        true);
            }
        }

        /**
         * @param mark empty where the cord would have to push or no motion is found
         * @param place where in the cycle it pulls least; NaN where none is found
         * @param pull least, newtons; NaN likewise
         */
        private record Step(
                Optional<Mark> mark, Reason reason, double place, double period, double pull) {
            static Step vanished(double period) {
                return new Step(Optional.empty(), Reason.VANISHES, Double.NaN, period, Double.NaN);
            }
        }
    }
}
