package deferent.reading.closest;

import deferent.reading.tether.Cord;
import java.util.Arrays;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.hipparchus.exception.MathIllegalArgumentException;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;

/**
 * The periodic head path of least departure from an ideal under bounds on its hand, its unknowns
 * being the harmonics of the poi's flat point ({@link Flatness}).
 *
 * <p>Departure and bounds are asked at even instants ({@link Collocation}). Bounds by the augmented
 * Lagrangian for inequalities (Hestenes 1969, Powell 1969, Rockafellar 1973; Nocedal and Wright,
 * Numerical Optimization, 2006, section 17.4): what is past a bound, shifted by its multiplier over
 * the penalty, counts squared. The sum of squares is made least by Levenberg's and Marquardt's
 * steps. From round to round multipliers and penalty grow, and instants that are farther off weigh
 * more, toward the least greatest departure (Lawson 1961).
 *
 * <p>Our own normal equations because a length that is bounded bends across its vector, which the
 * library's least squares cannot be told since they ask for residuals and their slopes alone, and
 * without which steps along a bound come to a stand; and because few bounds push at an instant: the
 * library's Levenberg and Marquardt optimizer took 6 ms a step at the usual size (1248 residuals,
 * 54 unknowns), this about half a millisecond. The factorization is the library's.
 */
final class NearestHead {
    /** The penalty to begin with where bounds are far from kept, and where nearly. */
    private static final double SOFT = 1;

    private static final double HARD = 30;

    private static final double NEARLY = 0.2;

    /** The unit in which departures count is no less, metres. */
    private static final double FINEST = 1e-3;

    private static final double COARSE = 0.01;
    private static final double LEAST_WEIGHT = 1e-4;
    private static final double DAMPING = 1e-3;
    private static final int TRIES = 12;

    /**
     * A cord that turns by more from one instant to the next may have turned the other way,
     * radians.
     */
    private static final double WIDEST = 2.8;

    /**
     * What is to be drawn and how.
     *
     * @param ideal the head at the instants, components
     * @param idealHand the hand
     * @param fall gravity, components
     * @param turns wanted of the cord's direction, from the first axis to the second
     * @param counted whether they are
     */
    record Wish(
            double[][] ideal, double[][] idealHand, double[] fall, int turns, boolean counted) {}

    private final Collocation instants;
    private final Wish wish;
    private final Cord cord;
    private final Bounds bounds;
    private final BooleanSupplier stop;
    private final double swing;
    private final double lever;
    private final int size;
    private final int unknowns;
    private final Collocation air;
    private double[] drag = {};
    private double[][][] dragAt = {};

    private double gravity = 1;
    private double unit = COARSE;
    private double penalty = SOFT;
    private double damping = DAMPING;
    private boolean fresh = true;
    private final double[] weight;
    private final double[][] multiplier;
    private final double[][] past;
    private final double[] away;
    private long work;
    private double winding;
    private double widest;

    private final Flatness flat;
    private final double[][] y;
    private final double[][] hand = new double[4][];
    private final double[][] gradient;
    private final double[] across;
    private final double[] row;
    private final double[][] matrix;
    private final double[] slope;

    NearestHead(
            Collocation instants,
            Wish wish,
            Cord cord,
            Bounds bounds,
            double rate,
            BooleanSupplier stop) {
        this.instants = instants;
        this.wish = wish;
        this.cord = cord;
        this.bounds = bounds;
        this.stop = stop;
        this.swing = cord.swingLength();
        this.lever = cord.length() - swing;
        this.size = wish.fall().length;
        this.unknowns = size * instants.width();
        int points = instants.points();
        this.air =
                cord.kit().air()
                        ? Collocation.of(
                                Math.min(2 * instants.order(), points / 2 - 1), points, rate)
                        : instants;
        this.weight = new double[points];
        Arrays.fill(weight, 1);
        this.multiplier = new double[Bounds.ALL.length][points];
        this.past = new double[Bounds.ALL.length][points];
        this.away = new double[points];
        this.flat = new Flatness(size);
        this.y = new double[Collocation.DERIVATIVES + 1][size];
        for (int q = 0; q < hand.length; q++) {
            hand[q] = new double[size];
        }
        this.gradient = new double[Collocation.DERIVATIVES + 1][size];
        this.across = new double[size];
        this.row = new double[unknowns];
        this.matrix = new double[unknowns][unknowns];
        this.slope = new double[unknowns];
    }

    /** Multiplications that its steps have taken so far, roughly. */
    long work() {
        return work;
    }

