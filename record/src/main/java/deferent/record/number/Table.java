package deferent.record.number;

import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.reading.body.Nearness;
import deferent.reading.worked.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * All values of one kind of reading, in the order of its JSON.
 *
 * @param name of its definition in the schema
 * @param keys of those that people are told, in that order; where empty, all that have a name
 */
public record Table<R>(String name, List<Row<R>> rows, List<String> keys) {
    /** Why a reading was not worked out. */
    static final Table<Worked.Not<?>> NOT =
            Table.<Worked.Not<?>>named("not_worked_out")
                    .text("not_worked_out", "why it could not be worked out", Worked.Not::reason);

    public Table {
        rows = List.copyOf(rows);
        keys = List.copyOf(keys);
    }

    static <R> Table<R> named(String name) {
        return new Table<>(name, List.of(), List.of());
    }

    <T> Table<R> value(
            String key, String name, Written<T> value, Function<? super R, ? extends T> of) {
        List<Row<R>> more = new ArrayList<>(rows);
        more.add(new Row<>(key, name, value.from(of)));
        return new Table<>(this.name, more, keys);
    }

    Table<R> number(String key, String name, ToDoubleFunction<R> of) {
        return value(key, name, Written.number(key), of::applyAsDouble);
    }

    /** A number that some readings have not. */
    Table<R> maybe(String key, String name, Function<R, OptionalDouble> of) {
        return value(
                key,
                name,
                Written.number(key).maybe(),
                r -> of.apply(r).stream().boxed().findFirst());
    }

    Table<R> whole(String key, String name, ToIntFunction<R> of) {
        return value(key, name, Written.whole(), of::applyAsInt);
    }

    Table<R> yes(String key, String name, Predicate<R> of) {
        return value(key, name, Written.yes(), of::test);
    }

    Table<R> text(String key, String name, Function<R, String> of) {
        return value(key, name, Written.text(), of);
    }

    <E extends Enum<E>> Table<R> word(String key, String name, Class<E> words, Function<R, E> of) {
        return value(key, name, Written.word(words), of);
    }

    /** A least distance and when. */
    Table<R> near(String key, String name, Function<R, Nearness> of) {
        return number(key + "_m", name, r -> of.apply(r).distance())
                .number(key + "_time_s", "when", r -> of.apply(r).time());
    }

    /** Start and end of a time. */
    Table<R> spell(Function<R, Interval> of) {
        return number("from_s", "from", r -> of.apply(r).start())
                .number("to_s", "to", r -> of.apply(r).end());
    }

    /** Another table's values, as an object of their own. */
    <T> Table<R> part(String key, Table<T> table, Function<? super R, ? extends T> of) {
        return value(key, "", table.written(), of);
    }

    <T> Table<R> maybe(String key, Table<T> table, Function<R, Optional<T>> of) {
        return value(key, "", table.written().maybe(), of);
    }

    <T> Table<R> worked(String key, Table<T> table, Function<R, Worked<T>> of) {
        return value(key, "", table.written().worked(), of);
    }

    <T> Table<R> list(String key, String name, Written<T> each, Function<R, List<T>> of) {
        return value(key, name, each.listed(), of);
    }

    /** One of each side, left and right. */
    <T> Table<R> sides(Written<T> value, BiFunction<R, Side, T> of) {
        return value("left", "", value, r -> of.apply(r, Side.LEFT))
                .value("right", "", value, r -> of.apply(r, Side.RIGHT));
    }

    /** The same as an object of its own. */
    <T> Table<R> sides(String key, Written<T> value, BiFunction<R, Side, T> of) {
        return part(key, Table.<R>named(key + "_by_side").sides(value, of), r -> r);
    }

    /** What people are told; programs get all. */
    Table<R> telling(String... keys) {
        return new Table<>(name, rows, List.of(keys));
    }

    /** The row of that key. */
    public Row<R> row(String key) {
        return rows.stream().filter(row -> row.key().equals(key)).findFirst().orElseThrow();
    }

    /** The rows that people are told. */
    List<Row<R>> told() {
        return keys.isEmpty()
                ? rows.stream().filter(row -> !row.name().isEmpty()).toList()
                : keys.stream().map(this::row).toList();
    }

    /** A reading as JSON. */
    public ObjectNode json(R reading) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        for (Row<R> row : rows) {
            JsonNode value = row.value().json().apply(reading);
            if (!value.isMissingNode()) {
                node.set(row.key(), value);
            }
        }
        return node;
    }

    /** A reference to this table's definition, which is added where it is not there yet. */
    public ObjectNode schema(ObjectNode defs) {
        if (!defs.has(name)) {
            ObjectNode node = Written.typed("object").put("additionalProperties", false);
            defs.set(name, node);
            ArrayNode required = node.putArray("required");
            ObjectNode properties = node.putObject("properties");
            for (Row<R> row : rows) {
                properties.set(row.key(), row.schema(defs));
                if (row.value().always()) {
                    required.add(row.key());
                }
            }
        }
        return JsonNodeFactory.instance.objectNode().put("$ref", "#/$defs/" + name);
    }

    /** This table as an object within another, where it was asked for. */
    Written<Worked<R>> whereAsked() {
        return written().worked().whereAsked();
    }

    /** This table as an object within another. */
    Written<R> written() {
        return new Written<>(this::json, this::schema, r -> "", true);
    }
}
