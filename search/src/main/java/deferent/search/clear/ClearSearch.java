package deferent.search.clear;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.InTheWay;
import deferent.reading.body.KeptClear;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.body.ShortOfClear;
import deferent.reading.danger.Bound;
import deferent.reading.danger.Hazard;
import deferent.reading.tether.Kit;
import deferent.search.clear.Clearing.Cleared;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleBounds;
import org.hipparchus.optim.SimpleValueChecker;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.CMAESOptimizer;
import org.hipparchus.random.RandomGenerator;
import org.hipparchus.random.Well19937c;

/**
 * Looks for the least change of both planes that clears a pattern.
 *
 * <p>Each hand's plane may be shifted three ways and leaned two, ten freedoms in all, in hands'
 * breadths of what they move the head's path by. How much is in the way is asked quickly, at fewer
 * instants ({@link ShortOfClear}):
 *
 * <ol>
 *   <li>along single freedoms and the plainest pairs of them, in growing steps, so that a simple
 *       change is found first;
 *   <li>over all freedoms by CMA-ES (Hansen and Ostermeier 2001) with what is in the way as a
 *       penalty, from several seeded starts, since there are many ways out and no slopes;
 *   <li>what was found is made smaller freedom by freedom, and along the line to no change at all;
 *   <li>where nothing was found, {@value #SCATTERED} places at random within the bounds are asked,
 *       and what is clear there is made smaller.
 * </ol>
 *
 * <p>The winner is confirmed at full sampling by {@link InTheWay}; where it fails there, all is
 * asked to keep further off and sought again. Then it is made smaller on that reading ({@link
 * Polish}). A change of one freedom is kept where no other is less by more than {@value #SIMPLER}
 * of it.
 *
 * <p>The answer is a good one and not surely the least: a random search of 2400 places at full
 * sampling found 2.5 % less for an isolation against a cat-eye in split time, and nothing less for
 * two spins about one centre, a butterfly, two wheels and an isolation against a triquetra. Nor is
 * it a proof: of one that ends without an answer it is known only that none was found where it
 * looked.
 */
public final class ClearSearch {
    private static final int FREEDOMS = 5;
    private static final double[] STEPS = {0.25, 0.5, 0.75, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5};
    private static final double SIMPLER = 0.02;
    private static final double PENALTY = 20;
    private static final double IMPOSSIBLE = 1;
    private static final int EVALUATIONS = 450;
    private static final int POPULATION = 12;
    private static final int SCATTERED = 1500;
    private static final double ALL = 4000;
    private static final long SEED = 20;
    private static final double[] MARGINS = {0, 0.001, 0.003, 0.006, 0.012};

    private final Pairing pairing;
    private final Trace trace;
    private final Performer performer;
    private final KeptClear kept;
    private final Reach reach;
    private final List<InTheWay> before;
    private final DoubleConsumer progress;
    private final BooleanSupplier stop;
    private ShortOfClear quick;
    private double[] best;
    private double least;
    private double[] nearest;
    private double nearestShort;
    private int asked;

    private static final class Stopped extends RuntimeException {
        private static final long serialVersionUID = 1;

        Stopped() {
            super("stopped", null, false, false);
        }
    }

    private ClearSearch(
            Pairing pairing,
            Performer performer,
            Kit kit,
            DoubleConsumer progress,
            BooleanSupplier stop) {
        this.pairing = pairing;
        this.performer = performer;
        this.progress = progress;
        this.stop = stop;
        this.kept = kept(kit);
        this.trace = Trace.of(pairing);
        this.reach = Reach.of(trace, performer);
        this.before = InTheWay.of(trace, reach, kept);
        this.quick = new ShortOfClear(trace, reach, kept, MARGINS[0]);
        this.best = new double[2 * FREEDOMS];
        this.nearest = best;
        this.least = Double.POSITIVE_INFINITY;
        this.nearestShort = Double.POSITIVE_INFINITY;
    }

    /** What is kept clear with such heads: the bounds of what can hurt. */
    public static KeptClear kept(Kit kit) {
        return new KeptClear(
                kit.headDiameter() / 2,
                Bound.of(Hazard.CORDS, kit.heads()).danger(),
                Bound.of(Hazard.BODY, kit.heads()).danger(),
                Bound.of(Hazard.HEADS_MEET, kit.heads()).care());
    }

    /** The least change for a pairing. */
    public static Clearing of(Pairing pairing, Performer performer, Kit kit) {
        return of(pairing, performer, kit, share -> {}, () -> false);
    }

