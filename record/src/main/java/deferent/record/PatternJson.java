package deferent.record;

import deferent.motion.pairing.HandLimits;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.phrase.PhraseError;
import deferent.motion.song.Beats;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.search.transition.Grade;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
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

    /** No shelf and no bundle holds more documents. */
    public static final int MOST_DOCUMENTS = 5000;

    /** No bundle is longer than this, characters; a full shelf of patterns with long notes fits. */
    public static final int MOST_BUNDLE_CHARACTERS = 32_000_000;

    private static final List<String> KINDS = List.of("pattern", "motion", "set", "song");

    private PatternJson() {}

    /** The document as text for a file. */
    public static String write(Document document) {
        return PrettyJson.text(tree(document));
    }

    /** The document as a tree, to be part of a larger answer. */
    public static ObjectNode tree(Document document) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("format", Document.FORMAT);
        node.put("kind", document.kind());
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
            if (!pattern.performer().equals(Performer.USUAL) || extrasIn(pattern, "/performer/")) {
                node.set("performer", write(pattern.performer()));
            }
            if (!pattern.kit().equals(Kit.USUAL) || extrasIn(pattern, "/kit/")) {
                node.set("kit", write(pattern.kit()));
            }
        } else if (document instanceof MotionDocument motion) {
            node.set("hand", HandPathJson.write(motion.motion().path()));
            node.set("spin", SpinJson.write(motion.motion().spin()));
            motion.motion().weave().ifPresent(w -> node.set("weave", PairingJson.write(w)));
            node.put("tether_m", motion.tether().length());
        } else if (document instanceof SetDocument set) {
            node.set("steps", StepsJson.write(set.steps()));
            // Unsaid it is the usual one, as in documents from before this was kept.
            if (set.hardest() != Grade.USUAL) {
                node.put("hardest", Keys.word(set.hardest()));
            }
            set.song()
                    .ifPresent(
                            song ->
                                    node.putObject("song")
                                            .put("id", song.id())
                                            .put("name", song.name())
                                            .put("from_beat", song.fromBeat()));
        } else if (document instanceof SongDocument song) {
            SongJson.write(node, song);
        }
        document.extras().putInto(node);
        return node;
    }

    /** The pairing alone, as it stands in a document. */
    public static ObjectNode tree(Pairing pairing) {
        return PairingJson.write(pairing);
    }

    private static boolean extrasIn(Document document, String above) {
        return document.extras().byPointer().keySet().stream().anyMatch(p -> p.startsWith(above));
    }

    private static void texts(ArrayNode into, List<String> texts) {
        texts.forEach(into::add);
    }

    private static ObjectNode write(Performer performer) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        performer.statureSaid().ifPresent(m -> node.put("stature_m", m));
        performer.armSaid().ifPresent(m -> node.put("arm_m", m));
        performer.shoulderWidthSaid().ifPresent(m -> node.put("shoulder_width_m", m));
        HandLimits hands = performer.hands();
        if (hands.speed() != HandLimits.USUAL.speed()) {
            node.put("hand_speed_m_per_s", hands.speed());
        }
        if (hands.acceleration() != HandLimits.USUAL.acceleration()) {
            node.put("hand_acceleration_m_per_s2", hands.acceleration());
        }
        hands.leave().ifPresent(m -> node.put("hand_leave_m", m));
        return node;
    }

    private static ObjectNode write(Kit kit) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("head_mass_kg", kit.headMass());
        node.put("head_diameter_m", kit.headDiameter());
        node.put("cord_kg_per_m", kit.cordMass());
        node.put("air", kit.air());
        // Unsaid they are soft, as in documents from before this was asked.
        if (kit.heads() != Kit.USUAL.heads()) {
            node.put("heads", Keys.word(kit.heads()));
        }
        return node;
    }

    /** A pattern, a named motion, a set or a song from text. */
    public static Document read(String text) {
        return read(text, Lexicon.EMPTY);
    }

    /** As {@link #read(String)}; a pattern that gives its phrase alone may say these words too. */
    public static Document read(String text, Lexicon lexicon) {
        try {
            return read(Keys.open(Text.tree(text, MOST_CHARACTERS), ""), lexicon);
        } catch (DocumentError error) {
            throw Text.located(error, text);
        }
    }

    /** A pattern from text; any other document is refused. */
    public static PatternDocument readPattern(String text) {
        try {
            return readPattern(Text.tree(text, MOST_CHARACTERS), Lexicon.EMPTY);
        } catch (DocumentError error) {
            throw Text.located(error, text);
        }
    }

    public static PatternDocument readPattern(JsonNode node) {
        return readPattern(node, Lexicon.EMPTY);
    }

    /** As {@link #readPattern(JsonNode)}, with words of the user's own for a phrase alone. */
    public static PatternDocument readPattern(JsonNode node, Lexicon lexicon) {
        return readPattern(node, "", lexicon);
    }

    /** As {@link #readPattern(JsonNode, Lexicon)}, of a pattern that stands in something else. */
    static PatternDocument readPattern(JsonNode node, String pointer, Lexicon lexicon) {
        Keys keys = Keys.open(node, pointer);
        // Seen before it is read, so that a set in a set in a set is not walked down.
        String kind = node.path("kind").asString("pattern");
        if (KINDS.contains(kind) && !kind.equals("pattern")) {
            throw keys.error(
                    "kind",
                    "is a " + kind + ", and a pattern is wanted here",
                    "give a \"pattern\"");
        }
        return (PatternDocument) read(keys, lexicon);
    }

    /** As {@link #read(String)}, from a tree; its errors know keys but no lines. */
    public static Document read(JsonNode node) {
        return read(Keys.open(node, ""), Lexicon.EMPTY);
    }

    private static Document read(Keys keys, Lexicon lexicon) {
        format(keys);
        keys.has("$schema");
        String kind = keys.has("kind") ? keys.word("kind", KINDS) : "pattern";
        String name = keys.text("name", Wording.NAME);
        String note = keys.note("note");
        Optional<String> author = keys.maybeText("author", Wording.NAME);
        List<String> tags = keys.texts("tags", Wording.TAGS, Wording.TAG);
        if (kind.equals("set")) {
            List<SetStep> steps = StepsJson.read(keys, "steps", lexicon);
            Grade hardest = keys.word("hardest", Grade.class, Grade.USUAL);
            Optional<SetSong> song = keys.maybeObject("song").map(PatternJson::song);
            keys.done();
            return new SetDocument(name, note, author, tags, steps, hardest, song, keys.extras());
        }
        if (kind.equals("song")) {
            SongSound sound = SongJson.sound(keys.object("sound"));
            Beats beats = SongJson.beats(keys);
            boolean mended = keys.flag("mended", false);
            keys.done();
            Extras extras = keys.extras();
            return keys.madeOf(
                    "beats_s",
                    () -> new SongDocument(name, note, author, tags, sound, beats, mended, extras));
        }
        if (kind.equals("pattern")) {
            Optional<String> phrase = keys.maybeText("phrase", Wording.PHRASE);
            Pairing pairing =
                    phrase.isPresent() && !keys.has("pairing")
                            ? said(keys, phrase.get(), lexicon)
                            : PairingJson.read(keys.object("pairing"));
            Performer performer =
                    keys.maybeObject("performer")
                            .map(PatternJson::performer)
                            .orElse(Performer.USUAL);
            Kit kit = keys.maybeObject("kit").map(PatternJson::kit).orElse(Kit.USUAL);
            keys.done();
            return new PatternDocument(
                    name, note, author, tags, phrase, pairing, performer, kit, keys.extras());
        }
        List<String> alsoSaid = keys.texts("also_said", Wording.TAGS, Wording.TAG);
        Motion motion = PairingJson.motion(keys);
        Tether tether = Tether.of(keys.positive("tether_m", 5, "m"));
        keys.done();
        Extras extras = keys.extras();
        return keys.madeOf(
                motion.riding() ? "hand" : "name",
                () ->
                        new MotionDocument(
                                name, alsoSaid, note, author, tags, motion, tether, extras));
    }

    private static SetSong song(Keys keys) {
        String id = keys.text("id", Wording.NAME);
        String name = keys.text("name", Wording.NAME);
        int from = keys.whole("from_beat", 0, Beats.MOST - 1, 0);
        keys.done();
        return keys.made(() -> new SetSong(id, name, from));
    }

    private static Pairing said(Keys keys, String phrase, Lexicon lexicon) {
        try {
            return Phrase.parse(phrase, lexicon).pairing();
        } catch (PhraseError wrong) {
            throw DocumentError.at(
                    keys.pointer("phrase"),
                    "stands without a \"pairing\" and cannot be read: " + wrong.what(),
                    wrong.nearest().isEmpty()
                            ? "expected: " + wrong.expected()
                            : "is \"" + wrong.nearest().get(0) + "\" meant?",
                    wrong.nearest());
        }
    }

    static void format(Keys keys) {
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
                        keys.maybe("shoulder_width_m", 0.2, 0.8, "m"),
                        hands(keys));
        keys.done();
        return performer;
    }

    private static HandLimits hands(Keys keys) {
        HandLimits usual = HandLimits.USUAL;
        HandLimits hands =
                usual.withPace(
                        keys.positive(
                                "hand_speed_m_per_s", HandLimits.FASTEST, "m/s", usual.speed()),
                        keys.positive(
                                "hand_acceleration_m_per_s2",
                                HandLimits.QUICKEST,
                                "m/s²",
                                usual.acceleration()));
        return keys.has("hand_leave_m")
                ? hands.withLeave(keys.positive("hand_leave_m", HandLimits.FARTHEST, "m"))
                : hands;
    }

    private static Kit kit(Keys keys) {
        double mass = keys.positive("head_mass_kg", 5, "kg", Kit.USUAL.headMass());
        double diameter = keys.positive("head_diameter_m", 0.5, "m", Kit.USUAL.headDiameter());
        double cord = keys.number("cord_kg_per_m", 0, 1, "kg a metre", Kit.USUAL.cordMass());
        boolean air = keys.flag("air", Kit.USUAL.air());
        Kit.Heads heads = keys.word("heads", Kit.Heads.class, Kit.USUAL.heads());
        keys.done();
        return keys.made(() -> new Kit(mass, diameter, cord, air, heads));
    }

    /** Many documents as one text, which {@link #readBundle} takes; refused where it would not. */
    public static String writeBundle(List<? extends Document> documents) {
        if (documents.size() > MOST_DOCUMENTS) {
            throw tooLarge("would hold " + documents.size() + " documents");
        }
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("format", Document.FORMAT);
        node.put("kind", "bundle");
        ArrayNode list = node.putArray("documents");
        documents.forEach(document -> list.add(tree(document)));
        String text = PrettyJson.text(node);
        if (text.length() > MOST_BUNDLE_CHARACTERS) {
            throw tooLarge("would have " + text.length() + " characters");
        }
        return text;
    }

    private static Refusal tooLarge(String what) {
        return new Refusal(
                what,
                "bundle",
                "put at most "
                        + MOST_DOCUMENTS
                        + " documents and "
                        + MOST_BUNDLE_CHARACTERS
                        + " characters into one: name some of them, then the others");
    }

    /** The documents of a bundle, or the single one that the text is. */
    public static List<Document> readBundle(String text) {
        return readBundle(text, Lexicon.EMPTY);
    }

    /** As {@link #readBundle(String)}; phrases may say these words and the bundle's own motions. */
    public static List<Document> readBundle(String text, Lexicon lexicon) {
        try {
            JsonNode node = Text.tree(text, MOST_BUNDLE_CHARACTERS);
            if (!node.isObject() || !"bundle".equals(node.path("kind").asString(""))) {
                return List.of(read(Keys.open(node, ""), lexicon));
            }
            Keys keys = Keys.closed(node, "");
            format(keys);
            keys.has("$schema");
            keys.has("kind");
            if (!keys.has("documents")) {
                throw DocumentError.at("", "has no \"documents\"", "give it a list in [ ]");
            }
            List<Keys.Item> items = keys.items("documents", 0, MOST_DOCUMENTS);
            keys.done();
            Lexicon words = lexicon;
            for (Keys.Item item : items) {
                if ("motion".equals(item.node().path("kind").asString(""))
                        && read(item.open(), lexicon) instanceof MotionDocument motion) {
                    words = motion.in(words);
                }
            }
            List<Document> documents = new ArrayList<>();
            for (Keys.Item item : items) {
                documents.add(read(item.open(), words));
            }
            return List.copyOf(documents);
        } catch (DocumentError error) {
            throw Text.located(error, text);
        }
    }

    /**
     * The published JSON Schema (draft 2020-12) of documents and bundles; what it says of hand
     * paths that a few sizes make comes from their forms.
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
