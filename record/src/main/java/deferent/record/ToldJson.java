package deferent.record;

import deferent.record.number.ReadingTables;
import deferent.tell.Told;
import java.util.List;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Sentences as JSON. */
public final class ToldJson {
    private ToldJson() {}

    /** Adds each as an object. */
    public static void put(ArrayNode into, List<Told> told) {
        for (Told one : told) {
            put(into.addObject(), one);
        }
    }

    /** Puts one into an object. */
    public static void put(ObjectNode into, Told one) {
        into.setAll(ReadingTables.TOLD.json(one));
    }
}