    Collocation instants() {
        return instants;
    }

    /** The drag over the swing mass as harmonics; none where the air does not count. */
    double[] drag() {
        return drag;
    }

    /** Turns gravity down to a share and asks for that pull, head weights. */
    void gravity(double share, double leastPull) {
        gravity = share;
        bounds.pullAtLeast(leastPull);
    }

    /** Turns gravity up again and forgets what was learnt of the bounds. */
    void wholeGravity() {
        gravity = 1;
        bounds.pullAsSaid();
        for (double[] m : multiplier) {
            Arrays.fill(m, 0);
        }
        damping = DAMPING;
        fresh = true;
    }

    /**
     * What a search has learnt of its bounds.
     *
     * @param unit of departure, metres
     * @param weight of each instant
     * @param multiplier of each bound at each instant
     */
    record Learnt(double unit, double penalty, double[] weight, double[][] multiplier) {}

    Learnt learnt() {
        double[][] copy = new double[multiplier.length][];
        for (int b = 0; b < copy.length; b++) {
            copy[b] = multiplier[b].clone();
        }
        return new Learnt(unit, penalty, weight.clone(), copy);
    }

    /** Goes on from what another has learnt, perhaps at other instants. */
    void continued(Learnt other) {
        fresh = false;
        unit = other.unit();
        penalty = Math.max(64, Math.min(other.penalty(), 4096));
        int points = instants.points();
        int others = other.weight().length;
        for (int i = 0; i < points; i++) {
            double at = (double) i * others / points;
            int below = (int) at;
            int above = (below + 1) % others;
            double share = at - below;
            weight[i] = (1 - share) * other.weight()[below] + share * other.weight()[above];
            for (int b = 0; b < multiplier.length; b++) {
                multiplier[b][i] =
                        (1 - share) * other.multiplier()[b][below]
                                + share * other.multiplier()[b][above];
            }
        }
    }

    /** Looks at a motion; sets unit and penalty where nothing is known yet. */
    void look(double[] x) {
        air(x);
        value(x, false);
        if (fresh) {
            unit = Math.max(COARSE, greatest());
            penalty = worst() < NEARLY ? HARD : SOFT;
            fresh = false;
        }
    }

    /** Whether the motion last looked at turns its cord as wanted. */
    boolean turnsRight() {
        return !wish.counted() || Math.abs(winding - wish.turns()) < 0.25 && widest < WIDEST;
    }

    /** Greatest departure of the motion last looked at, metres. */
    double greatest() {
        return Arrays.stream(away).max().orElse(0);
    }

    /** By how much it is past a bound at the worst, as a share; 0 where it keeps them all. */
    double worst() {
        double most = 0;
        for (double[] bound : past) {
            for (double c : bound) {
                most = Math.max(most, c);
            }
        }
        return most;
    }

    /** Takes the air's drag on the head of this motion for what it is from now on. */
    void air(double[] x) {
        if (!cord.kit().air()) {
            return;
        }
        int points = instants.points();
        double[][] samples = new double[points][size];
        for (int i = 0; i < points; i++) {
            jets(x, i);
            direction(i, 1);
            double[] v = new double[size];
            double speed = 0;
            for (int d = 0; d < size; d++) {
                v[d] = y[1][d] - lever * flat.n()[1][d];
                speed += v[d] * v[d];
            }
            speed = Math.sqrt(speed);
            double slowing = cord.drag(new Vector3D(speed, 0, 0)).getX() / cord.swingMass();
            for (int d = 0; d < size; d++) {
                samples[i][d] = speed > 0 ? slowing * v[d] / speed : 0;
            }
        }
        drag = air.projected(samples);
        double[][][] made = new double[Flatness.LEVELS][points][size];
        for (int k = 0; k < made.length; k++) {
            for (int i = 0; i < points; i++) {
                air.sum(drag, k, i, made[k][i]);
            }
        }
        dragAt = made;
    }

    private void jets(double[] x, int i) {
        for (int k = 0; k <= bounds.levels() + 2; k++) {
            instants.sum(x, k, i, y[k]);
        }
    }

    private void direction(int i, int levels) {
        for (int k = 0; k <= levels; k++) {
            for (int d = 0; d < size; d++) {
                double f = y[k + 2][d];
                if (k == 0) {
                    f -= gravity * wish.fall()[d];
                }
                if (dragAt.length > 0) {
                    f -= dragAt[k][i][d];
                }
                flat.f()[k][d] = f;
            }
        }
        flat.solve(levels);
    }

