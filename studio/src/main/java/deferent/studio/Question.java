package deferent.studio;

import deferent.record.DocumentError;
import deferent.record.Keys;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import java.util.stream.Collectors;
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

    /** An object in it: has what has to be there, and nothing that is not known. */
    static Question of(Keys keys, List<AskKey<?>> known) {
        known.forEach(key -> keys.has(key.name()));
        Question asked = new Question(keys, known);
        refused(
                () -> {
                    keys.done();
                    return asked;
                });
        for (AskKey<?> key : AskKey.needed(known, AskKey.Need.MUST)) {
            if (!keys.has(key.name())) {
                throw asked.missing(key);
            }
        }
        asked.seeOne(AskKey.needed(known, AskKey.Need.ONE));
        return asked;
    }

    /** An object of one of several kinds, told apart by a kind's first key. */
    static Question ofKind(Keys keys, List<List<AskKey<?>>> kinds) {
        return kinds.stream()
                .filter(kind -> keys.has(kind.get(0).name()))
                .findFirst()
                .map(kind -> of(keys, kind))
                .orElseThrow(() -> noKind(keys, kinds.stream().map(kind -> kind.get(0)).toList()));
    }

    private static BadRequest noKind(Keys keys, List<? extends AskKey<?>> firsts) {
        return new BadRequest(
                400,
                "is missing",
                DocumentError.where(keys.pointer(firsts.get(0).name())),
                "give " + names(firsts, " or "));
    }

    private void seeOne(List<AskKey<?>> ones) {
        long there = ones.stream().filter(this::has).count();
        if (!ones.isEmpty() && there != 1) {
            throw new BadRequest(
                    400,
                    there == 0 ? "are all missing" : "are not to be there together",
                    names(ones, " and "),
                    "give one of them");
        }
    }

    private static String names(List<? extends AskKey<?>> keys, String before) {
        int last = keys.size() - 1;
        return keys.stream().limit(last).map(AskKey::name).collect(Collectors.joining(", "))
                + before
                + keys.get(last).name();
    }

    private BadRequest missing(AskKey<?> key) {
        return new BadRequest(400, "is missing", where(key), "give it: " + key.means());
    }

    /** What stands at one key, whatever the others are. */
    static <T> T one(JsonNode tree, AskKey<T> key) {
        return new Question(refused(() -> Keys.closed(tree, "")), List.of(key)).get(key);
    }

    /** Whether it is of the kind that has this key. */
    boolean knows(AskKey<?> key) {
        return known.stream().anyMatch(one -> one.name().equals(key.name()));
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
            throw missing(key);
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
        if (!knows(key)) {
            throw new IllegalStateException(key.name() + " is no key of this question");
        }
        return key.name();
    }
}
