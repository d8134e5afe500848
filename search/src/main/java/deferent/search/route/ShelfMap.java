package deferent.search.route;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jgrapht.alg.connectivity.KosarajuStrongConnectivityInspector;
import org.jgrapht.graph.DefaultDirectedGraph;

/**
 * A shelf as a map: its patterns are places, and where there is a transition from one to another
 * one can go there, though not always back.
 */
public final class ShelfMap {
    private final DefaultDirectedGraph<Integer, ShelfPair> graph =
            new DefaultDirectedGraph<>(ShelfPair.class);

    private ShelfMap() {}

    /** The map of a table, or of as much of it as is worked out. */
    public static ShelfMap of(ShelfTable table) {
        ShelfMap map = new ShelfMap();
        for (int i = 0; i < table.size(); i++) {
            map.graph.addVertex(i);
        }
        table.pairs().stream()
                .filter(ShelfPair::leads)
                .forEach(pair -> map.graph.addEdge(pair.from(), pair.to(), pair));
        return map;
    }

    public int size() {
        return graph.vertexSet().size();
    }

    /** What leads from one pattern to another, by the pattern that is left. */
    public List<ShelfPair> pairs() {
        return List.copyOf(graph.edgeSet());
    }

    /**
     * The islands of the map, largest first: patterns from each of which every other of the same
     * island can be reached, and it from there.
     */
    public List<Set<Integer>> islands() {
        return new KosarajuStrongConnectivityInspector<>(graph)
                .stronglyConnectedSets().stream()
                        .<Set<Integer>>map(TreeSet::new)
                        .sorted((a, b) -> Integer.compare(b.size(), a.size()))
                        .toList();
    }

    /** Whether anything leads on from a pattern. */
    public boolean leadsOn(int pattern) {
        return graph.outDegreeOf(pattern) > 0;
    }

    /** Whether anything leads into a pattern. */
    public boolean leadsIn(int pattern) {
        return graph.inDegreeOf(pattern) > 0;
    }
}
