package deferent.search.transition;

import deferent.motion.pairing.Side;
import deferent.search.transition.TransitionSearch.Start;
import java.util.Optional;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleValueChecker;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.hipparchus.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/**
 * Makes a transition smoother from where the grid has it: first both hands' leaving times and
 * durations and the lead of the joined clock, by Nelder and Mead's simplex (Hipparchus), which
 * needs no derivatives and copes with edges beyond which nothing is possible; then what {@link
 * Swell} adds to each head, to the end.
 */
final class Refining {
    private static final double NEVER = 1e9;
    private static final int CELLS = TransitionSearch.USUAL.cells();
    private static final int TIMES = 30;
    private static final int ROUNDS = 3;
    private static final int POLISH = 30;

    private final SpunPattern from;
    private final SpunPattern to;
    private final Attempt[] attempts;
    private final Start start;
    private final TransitionRequest request;

    Refining(
            SpunPattern from,
            SpunPattern to,
            Attempt left,
            Attempt right,
            Start start,
            TransitionRequest request) {
        this.from = from;
        this.to = to;
        this.attempts = new Attempt[] {left, right};
        this.start = start;
        this.request = request;
    }

    Optional<Transition> run() {
        boolean free = start.keeps().isEmpty();
        double[] x = best(times(free), steps(free), TIMES, this::cost);
        return transition(x);
    }

    // Leaving time and duration of each side that moves, and the lead where it is free.
    private double[] times(boolean free) {
        if (free) {
            return new double[] {
                start.leaves()[0],
                start.seconds()[0],
                start.leaves()[1],
                start.seconds()[1],
                start.later()
            };
        }
        int i = start.keeps().orElseThrow() == Side.LEFT ? 1 : 0;
        return new double[] {start.leaves()[i], start.seconds()[i]};
    }

    private double[] steps(boolean free) {
        double one = from.period() / CELLS / 2;
        double two = to.period() / CELLS / 2;
        return free
                ? new double[] {one, start.seconds()[0] / 6, one, start.seconds()[1] / 6, two}
                : new double[] {one, start.seconds()[0] / 6};
    }

    private double leaves(double[] x, Side side) {
        return x[x.length == 5 ? 2 * side.ordinal() : 0];
    }

    private double seconds(double[] x, Side side) {
        return x[x.length == 5 ? 2 * side.ordinal() + 1 : 1];
    }

    private double later(double[] x) {
        return x.length == 5 ? x[4] : start.later();
    }

    private double cost(double[] x) {
        double hardest = 0;
        double sum = 0;
        for (Side side : Side.values()) {
            if (moves(side)) {
                Attempt attempt = attempts[side.ordinal()];
                double beats = seconds(x, side) / attempt.beat();
                if (run(x, side, ROUNDS) == NEVER) {
                    return NEVER;
                }
                double outlook = attempt.outlook();
                hardest = Math.max(hardest, outlook);
                sum += Torus.cost(attempt, beats) - Torus.HARDNESS * outlook;
            }
        }
        return Torus.HARDNESS * hardest + sum;
    }

    private boolean moves(Side side) {
        return start.keeps().filter(side::equals).isEmpty();
    }

    private double run(double[] x, Side side, int rounds) {
        Attempt attempt = attempts[side.ordinal()];
        double seconds = seconds(x, side);
        double beats = seconds / attempt.beat();
        if (beats < Torus.BEATS[0] || beats > Torus.BEATS[Torus.BEATS.length - 1]) {
            return NEVER;
        }
        return attempt.run(
                leaves(x, side), later(x), seconds, start.turns()[side.ordinal()], rounds);
    }

    private interface Cost {
        double of(double[] x);
    }

    private static double[] best(double[] x, double[] steps, int most, Cost cost) {
        double before = cost.of(x);
        double[] best = x.clone();
        double[] least = {before};
        try {
            new SimplexOptimizer(new SimpleValueChecker(1e-3, 1e-4))
                    .optimize(
                            new MaxEval(most + x.length + 2),
                            new ObjectiveFunction(
                                    point -> {
                                        double here = cost.of(point);
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

    private Optional<Transition> transition(double[] x) {
        Bridge[] bridges = new Bridge[2];
        double hardest = 0;
        for (Side side : Side.values()) {
            int i = side.ordinal();
            if (!moves(side)) {
                continue;
            }
            Attempt attempt = attempts[i];
            run(x, side, POLISH);
            Swell swell = attempt.swell();
            double hardness =
                    attempt.again(
                            leaves(x, side), later(x), seconds(x, side), start.turns()[i], swell);
            if (hardness > request.hardest().ordinal()) {
                return Optional.empty();
            }
            hardest = Math.max(hardest, hardness);
            bridges[i] = bridge(x, side, swell);
        }
        for (Side side : Side.values()) {
            if (!moves(side)) {
                Bridge other = bridges[1 - side.ordinal()];
                bridges[side.ordinal()] =
                        new Bridge(
                                side,
                                TransitionKind.KEEPS,
                                other.leaves(),
                                other.joins(),
                                other.seconds(),
                                0,
                                Swell.NONE,
                                0,
                                Double.POSITIVE_INFINITY,
                                0,
                                0,
                                0);
            }
        }
        return Optional.of(
                new Transition(from.pairing(), to.pairing(), bridges[0], bridges[1], hardest));
    }

    private Bridge bridge(double[] x, Side side, Swell swell) {
        Attempt a = attempts[side.ordinal()];
        double leaves = leaves(x, side);
        double seconds = seconds(x, side);
        Bridge plain =
                new Bridge(
                        side,
                        TransitionKind.SLIDE,
                        leaves,
                        leaves + later(x) + seconds,
                        seconds,
                        start.turns()[side.ordinal()],
                        swell,
                        a.stray(),
                        a.least(),
                        a.greatest(),
                        a.quickening(),
                        a.jerk());
        return plain.of(KindOf.of(from, to, plain));
    }
}
