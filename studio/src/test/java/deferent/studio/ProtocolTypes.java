package deferent.studio;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;

/**
 * The protocol's schema as types of TypeScript, of those forms that {@link AskKey} writes: a type
 * an ask, and one for each object, list of objects and list of words, named after its key. Bounds
 * of numbers and lengths have no type; the schema alone knows them.
 */
final class ProtocolTypes {
    private static final String HEAD =
            """
            // What can be asked of the studio: the schema of its protocol as types. Written by ProtocolTypes; a test holds it to the schema.

            declare namespace Protocol {
              /** What a question says besides what it asks. */
              type Said<Asked> = Asked extends unknown ? Omit<Asked, 'ask' | 'id'> : never;

            """;

    private final Map<String, String> named = new TreeMap<>();

    private ProtocolTypes() {}

    static String of(JsonNode schema) {
        ProtocolTypes types = new ProtocolTypes();
        List<String> asks = new ArrayList<>();
        StringBuilder told = new StringBuilder();
        for (JsonNode ask : schema.get("oneOf")) {
            String name = upper(ask.get("title").asString());
            asks.add(name);
            told.append("\n  /** ").append(ask.get("description").asString()).append(" */\n");
            told.append(declared(name, types.object(ask)));
        }
        StringBuilder all = new StringBuilder(HEAD);
        all.append(declared("Question", String.join(" | ", asks))).append(told).append('\n');
        types.named.forEach(
                (name, type) -> {
                    if (asks.contains(name)) {
                        throw new IllegalStateException("both a key and an ask are " + name);
                    }
                    all.append(declared(name, type));
                });
        return all.append("}\n").toString();
    }

    private static String declared(String name, String type) {
        return "  type " + name + " = " + type + ";\n";
    }

    /** What may stand under a key. */
    private String type(String key, JsonNode schema) {
        if (schema.has("const")) {
            return literal(schema.get("const"));
        }
        if (schema.has("enum")) {
            return named(key, union(schema.get("enum").valueStream().map(ProtocolTypes::literal)));
        }
        if (schema.has("anyOf")) {
            return union(schema.get("anyOf").valueStream().map(one -> type(key, one)));
        }
        if (schema.has("oneOf") && !schema.has("type")) {
            return named(key, union(schema.get("oneOf").valueStream().map(this::object)));
        }
        String type = schema.path("type").asString("");
        return switch (type) {
            case "" -> "any";
            case "string", "boolean", "number", "null" -> type;
            case "integer" -> "number";
            case "array" -> list(type(key, schema.path("items")), schema);
            case "object" -> schema.has("properties") ? named(key, object(schema)) : "object";
            default -> throw new IllegalStateException("no type is known for " + schema);
        };
    }

    private static String list(String item, JsonNode schema) {
        return schema.has("minItems")
                ? Stream.generate(() -> item)
                        .limit(schema.get("minItems").asInt())
                        .collect(Collectors.joining(", ", "[", "]"))
                : item + "[]";
    }

    /** Its keys; those of which exactly one has to be there as that many choices. */
    private String object(JsonNode schema) {
        List<String> musts = texts(schema.get("required"));
        List<String> ones =
                schema.path("oneOf")
                        .valueStream()
                        .map(one -> one.get("required").get(0).asString())
                        .toList();
        StringBuilder type = new StringBuilder("{\n");
        schema.get("properties")
                .forEachEntry(
                        (key, value) -> {
                            if (!ones.contains(key)) {
                                String may = musts.contains(key) ? ": " : "?: ";
                                type.append("    " + key + may + type(key, value) + ";\n");
                            }
                        });
        type.append("  }");
        if (!ones.isEmpty()) {
            type.append(" & (");
            for (String one : ones) {
                type.append("\n    | ").append(choice(one, ones, schema.get("properties")));
            }
            type.append("\n  )");
        }
        return type.toString();
    }

    /** Null is never said: it is there for what is not said. */
    private String choice(String said, List<String> ones, JsonNode properties) {
        return ones.stream()
                .map(
                        key ->
                                key.equals(said)
                                        ? key
                                                + ": "
                                                + type(key, properties.at("/" + key + "/anyOf/0"))
                                        : key + "?: never")
                .collect(Collectors.joining("; ", "{ ", " }"));
    }

    private String named(String key, String type) {
        String name = upper(key);
        String other = named.put(name, type);
        if (other != null && !other.equals(type)) {
            throw new IllegalStateException("two keys \"" + key + "\" hold different things");
        }
        return name;
    }

    private static List<String> texts(JsonNode list) {
        return list.valueStream().map(JsonNode::asString).toList();
    }

    private static String union(Stream<String> types) {
        return types.collect(Collectors.joining(" | "));
    }

    private static String literal(JsonNode value) {
        return value.isString() ? "'" + value.asString() + "'" : value.toString();
    }

    /** "typed_in" is "TypedIn". */
    private static String upper(String key) {
        return Stream.of(key.split("[_-]"))
                .map(word -> word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1))
                .collect(Collectors.joining());
    }
}
