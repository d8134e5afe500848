package deferent.reading.tether;

import deferent.motion.pairing.HandLimits;
import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Course;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What becomes of a slip when the hand that sees or feels it answers, a reaction time late.
 *
 * <p>Three ways of answering are tried. Knowing the motion: the hand goes on from the moment of the
 * motion that the poi is nearest to and brings back what is left; it holds the figure and lets the
 * timing give ({@link UntimedAnswer}). Plainly: against place and speed of the slip as they were,
 * in time with the motion, by the gains that leave least of it ({@link DelayedAnswer}). Once a
 * cycle: a short stroke at one place, of a size taken from the slip a reaction time before ({@link
 * Stroke}).
 *
 * <p>The whole poi is simulated, with the hand's limits and with senses that are off by chance
 * ({@link UntimedRun}; {@link Answering} for those in time): the greatest slip that comes back
 * within a hand's breadth of the figure, from anywhere in the cycle. Senses are off by up to a
 * tenth of what is felt, our choice, within the some 13 % at most that Insperger and Milton (Biol.
 * Cybern. 108 (2014)) take from nerves' signals. For scale: the shortest stick that expert
 * balancers hold, 0.32 m with a delay of 0.23 s (Milton and others, J. R. Soc. Interface
 * 13:20160212 (2016)), falls e^1.56 times as far within it.
 *
 * <p>Held in time with itself an isolation at 60 to 120 a minute comes out as lost, which spinners
 * do daily (common practice, no source); held by its figure a slip of 1 cm or more comes back.
 *
 * @param reaction seconds by which the hand is late
 * @param verdict who holds it
 * @param left what a hand that knows the motion leaves of a small slip after a cycle, times as
 *     much, if it felt every one a tenth too small or too great, whichever is worse
 * @param longest the longest delay at which a slip of {@link #ENOUGH} comes back in that hand's
 *     simulation, seconds; at most {@link #LONGEST}, 0 where it does at none of a hand's
 * @param once the best place for one stroke a cycle; empty where a cycle is too short for one
 * @param recovers the greatest of {@link #SLIPS} that comes back in that hand's simulation, metres;
 *     0 where none does
 */
public record Correction(
        double reaction,
        Verdict verdict,
        double left,
        double longest,
        Optional<Once> once,
        double recovers) {
    public Correction {
        Refusal.numbers("the correction", reaction, left, longest, recovers);
    }

    /** Who holds a motion. */
    public enum Verdict {
        /** A hand that goes against what it sees. */
        HOLDS,
        /** Only a hand that knows the motion. */
        PRACTISED,
        /** None of the answers tried. */
        LOST
    }

    /**
     * One stroke a cycle.
     *
     * @param time at which it begins, seconds
     * @param left what is left of a slip after a cycle, times as much, the senses off at the worst
     * @param holds whether it also brings back {@link #ENOUGH} in the simulation
     */
    public record Once(double time, double left, boolean holds) {}

    /** By what share a slip is felt too small or too great. */
    static final double UNSURE = 0.1;

    /** A slip that must come back for a motion to count as held, metres; our choice. */
    public static final double ENOUGH = 0.005;

    /** No longer delay is tried, seconds. */
    public static final double LONGEST = 0.6;

    /** Nor a shorter one, seconds: no hand answers so soon. */
    private static final double SHORTEST = 0.05;

    /** Halvings of what is between: to a fortieth of a second or less. */
    private static final int HALVINGS = 4;

    /** Places round the cycle tried for a stroke. */
    private static final int PLACES = 24;

    /** In space, where each takes longer. */
    private static final int FEW_PLACES = 6;

    /** Places round the cycle at which a slip is put. */
    private static final int BEGINNINGS = 4;

    private static final long SEED = 1;

    /** Slips that are simulated, metres. */
    static final double[] SLIPS = {0.002, 0.005, 0.01, 0.02, 0.05, 0.1};

    /** How eager a hand is, rad/s, a calm one first (our choice). */
    static final double[] EAGER = {8, 12};

    /** A cycle of more steps than these is not asked about: it would take long. */
    private static final int MOST_STEPS = 800;

    /** Nor is a motion from which a slip is lost within a moment. */
    private static final double FASTEST = 1e6;

    /** A step of the cycle, seconds at most, and how far the cord turns within it, radians. */
    private static final double STEP = 0.025;

    private static final double TURN = 0.15;

    /** Whether there is anything to correct, and few enough steps in a cycle to follow it. */
    public static boolean asked(Orbit orbit, Steadiness steadiness) {
        return steadiness.verdict() == Steadiness.Verdict.RUNS_AWAY
                && steadiness.growth() < FASTEST
                && orbit.table().steps() * parts(orbit) <= MOST_STEPS;
    }

    /** At {@link Steadiness#REACTION}, by the usual hand. */
    public static Correction of(Orbit orbit) {
        return of(orbit, Steadiness.REACTION, HandLimits.USUAL);
    }

    /**
     * At a reaction time of one's own. The hand's course must be smooth.
     *
     * @param reaction seconds
     * @param limits of the hand that corrects
     */
    public static Correction of(Orbit orbit, double reaction, HandLimits limits) {
        return new Asking(MeantMotion.of(orbit, parts(orbit)), reaction, limits).answer();
    }

    private static int parts(Orbit orbit) {
        HandTable table = orbit.table();
        Course head = orbit.course();
        double length = orbit.period() / table.steps();
        double most = 0;
        for (int i = 0; i < table.steps(); i++) {
            double time = table.time(i);
            most =
                    Math.max(
                            most,
                            head.at(time).velocity().distance(orbit.hand().at(time).velocity()));
        }
        double turned = most / orbit.cord().length() * length;
        return (int) Math.ceil(Math.max(length / STEP, turned / TURN) - 1e-9);
    }

    /** One correction in the making. */
    private static final class Asking {
        private final MeantMotion meant;
        private final double reaction;
        private final HandLimits limits;
        private final Answering answering;
        private final List<Axis> axes = new ArrayList<>();
        private final UntimedLaw law;
        private final List<double[][]> gains = new ArrayList<>();

        /** Where a slip on that axis was last lost: it will be there again, most likely. */
        private final int[] lost = new int[2];

        /** The gains that last held. */
        private int holding;

        /**
         * What is answered apart in time with the motion: in a plane one of its axes, in space both
         * together.
         *
         * @param first of them
         */
        private record Axis(SlipLaw law, int first) {}

        /** How a run from a slip on one axis goes. */
        private interface Trial {
            boolean back(int begun, double first, double second, long seed);
        }

        Asking(MeantMotion meant, double reaction, HandLimits limits) {
            this.meant = meant;
            this.reaction = reaction;
            this.limits = limits;
            this.answering = new Answering(meant, limits);
            this.law = UntimedLaw.of(meant);
            for (double eager : EAGER) {
                gains.add(UntimedAnswer.gains(law, eager));
            }
            if (meant.planar()) {
                // Slips on an axis where they do not grow are let alone.
                for (int axis = 0; axis < 2; axis++) {
                    SlipLaw law = SlipLaw.planar(meant, axis == 0);
                    if (law.growth() > 1 + Steadiness.EVEN) {
                        axes.add(new Axis(law, axis));
                    }
                }
            }
            if (axes.isEmpty()) {
                axes.add(
                        new Axis(
                                meant.planar()
                                        ? SlipLaw.planar(meant, true)
                                        : SlipLaw.spatial(meant),
                                0));
            }
        }

        Correction answer() {
            double most = recovers();
            boolean held = most >= ENOUGH;
            return new Correction(
                    reaction,
                    held && plain() ? Verdict.HOLDS : held ? Verdict.PRACTISED : Verdict.LOST,
                    left(),
                    longest(held),
                    once(),
                    most);
        }

        /** By the gains that leave least. */
        private double left() {
            double least = Double.POSITIVE_INFINITY;
            for (double[][] each : gains) {
                Leaving.stop();
                least = Math.min(least, new UntimedAnswer(law, each, reaction).left(UNSURE));
            }
            return least;
        }

        private boolean plain() {
            List<Leaving.Best> found =
                    axes.stream()
                            .map(a -> new DelayedAnswer(a.law(), reaction).best(UNSURE))
                            .toList();
            return found.stream().allMatch(Leaving.Best::holds)
                    && inTime(new Answering.Steady(on(0, found), on(1, found), reaction), ENOUGH);
        }

        /** The gains on one of both axes of what was found for those that are answered. */
        private Gains on(int axis, List<Leaving.Best> found) {
            for (int i = 0; i < axes.size(); i++) {
                int from = axes.get(i).first();
                if (from <= axis && axis < from + axes.get(i).law().axes()) {
                    return found.get(i).gains();
                }
            }
            return Gains.NONE;
        }

        private boolean held(double delay) {
            for (int i = 0; i < gains.size(); i++) {
                int at = (holding + i) % gains.size();
                if (letsGive(gains.get(at), delay, ENOUGH)) {
                    holding = at;
                    return true;
                }
            }
            return false;
        }

        /** A longer delay holds no better, all but everywhere. */
        private double longest(boolean atReaction) {
            double held = atReaction ? reaction : Math.min(SHORTEST, reaction);
            double not = atReaction ? Math.max(LONGEST, reaction) : reaction;
            if (atReaction ? held(not) : !held(held)) {
                return atReaction ? not : 0;
            }
            for (int i = 0; i < HALVINGS; i++) {
                double middle = (held + not) / 2;
                if (held(middle)) {
                    held = middle;
                } else {
                    not = middle;
                }
            }
            return held;
        }

        private Optional<Once> once() {
            if (!Stroke.fits(meant.period(), reaction)) {
                return Optional.empty();
            }
            List<Leaving.Best> best = List.of();
            double left = Double.POSITIVE_INFINITY;
            int place = 0;
            int places = meant.planar() ? PLACES : FEW_PLACES;
            for (int i = 0; i < places; i++) {
                int node = i * meant.steps() / places;
                List<Leaving.Best> found =
                        axes.stream()
                                .map(a -> Stroke.of(a.law(), node, reaction).best(UNSURE))
                                .toList();
                double here = found.stream().mapToDouble(Leaving.Best::left).max().orElseThrow();
                if (here < left) {
                    best = found;
                    left = here;
                    place = node;
                }
            }
            double time = meant.times()[place];
            boolean holds =
                    left < 1
                            && inTime(
                                    new Answering.Once(on(0, best), on(1, best), reaction, time),
                                    ENOUGH);
            return Optional.of(new Once(time, left, holds));
        }

        /** The greatest slip that is brought back with one and the same eagerness. */
        private double recovers() {
            int most = -1;
            for (double[][] each : gains) {
                // What comes back from a slip comes back from a smaller one, all but always.
                int not = SLIPS.length;
                int at = Math.max(most + 1, SLIPS.length / 2 - 1);
                while (most + 1 < not) {
                    if (letsGive(each, reaction, SLIPS[at])) {
                        most = at;
                    } else {
                        not = at;
                    }
                    at = (most + 1 + not) / 2;
                }
            }
            return most < 0 ? 0 : SLIPS[most];
        }

        /** By a hand that holds the figure, from a slip on either axis. */
        private boolean letsGive(double[][] each, double delay, double slip) {
            UntimedRun hand = new UntimedRun(law, each, delay, limits);
            Trial trial =
                    (begun, first, second, seed) -> hand.run(begun, first, second, seed).held();
            return comesBack(trial, 0, slip) && comesBack(trial, 1, slip);
        }

        /** By one that holds the motion's time, from a slip on any axis that is answered. */
        private boolean inTime(Answering.Way way, double slip) {
            Trial trial =
                    (begun, first, second, seed) ->
                            answering.run(way, begun, first, second, seed).held();
            for (Axis axis : axes) {
                for (int of = axis.first(); of < axis.first() + axis.law().axes(); of++) {
                    if (!comesBack(trial, of, slip)) {
                        return false;
                    }
                }
            }
            return true;
        }

        /** From anywhere in the cycle, either way. */
        private boolean comesBack(Trial trial, int axis, double slip) {
            int trials = 2 * BEGINNINGS;
            for (int k = 0; k < trials; k++) {
                Leaving.stop();
                int i = (lost[axis] + k) % trials;
                int begun = i / 2 * meant.steps() / BEGINNINGS;
                double aside = i % 2 == 0 ? slip : -slip;
                if (!trial.back(begun, axis == 0 ? aside : 0, axis == 1 ? aside : 0, SEED + i)) {
                    lost[axis] = i;
                    return false;
                }
            }
            return true;
        }
    }
}
