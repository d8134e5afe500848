package deferent.record.number;

import deferent.reading.worked.Worked;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * How a value is written everywhere: what it is in JSON, what the schema says of that, and what
 * stands in a table.
 *
 * @param json of a value; a missing node where it is left out
 * @param schema the schema of that JSON, given the definitions to which it may add
 * @param said the value as people read it; empty where a table has no place for it
 * @param always whether it is never left out
 */
public record Written<T>(
        Function<T, JsonNode> json,
        Function<ObjectNode, ObjectNode> schema,
        Function<T, String> said,
        boolean always) {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    /** A number whose key says its unit; one that is no number is refused. */
    static Written<Double> number(String key) {
        Scale scale = Scale.of(key);
        return new Written<>(
                value -> {
                    if (!Double.isFinite(value)) {
                        throw new IllegalArgumentException(key + " is " + value + ", not a number");
                    }
                    return NODES.numberNode(rounded(value));
                },
                defs -> {
                    ObjectNode node = typed("number");
                    return scale.unit().isEmpty() ? node : node.put("description", scale.unit());
                },
                scale::said,
                true);
    }

    /** To 1e-9 of the unit; adding zero turns −0.0 into 0.0. */
    public static double rounded(double value) {
        return Math.abs(value) < 1e6 ? Math.rint(value * 1e9) / 1e9 + 0.0 : value;
    }

    static Written<Integer> whole() {
        return new Written<>(
                NODES::numberNode, defs -> typed("integer"), value -> value.toString(), true);
    }

    static Written<Boolean> yes() {
        return new Written<>(
                NODES::booleanNode, defs -> typed("boolean"), yes -> yes ? "yes" : "no", true);
    }

    static Written<String> text() {
        return new Written<>(NODES::stringNode, defs -> typed("string"), text -> text, true);
    }

    /** One of an enum's words. */
    static <E extends Enum<E>> Written<E> word(Class<E> of) {
        return new Written<>(
                constant -> NODES.stringNode(word(constant)),
                defs -> {
                    ObjectNode node = NODES.objectNode();
                    ArrayNode words = node.putArray("enum");
                    Arrays.stream(of.getEnumConstants()).forEach(c -> words.add(word(c)));
                    return node;
                },
                Written::word,
                true);
    }

    /** A constant as documents and readings spell it: lower case, with hyphens. */
    public static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Left out where there is none. */
    Written<Optional<T>> maybe() {
        return maybe("");
    }

    /** The same; people are told so much where there is none. */
    Written<Optional<T>> maybe(String none) {
        return new Written<>(
                value -> value.map(json).orElse(NODES.missingNode()),
                schema,
                value -> value.map(said).orElse(none),
                false);
    }

    /** With its reason where it was not worked out; left out where it was not asked for. */
    Written<Worked<T>> worked() {
        Written<Worked<T>> asked =
                maybe().from(Worked<T>::reading)
                        .unless(
                                worked -> worked.failure().isPresent(),
                                Table.NOT.written().from(worked -> worked.failure().orElseThrow()));
        return new Written<>(asked.json, asked.schema, worked -> worked.said(said), always);
    }

    /** The same; its key stands only where it was asked for. */
    Written<T> whereAsked() {
        return new Written<>(json, schema, said, false);
    }

    /** Another form for some values. */
    Written<T> unless(Predicate<T> when, Written<T> other) {
        return new Written<>(
                value -> (when.test(value) ? other : this).json.apply(value),
                defs -> {
                    ObjectNode node = NODES.objectNode();
                    node.putArray("anyOf").add(schema.apply(defs)).add(other.schema.apply(defs));
                    return node;
                },
                value -> (when.test(value) ? other : this).said.apply(value),
                always);
    }

    /** The same of something that has such a value. */
    <R> Written<R> from(Function<? super R, ? extends T> part) {
        return new Written<>(
                whole -> json.apply(part.apply(whole)),
                schema,
                whole -> said.apply(part.apply(whole)),
                always);
    }

    Written<List<T>> listed() {
        return new Written<>(
                values -> {
                    ArrayNode array = NODES.arrayNode();
                    values.forEach(value -> array.add(json.apply(value)));
                    return array;
                },
                defs -> typed("array").set("items", schema.apply(defs)),
                values -> "",
                true);
    }

    /** So many of them, in a table one after the other. */
    Written<List<T>> listed(int count) {
        Written<List<T>> list = listed();
        return new Written<>(
                list.json,
                defs -> list.schema.apply(defs).put("minItems", count).put("maxItems", count),
                values -> String.join(", ", values.stream().map(said).toList()),
                true);
    }

    static ObjectNode typed(String type) {
        return NODES.objectNode().put("type", type);
    }
}
