package deferent.search.crossing;

import deferent.search.crossing.FlowingSet.Outcome;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * The gentlest round of a given number of patterns from one of them and back, no pattern twice:
 * depth first, cheapest crossing first, cut off wherever even the cheapest walk home that may
 * repeat patterns would cost as much as the best round known (branch and bound: Land and Doig,
 * 1960). The walks' costs come from dynamic programming over their length, and where there is no
 * such walk there is no such round.
 */
final class SetSearch {
    private static final int ASK = 4096;

    private final int start;
    private final int length;
    private final long budget;
    private final BooleanSupplier stop;
    private final double[] difficulty;
    private final List<List<ShelfCrossing>> out;
    private final double[][] home;
    private final boolean[] used;
    private final Deque<ShelfCrossing> path = new ArrayDeque<>();
    private double best = Double.POSITIVE_INFINITY;
    private List<ShelfCrossing> found = List.of();
    private long looked;
    private boolean stopped;

    /**
     * @param out the crossings out of each pattern, at most one to each other
     */
    SetSearch(
            int start,
            int length,
            long budget,
            BooleanSupplier stop,
            double[] difficulty,
            List<List<ShelfCrossing>> out) {
        this.start = start;
        this.length = length;
        this.budget = budget;
        this.stop = stop;
        this.difficulty = difficulty;
        this.out = out;
        this.home = home();
        this.used = new boolean[out.size()];
    }

    private double[][] home() {
        double[][] cost = new double[length + 1][out.size()];
        for (double[] row : cost) {
            Arrays.fill(row, Double.POSITIVE_INFINITY);
        }
        cost[0][start] = 0;
        for (int k = 1; k <= length; k++) {
            for (int v = 0; v < out.size(); v++) {
                for (ShelfCrossing crossing : out.get(v)) {
                    // The start is passed at the very end alone.
                    boolean open = k == 1 ? crossing.to() == start : crossing.to() != start;
                    if (open) {
                        cost[k][v] =
                                Math.min(cost[k][v], cost(crossing) + cost[k - 1][crossing.to()]);
                    }
                }
            }
        }
        return cost;
    }

    private double cost(ShelfCrossing crossing) {
        return crossing.roughness() + difficulty[crossing.to()];
    }

    FlowingSet run() {
        descend(start, length, 0);
        Optional<Route> route =
                found.isEmpty()
                        ? Optional.empty()
                        : Optional.of(Route.of(start, found, difficulty));
        Outcome outcome =
                found.isEmpty()
                        ? stopped ? Outcome.UNKNOWN : Outcome.NONE
                        : stopped ? Outcome.FOUND : Outcome.BEST;
        return new FlowingSet(outcome, route, looked);
    }

    private void descend(int at, int left, double spent) {
        if (left == 0) {
            if (spent < best) {
                best = spent;
                found = new ArrayList<>(path);
            }
            return;
        }
        List<ShelfCrossing> crossings = new ArrayList<>(out.get(at));
        crossings.removeIf(
                crossing -> used[crossing.to()] || (crossing.to() == start) != (left == 1));
        crossings.sort(
                Comparator.comparingDouble(
                        crossing -> cost(crossing) + home[left - 1][crossing.to()]));
        for (ShelfCrossing crossing : crossings) {
            double least = spent + cost(crossing) + home[left - 1][crossing.to()];
            if (!(least < best)) {
                return;
            }
            looked++;
            if (looked > budget || (looked % ASK == 0 && stop.getAsBoolean())) {
                stopped = true;
            }
            if (stopped) {
                return;
            }
            used[crossing.to()] = true;
            path.addLast(crossing);
            descend(crossing.to(), left - 1, spent + cost(crossing));
            path.removeLast();
            used[crossing.to()] = false;
        }
    }
}
