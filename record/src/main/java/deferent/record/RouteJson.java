package deferent.record;

import static deferent.record.number.Written.rounded;

import deferent.search.crossing.FlowingSet;
import deferent.search.crossing.Passage;
import deferent.search.crossing.Route;
import deferent.search.crossing.ShelfCrossing;
import deferent.search.crossing.ShelfMap;
import deferent.search.crossing.ShelfTable;
import deferent.tell.TellCrossing;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** A route or a flowing set through a shelf as JSON: the patterns in turn, and each crossing. */
public final class RouteJson {
    private RouteJson() {}

    /**
     * A route through patterns, or that there is none.
     *
     * @param patterns the places of the map, in its order
     * @param table where the crossings come from
     * @param map the crossings between the patterns
     * @param told the answer in a sentence
     * @param route where there is one
     * @param set the set, where one was asked for
     * @param done whether all patterns were compared
     */
    public record Found(
            List<PatternDocument> patterns,
            ShelfTable table,
            ShelfMap map,
            Told told,
            Optional<Route> route,
            Optional<FlowingSet> set,
            boolean done) {
        public Found {
            patterns = List.copyOf(patterns);
        }

        /** The gentlest route from one pattern to another. */
        public static Found route(
                List<PatternDocument> patterns,
                ShelfTable table,
                ShelfMap map,
                int from,
                int to,
                boolean done) {
            Optional<Route> route = map.route(from, to);
            return new Found(
                    patterns,
                    table,
                    map,
                    route.map(r -> TellCrossing.of(r, i -> patterns.get(i).name()))
                            .orElseGet(
                                    () ->
                                            TellCrossing.noRoute(
                                                    patterns.get(from).name(),
                                                    patterns.get(to).name())),
                    route,
                    Optional.empty(),
                    done);
        }

        /** A set of {@code length} patterns that comes back to its start. */
        public static Found set(
                List<PatternDocument> patterns,
                ShelfTable table,
                ShelfMap map,
                int length,
                FlowingSet set,
                boolean done) {
            return new Found(
                    patterns,
                    table,
                    map,
                    TellCrossing.of(set, length, i -> patterns.get(i).name()),
                    set.route(),
                    Optional.of(set),
                    done);
        }

        public String name(int pattern) {
            return patterns.get(pattern).name();
        }

        /** The whole route as it can be played, with the kit of its first pattern. */
        public Passage played(Route route) {
            return map.play(route, patterns.get(route.start()).kit());
        }
    }

    /** The answer as text. */
    public static String write(Found found) {
        return PrettyJson.text(tree(found));
    }

    /** The answer as a tree to be part of a larger one. */
    public static ObjectNode tree(Found found) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.set("request", CrossingsJson.request(found.table().request()));
        node.put("complete", found.done());
        node.put("patterns_compared", found.patterns().size());
        node.put("crossings_found", found.table().crossings().count());
        List<Told> told = new ArrayList<>(List.of(found.told()));
        if (!found.done()) {
            told.add(TellCrossing.stopped());
        }
        ToldJson.put(node.putArray("told"), told);
        found.set()
                .ifPresent(
                        set ->
                                node.putObject("set")
                                        .put("outcome", Keys.word(set.outcome()))
                                        .put("looked", set.looked()));
        found.route().ifPresent(route -> node.set("route", route(found, route)));
        return node;
    }

    private static ObjectNode route(Found found, Route route) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("roughness_weights", rounded(route.roughness()));
        node.put("roughest_weights", rounded(route.roughest()));
        node.put("difficulty", rounded(route.difficulty()));
        ArrayNode patterns = node.putArray("patterns");
        for (int at : route.patterns()) {
            PatternDocument pattern = found.patterns().get(at);
            ObjectNode one = patterns.addObject();
            one.put("name", pattern.name());
            one.set("pattern", PatternJson.tree(pattern));
        }
        ArrayNode crossings = node.putArray("crossings");
        for (ShelfCrossing crossing : route.crossings()) {
            ObjectNode one = CrossingsJson.tree(found.table().crossing(crossing));
            one.put("from", found.name(crossing.from()));
            one.put("to", found.name(crossing.to()));
            crossings.add(one);
        }
        if (!route.crossings().isEmpty()) {
            node.set("passage", CrossingsJson.tree(found.played(route)));
        }
        return node;
    }
}
