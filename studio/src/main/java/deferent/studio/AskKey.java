package deferent.studio;

import deferent.record.DocumentError;
import deferent.record.Keys;
import java.util.ArrayList;
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
 * @param need whether it has to be there
 */
record AskKey<T>(
        String name,
        String means,
        ObjectNode schema,
        BiFunction<Keys, String, T> reading,
        Need need) {
    private static final int LONGEST_TEXT = 2000;
    private static final double NEARBY = 100;

    /** Whether a key has to be there. */
    enum Need {
        MAY,
        MUST,
        /** Of the keys of an object that say so exactly one has to be there. */
        ONE
    }

    private AskKey(
            String name, String means, ObjectNode schema, BiFunction<Keys, String, T> reading) {
        this(name, means, schema, reading, Need.MAY);
    }

    /** The same key where it has to be there. */
    AskKey<T> must() {
        return new AskKey<>(name, means, schema, reading, Need.MUST);
    }

    /** The same key where it stands for others that say so too. */
    AskKey<T> orAnother() {
        return new AskKey<>(name, means, schema, reading, Need.ONE);
    }

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

    /** True; where it is not meant it is left out. */
    static AskKey<Boolean> mark(String name, String means) {
        return new AskKey<>(
                name,
                means,
                schema("boolean").put("const", true),
                (keys, key) -> {
                    if (!keys.flag(key, true)) {
                        throw new BadRequest(
                                400,
                                "is false",
                                DocumentError.where(keys.pointer(key)),
                                "leave it out");
                    }
                    return true;
                });
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

    /** A number; null has a meaning of its own. */
    static AskKey<Double> numberOrNull(String name, String means) {
        ObjectNode schema = JsonNodeFactory.instance.objectNode();
        schema.putArray("anyOf").add(schema("number")).add(schema("null"));
        return new AskKey<>(
                name,
                means,
                schema,
                (keys, key) -> keys.number(key, -Double.MAX_VALUE, Double.MAX_VALUE, ""));
    }

    static AskKey<List<String>> texts(String name, String means, int most) {
        ObjectNode schema = listSchema(schema("string"), most);
        return new AskKey<>(
                name, means, schema, (keys, key) -> keys.texts(key, most, LONGEST_TEXT));
    }

    /** Numbers, at most so many. */
    static AskKey<List<Double>> numbers(
            String name, String means, int most, double least, double greatest, String unit) {
        return new AskKey<>(
                name,
                means,
                listSchema(bounded(schema("number"), least, greatest), most),
                (keys, key) ->
                        keys.items(key, 0, most).stream()
                                .map(item -> item.number(least, greatest, unit))
                                .toList());
    }

    static AskKey<Question> object(String name, String means, List<AskKey<?>> inner) {
        return new AskKey<>(
                name,
                means,
                objectSchema(inner),
                (keys, key) -> Question.of(keys.object(key), inner));
    }

    /** Objects of one of several kinds each, told apart by a kind's first key. */
    static AskKey<List<Question>> objects(
            String name, String means, int most, List<List<AskKey<?>>> kinds) {
        ObjectNode anyKind = JsonNodeFactory.instance.objectNode();
        ArrayNode any = anyKind.putArray("oneOf");
        kinds.forEach(kind -> any.add(objectSchema(kind)));
        ObjectNode schema = listSchema(anyKind, most);
        return new AskKey<>(
                name,
                means,
                schema,
                (keys, key) ->
                        keys.items(key, 0, most).stream()
                                .map(item -> Question.ofKind(item.keys(), kinds))
                                .toList());
    }

    /** What somebody else reads: a document, a list of them, wishes. */
    static AskKey<JsonNode> tree(String name, String means, ObjectNode schema) {
        return new AskKey<>(name, means, schema, Keys::tree);
    }

    static ObjectNode listSchema(ObjectNode items, int most) {
        ObjectNode schema = schema("array").put("maxItems", most);
        schema.set("items", items);
        return schema;
    }

    static ObjectNode schema(String type) {
        return JsonNodeFactory.instance.objectNode().put("type", type);
    }

    /**
     * An object of these keys and no others. What does not have to be there may also be null, which
     * is unsaid.
     */
    static ObjectNode objectSchema(List<AskKey<?>> inner) {
        ObjectNode schema = schema("object");
        ObjectNode properties = schema.putObject("properties");
        for (AskKey<?> key : inner) {
            ObjectNode told = JsonNodeFactory.instance.objectNode().put("description", key.means);
            if (key.need == Need.MUST) {
                told.setAll(key.schema.deepCopy());
            } else {
                told.putArray("anyOf").add(key.schema.deepCopy()).add(schema("null"));
            }
            properties.set(key.name, told);
        }
        schema.put("additionalProperties", false);
        ArrayNode required = schema.putArray("required");
        for (AskKey<?> key : needed(inner, Need.MUST)) {
            required.add(key.name);
        }
        List<AskKey<?>> ones = needed(inner, Need.ONE);
        if (!ones.isEmpty()) {
            ArrayNode any = schema.putArray("oneOf");
            for (AskKey<?> key : ones) {
                ObjectNode there = any.addObject();
                there.putArray("required").add(key.name);
                there.putObject("properties").putObject(key.name).set("not", schema("null"));
            }
        }
        return schema;
    }

    /** Those of some keys that are needed so. */
    static List<AskKey<?>> needed(List<AskKey<?>> keys, Need need) {
        List<AskKey<?>> needed = new ArrayList<>(keys);
        needed.removeIf(key -> key.need != need);
        return needed;
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
