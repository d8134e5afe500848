package deferent.record;

import deferent.motion.body.Performer;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Tether;
import deferent.motion.tether.Kit;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Documents as JSON, format 1, and back. {@code read(write(d))} equals d exactly. A document that
 * is wrong is told with line, column and key; one of a newer format is refused as such.
 *
 * <p>Reading walks the tree once by hand rather than through the published schema: so an error can
 * say what would be right, and the command line starts without a validator. That schema and reader
 * agree is tested, over good and bad documents.
 */
public final class PatternJson {
    /** No single document is longer than this, characters. */
    public static final int MOST_CHARACTERS = 1_000_000;

    /** No bundle holds more documents. */
    public static final int MOST_DOCUMENTS = 1000;

    private PatternJson() {}

    /** The document as text for a file. */
    public static String write(Document document) {
        return PrettyJson.text(tree(document));
    }

    /** The document as a tree, to be part of a larger answer. */
    public static ObjectNode tree(Document document) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("format", Document.FORMAT);
        node.put("kind", document instanceof PatternDocument ? "pattern" : "motion");
        node.put("name", document.name());
        if (document instanceof MotionDocument motion && !motion.alsoSaid().isEmpty()) {
            texts(node.putArray("also_said"), motion.alsoSaid());
        }
        if (!document.note().isEmpty()) {
            node.put("note", document.note());
        }
        document.author().ifPresent(author -> node.put("author", author));
        if (!document.tags().isEmpty()) {
            texts(node.putArray("tags"), document.tags());
        }
        if (document instanceof PatternDocument pattern) {
            pattern.phrase().ifPresent(phrase -> node.put("phrase", phrase));
            node.set("pairing", PairingJson.write(pattern.pairing()));
            if (!pattern.performer().equals(Performer.USUAL)) {
                node.set("performer", write(pattern.performer()));
            }
            if (!pattern.kit().equals(Kit.USUAL)) {
                node.set("kit", write(pattern.kit()));
            }
        } else if (document instanceof MotionDocument motion) {
            node.set("hand", HandPathJson.write(motion.motion().path()));
            node.set("spin", SpinJson.write(motion.motion().spin()));
            node.put("tether_m", motion.tether().length());
        }
        return node;
    }

    /** The pairing alone, as it stands in a document. */
    public static ObjectNode tree(Pairing pairing) {
        return PairingJson.write(pairing);
    }

    private static void texts(ArrayNode into, List<String> texts) {
        texts.forEach(into::add);
    }

    private static ObjectNode write(Performer performer) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        performer.statureSaid().ifPresent(m -> node.put("stature_m", m));
        performer.armSaid().ifPresent(m -> node.put("arm_m", m));
        performer.shoulderWidthSaid().ifPresent(m -> node.put("shoulder_width_m", m));
        return node;
    }

    private static ObjectNode write(Kit kit) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("head_mass_kg", kit.headMass());
        node.put("head_diameter_m", kit.headDiameter());
        node.put("cord_kg_per_m", kit.cordMass());
        node.put("air", kit.air());
        return node;
    }

    /** A pattern or a named motion from text. */
    public static Document read(String text) {
        try {
            return read(Text.tree(text, MOST_CHARACTERS));
        } catch (DocumentError error) {
            throw Text.located(error, text);
        }
    }

    /** A pattern from text; a named motion is refused. */
    public static PatternDocument readPattern(String text) {
        try {
            return readPattern(Text.tree(text, MOST_CHARACTERS));
        } catch (DocumentError error) {
            throw Text.located(error, text);
        }
    }

    public static PatternDocument readPattern(JsonNode node) {
        if (read(node) instanceof PatternDocument pattern) {
            return pattern;
        }
        throw DocumentError.at(
                "/kind", "is a motion, and a pattern is wanted here", "give a \"pattern\"");
    }

    /** As {@link #read(String)}, from a tree; its errors know keys but no lines. */
    public static Document read(JsonNode node) {
        return read(new Keys(node, ""));
    }

    private static Document read(Keys keys) {
        format(keys);
        keys.has("$schema");
        boolean pattern =
                !keys.has("kind")
                        || keys.word("kind", List.of("pattern", "motion")).equals("pattern");
        String name = keys.text("name", Wording.NAME);
        String note = keys.note("note");
        Optional<String> author = keys.maybeText("author", Wording.NAME);
        List<String> tags = keys.texts("tags", Wording.TAGS, Wording.TAG);
        if (pattern) {
            Optional<String> phrase = keys.maybeText("phrase", Wording.PHRASE);
            Pairing pairing = PairingJson.read(keys.object("pairing"));
            Performer performer =
                    keys.maybeObject("performer")
                            .map(PatternJson::performer)
                            .orElse(Performer.USUAL);
            Kit kit = keys.maybeObject("kit").map(PatternJson::kit).orElse(Kit.USUAL);
            keys.done();
            return new PatternDocument(name, note, author, tags, phrase, pairing, performer, kit);
        }
        List<String> alsoSaid = keys.texts("also_said", Wording.TAGS, Wording.TAG);
        Motion motion = PairingJson.motion(keys);
        Tether tether = Tether.of(keys.positive("tether_m", 5, "m"));
        keys.done();
        return keys.madeOf(
                motion.riding() ? "hand" : "name",
                () -> new MotionDocument(name, alsoSaid, note, author, tags, motion, tether));
    }

    private static void format(Keys keys) {
        int format = keys.whole("format", 1, Integer.MAX_VALUE);
        if (format > Document.FORMAT) {
            throw keys.error(
                    "format",
                    "is "
                            + format
                            + ", newer than this deferent, which reads up to "
                            + Document.FORMAT,
                    "use the newer deferent that wrote it; the document is left as it is");
        }
    }

    private static Performer performer(Keys keys) {
        Performer performer =
                new Performer(
                        keys.maybe("stature_m", 1.0, 2.5, "m"),
                        keys.maybe("arm_m", 0.3, 1.2, "m"),
                        keys.maybe("shoulder_width_m", 0.2, 0.8, "m"));
        keys.done();
        return performer;
    }

    private static Kit kit(Keys keys) {
        double mass = keys.positive("head_mass_kg", 5, "kg", Kit.USUAL.headMass());
        double diameter = keys.positive("head_diameter_m", 0.5, "m", Kit.USUAL.headDiameter());
        double cord = keys.number("cord_kg_per_m", 0, 1, "kg a metre", Kit.USUAL.cordMass());
        boolean air = keys.flag("air", Kit.USUAL.air());
        keys.done();
        return keys.made(() -> new Kit(mass, diameter, cord, air));
    }

    /** Many documents as one text. */
    public static String writeBundle(List<? extends Document> documents) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("format", Document.FORMAT);
        node.put("kind", "bundle");
        ArrayNode list = node.putArray("documents");
        documents.forEach(document -> list.add(tree(document)));
        return PrettyJson.text(node);
    }

    /** The documents of a bundle, or the single one that the text is. */
    public static List<Document> readBundle(String text) {
        try {
            JsonNode node = Text.tree(text, Text.MOST);
            if (!node.isObject() || !"bundle".equals(node.path("kind").asString(""))) {
                return List.of(read(node));
            }
            Keys keys = new Keys(node, "");
            format(keys);
            keys.has("$schema");
            keys.has("kind");
            List<Document> documents =
                    keys.items("documents", 1, MOST_DOCUMENTS).stream()
                            .map(item -> read(item.keys()))
                            .toList();
            keys.done();
            return documents;
        } catch (DocumentError error) {
            throw Text.located(error, text);
        }
    }

    /**
     * The published JSON Schema (draft 2020-12) of documents and bundles; what it says of hand paths
     * that a few sizes make comes from their forms.
     */
    public static String schema() {
        try (InputStream in = PatternJson.class.getResourceAsStream("document.schema.json")) {
            JsonNode schema =
                    JsonMapper.shared()
                            .readTree(
                                    Objects.requireNonNull(
                                            in, "document.schema.json is packed with this class"));
            FormJson.describe((ObjectNode) schema.at("/$defs/hand"));
            return PrettyJson.text(schema);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
