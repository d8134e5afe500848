package deferent.search.route;

import deferent.search.transition.Hindrance;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * The gentlest route from one pattern of a shelf to another: the least sum of {@link
 * Route#A_CHANGE} and hardness over its steps.
 *
 * <p>A shelf of 200 patterns has 40 000 pairs at 0.15 s each, so a pair is worked out only when
 * nothing that is known can be gentler than what it might lead to: the pair straight to the goal
 * first, then those from the start, and from every pattern that is reached the pair straight to the
 * goal before others. What is not worked out yet counts as if it were as gentle as can be, and so
 * does the last step to the goal; the first route that comes up is then the gentlest (Hart, Nilsson
 * and Raphael, 1968, with edges looked at late as by Cohen, Phillips and Likhachev, 2014). It is
 * our own since a library's Dijkstra asks for the weights of all pairs out of a pattern at once,
 * which is what takes the time here. Of routes as gentle the one whose pairs were known first is
 * taken.
 *
 * <p>Where the patterns between are easily reached a dozen pairs will do; where no route leads to
 * the goal all pairs are worked out that can be reached from the start.
 */
public final class RouteSearch {
    /** Pairs as promising as each other are worked out so many at once, on as many cores. */
    private static final int AT_ONCE = 2;

    private final ShelfTable table;
    private final int from;
    private final int to;
    private final PriorityQueue<Branch> open =
            new PriorityQueue<>(
                    Comparator.comparingDouble(Branch::least)
                            .thenComparing(branch -> branch.pair().isEmpty())
                            .thenComparing(Branch::spent, Comparator.reverseOrder())
                            .thenComparing(Branch::order));
    private final Map<Integer, ShelfPair> reached = new HashMap<>();
    private Optional<Branch> arrives = Optional.empty();
    private int order;
    private int looked;

    /**
     * One step on from a pattern that is reached.
     *
     * @param least what a route that goes there costs at least
     * @param spent what getting to its end costs; to its start, where it is not looked at
     * @param from where it begins
     * @param to where it would lead
     * @param pair what was found, once it was looked at
     * @param order by which those that are alike are taken
     */
    private record Branch(
            double least, double spent, int from, int to, Optional<ShelfPair> pair, int order) {}

    /** How far a search is. */
    public record Progress(int looked, Optional<Route> best) {}

    /**
     * @param table of the shelf; what is worked out stays in it
     * @param from where the route starts, by its place on the shelf
     * @param to where it is to lead
     */
    public RouteSearch(ShelfTable table, int from, int to) {
        this.table = table;
        this.from = from;
        this.to = to;
    }

    /** Runs to the end. */
    public RouteFound run() {
        return run(progress -> {}, () -> false);
    }

    /**
     * Runs to the end or until stopped.
     *
     * @param listener hears after each pair how far it is
     * @param stop asked before each
     */
    public RouteFound run(Consumer<Progress> listener, BooleanSupplier stop) {
        if (from == to) {
            return found(Optional.of(new Route(from, List.of())), true);
        }
        branches(from, 0);
        while (!open.isEmpty()) {
            Branch next = open.remove();
            if (next.to() == from || reached.containsKey(next.to())) {
                continue;
            }
            if (next.pair().isPresent()) {
                reached.put(next.to(), next.pair().get());
                if (next.to() == to) {
                    return found(best(), true);
                }
                branches(next.to(), next.spent());
            } else if (stop.getAsBoolean()) {
                return found(best(), false);
            } else {
                look(next);
                listener.accept(new Progress(looked, best()));
            }
        }
        return found(Optional.empty(), true);
    }

    private RouteFound found(Optional<Route> route, boolean done) {
        return new RouteFound(
                route,
                done,
                from == to
                        ? Hindrance.NONE
                        : table.known(from, to).map(ShelfPair::why).orElse(Hindrance.NONE),
                looked);
    }

    private void branches(int at, double spent) {
        // The goal is put in first, so that it is looked at first.
        branch(at, to, spent);
        for (int next = 0; next < table.size(); next++) {
            if (next != at && next != to && next != from && !reached.containsKey(next)) {
                branch(at, next, spent);
            }
        }
    }

    private void branch(int at, int next, double spent) {
        Optional<ShelfPair> known = table.known(at, next);
        if (known.isPresent()) {
            known(known.get(), spent);
        } else {
            double least = spent + Route.A_CHANGE + onward(next);
            open.add(new Branch(least, spent, at, next, known, order++));
        }
    }

    private void known(ShelfPair pair, double spent) {
        if (!pair.leads()) {
            return;
        }
        double then = spent + Route.cost(pair);
        Branch branch =
                new Branch(
                        then + onward(pair.to()),
                        then,
                        pair.from(),
                        pair.to(),
                        Optional.of(pair),
                        order++);
        open.add(branch);
        if (pair.to() == to && arrives.filter(best -> best.spent() <= then).isEmpty()) {
            arrives = Optional.of(branch);
        }
    }

    /** What is still to be spent at least. */
    private double onward(int at) {
        return at == to ? 0 : Route.A_CHANGE;
    }

    private void look(Branch first) {
        List<Branch> some = new ArrayList<>(List.of(first));
        while (some.size() < AT_ONCE
                && !open.isEmpty()
                && open.element().pair().isEmpty()
                && open.element().least() == first.least()) {
            Branch also = open.remove();
            if (!reached.containsKey(also.to())) {
                some.add(also);
            }
        }
        looked += some.size();
        List<ShelfPair> pairs =
                some.parallelStream().map(b -> table.pair(b.from(), b.to())).toList();
        for (int i = 0; i < pairs.size(); i++) {
            known(pairs.get(i), some.get(i).spent());
        }
    }

    /** The gentlest route that is known by now. */
    private Optional<Route> best() {
        return arrives.map(
                last -> {
                    List<ShelfPair> steps = new ArrayList<>(last.pair().stream().toList());
                    while (steps.get(0).from() != from) {
                        steps.add(0, reached.get(steps.get(0).from()));
                    }
                    return new Route(from, steps);
                });
    }
}
