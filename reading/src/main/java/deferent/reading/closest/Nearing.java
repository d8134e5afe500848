package deferent.reading.closest;

import deferent.motion.pairing.HandLimits;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.TetherAngle;
import deferent.motion.trace.Trace;
import deferent.reading.tether.Cord;
import deferent.reading.tether.KeepTheHandPath;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * From where the closest figure is looked for. {@link NearestHead} goes downhill only, so what it
 * finds hangs on its start:
 *
 * <ol>
 *   <li>what was found before for nearly the same question, where that is given;
 *   <li>the ideal figure itself;
 *   <li>where that comes no nearer than a centimetre: the figure about a still hand, the motions
 *       given (what the poi does behind its hand), and where all of these stay five centimetres off
 *       or pass a bound, the figure about a hand path half as large.
 * </ol>
 *
 * <p>A start whose cord does not turn as the ideal's under gravity is followed from none of it, a
 * quarter at a time and less where it must be, while the cord is asked to pull with more than the
 * next step takes away. The best of the starts at a low order is then settled at a higher one.
 */
final class Nearing {
    private static final int SURVEY = 40;

    /** To so much the ideal's own harmonics must draw it, metres. */
    private static final double FAITHFUL = 1e-3;

    /**
     * Harmonics beyond the ideal's own while starts are tried, and at most at the end: fewer beyond
     * an ideal that has many.
     */
    private static final int FEW = 6;

    private static final int MANY = 12;

    /**
     * Of an ideal with corners no more are taken, for no hand draws them; so many a turn of the
     * poi, and these at the least.
     */
    private static final int MOST_EACH_TURN = 3;

    private static final int MOST_FOR_ALL = 20;

    /** An ideal with more turns would take too long. */
    private static final int MOST_TURNS = 12;

    /** Instants for each order, and beside these while starts are tried and at the end. */
    private static final int EACH = 8;

    private static final int SPARSE = 32;
    private static final int DENSE = 104;
    private static final int DENSEST = 2400;

    /** Where bounds are passed by more than this between the instants, there are more of them. */
    private static final double PASSED = 8e-3;

    private static final int STEPS = 12;
    private static final double ENOUGH = 1e-4;

    /** Bounds drawn in count as kept to this share. */
    private static final double KEPT = 2e-3;

    private static final double NEAR = 0.01;
    private static final double FAR = 0.05;

    /** The shares by which gravity is turned up, at first and at the least. */
    private static final double RISE = 0.25;

    private static final double LEAST_RISE = 1.0 / 40;

    /**
     * So many multiplications are spent on one hand, about a third of a billion a second of a
     * processor; then what is best so far is the answer. Counted rather than timed, so that an
     * answer is the same on every machine.
     */
    private static final long MOST_WORK = 250_000_000L;

    private final Trace own;
    private final Side side;
    private final Cord cord;
    private final HandLimits limits;
    private final Optional<Arm> arm;
    private final BooleanSupplier stop;
    private final FlatMotion.Setting setting;
    private final boolean counted;
    private final int turns;
    private final int base;
    private long spent;

    /**
     * What was found.
     *
     * @param x the flat point's harmonics
     * @param order of them
     * @param learnt of the bounds, for a later search to go on from
     * @param worst by how much a drawn-in bound is passed at an instant, as a share
     * @param greatest departure at an instant, metres
     */
    record Found(double[] x, int order, NearestHead.Learnt learnt, double worst, double greatest) {
        int instants() {
            return learnt.weight().length;
        }

        boolean kept() {
            return worst < KEPT;
        }

        boolean within(double metres) {
            return kept() && greatest < metres;
        }

        /**
         * How far off it may come to be, metres: what is past a bound costs a metre for the whole.
         */
        double promise() {
            return greatest + worst;
        }

        boolean better(Found other) {
            return kept() != other.kept()
                    ? kept()
                    : kept() ? greatest < other.greatest : worst < other.worst;
        }
    }

    /**
     * @param own the ideal over the side's own cycle
     */
    Nearing(Trace own, Side side, Cord cord, Closely closely) {
        this.own = own;
        this.side = side;
        this.cord = cord;
        this.limits = closely.limits();
        this.arm = closely.arm();
        this.stop = closely.stop();
        this.setting = setting(own, side, KeepTheHandPath.planeNormal(own, side, cord));
        this.counted = own.pairing().part(side).place().turn().turns() == 0;
        this.turns = (int) Math.rint(TetherAngle.of(own, side).growth() / (2 * Math.PI));
        if (Math.abs(turns) > MOST_TURNS) {
            throw new Refusal(
                    "turns " + Math.abs(turns) + " times before its hand's path repeats",
                    "the " + side.word() + " poi",
                    "a closest figure is searched for up to " + MOST_TURNS + " turns");
        }
        this.base = Math.min(base(), Math.max(MOST_FOR_ALL, MOST_EACH_TURN * Math.abs(turns)));
    }