    /**
     * The same, told how far it is.
     *
     * @param progress takes the share of the work that is done at most, 0 to 1
     * @param stop whether to end with what was found so far
     */
    public static Clearing of(
            Pairing pairing,
            Performer performer,
            Kit kit,
            DoubleConsumer progress,
            BooleanSupplier stop) {
        return new ClearSearch(pairing, performer, kit, progress, stop).run();
    }

    private Clearing run() {
        if (before.isEmpty()) {
            return clearing(Optional.empty(), List.of(), true);
        }
        Optional<Cleared> confirmed = Optional.empty();
        boolean whole = true;
        try {
            for (double margin : MARGINS) {
                quick = new ShortOfClear(trace, reach, kept, margin);
                least = Double.POSITIVE_INFINITY;
                search(margin == MARGINS[0]);
                if (least == Double.POSITIVE_INFINITY) {
                    break;
                }
                confirmed = confirmed();
                if (confirmed.isPresent()) {
                    confirmed = confirmed.map(this::polished);
                    break;
                }
            }
            if (confirmed.isEmpty()) {
                confirmed = scattered();
            }
        } catch (Stopped early) {
            whole = false;
            if (confirmed.isEmpty() && least < Double.POSITIVE_INFINITY) {
                confirmed = at(best, 1);
            }
        }
        progress.accept(1);
        return clearing(confirmed, confirmed.isPresent() ? List.of() : remains(), whole);
    }

    private Clearing clearing(Optional<Cleared> cleared, List<InTheWay> remains, boolean whole) {
        return new Clearing(pairing, before, InTheWay.armsJudged(reach), cleared, remains, whole);
    }

    private List<InTheWay> remains() {
        List<InTheWay> there =
                placed(nearest)
                        .map(
                                place -> {
                                    Trace moved = Trace.of(place);
                                    return InTheWay.of(moved, Reach.of(moved, performer), kept);
                                })
                        .orElse(List.of());
        return there.isEmpty() ? before : there;
    }

    private void search(boolean first) {
        double[] single = null;
        double singleCost = Double.POSITIVE_INFINITY;
        lines();
        if (least < Double.POSITIVE_INFINITY) {
            single = best.clone();
            singleCost = least;
        }
        int[] all = IntStream.range(0, 2 * FREEDOMS).toArray();
        if (first) {
            within(all, false, Math.min(1.2, 0.3 * least), SEED);
            smaller();
        }
        for (int start = 1; start <= (first ? 2 : 1); start++) {
            within(all, true, Math.min(0.4, 0.15 * least), SEED + start);
            smaller();
        }
        if (single != null && singleCost <= least * (1 + SIMPLER)) {
            best = single;
            least = singleCost;
        }
    }

    private static List<double[]> directions() {
        List<double[]> all = new ArrayList<>();
        for (int i = 0; i < 2 * FREEDOMS; i++) {
            for (int sign = -1; sign <= 1; sign += 2) {
                double[] one = new double[2 * FREEDOMS];
                one[i] = sign;
                all.add(one);
                if (i < FREEDOMS) {
                    for (int other = -1; other <= 1; other += 2) {
                        double[] both = new double[2 * FREEDOMS];
                        both[i] = sign * Math.sqrt(0.5);
                        both[i + FREEDOMS] = other * Math.sqrt(0.5);
                        all.add(both);
                    }
                }
            }
        }
        return all;
    }

    private void lines() {
        List<double[]> directions = directions();
        double from = 0;
        for (double step : STEPS) {
            for (double[] direction : directions) {
                double[] x = times(direction, step);
                if (step < least && clear(x)) {
                    bisect(direction, from, step);
                }
            }
            if (least < step) {
                return;
            }
            from = step;
        }
    }

    private void bisect(double[] direction, double no, double yes) {
        double low = no;
        double high = yes;
        for (int i = 0; i < 7; i++) {
            double half = (low + high) / 2;
            if (clear(times(direction, half))) {
                high = half;
            } else {
                low = half;
            }
        }
    }

