package deferent.record;

import deferent.record.number.ReadingTables;
import deferent.tell.Told;
import java.util.List;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Sentences as JSON. */
final class ToldJson {
    private ToldJson() {}

    static void put(ArrayNode into, List<Told> told) {
        for (Told one : told) {
            put(into.addObject(), one);
        }
    }

    static void put(ObjectNode into, Told one) {
        into.setAll(ReadingTables.TOLD.json(one));
    }
}
