package deferent.search.crossing;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Trace;
import deferent.reading.tether.Kit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BooleanSupplier;
import java.util.function.IntPredicate;
import org.jgrapht.GraphPath;
import org.jgrapht.alg.connectivity.ConnectivityInspector;
import org.jgrapht.alg.shortestpath.DijkstraShortestPath;
import org.jgrapht.alg.shortestpath.YenKShortestPath;
import org.jgrapht.graph.AsSubgraph;
import org.jgrapht.graph.SimpleDirectedWeightedGraph;

/**
 * A shelf as a map: its patterns are places, the gentlest crossing between each two an edge, open
 * in both directions. Passing a crossing costs its roughness in weights and how hard the pattern is
 * that it enters, in whatever the caller counts that in, such that 1 is worth one weight. Waiting
 * inside a pattern until its moment comes costs nothing: it takes one more cycle at most. Of routes
 * that cost the same the one with fewer changes is taken.
 */
public final class ShelfMap {
    // Less than anything that could be felt.
    private static final double A_CROSSING = 1e-6;

    private final List<Pairing> shelf;
    private final CrossingRequest request;
    private final double[] difficulty;
    private final SimpleDirectedWeightedGraph<Integer, ShelfCrossing> graph =
            new SimpleDirectedWeightedGraph<>(ShelfCrossing.class);

    private ShelfMap(
            List<Pairing> shelf,
            CrossingRequest request,
            double[] difficulty,
            List<ShelfCrossing> crossings) {
        this.shelf = shelf;
        this.request = request;
        this.difficulty = difficulty;
        for (int i = 0; i < shelf.size(); i++) {
            graph.addVertex(i);
        }
        for (ShelfCrossing crossing : crossings) {
            if (graph.addEdge(crossing.from(), crossing.to(), crossing)) {
                graph.setEdgeWeight(
                        crossing, crossing.roughness() + difficulty[crossing.to()] + A_CROSSING);
            }
        }
    }

    /** The map of a table, or of as much of it as is done; all patterns equally hard. */
    public static ShelfMap of(ShelfTable table) {
        if (table.request().who() != Who.BOTH) {
            throw new Refusal(
                    "compares one hand", "map of a shelf", "make the table for both hands");
        }
        List<ShelfCrossing> gentlest = new ArrayList<>();
        ShelfCrossings crossings = table.crossings();
        int i = 0;
        while (i < crossings.count()) {
            ShelfCrossing best = crossings.get(i);
            int from = best.from();
            int to = best.to();
            for (i++; i < crossings.count(); i++) {
                ShelfCrossing next = crossings.get(i);
                if (next.from() != from || next.to() != to) {
                    break;
                }
                best = next.roughness() < best.roughness() ? next : best;
            }
            gentlest.add(best);
            gentlest.add(best.back());
        }
        return new ShelfMap(table.shelf(), table.request(), new double[table.size()], gentlest);
    }

    /** The same map where each pattern is as hard as told, each 0 or more. */
    public ShelfMap withDifficulty(double[] each) {
        if (each.length != shelf.size()) {
            throw new Refusal(
                    "is told of " + each.length + " patterns",
                    "difficulty",
                    "tell it of all " + shelf.size());
        }
        for (double d : each) {
            Refusal.within(d, 0, 1e6, "difficulty", "");
        }
        return new ShelfMap(shelf, request, each.clone(), crossings());
    }

    /** The same map without crossings rougher than {@code most} weights. */
    public ShelfMap withRoughest(double most) {
        return new ShelfMap(
                shelf,
                request,
                difficulty,
                crossings().stream().filter(crossing -> crossing.roughness() <= most).toList());
    }

    public int size() {
        return shelf.size();
    }

    public Pairing pattern(int i) {
        return shelf.get(i);
    }

    /** All crossings, both directions. */
    public List<ShelfCrossing> crossings() {
        return List.copyOf(graph.edgeSet());
    }

    /** The crossings out of a pattern. */
    public List<ShelfCrossing> crossings(int from) {
        return List.copyOf(graph.outgoingEdgesOf(from));
    }

    /** The gentlest crossing from one pattern to another, where there is one. */
    public Optional<ShelfCrossing> crossing(int from, int to) {
        return Optional.ofNullable(graph.getEdge(place(from), place(to)));
    }

    /** The islands of the map: patterns that can reach each other. */
    public List<Set<Integer>> islands() {
        return new ConnectivityInspector<>(graph)
                .connectedSets().stream().map(s -> (Set<Integer>) new TreeSet<>(s)).toList();
    }