    private static FlatMotion.Setting setting(Trace own, Side side, Vector3D normal) {
        Part part = own.pairing().part(side);
        Vector3D u = part.place().plane().u();
        Vector3D v = part.place().plane().v();
        boolean planar = normal.getNormSq() > 0;
        Vector3D origin = part.place().centre();
        if (planar) {
            Vector3D off = own.head(side).position(own.interval().start()).subtract(origin);
            origin = origin.add(normal.scalarMultiply(off.dotProduct(normal)));
        }
        return new FlatMotion.Setting(
                origin,
                planar ? List.of(u, v) : List.of(u, v, u.crossProduct(v)),
                own.interval().start(),
                own.period());
    }

    FlatMotion.Setting setting() {
        return setting;
    }

    /** Turns of the ideal cord over its own cycle. */
    int turns() {
        return turns;
    }

    boolean counted() {
        return counted;
    }

    FlatMotion motion(Found found) {
        // The air's drag is that of this very motion, not of the one a round before.
        NearestHead problem = problem(found.order(), found.instants());
        problem.air(found.x());
        return new FlatMotion(setting, cord, found.x(), problem.drag());
    }

    /**
     * Looks for the closest.
     *
     * @param starts heads of motions to begin from
     * @param near what was found before
     */
    Found found(List<Course> starts, Optional<Found> near) {
        int few = order(FEW);
        int many = order(Math.max(FEW, Math.min(MANY, FEW + MANY - base)));
        Optional<Found> again = near.flatMap(before -> again(before, many));
        if (again.isPresent()) {
            return again.get();
        }
        List<Found> all = new ArrayList<>();
        about(few, 1).ifPresent(all::add);
        if (all.stream().noneMatch(f -> f.within(NEAR))) {
            about(few, 0).ifPresent(all::add);
            for (Course start : starts) {
                if (tired() && !all.isEmpty()) {
                    break;
                }
                NearestHead problem = problem(few, EACH * few + SPARSE);
                double[] x = problem.instants().projected(sampled(start, problem.instants()));
                from(problem, x).ifPresent(all::add);
            }
        }
        if (all.stream().noneMatch(f -> f.within(FAR)) && (all.isEmpty() || !tired())) {
            about(few, 0.5).ifPresent(all::add);
        }
        Found best =
                all.stream()
                        .min(Comparator.comparingDouble(Found::promise))
                        .orElseThrow(this::lost);
        Found once = between(on(best, many, EACH * many + DENSE, 6, 30));
        if (once.within(NEAR) || tired()) {
            return once;
        }
        // Begun again with a softer penalty it often comes a little nearer.
        Found twice = between(on(once, many, once.instants(), 3, 12));
        return twice.better(once) ? twice : once;
    }

    private boolean tired() {
        return spent > MOST_WORK;
    }

    Refusal lost() {
        return new Refusal(
                "finds none whose poi gets round as often",
                "the search for a motion near the " + side.word() + " figure",
                "spin faster, or change the figure");
    }

    private int order(int beyond) {
        return base + Math.max(beyond, Math.abs(turns));
    }

    private Optional<Found> again(Found near, int order) {
        if (near.x().length != setting.size() * (2 * near.order() + 1)) {
            return Optional.empty();
        }
        int instants = EACH * order + DENSE;
        NearestHead problem = problem(order, instants);
        problem.look(Collocation.carried(near.x(), setting.size(), near.order(), order));
        return problem.turnsRight()
                ? Optional.of(between(on(near, order, instants, 3, 16))).filter(Found::kept)
                : Optional.empty();
    }

    private Found on(Found from, int order, int instants, int least, int most) {
        NearestHead problem = problem(order, instants);
        problem.continued(from.learnt());
        double[] x = Collocation.carried(from.x(), setting.size(), from.order(), order);
        return settled(problem, x, least, most, true);
    }

    /** The same at more instants, where bounds are passed between those at which they are asked. */
    private Found between(Found from) {
        Found found = from;
        for (int n = 2 * found.instants(); n <= DENSEST && found.kept() && !tired(); n *= 2) {
            NearestHead finer = problem(found.order(), n);
            finer.look(found.x());
            if (finer.worst() < PASSED) {
                break;
            }
            found = on(found, found.order(), n, 2, 8);
        }
        return found;
    }

    private double[][] sampled(Course course, Collocation instants) {
        double[][] out = new double[instants.points()][];
        for (int i = 0; i < out.length; i++) {
            double time = setting.start() + setting.period() * i / out.length;
            out[i] = setting.components(course.position(time), false);
        }
        return out;
    }