    /**
     * Over some freedoms, by CMA-ES.
     *
     * @param on whether it begins at the best there is, or else where least is in the way
     * @param wide how far about that it begins to look, in hands' breadths
     */
    private void within(int[] freedoms, boolean on, double wide, long seed) {
        double[] about =
                !on
                        ? new double[2 * FREEDOMS]
                        : least < Double.POSITIVE_INFINITY ? best.clone() : nearest.clone();
        int n = freedoms.length;
        double[] from = new double[n];
        double[] low = new double[n];
        double[] high = new double[n];
        double[] sigma = new double[n];
        for (int i = 0; i < n; i++) {
            double most = most(freedoms[i]);
            low[i] = -most;
            high[i] = most;
            from[i] = Math.max(-most, Math.min(most, about[freedoms[i]]));
            sigma[i] = Math.min(most, wide);
        }
        ObjectiveFunction asked =
                new ObjectiveFunction(
                        x -> {
                            double[] there = about.clone();
                            for (int i = 0; i < n; i++) {
                                there[freedoms[i]] = x[i];
                            }
                            return penalised(there);
                        });
        try {
            new CMAESOptimizer(
                            EVALUATIONS,
                            Double.NEGATIVE_INFINITY,
                            true,
                            0,
                            0,
                            new Well19937c(seed),
                            false,
                            new SimpleValueChecker(-1, 1e-3))
                    .optimize(
                            new MaxEval(EVALUATIONS),
                            asked,
                            GoalType.MINIMIZE,
                            new InitialGuess(from),
                            new SimpleBounds(low, high),
                            new CMAESOptimizer.Sigma(sigma),
                            new CMAESOptimizer.PopulationSize(POPULATION));
        } catch (MathRuntimeException ranOut) {
            // The best so far stands.
        }
    }

    private double most(int i) {
        Side side = side(i);
        return i % FREEDOMS < 3
                ? PlaneChange.FARTHEST / Place.HAND_BREADTH
                : PlaneChange.STEEPEST * pairing.part(side).tether().length() / Place.HAND_BREADTH;
    }

    /**
     * Where all else found none: places at random within the bounds. What is clear there at full
     * sampling is made smaller.
     */
    private Optional<Cleared> scattered() {
        quick = new ShortOfClear(trace, reach, kept, MARGINS[0]);
        RandomGenerator random = new Well19937c(SEED);
        for (int tried = 0; tried < SCATTERED; tried++) {
            double[] x = anywhere(random);
            if (clear(x) && at(x, 1).filter(this::surely).isPresent()) {
                return closer(x);
            }
            least = Double.POSITIVE_INFINITY;
        }
        return Optional.empty();
    }

    private Optional<Cleared> closer(double[] x) {
        Optional<Cleared> far = at(x, 1);
        double[] from = x.clone();
        for (double margin : MARGINS) {
            quick = new ShortOfClear(trace, reach, kept, margin);
            best = from;
            least = far.orElseThrow().cost();
            within(IntStream.range(0, 2 * FREEDOMS).toArray(), true, 0.15 * least, SEED);
            smaller();
            Optional<Cleared> near = confirmed();
            if (near.isPresent()) {
                return near.map(this::polished);
            }
        }
        best = from;
        return far.map(this::polished);
    }

    /** Some change that may be made, both hands' shifts and leans evenly within their bounds. */
    private double[] anywhere(RandomGenerator random) {
        double[] x = new double[2 * FREEDOMS];
        while (true) {
            for (int i = 0; i < x.length; i++) {
                x[i] = most(i) * (2 * random.nextDouble() - 1);
            }
            if (at(x, 1).filter(Cleared::within).isPresent()) {
                return x;
            }
        }
    }

    /** Freedom by freedom, then all of them along the line to none. */
    private void smaller() {
        if (least == Double.POSITIVE_INFINITY) {
            return;
        }
        for (int round = 0; round < 2; round++) {
            for (int i = 0; i < best.length; i++) {
                if (best[i] != 0) {
                    double[] without = best.clone();
                    without[i] = 0;
                    if (!clear(without)) {
                        shrink(i);
                    }
                }
            }
            double[] whole = best.clone();
            double low = 0.5;
            double high = 1;
            for (int k = 0; k < 7; k++) {
                double half = (low + high) / 2;
                if (clear(times(whole, half))) {
                    high = half;
                } else {
                    low = half;
                }
            }
        }
    }

    private void shrink(int i) {
        double[] x = best.clone();
        double from = x[i];
        double low = 0.5;
        double high = 1;
        for (int k = 0; k < 5; k++) {
            double half = (low + high) / 2;
            x[i] = half * from;
            if (clear(x.clone())) {
                high = half;
            } else {
                low = half;
            }
        }
    }

    private static double[] times(double[] x, double by) {
        return Arrays.stream(x).map(one -> one * by).toArray();
    }

    /** Whether nothing is in the way, seen quickly; the least such is kept. */
    private boolean clear(double[] x) {
        Optional<Cleared> there = at(x, 1);
        if (there.isEmpty() || !there.get().within()) {
            return false;
        }
        double shortBy = shortBy(x, there.get().pairing());
        if (shortBy == 0 && there.get().cost() < least) {
            least = there.get().cost();
            best = x.clone();
        }
        return shortBy == 0;
    }

