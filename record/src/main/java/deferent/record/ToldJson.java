package deferent.record;

import deferent.record.number.ReadingTables;
import deferent.tell.Told;
import java.util.List;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Sentences as JSON, and numbers rounded to what a measurement could tell. */
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

    /** To a billionth, without a negative zero. */
    static double rounded(double value) {
        return Math.rint(value * 1e9) / 1e9 + 0.0;
    }
}