    /** The least order that draws the ideal faithfully. */
    private int base() {
        int points = 6 * SURVEY;
        Collocation survey = Collocation.of(SURVEY, points, setting.rate());
        double[][] rest = sampled(own.head(side), survey);
        double[] x = survey.projected(rest);
        double[] phi = survey.derivative(0);
        int width = survey.width();
        for (int k = 0; k < SURVEY; k++) {
            double most = 0;
            for (int i = 0; i < points; i++) {
                double off = 0;
                for (int d = 0; d < setting.size(); d++) {
                    for (int j = Math.max(0, 2 * k - 1); j <= 2 * k; j++) {
                        rest[i][d] -= x[d * width + j] * phi[i * width + j];
                    }
                    off += rest[i][d] * rest[i][d];
                }
                most = Math.max(most, off);
            }
            if (most < FAITHFUL * FAITHFUL) {
                return k;
            }
        }
        return SURVEY;
    }

    private NearestHead problem(int order, int points) {
        Collocation instants = Collocation.of(order, points, setting.rate());
        NearestHead.Wish wish =
                new NearestHead.Wish(
                        sampled(own.head(side), instants),
                        sampled(own.hand(side), instants),
                        setting.components(cord.fall(), true),
                        turns,
                        counted);
        Bounds bounds = new Bounds(limits, arm.map(this::shoulder), setting.size());
        return new NearestHead(instants, wish, cord, bounds, setting.rate(), stop);
    }

    private Bounds.Shoulder shoulder(Arm arm) {
        double[] at = setting.components(arm.shoulder(), false);
        double across = arm.shoulder().distanceSq(setting.origin());
        for (double a : at) {
            across -= a * a;
        }
        return new Bounds.Shoulder(at, Math.sqrt(Math.max(0, across)), arm.length());
    }

    /** From the ideal poi about a hand whose path is that share of its own. */
    private Optional<Found> about(int order, double share) {
        NearestHead problem = problem(order, EACH * order + SPARSE);
        Collocation instants = problem.instants();
        double[][] hand = sampled(own.hand(side), instants);
        double[][] head = sampled(own.head(side), instants);
        double[] middle = new double[setting.size()];
        for (double[] h : hand) {
            for (int d = 0; d < middle.length; d++) {
                middle[d] += h[d] / hand.length;
            }
        }
        for (int i = 0; i < hand.length; i++) {
            for (int d = 0; d < middle.length; d++) {
                head[i][d] -= (1 - share) * (hand[i][d] - middle[d]);
            }
        }
        return from(problem, instants.projected(head));
    }

    private Optional<Found> from(NearestHead problem, double[] x) {
        problem.look(x);
        Optional<double[]> start = problem.turnsRight() ? Optional.of(x) : risen(problem, x);
        return start.map(s -> settled(problem, s, 6, 14, true));
    }

    /**
     * What becomes of a motion while gravity is turned up; empty where its cord turns otherwise.
     */
    private Optional<double[]> risen(NearestHead problem, double[] from) {
        double[] x = from;
        double share = 0;
        double step = RISE;
        problem.gravity(0, limits.leastPull());
        problem.look(x);
        if (!problem.turnsRight()) {
            return Optional.empty();
        }
        while (share < 1) {
            if (tired()) {
                return Optional.empty();
            }
            double next = Math.min(1, share + step);
            double pull = 1.2 * (next - share) + limits.leastPull();
            problem.gravity(share, pull);
            x = settled(problem, x, 3, 3, false).x();
            problem.gravity(next, pull);
            problem.look(x);
            if (problem.turnsRight()) {
                share = next;
            } else {
                step /= 2;
                if (step < LEAST_RISE) {
                    return Optional.empty();
                }
            }
        }
        problem.wholeGravity();
        return Optional.of(x);
    }

    private Found settled(
            NearestHead problem, double[] from, int least, int most, boolean leastGreatest) {
        double[] x = from;
        problem.look(x);
        double worstBefore = Double.MAX_VALUE;
        double before = Double.MAX_VALUE;
        Optional<Found> best = Optional.empty();
        int calm = 0;
        for (int round = 0; round < most && calm < 2 && (round < 2 || !tired()); round++) {
            problem.air(x);
            long done = problem.work();
            x = problem.steps(x, STEPS, ENOUGH);
            spent += problem.work() - done;
            int order = problem.instants().order();
            Found here = new Found(x, order, problem.learnt(), problem.worst(), problem.greatest());
            if (best.isEmpty() || here.better(best.get())) {
                best = Optional.of(here);
            }
            boolean still = Math.abs(here.greatest() - before) < 3e-3 * here.greatest() + 1e-6;
            calm = round >= least && here.worst() < KEPT / 2 && still ? calm + 1 : 0;
            before = here.greatest();
            problem.learn(worstBefore, leastGreatest);
            worstBefore = here.worst();
        }
        return best.orElseThrow();
    }
}