    /** The cheapest route; empty where none leads there. */
    public Optional<Route> route(int from, int to) {
        return route(from, to, known -> true);
    }

    /**
     * The cheapest route through patterns that are known; the first and the last count as known.
     */
    public Optional<Route> route(int from, int to, IntPredicate known) {
        GraphPath<Integer, ShelfCrossing> path =
                DijkstraShortestPath.findPathBetween(part(from, to, known), from, to);
        return Optional.ofNullable(path).map(p -> Route.of(from, p.getEdgeList(), difficulty));
    }

    /** The cheapest routes that visit no pattern twice, cheapest first (Yen, 1971). */
    public List<Route> routes(int from, int to, IntPredicate known, int most) {
        return new YenKShortestPath<>(part(from, to, known))
                .getPaths(from, to, most).stream()
                        .map(p -> Route.of(from, p.getEdgeList(), difficulty))
                        .toList();
    }

    private AsSubgraph<Integer, ShelfCrossing> part(int from, int to, IntPredicate known) {
        place(from);
        place(to);
        Set<Integer> kept = new TreeSet<>();
        for (int i = 0; i < shelf.size(); i++) {
            if (i == from || i == to || known.test(i)) {
                kept.add(i);
            }
        }
        return new AsSubgraph<>(graph, kept);
    }

    private int place(int i) {
        if (i < 0 || i >= shelf.size()) {
            throw new Refusal(
                    "is " + i, "a pattern's place on the shelf", "give 0 to below " + shelf.size());
        }
        return i;
    }

    /** A set with a budget that a second or two allow. */
    public FlowingSet set(int start, int patterns) {
        return set(start, patterns, known -> true, 5_000_000, () -> false);
    }

    /**
     * The gentlest set of {@code patterns} patterns that starts and ends with {@code start} and has
     * no pattern twice.
     *
     * @param patterns 2 to 64, the start counted once
     * @param budget how many part routes to look at before giving up
     * @param stop asked every few thousand of them
     */
    public FlowingSet set(
            int start, int patterns, IntPredicate known, long budget, BooleanSupplier stop) {
        Refusal.within(patterns, 2, 64, "patterns of a set", "patterns");
        place(start);
        List<List<ShelfCrossing>> out = new ArrayList<>();
        for (int i = 0; i < shelf.size(); i++) {
            boolean in = i == start || known.test(i);
            out.add(
                    !in
                            ? List.of()
                            : graph.outgoingEdgesOf(i).stream()
                                    .filter(w -> w.to() == start || known.test(w.to()))
                                    .toList());
        }
        return new SetSearch(start, patterns, budget, stop, difficulty, out).run();
    }

    /**
     * A route that can be played: a cycle or more of each pattern, and through each crossing a
     * passage.
     */
    public Passage play(Route route, Kit kit) {
        List<Splice.Leg> legs = new ArrayList<>();
        double blend = request.blend();
        double entered = Double.NaN;
        boolean keepsTethers = true;
        int at = route.start();
        for (ShelfCrossing crossing : route.crossings()) {
            Trace trace = Trace.of(shelf.get(at));
            double stay = trace.period();
            if (!Double.isNaN(entered)) {
                double wait = crossing.fromTime() - entered;
                wait -= trace.period() * Math.floor(wait / trace.period());
                stay = wait;
                while (stay < Math.max(trace.period(), blend)) {
                    stay += trace.period();
                }
            }
            stay = Math.max(stay, blend);
            legs.add(Splice.Leg.of(trace, crossing.fromTime() - stay, stay));
            keepsTethers &= sameTethers(shelf.get(at), shelf.get(crossing.to()));
            entered = crossing.toTime();
            at = crossing.to();
        }
        Trace last = Trace.of(shelf.get(at));
        legs.add(
                Splice.Leg.of(
                        last, Double.isNaN(entered) ? 0 : entered, Math.max(last.period(), blend)));
        double[] blends = new double[legs.size() - 1];
        Arrays.fill(blends, blend);
        return Passage.of(new Splice(legs, blends), blends.length, keepsTethers, kit);
    }

    private static boolean sameTethers(Pairing one, Pairing other) {
        return Math.abs(one.left().tether().length() - other.left().tether().length()) < 1e-6
                && Math.abs(one.right().tether().length() - other.right().tether().length()) < 1e-6;
    }
}
