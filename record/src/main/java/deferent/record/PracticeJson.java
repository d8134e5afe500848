package deferent.record;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.record.Practice.Clip;
import deferent.record.Practice.DatedBy;
import deferent.record.Practice.Finding;
import deferent.record.Practice.Scale;
import deferent.record.Practice.Size;
import deferent.record.Practice.Track;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Practice as JSON, format 1, and back; {@code read(write(p))} equals p exactly. One of a newer
 * format is refused as such, one that is wrong with line, column and key.
 */
public final class PracticeJson {
    private static final String KIND = "practice";
    private static final int MOST_SIZES = 60;
    private static final double FAR = 100; // metres
    private static final double LONG = 86400; // seconds

    private PracticeJson() {}

    /** The practice as text for a file. */
    public static String write(Practice practice) {
        return PrettyJson.text(tree(practice));
    }

    /** As a tree, to be part of a larger answer. */
    public static ObjectNode tree(Practice practice) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("format", Document.FORMAT);
        node.put("kind", KIND);
        node.put("name", practice.name());
        if (!practice.note().isEmpty()) {
            node.put("note", practice.note());
        }
        practice.author().ifPresent(author -> node.put("author", author));
        node.put("date", practice.date().toString());
        node.put("dated_by", Keys.word(practice.dated()));
        node.put("pattern", practice.pattern());
        node.put("source", practice.source());
        Clip clip = practice.clip();
        node.putObject("clip")
                .put("name", clip.name())
                .put("bytes", clip.bytes())
                .put("sha256", clip.sha256())
                .put("kept", clip.kept());
        node.put("period_s", practice.period());
        node.put("period_error_s", practice.periodError());
        node.put("looked_at_s", practice.seconds());
        Scale scale = practice.scale();
        node.putObject("scale")
                .put("pixel_m", scale.pixel())
                .put("error_share", scale.error())
                .put("how", scale.how())
                .put("mirrored", scale.mirrored());
        ArrayNode sizes = node.putArray("sizes");
        for (Size size : practice.sizes()) {
            ObjectNode one = sizes.addObject().put("key", size.key());
            size.side().ifPresent(side -> one.put("hand", side.word()));
            one.put("value", size.value()).put("error", size.error()).put("unit", size.unit());
        }
        ArrayNode findings = node.putArray("findings");
        for (Finding finding : practice.findings()) {
            ObjectNode one = findings.addObject().put("key", finding.key());
            finding.side().ifPresent(side -> one.put("hand", side.word()));
            one.put("said", finding.said()).put("mend", finding.mend());
            one.put("weight_m", finding.weight());
        }
        ObjectNode cycle = node.putObject("cycle");
        for (Side side : Side.values()) {
            write(cycle.putObject(side.word() + "_head"), practice.head(side));
            write(cycle.putObject(side.word() + "_hand"), practice.hand(side));
        }
        node.set("pairing", PairingJson.write(practice.pairing()));
        practice.extras().putInto(node);
        return node;
    }

    private static void write(ObjectNode node, Track track) {
        if (track.moments().size() < Practice.MOMENTS) {
            ArrayNode moments = node.putArray("moments");
            track.moments().forEach(moments::add);
        }
        numbers(node.putArray("x_m"), track.x());
        numbers(node.putArray("y_m"), track.y());
        numbers(node.putArray("error_m"), track.error());
    }

    private static void numbers(ArrayNode into, List<Double> numbers) {
        numbers.forEach(into::add);
    }

    /** A practice from text. */
    public static Practice read(String text) {
        try {
            return read(Keys.open(Text.tree(text, PatternJson.MOST_CHARACTERS), ""));
        } catch (DocumentError error) {
            throw Text.located(error, text);
        }
    }

    private static Practice read(Keys keys) {
        PatternJson.format(keys);
        keys.has("$schema");
        keys.word("kind", List.of(KIND));
        String name = keys.text("name", Wording.NAME);
        String note = keys.note("note");
        Optional<String> author = keys.maybeText("author", Wording.NAME);
        Instant date = date(keys);
        DatedBy dated = keys.word("dated_by", DatedBy.class);
        String pattern = keys.text("pattern", Wording.PHRASE);
        String source = keys.text("source", Wording.TAG);
        Clip clip = clip(keys.object("clip"));
        double period = keys.positive("period_s", 60, "s");
        double periodError = keys.number("period_error_s", 0, 60, "s");
        double seconds = keys.positive("looked_at_s", LONG, "s");
        Scale scale = scale(keys.object("scale"));
        List<Size> sizes = new ArrayList<>();
        for (Keys.Item item : keys.items("sizes", 0, MOST_SIZES)) {
            sizes.add(size(item.keys()));
        }
        List<Finding> findings = new ArrayList<>();
        for (Keys.Item item : keys.items("findings", 0, MOST_SIZES)) {
            findings.add(finding(item.keys()));
        }
        // Closed: the coordinates' keys begin as other programs' do.
        Keys cycle = Keys.closed(keys.tree("cycle"), keys.pointer("cycle"));
        Map<Side, Track> heads = new EnumMap<>(Side.class);
        Map<Side, Track> hands = new EnumMap<>(Side.class);
        for (Side side : Side.values()) {
            heads.put(side, track(cycle.object(side.word() + "_head")));
            hands.put(side, track(cycle.object(side.word() + "_hand")));
        }
        cycle.done();
        Pairing pairing = PairingJson.read(keys.object("pairing"));
        keys.done();
        return new Practice(
                name,
                note,
                author,
                date,
                dated,
                pattern,
                pairing,
                source,
                clip,
                period,
                periodError,
                seconds,
                scale,
                sizes,
                findings,
                heads,
                hands,
                keys.extras());
    }

    private static Instant date(Keys keys) {
        String said = keys.text("date", Wording.TAG);
        try {
            return Instant.parse(said);
        } catch (DateTimeException noDate) {
            throw keys.error(
                    "date", "is \"" + said + "\"", "give a moment such as 2026-11-27T18:30:00Z");
        }
    }

    private static Clip clip(Keys keys) {
        String name = keys.text("name", Wording.NAME);
        long bytes = (long) keys.number("bytes", 0, 1L << 50, "bytes");
        String sha = keys.text("sha256", 64);
        boolean kept = keys.flag("kept", false);
        keys.done();
        return keys.made(() -> new Clip(name, bytes, sha, kept));
    }

    private static Scale scale(Keys keys) {
        double pixel = keys.number("pixel_m", 1e-6, 1, "m");
        double error = keys.number("error_share", 0, 1, "");
        String how = keys.text("how", Wording.TAG);
        boolean mirrored = keys.flag("mirrored", false);
        keys.done();
        return keys.made(() -> new Scale(pixel, error, how, mirrored));
    }

    private static Optional<Side> hand(Keys keys) {
        return keys.has("hand") ? Optional.of(keys.word("hand", Side.class)) : Optional.empty();
    }

    private static Size size(Keys keys) {
        String key = keys.text("key", Wording.TAG);
        Optional<Side> side = hand(keys);
        double value = keys.number("value", -LONG, LONG, "");
        double error = keys.number("error", 0, LONG, "");
        String unit = keys.word("unit", List.of("m", "s", "rad"));
        keys.done();
        return keys.made(() -> new Size(key, side, value, error, unit));
    }

    private static Finding finding(Keys keys) {
        String key = keys.text("key", Wording.TAG);
        Optional<Side> side = hand(keys);
        String said = keys.text("said", Wording.PHRASE);
        String mend = keys.text("mend", Wording.PHRASE);
        double weight = keys.number("weight_m", 0, FAR, "m");
        keys.done();
        return keys.made(() -> new Finding(key, side, said, mend, weight));
    }

    private static Track track(Keys keys) {
        List<Double> x = numbers(keys, "x_m", -FAR);
        List<Integer> moments = new ArrayList<>();
        if (keys.has("moments")) {
            for (Keys.Item item : keys.items("moments", 0, Practice.MOMENTS)) {
                double moment = item.number(0, Practice.MOMENTS - 1.0, "");
                if (moment != Math.rint(moment)) {
                    throw DocumentError.at(item.pointer(), "is " + moment, "give a whole number");
                }
                moments.add((int) moment);
            }
        } else {
            for (int i = 0; i < Practice.MOMENTS; i++) {
                moments.add(i);
            }
        }
        List<Double> y = numbers(keys, "y_m", -FAR);
        List<Double> error = numbers(keys, "error_m", 0);
        keys.done();
        return keys.made(() -> new Track(moments, x, y, error));
    }

    private static List<Double> numbers(Keys keys, String key, double least) {
        List<Double> all = new ArrayList<>();
        for (Keys.Item item : keys.items(key, 0, Practice.MOMENTS)) {
            all.add(item.number(least, FAR, "m"));
        }
        return all;
    }

    /** The published JSON Schema. */
    public static String schema() {
        try (InputStream in = PracticeJson.class.getResourceAsStream("practice.schema.json")) {
            return new String(
                    Objects.requireNonNull(in, "practice.schema.json is packed with this class")
                            .readAllBytes(),
                    StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
