package deferent.studio;

import deferent.record.Keys;
import java.util.List;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * One key of a question: what it is called, what it means and what may stand there. Questions are
 * read by it, and the protocol's schema is written from it.
 *
 * @param schema what may stand there, as JSON Schema
 * @param reading takes it out of an object that has it
 */
record AskKey<T>(
        String name, String means, ObjectNode schema, BiFunction<Keys, String, T> reading) {
    private static final int LONGEST_TEXT = 2000;
    private static final double NEARBY = 100;

    /** Some keys of one object. */
    static List<AskKey<?>> keys(AskKey<?>... keys) {
        return List.of(keys);
    }

    /** Those keys and more. */
    @SafeVarargs
    @SuppressWarnings("varargs") // they are only read
    static List<AskKey<?>> keys(List<AskKey<?>>... lists) {
        return Stream.of(lists).flatMap(List::stream).<AskKey<?>>map(key -> key).toList();
    }

    static AskKey<String> text(String name, String means) {
        ObjectNode schema = schema("string").put("maxLength", LONGEST_TEXT);
        return new AskKey<>(name, means, schema, (keys, key) -> keys.plainText(key, LONGEST_TEXT));
    }

    /** One of some words. */
    static AskKey<String> word(String name, String means, List<String> words) {
        ObjectNode schema = schema("string");
        ArrayNode list = schema.putArray("enum");
        words.forEach(list::add);
        return new AskKey<>(name, means, schema, (keys, key) -> keys.word(key, words));
    }

    /** One of an enum's constants, spelt lower case and with hyphens. */
    static <E extends Enum<E>> AskKey<E> one(String name, String means, Class<E> of) {
        List<String> words = Stream.of(of.getEnumConstants()).map(Keys::word).toList();
        ObjectNode schema = word(name, means, words).schema;
        return new AskKey<>(name, means, schema, (keys, key) -> keys.word(key, of));
    }

    static AskKey<Boolean> yes(String name, String means) {
        return new AskKey<>(name, means, schema("boolean"), (keys, key) -> keys.flag(key, false));
    }

    static AskKey<Double> number(
            String name, String means, double least, double most, String unit) {
        return new AskKey<>(
                name,
                means,
                bounded(schema("number"), least, most),
                (keys, key) -> keys.number(key, least, most, unit));
    }

    static AskKey<Integer> whole(String name, String means, int least, int most) {
        return new AskKey<>(
                name,
                means,
                bounded(schema("integer"), least, most),
                (keys, key) -> keys.whole(key, least, most));
    }

    /** A point of the frame, metres. */
    static AskKey<Vector3D> point(String name, String means) {
        return new AskKey<>(
                name,
                means,
                pointSchema(),
                (keys, key) -> {
                    double[] xyz =
                            keys.items(key, 3, 3).stream()
                                    .mapToDouble(item -> item.number(-NEARBY, NEARBY, "m"))
                                    .toArray();
                    return new Vector3D(xyz);
                });
    }

    /**
     * A number where a size is set, a point where something is dragged, null where it is unsaid.
     */
    static AskKey<JsonNode> numberOrPoint(String name, String means) {
        ObjectNode schema = JsonNodeFactory.instance.objectNode();
        ArrayNode any = schema.putArray("anyOf");
        any.add(schema("number")).add(pointSchema()).add(schema("null"));
        return new AskKey<>(name, means, schema, Keys::tree);
    }

    static AskKey<List<String>> texts(String name, String means, int most) {
        ObjectNode schema = schema("array").put("maxItems", most);
        schema.set("items", schema("string"));
        return new AskKey<>(
                name, means, schema, (keys, key) -> keys.texts(key, most, LONGEST_TEXT));
    }

    static AskKey<Question> object(String name, String means, List<AskKey<?>> inner) {
        return new AskKey<>(
                name,
                means,
                objectSchema(inner),
                (keys, key) -> Question.of(keys.object(key), inner));
    }

    static AskKey<List<Question>> objects(
            String name, String means, int most, List<AskKey<?>> inner) {
        ObjectNode schema = schema("array").put("maxItems", most);
        schema.set("items", objectSchema(inner));
        return new AskKey<>(
                name,
                means,
                schema,
                (keys, key) ->
                        keys.items(key, 0, most).stream()
                                .map(item -> Question.of(item.keys(), inner))
                                .toList());
    }

    /** What somebody else reads: a document, a list of them, wishes. */
    static AskKey<JsonNode> tree(String name, String means, ObjectNode schema) {
        return new AskKey<>(name, means, schema, Keys::tree);
    }

    static ObjectNode schema(String type) {
        return JsonNodeFactory.instance.objectNode().put("type", type);
    }

    /** An object of these keys and no others, each of which may also be null, which is unsaid. */
    static ObjectNode objectSchema(List<AskKey<?>> inner) {
        ObjectNode schema = schema("object");
        ObjectNode properties = schema.putObject("properties");
        for (AskKey<?> key : inner) {
            ObjectNode told = JsonNodeFactory.instance.objectNode().put("description", key.means);
            told.putArray("anyOf").add(key.schema.deepCopy()).add(schema("null"));
            properties.set(key.name, told);
        }
        return schema.put("additionalProperties", false);
    }

    private static ObjectNode pointSchema() {
        ObjectNode schema = schema("array").put("minItems", 3).put("maxItems", 3);
        schema.set("items", bounded(schema("number"), -NEARBY, NEARBY));
        return schema;
    }

    private static ObjectNode bounded(ObjectNode schema, double least, double most) {
        if (Double.isFinite(least)) {
            schema.put("minimum", least);
        }
        if (Double.isFinite(most)) {
            schema.put("maximum", most);
        }
        return schema;
    }
}