    /** Half the sum of squares; with its slope and Gauss and Newton's matrix where asked. */
    private double value(double[] x, boolean slopes) {
        int levels = bounds.levels();
        if (slopes) {
            Arrays.fill(slope, 0);
            for (double[] line : matrix) {
                Arrays.fill(line, 0);
            }
        }
        double sum = 0;
        double first = 0;
        double last = 0;
        double turned = 0;
        widest = 0;
        for (int i = 0; i < instants.points(); i++) {
            jets(x, i);
            direction(i, levels);
            double angle = Math.atan2(flat.f()[0][1], flat.f()[0][0]);
            if (i == 0) {
                first = angle;
            } else {
                double by = Math.IEEEremainder(angle - last, 2 * Math.PI);
                turned += by;
                widest = Math.max(widest, Math.abs(by));
            }
            last = angle;
            for (int q = 0; q <= levels; q++) {
                for (int d = 0; d < size; d++) {
                    hand[q][d] = y[q][d] + swing * flat.n()[q][d];
                }
            }
            bounds.at(hand, wish.idealHand()[i], flat.size());
            if (slopes && (lever != 0 || pushed(i))) {
                flat.differentiate(levels);
            }
            sum += departure(i, slopes) + pushes(i, slopes);
        }
        turned += Math.IEEEremainder(first - last, 2 * Math.PI);
        winding = turned / (2 * Math.PI);
        return sum;
    }

    private boolean pushed(int i) {
        for (int b = 0; b < Bounds.ALL.length; b++) {
            if (bounds.said(b) && bounds.past(b) + multiplier[b][i] / penalty > 0) {
                return true;
            }
        }
        return false;
    }

    private double departure(int i, boolean slopes) {
        double w = weight[i] / (instants.points() * unit * unit);
        double sum = 0;
        for (int d = 0; d < size; d++) {
            double off = y[0][d] - lever * flat.n()[0][d] - wish.ideal()[i][d];
            sum += off * off;
            if (slopes) {
                clear();
                gradient[0][d] = 1;
                if (lever != 0) {
                    for (int e = 0; e < size; e++) {
                        gradient[2][e] -= lever * flat.change()[0][0][d][e];
                    }
                }
                add(i, w, off);
            }
        }
        away[i] = Math.sqrt(sum);
        return w * sum / 2;
    }

    private double pushes(int i, boolean slopes) {
        double share = penalty / instants.points();
        double sum = 0;
        for (int b = 0; b < Bounds.ALL.length; b++) {
            if (!bounds.said(b)) {
                continue;
            }
            past[b][i] = bounds.past(b);
            double shifted = past[b][i] + multiplier[b][i] / penalty;
            if (shifted <= 0) {
                continue;
            }
            sum += share * shifted * shifted / 2;
            if (!slopes) {
                continue;
            }
            clear();
            if (Bounds.ALL[b] == HandBound.PULL) {
                for (int d = 0; d < size; d++) {
                    gradient[2][d] = bounds.pullSlope() * flat.n()[0][d];
                }
                add(i, share, shifted);
                continue;
            }
            bounds.slope(b, across);
            along(Bounds.level(b), across);
            add(i, share, shifted);
            double bend = bounds.bend(b);
            if (bend > 0) {
                for (double[] side : bounds.across(b)) {
                    clear();
                    along(Bounds.level(b), side);
                    add(i, share * shifted * bend, 0);
                }
            }
        }
        return sum;
    }

    private void clear() {
        for (double[] k : gradient) {
            Arrays.fill(k, 0);
        }
    }

    /** Of what changes with that derivative of the hand along a vector. */
    private void along(int level, double[] by) {
        for (int d = 0; d < size; d++) {
            gradient[level][d] += by[d];
        }
        for (int r = 0; r <= level; r++) {
            double[][] change = flat.change()[level][r];
            for (int d = 0; d < size; d++) {
                double sum = 0;
                for (int e = 0; e < size; e++) {
                    sum += by[e] * change[e][d];
                }
                gradient[r + 2][d] += swing * sum;
            }
        }
    }

