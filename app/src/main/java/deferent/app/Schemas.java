package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.record.LogJson;
import deferent.record.PatternJson;
import deferent.record.PracticeJson;
import deferent.record.PrettyJson;
import deferent.record.ReadingsJson;
import deferent.record.number.PhotoTables;
import deferent.record.number.ReadingTables;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * The JSON Schemas (draft 2020-12) of what programs read and write: one row each. Those of what is
 * kept and of readings are made where their JSON is; the others lie beside this class.
 */
enum Schemas {
    DOCUMENT("what is kept on a shelf and carried to another", PatternJson::schema),
    READINGS("readings of a pairing", ReadingsJson::schema),
    LOG("a log of practice", LogJson::schema),
    PRACTICE("practice kept from a film", PracticeJson::schema),
    PHOTO(
            "how to photograph a pairing",
            () -> made("photo", "How to photograph a pairing", PhotoTables.PHOTO::schema)),
    FIT("sizes that close a link, fit the arms or hold on real cords"),
    CLEAR("what is in the way, and what clears it"),
    SEEK("pairings that link"),
    TRANSITIONS("passages from one pattern to another"),
    ROUTE("a route through the shelf"),
    SET("a set worked out"),
    LEARN("drills and their days"),
    WORDS("words of phrases"),
    FILES("files that were written"),
    FILM("what is seen in a film"),
    WEEKS("practice over the weeks"),
    SONG("beats of a song"),
    LETGO("a poi let go"),
    SHELF("what stands on a shelf"),
    KEPT("what was put on the shelf, or taken from it"),
    STUDIO("where the studio runs"),
    HELP("a command, its options and exit codes"),
    SCHEMAS("the names of schemas"),
    TOLD(
            "a sentence, wherever one stands",
            () -> made("told", "A sentence", ReadingTables.TOLD::schema)),
    ASIDE("a line of the error stream beside JSON: an error, a remark or how far it is");

    private static final String ID = "urn:deferent:";

    private final String means;
    private final Supplier<String> text;

    Schemas(String means) {
        this.means = means;
        this.text = this::resource;
    }

    Schemas(String means, Supplier<String> text) {
        this.means = means;
        this.text = text;
    }

    String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    String means() {
        return means;
    }

    /** Of what a table of numbers writes. */
    private static String made(String key, String title, Function<ObjectNode, ObjectNode> table) {
        ObjectNode defs = JsonNodeFactory.instance.objectNode();
        ObjectNode schema =
                JsonNodeFactory.instance
                        .objectNode()
                        .put("$schema", "https://json-schema.org/draft/2020-12/schema")
                        .put("$id", ID + key + ":1")
                        .put("title", title);
        schema.setAll(table.apply(defs));
        return PrettyJson.text(schema.set("$defs", defs));
    }

    private String resource() {
        String name = key() + ".schema.json";
        try (InputStream in = Schemas.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("no schema " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** The schema with all that it refers to within it, so that it stands alone. */
    String write() {
        JsonMapper mapper = JsonMapper.shared();
        ObjectNode whole = (ObjectNode) mapper.readTree(text.get());
        Set<Schemas> within = new LinkedHashSet<>();
        Deque<JsonNode> ahead = new ArrayDeque<>(List.of(whole));
        while (!ahead.isEmpty()) {
            for (JsonNode ref : ahead.remove().findValues("$ref")) {
                Optional<Schemas> named = byReference(ref.stringValue());
                if (named.isPresent() && named.get() != this && within.add(named.get())) {
                    ahead.add(mapper.readTree(named.get().text.get()));
                }
            }
        }
        for (Schemas other : within) {
            whole.withObject("/$defs").set(other.key(), mapper.readTree(other.text.get()));
        }
        return PrettyJson.text(whole);
    }

    /** "urn:deferent:document:1#/$defs/pattern" is of the document's. */
    private static Optional<Schemas> byReference(String reference) {
        return Arrays.stream(values())
                .filter(schema -> reference.startsWith(ID + schema.key() + ":"))
                .findFirst();
    }

    static Schemas named(String name) {
        return Arrays.stream(values())
                .filter(schema -> schema.key().equals(name.strip().toLowerCase(Locale.ROOT)))
                .findFirst()
                .orElseThrow(
                        () -> {
                            List<String> all = Arrays.stream(values()).map(Schemas::key).toList();
                            List<String> near = NotFound.near(name, all);
                            return new Refusal(
                                    "is no schema's name",
                                    "\"" + name + "\"",
                                    near.isEmpty()
                                            ? "give one of "
                                                    + all.stream().collect(Collectors.joining(", "))
                                            : "did you mean " + String.join(" or ", near) + "?");
                        });
    }
}
