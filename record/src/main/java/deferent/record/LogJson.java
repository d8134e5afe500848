package deferent.record;

import deferent.motion.pairing.Refusal;
import deferent.search.path.Went;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A log of practice as JSON, version 1: one file of entries, as a hall file hands it over, and one
 * entry on a line, as it stands on the shelf. Keys that are not known here are kept in entries, and
 * passed over around them. A newer version is refused as such, one that is wrong with its place.
 */
public final class LogJson {
    static final String FORMAT = "deferent-log";
    static final int VERSION = 1;

    /** A file has no more bytes than this. */
    public static final int MOST_BYTES = 5_000_000;

    /** A file has no more entries than this. */
    public static final int MOST_ENTRIES = 20_000;

    // A note may be told in escapes of six characters each.
    private static final int MOST_OF_A_LINE = 40_000;

    private static final String ANEW = "save the log anew from the page it was written on";
    private static final String TEMPO = "tempo_cycles_per_min";
    private static final Set<String> KNOWN =
            Set.of("id", "date", "pattern", "part", "minutes", TEMPO, "went", "note");

    private LogJson() {}

    /** Whether a text is meant as a log, of whatever version: it says so, or lists entries. */
    public static boolean isLog(String text) {
        return Text.outermost(text, "format")
                .map(FORMAT::equals)
                .orElseGet(() -> Text.lists(text, "entries"));
    }

    /** The entries of a file, in the order in which they stand there. */
    public static List<LogEntry> read(String text) {
        mayBe(text.getBytes(StandardCharsets.UTF_8).length);
        try {
            return read(Text.tree(text, MOST_BYTES));
        } catch (DocumentError error) {
            throw Text.located(error, text);
        }
    }

    /** Refuses a file of too many bytes, before it is read. */
    public static void mayBe(long bytes) {
        if (bytes > MOST_BYTES) {
            throw DocumentError.at(
                    "", "is " + bytes + " bytes long", "a log has at most " + MOST_BYTES);
        }
    }

    private static List<LogEntry> read(JsonNode node) {
        Keys keys = Keys.closed(node, "");
        if (!keys.has("format")) {
            throw DocumentError.at("", "lists entries as a log does, but has no \"format\"", ANEW);
        }
        keys.word("format", List.of(FORMAT));
        version(keys);
        List<LogEntry> entries = new ArrayList<>();
        for (Keys.Item item :
                Keys.items(keys.tree("entries"), keys.pointer("entries"), 0, MOST_ENTRIES)) {
            entries.add(entry(item.node(), item.pointer()));
        }
        return List.copyOf(entries);
    }

    private static void version(Keys keys) {
        if (!keys.has("version")) {
            throw DocumentError.at("", "has no \"version\", so it is older than all", ANEW);
        }
        int version = keys.whole("version", Integer.MIN_VALUE, Integer.MAX_VALUE);
        if (version < 1) {
            throw keys.error("version", "is " + version + ", older than all", ANEW);
        }
        newest(keys, version);
    }

    private static void newest(Keys keys, int version) {
        if (version > VERSION) {
            throw keys.error(
                    "version",
                    "is "
                            + version
                            + ", newer than this deferent, which reads logs up to "
                            + VERSION,
                    "use a newer deferent; the log is left as it is");
        }
    }

    /** The entry on a line; one that says it is of a newer version is refused. */
    static LogEntry ofLine(String text) {
        JsonNode node = Text.tree(text, MOST_OF_A_LINE);
        Keys keys = Keys.closed(node, "");
        if (keys.has("version")) {
            newest(keys, keys.whole("version", 1, Integer.MAX_VALUE));
        }
        return entry(node, "");
    }

    private static LogEntry entry(JsonNode node, String pointer) {
        Keys keys = Keys.closed(node, pointer);
        String id = keys.plainText("id", 100);
        LocalDate date = date(keys);
        String pattern = keys.text("pattern", Wording.PHRASE);
        Optional<String> part = keys.maybeText("part", Wording.NAME);
        double minutes = keys.positive("minutes", LogEntry.MOST_MINUTES, "min");
        OptionalDouble tempo = keys.maybe(TEMPO, LogEntry.SLOWEST, LogEntry.FASTEST, "a minute");
        Optional<Went> went =
                keys.has("went") ? Optional.of(keys.word("went", Went.class)) : Optional.empty();
        String note = keys.note("note");
        Map<String, String> others = new LinkedHashMap<>();
        for (String key : node.propertyNames()) {
            if (!KNOWN.contains(key)) {
                others.put(key, keys.madeOf(key, () -> Extras.text(node.get(key))));
            }
        }
        return keys.made(
                () -> new LogEntry(id, date, pattern, part, minutes, tempo, went, note, others));
    }

    private static LocalDate date(Keys keys) {
        String said = keys.text("date", Wording.TAG);
        try {
            return day(said);
        } catch (Refusal noDay) {
            throw keys.error("date", noDay.what(), noDay.right());
        }
    }

    /** A day as it is written: "2026-11-28". */
    public static LocalDate day(String said) {
        String right = "give a day such as 2026-11-28";
        if (!said.matches("[0-9]{4}-[0-9]{2}-[0-9]{2}")) {
            throw new Refusal("is \"" + said + "\"", "date", right);
        }
        try {
            return LocalDate.parse(said);
        } catch (DateTimeException noDay) {
            throw new Refusal("is \"" + said + "\", which no calendar has", "date", right);
        }
    }

    /** A file of entries, one on a line. */
    public static String write(List<LogEntry> entries) {
        StringBuilder text = new StringBuilder();
        text.append("{\"format\": \"").append(FORMAT).append("\", \"version\": ").append(VERSION);
        text.append(", \"entries\": [");
        for (int i = 0; i < entries.size(); i++) {
            text.append(i == 0 ? "\n  " : ",\n  ").append(line(entries.get(i)));
        }
        return text.append("\n]}\n").toString();
    }

    /** An entry on one line, without the line's end. */
    static String line(LogEntry entry) {
        StringBuilder line = new StringBuilder();
        PrettyJson.flat(tree(entry), line);
        return line.toString();
    }

    /** An entry, to be part of a larger answer. */
    public static ObjectNode tree(LogEntry entry) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("id", entry.id());
        node.put("date", entry.date().toString());
        node.put("pattern", entry.pattern());
        entry.part().ifPresent(part -> node.put("part", part));
        node.put("minutes", entry.minutes());
        entry.tempo().ifPresent(tempo -> node.put(TEMPO, tempo));
        entry.went().ifPresent(went -> node.put("went", Keys.word(went)));
        if (!entry.note().isEmpty()) {
            node.put("note", entry.note());
        }
        entry.others().forEach((key, text) -> node.set(key, Text.tree(text, LogEntry.MOST_OTHERS)));
        return node;
    }

    /** The published JSON Schema of a file of entries. */
    public static String schema() {
        try (InputStream in = LogJson.class.getResourceAsStream("log.schema.json")) {
            return new String(
                    Objects.requireNonNull(in, "log.schema.json is packed with this class")
                            .readAllBytes(),
                    StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
