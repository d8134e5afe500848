package deferent.record.number;

import tools.jackson.databind.node.ObjectNode;

/**
 * One value of a reading.
 *
 * @param key its key in JSON, which ends in its unit
 * @param name as people read it; empty for one that stands in JSON alone
 * @param value where it comes from and how it is written
 */
public record Row<R>(String key, String name, Written<R> value) {
    /** Its name, then its unit. */
    ObjectNode schema(ObjectNode defs) {
        ObjectNode node = value.schema().apply(defs);
        if (!name.isEmpty()) {
            String unit = node.path("description").asString("");
            node.put("description", unit.isEmpty() ? name : name + ", " + unit);
        }
        return node;
    }
}
