package deferent.studio;

import deferent.record.DocumentError;
import deferent.record.Keys;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import tools.jackson.databind.JsonNode;

/**
 * One object of a question, read by its keys. A key that is none of them is refused at once, so
 * that a slip of the pen does not pass in silence; null is the same as unsaid.
 */
final class Question {
    private final Keys keys;
    private final List<AskKey<?>> known;

    private Question(Keys keys, List<AskKey<?>> known) {
        this.keys = keys;
        this.known = known;
    }

    /** The whole of a question, or of what else was sent. */
    static Question of(JsonNode tree, List<AskKey<?>> known) {
        return of(refused(() -> Keys.closed(tree, "")), known);
    }

    /** An object in it. */
    static Question of(Keys keys, List<AskKey<?>> known) {
        known.forEach(key -> keys.has(key.name()));
        return refused(
                () -> {
                    keys.done();
                    return new Question(keys, known);
                });
    }

    /** What stands at one key, whatever the others are. */
    static <T> T one(JsonNode tree, AskKey<T> key) {
        return new Question(refused(() -> Keys.closed(tree, "")), List.of(key)).get(key);
    }

    boolean has(AskKey<?> key) {
        return keys.has(name(key)) && !keys.tree(key.name()).isNull();
    }

    /** Whether the key is there and null, where that is something else than not being there. */
    boolean isNull(AskKey<?> key) {
        return keys.has(name(key)) && keys.tree(key.name()).isNull();
    }

    <T> T get(AskKey<T> key) {
        if (!has(key)) {
            throw new BadRequest(400, "is missing", where(key), "give it: " + key.means());
        }
        return refused(() -> key.reading().apply(keys, key.name()));
    }

    <T> Optional<T> maybe(AskKey<T> key) {
        return has(key) ? Optional.of(get(key)) : Optional.empty();
    }

    <T> T or(AskKey<T> key, T unsaid) {
        return maybe(key).orElse(unsaid);
    }

    OptionalDouble maybeNumber(AskKey<Double> key) {
        return maybe(key).map(OptionalDouble::of).orElseGet(OptionalDouble::empty);
    }

    /** The key with those above it. */
    String where(AskKey<?> key) {
        return DocumentError.where(keys.pointer(key.name()));
    }

    private static <T> T refused(Supplier<T> reading) {
        try {
            return reading.get();
        } catch (DocumentError wrong) {
            throw new BadRequest(400, wrong.what(), wrong.where(), wrong.right());
        }
    }

    private String name(AskKey<?> key) {
        if (known.stream().noneMatch(one -> one.name().equals(key.name()))) {
            throw new IllegalStateException(key.name() + " is no key of this question");
        }
        return key.name();
    }
}
