package deferent.record;

import deferent.record.number.PhotoTables;
import deferent.record.number.ReadingTables;
import deferent.search.whole.Readings;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Readings as JSON, the same object from the command line and from the studio. Lengths end in _m,
 * times in _s, angles in _deg, areas in _m2; numbers are rounded to 1e-9 of their unit. A reading
 * that could not be worked out stands as {"not_worked_out": "reason"}; one that was not asked for
 * is left out.
 */
public final class ReadingsJson {
    private ReadingsJson() {}

    /** The readings as text. */
    public static String write(Readings readings) {
        return PrettyJson.text(tree(readings));
    }

    /** The readings as a tree, to be part of a larger answer. */
    public static ObjectNode tree(Readings readings) {
        return ReadingTables.READINGS.json(readings);
    }

    /**
     * The published JSON Schema (draft 2020-12) of readings; what {@link PhotoJson} writes is its
     * definition "photo".
     */
    public static String schema() {
        ObjectNode schema =
                JsonNodeFactory.instance
                        .objectNode()
                        .put("$schema", "https://json-schema.org/draft/2020-12/schema")
                        .put("$id", "urn:deferent:readings:1")
                        .put("title", "Deferent readings")
                        .put(
                                "description",
                                "What is read of a pairing. Lengths end in _m and are metres, times in"
                                        + " _s, angles in _deg. A reading that could not be worked out"
                                        + " stands as an object with its reason under not_worked_out;"
                                        + " one that was not asked for is left out. Frame: origin at"
                                        + " the performer's breastbone, x to the performer's left, y"
                                        + " up, z toward the audience.");
        ObjectNode defs = JsonNodeFactory.instance.objectNode();
        schema.setAll(ReadingTables.READINGS.schema(defs));
        PhotoTables.PHOTO.schema(defs);
        return PrettyJson.text(schema.set("$defs", defs));
    }
}
