package deferent.record;

import deferent.search.transition.Grade;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** A route over a shelf, as {@code deferent route --json} and the studio answer it. */
public final class RouteJson {
    private RouteJson() {}

    /** The answer as text. */
    public static String write(RouteReading reading, Grade hardest) {
        return PrettyJson.text(tree(reading, hardest));
    }

    /** The answer as a tree to be part of a larger one: the route itself as the set it is. */
    public static ObjectNode tree(RouteReading reading, Grade hardest) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("from", reading.from().name());
        node.put("to", reading.to().name());
        node.put("hardest", Keys.word(hardest));
        node.put("complete", reading.found().done());
        node.put("pairs_compared", reading.found().looked());
        ToldJson.put(node.putArray("told"), reading.told());
        reading.set().ifPresent(set -> node.set("set", SetJson.tree(set)));
        return node;
    }
}
