package deferent.search.transition;

import java.util.Arrays;

/**
 * The best passage of one side from every time of the one pattern to every time of the other: over
 * the torus of both clocks, so many even times of either, each with all durations of a grid and the
 * turns that are nearest in mid passage.
 */
final class Torus {
    /** Durations tried, in poi beats. */
    static final double[] BEATS = {0.5, 1.5, 2.5};

    static final double SHORTEST = 0.25;
    static final double LONGEST = 4;

    /** A beat more is worth so much jerk, in thousands of m/s³ (our choice). */
    static final double A_BEAT = 0.05;

    /**
     * How closely it is looked.
     *
     * @param cells even times of either pattern
     * @param rounds of smoothing for each passage
     * @param fineness of each
     */
    record Grid(int cells, int rounds, Attempt.Fineness fineness) {}

    /** Hardness first, whatever the effort. */
    static final double HARDNESS = 100;

    private final Attempt attempt;
    private final SpunSide from;
    private final SpunSide to;
    private final int cells;
    private final double[] cost;
    private final double[] outlook;
    private final byte[] beats;

    private Torus(Attempt attempt, SpunSide from, SpunSide to, int cells) {
        this.cells = cells;
        this.cost = new double[cells * cells];
        this.outlook = new double[cells * cells];
        this.beats = new byte[cells * cells];
        this.attempt = attempt;
        this.from = from;
        this.to = to;
    }

    static Torus of(SpunSide from, SpunSide to, Reachable reach, Grid grid) {
        Torus torus =
                new Torus(new Attempt(from, to, reach, grid.fineness()), from, to, grid.cells());
        Arrays.fill(torus.cost, Double.POSITIVE_INFINITY);
        for (int i = 0; i < grid.cells(); i++) {
            for (int j = 0; j < grid.cells(); j++) {
                torus.fill(i, j, grid.rounds());
            }
        }
        return torus;
    }

    private void fill(int i, int j, int rounds) {
        double leaves = from.period() * i / cells;
        double later = to.period() * j / cells - leaves;
        int at = i * cells + j;
        for (int k = 0; k < BEATS.length; k++) {
            double seconds = BEATS[k] * attempt.beat();
            int turns = attempt.nearestTurns(leaves, later, seconds);
            attempt.run(leaves, later, seconds, turns, rounds);
            double here = cost(attempt, BEATS[k]);
            if (here < cost[at]) {
                cost[at] = here;
                outlook[at] = attempt.outlook();
                beats[at] = (byte) k;
            }
        }
    }

    /** What passages are compared by: first how hard, then how much effort, then how long. */
    static double cost(Attempt attempt, double beats) {
        return HARDNESS * attempt.outlook() + attempt.jerk() / 1000 + A_BEAT * beats;
    }

    Attempt attempt() {
        return attempt;
    }

    double cost(int i, int j) {
        return cost[i * cells + j];
    }

    /** How hard the cheapest is, or by how much it is past what is possible. */
    double outlook(int i, int j) {
        return outlook[i * cells + j];
    }

    double seconds(int i, int j) {
        return BEATS[beats[i * cells + j]] * attempt.beat();
    }
}