    private double penalised(double[] x) {
        Optional<Cleared> there = at(x, 1);
        if (there.isEmpty()) {
            return PENALTY * IMPOSSIBLE / Place.HAND_BREADTH;
        }
        double cost = there.get().cost();
        if (cost >= least) {
            // No less than what there is, whatever is in the way.
            return cost;
        }
        if (!there.get().within()) {
            return PENALTY * IMPOSSIBLE / Place.HAND_BREADTH;
        }
        double shortBy = shortBy(x, there.get().pairing());
        if (shortBy == 0) {
            least = cost;
            best = x.clone();
        }
        return cost + PENALTY * shortBy / Place.HAND_BREADTH;
    }

    private double shortBy(double[] x, Pairing there) {
        if (stop.getAsBoolean()) {
            throw new Stopped();
        }
        asked++;
        progress.accept(Math.min(0.99, asked / ALL));
        double shortBy = quick.of(Trace.of(there));
        if (shortBy < nearestShort) {
            nearestShort = shortBy;
            nearest = x.clone();
        }
        return shortBy;
    }

    private static Side side(int i) {
        return i < FREEDOMS ? Side.LEFT : Side.RIGHT;
    }

    private Optional<Cleared> at(double[] x, double scale) {
        return placed(times(x, scale)).map(there -> Cleared.between(pairing, there));
    }

    /** To the millimetre and the tenth of a degree, as it can be said; none where impossible. */
    private Optional<Pairing> placed(double[] x) {
        try {
            Pairing moved = pairing;
            for (Side side : Side.values()) {
                moved = moved.with(side, moved(pairing.part(side), x, side.ordinal() * FREEDOMS));
            }
            return Optional.of(moved);
        } catch (Refusal impossible) {
            return Optional.empty();
        }
    }

    private static Part moved(Part part, double[] x, int at) {
        Place place = part.place();
        Plane plane = place.plane();
        double breadth = Place.HAND_BREADTH;
        double perLean = breadth / part.tether().length();
        Vector3D shift =
                new Vector3D(
                        x[at] * breadth,
                        plane.normal(),
                        x[at + 1] * breadth,
                        plane.u(),
                        x[at + 2] * breadth,
                        plane.v());
        Vector3D by =
                new Vector3D(
                        millimetres(shift.getX()),
                        millimetres(shift.getY()),
                        millimetres(shift.getZ()));
        Place there =
                new Place(
                        new Plane(
                                plane.kind(),
                                plane.tip() + degrees(x[at + 3] * perLean),
                                plane.swivel() + degrees(x[at + 4] * perLean)),
                        place.turn(),
                        place.centre().add(by));
        return part.with(by.equals(Vector3D.ZERO) ? there : there.settled());
    }

    private static double millimetres(double metres) {
        return Math.rint(metres * 1e3) / 1e3;
    }

    private static double degrees(double radians) {
        return Math.toRadians(Math.rint(Math.toDegrees(radians) * 10) / 10);
    }

    /** The least that is clear at full sampling, on the line to the best and a little beyond. */
    private Optional<Cleared> confirmed() {
        Optional<Cleared> found = Optional.empty();
        for (double scale : new double[] {1, 1.005, 1.01, 1.02, 1.05}) {
            if (found.isEmpty()) {
                found = at(best, scale).filter(this::surely);
            }
        }
        double low = 0.9;
        double high = 1;
        for (int i = 0; i < 5 && found.isPresent(); i++) {
            double half = (low + high) / 2;
            Optional<Cleared> less = at(best, half).filter(this::surely);
            if (less.isPresent()) {
                found = less.get().cost() < found.get().cost() ? less : found;
                high = half;
            } else {
                low = half;
            }
        }
        return found;
    }

    /** A change of the same kind is kept where the polish gains next to nothing. */
    private Cleared polished(Cleared confirmed) {
        double[] from = times(best, confirmed.cost() / at(best, 1).orElseThrow().cost());
        Cleared less =
                new Polish(from, confirmed, x -> at(x, 1), this::surely, SEED).least(directions());
        return less.cost() < confirmed.cost() * (1 - SIMPLER) ? less : confirmed;
    }

    private boolean surely(Cleared cleared) {
        if (stop.getAsBoolean()) {
            throw new Stopped();
        }
        return cleared.within() && surely(cleared.pairing());
    }

    private boolean surely(Pairing there) {
        Trace moved = Trace.of(there);
        Reach reached = Reach.of(moved, performer);
        boolean noWorse =
                InTheWay.armsJudged(reached)
                        || !InTheWay.armsJudged(reach)
                                && reached.turned().tooFar()
                                        <= reach.turned().tooFar() + Reach.GIVES;
        return noWorse && InTheWay.of(moved, reached, kept).isEmpty();
    }
}