    /** Adds one residual with the gradient at hand to the normal equations. */
    private void add(int i, double w, double residual) {
        int width = instants.width();
        int at = i * width;
        int from = unknowns;
        int to = 0;
        for (int d = 0; d < size; d++) {
            boolean any = false;
            int first = d * width;
            for (int k = 0; k < gradient.length; k++) {
                double by = gradient[k][d];
                if (by == 0) {
                    continue;
                }
                double[] phi = instants.derivative(k);
                if (any) {
                    for (int j = 0; j < width; j++) {
                        row[first + j] += by * phi[at + j];
                    }
                } else {
                    for (int j = 0; j < width; j++) {
                        row[first + j] = by * phi[at + j];
                    }
                    any = true;
                }
            }
            if (any) {
                from = Math.min(from, first);
                to = first + width;
            } else {
                Arrays.fill(row, first, first + width, 0);
            }
        }
        for (int j = from; j < to; j++) {
            double wj = w * row[j];
            slope[j] += wj * residual;
            double[] line = matrix[j];
            for (int k = from; k <= j; k++) {
                line[k] += wj * row[k];
            }
        }
    }

    /**
     * Levenberg's and Marquardt's steps, none of which lets the cord turn otherwise than wanted.
     *
     * @param most how many
     * @param enough a share of the sum of squares that is too little to go on for
     * @return where they end, and what was last looked at
     */
    double[] steps(double[] start, int most, double enough) {
        double[] x = start;
        double value = value(x, true);
        long entries = (long) unknowns * unknowns;
        work += instants.points() * entries;
        for (int step = 0; step < most; step++) {
            double[] next = new double[0];
            double there = value;
            double ratio = 0;
            for (int tries = 0; tries < TRIES && next.length == 0; tries++) {
                if (stop.getAsBoolean()) {
                    throw new CancellationException();
                }
                double[] by = by();
                work += unknowns * entries / 6;
                double expected = 0;
                double[] trial = new double[unknowns];
                for (int j = 0; j < by.length; j++) {
                    trial[j] = x[j] - by[j];
                    expected += by[j] * (slope[j] + damping * matrix[j][j] * by[j]) / 2;
                }
                if (by.length > 0) {
                    there = value(trial, false);
                }
                if (by.length > 0 && there < value && turnsRight()) {
                    next = trial;
                    ratio = (value - there) / expected;
                } else {
                    damping = Math.min(damping * 6, 1e8);
                }
            }
            if (next.length == 0) {
                break;
            }
            if (ratio > 0.75) {
                damping = Math.max(damping / 6, 1e-9);
            } else if (ratio < 0.25) {
                damping = Math.min(damping * 4, 1e6);
            }
            boolean little = value - there < enough * value;
            x = next;
            if (little) {
                break;
            }
            value = value(x, true);
            work += instants.points() * entries;
        }
        value(x, false);
        return x;
    }

    /** What to take off for a step; none where the equations cannot be solved. */
    private double[] by() {
        double[][] m = new double[unknowns][unknowns];
        double greatest = 0;
        for (int j = 0; j < unknowns; j++) {
            greatest = Math.max(greatest, matrix[j][j]);
        }
        for (int j = 0; j < unknowns; j++) {
            for (int k = 0; k < j; k++) {
                m[j][k] = matrix[j][k];
                m[k][j] = matrix[j][k];
            }
            m[j][j] = matrix[j][j] * (1 + damping) + 1e-12 * greatest;
        }
        try {
            return new CholeskyDecomposition(MatrixUtils.createRealMatrix(m), 1e-6, 1e-300)
                    .getSolver()
                    .solve(MatrixUtils.createRealVector(slope))
                    .toArray();
        } catch (MathIllegalArgumentException notPositive) {
            return new double[0];
        }
    }

    /**
     * Between two rounds: bounds that were passed push more, instants that are far off weigh more.
     */
    void learn(double worstBefore, boolean leastGreatest) {
        double worst = worst();
        double greatest = greatest();
        for (int b = 0; b < multiplier.length; b++) {
            for (int i = 0; i < multiplier[b].length; i++) {
                multiplier[b][i] = Math.max(0, multiplier[b][i] + penalty * past[b][i]);
            }
        }
        if (worst > 0.5 * worstBefore && worst > 1e-3 && penalty < 1e5) {
            penalty *= 2;
        } else if (worst < 3e-4 && penalty > SOFT) {
            penalty /= 2;
        }
        if (leastGreatest && greatest > 0) {
            double sum = 0;
            for (int i = 0; i < weight.length; i++) {
                weight[i] = Math.max(weight[i] * away[i] / greatest, LEAST_WEIGHT);
                sum += weight[i];
            }
            for (int i = 0; i < weight.length; i++) {
                weight[i] *= weight.length / sum;
            }
        }
        if (worst < 0.05 || greatest > unit) {
            double next = Math.max(FINEST, greatest);
            for (double[] m : multiplier) {
                for (int i = 0; i < m.length; i++) {
                    m[i] *= unit * unit / (next * next);
                }
            }
            unit = next;
        }
    }
}
