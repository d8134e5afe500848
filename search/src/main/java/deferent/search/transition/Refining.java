package deferent.search.transition;

import deferent.motion.shared.Side;
import deferent.search.transition.TransitionSearch.Start;
import java.util.Optional;
import org.hipparchus.analysis.MultivariateFunction;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleValueChecker;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.hipparchus.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/**
 * Makes a transition smoother from where the grid has it, with the lead of the joined clock as it
 * is, so that each side is for itself: first when it leaves and how long it takes, by Nelder and
 * Mead's simplex (Hipparchus), which needs no derivatives and copes with edges beyond which nothing
 * is possible; then, with a finer spline, to the end.
 */
final class Refining {
    private static final double NEVER = 1e9;
    private static final int TIMES = 8;
    private static final int ROUNDS = 6;
    private static final int POLISH = 30;

    /** A passage of one side, as it was found last. */
    private record Found(double leaves, double seconds, int turns, Swell swell) {}

    private final SpunPattern from;
    private final SpunPattern to;
    private final TransitionRequest request;
    private final Attempt[] coarse;
    private final Attempt[] fine;

    /**
     * @param coarse attempts of each side, with which times are chosen
     * @param fine with which what is found is made smooth
     */
    Refining(
            SpunPattern from,
            SpunPattern to,
            TransitionRequest request,
            Attempt[] coarse,
            Attempt[] fine) {
        this.from = from;
        this.to = to;
        this.request = request;
        this.coarse = coarse;
        this.fine = fine;
    }

    /** The transition that a start leads to; empty where it is too hard. */
    Optional<Transition> run(Start start) {
        Bridge[] bridges = new Bridge[2];
        double hardest = 0;
        for (Side side : Side.values()) {
            if (start.moves(side)) {
                Found found = found(start, side);
                Attempt attempt = fine[side.ordinal()];
                double hardness =
                        attempt.again(
                                found.leaves(),
                                start.later(),
                                found.seconds(),
                                found.turns(),
                                found.swell());
                if (hardness > request.hardest().ordinal()) {
                    return Optional.empty();
                }
                hardest = Math.max(hardest, hardness);
                bridges[side.ordinal()] = bridge(side, start.later(), found, attempt);
            }
        }
        for (Side side : Side.values()) {
            if (!start.moves(side)) {
                bridges[side.ordinal()] = bridges[side.other().ordinal()].kept(side);
            }
        }
        return Optional.of(
                new Transition(from.pairing(), to.pairing(), bridges[0], bridges[1], hardest));
    }

    private Found found(Start start, Side side) {
        int i = side.ordinal();
        double[] times = {start.leaves()[i], start.seconds()[i]};
        int turns = start.turns()[i];
        double[] steps = {start.seconds()[i] / 12, start.seconds()[i] / 6};
        double[] x =
                best(
                        times,
                        steps,
                        point -> {
                            double beats = point[1] / coarse[i].beat();
                            if (beats < Torus.SHORTEST || beats > Torus.LONGEST) {
                                return NEVER;
                            }
                            coarse[i].run(point[0], start.later(), point[1], turns, ROUNDS);
                            return Torus.cost(coarse[i], beats);
                        });
        fine[i].run(x[0], start.later(), x[1], turns, POLISH);
        return new Found(x[0], x[1], turns, fine[i].swell());
    }

    private static double[] best(double[] x, double[] steps, MultivariateFunction cost) {
        double[] best = x.clone();
        double[] least = {cost.value(x)};
        try {
            new SimplexOptimizer(new SimpleValueChecker(1e-3, 1e-4))
                    .optimize(
                            new MaxEval(TIMES),
                            new ObjectiveFunction(
                                    point -> {
                                        double here = cost.value(point);
                                        if (here < least[0]) {
                                            least[0] = here;
                                            System.arraycopy(point, 0, best, 0, best.length);
                                        }
                                        return here;
                                    }),
                            GoalType.MINIMIZE,
                            new InitialGuess(x),
                            new NelderMeadSimplex(steps));
        } catch (MathIllegalStateException enough) {
            // As good as so many tries make it.
        }
        return best;
    }

    private Bridge bridge(Side side, double later, Found found, Attempt a) {
        Bridge plain =
                new Bridge(
                        side,
                        TransitionKind.SLIDE,
                        found.leaves(),
                        found.leaves() + later + found.seconds(),
                        found.seconds(),
                        found.turns(),
                        found.swell(),
                        a.stray(),
                        a.least(),
                        a.greatest(),
                        a.quickening(),
                        a.jerk());
        return plain.of(KindOf.of(from, to, plain));
    }
}
