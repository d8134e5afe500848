package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import deferent.search.path.Went;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A log comes back as it was written, and schema and reader agree on what one is. */
class LogJsonTest {
    private static final Schema SCHEMA =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(LogJson.schema(), InputFormat.JSON);

    static final String GOOD =
            """
            {"format": "deferent-log", "version": 1, "entries": [
              {"id": "k3f9a2c4e1", "date": "2026-11-28", "pattern": "isolation vs triquetra, split time",
               "part": "left hand", "minutes": 12.5, "tempo_cycles_per_min": 60, "went": "so-so",
               "note": "the lantern\\nblew out", "wind": {"from": ["north", 3.50]}}]}
            """;

    static LogEntry entry(String id, String day, double minutes) {
        return new LogEntry(
                id,
                LocalDate.parse(day),
                "isolation vs triquetra",
                Optional.empty(),
                minutes,
                OptionalDouble.of(60),
                Optional.of(Went.WELL),
                "",
                Map.of());
    }

    private static boolean valid(String text) {
        return SCHEMA.validate(text, InputFormat.JSON).isEmpty();
    }

    @Test
    void whatAPageWroteIsReadAsItIsMeant() {
        LogEntry only = LogJson.read(GOOD).get(0);
        assertThat(only)
                .isEqualTo(
                        new LogEntry(
                                "k3f9a2c4e1",
                                LocalDate.of(2026, 11, 28),
                                "isolation vs triquetra, split time",
                                Optional.of("left hand"),
                                12.5,
                                OptionalDouble.of(60),
                                Optional.of(Went.SO_SO),
                                "the lantern\nblew out",
                                Map.of("wind", "{\"from\": [\"north\", 3.5]}")));
        assertThat(valid(GOOD)).isTrue();
        assertThat(LogJson.isLog(GOOD)).isTrue();
    }

    @Test
    void whatIsWrittenComesBackAsItWas() {
        List<LogEntry> entries = LogJson.read(GOOD);
        String written = LogJson.write(entries);
        assertThat(LogJson.read(written)).isEqualTo(entries);
        assertThat(valid(written)).isTrue();
        assertThat(LogJson.ofLine(LogJson.line(entries.get(0)))).isEqualTo(entries.get(0));
        assertThat(LogJson.line(entries.get(0))).doesNotContain("\n");
        assertThat(LogJson.read(LogJson.write(List.of()))).isEmpty();
    }

    @Test
    void allButIdDayPatternAndMinutesMayBeLeftOut() {
        String bare =
                """
                {"id": "abcdefgh", "date": "2026-11-28", "pattern": "the gate", "minutes": 600}
                """;
        LogEntry entry = LogJson.ofLine(bare);
        assertThat(entry.part()).isEmpty();
        assertThat(entry.tempo()).isEmpty();
        assertThat(entry.went()).isEmpty();
        assertThat(entry.note()).isEmpty();
        assertThat(LogJson.line(entry)).isEqualTo(bare.strip());
    }

    @ParameterizedTest(name = "{1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"version\": 1|\"version\": 2",
                "\"version\": 1|\"version\": 0",
                "\"version\": 1|\"version\": \"1\"",
                "\"version\": 1,|",
                "\"id\": \"k3f9a2c4e1\"|\"id\": \"k3f9a2c\"",
                "\"id\": \"k3f9a2c4e1\"|\"id\": \"../k3f9a2c4e1\"",
                "\"id\": \"k3f9a2c4e1\"|\"id\": \"k3f9a2c4e1k3f9a2c4e1k3f9a2c4e1abc\"",
                "\"id\": \"k3f9a2c4e1\",|",
                "\"date\": \"2026-11-28\"|\"date\": \"28.11.2026\"",
                "\"date\": \"2026-11-28\"|\"date\": \"2026-13-28\"",
                "\"date\": \"2026-11-28\"|\"date\": \"0000-01-01\"",
                "\"date\": \"2026-11-28\"|\"date\": \"2026-11-28T18:30:00Z\"",
                "\"pattern\": \"isolation vs triquetra, split time\"|\"pattern\": \" \"",
                "\"pattern\": \"isolation vs triquetra, split time\"|\"pattern\": \"a\\nb\"",
                "\"part\": \"left hand\"|\"part\": null",
                "\"minutes\": 12.5|\"minutes\": 0",
                "\"minutes\": 12.5|\"minutes\": 601",
                "\"minutes\": 12.5|\"minutes\": \"12\"",
                "\"tempo_cycles_per_min\": 60|\"tempo_cycles_per_min\": 0",
                "\"tempo_cycles_per_min\": 60|\"tempo_cycles_per_min\": 700",
                "\"went\": \"so-so\"|\"went\": \"splendid\"",
                "\"note\": \"the|\"note\": 3, \"note2\": \"the",
                "\"entries\": [|\"entries\": \"none\", \"more\": [",
                "\"entries\": [|\"more\": [",
            })
    void aWrongLogIsWrongForBoth(String right, String wrong) {
        assertThat(GOOD).contains(right);
        String text =
                GOOD.replaceFirst(
                        Pattern.quote(right), Matcher.quoteReplacement(wrong == null ? "" : wrong));
        assertThatThrownBy(() -> LogJson.read(text)).isInstanceOf(DocumentError.class);
        assertThat(valid(text)).isFalse();
    }

    @Test
    void theReaderSaysWhatWhereAndWhatWouldBeRight() {
        assertThatThrownBy(() -> LogJson.read(GOOD.replace("12.5", "0")))
                .hasMessage(
                        "line 3, column 36, entries.0.minutes: is 0 min; give more than 0 and at"
                                + " most 600 min");
        assertThatThrownBy(() -> LogJson.read(GOOD.replace("-11-28", "-02-30")))
                .hasMessageContaining(
                        "entries.0.date: is \"2026-02-30\", which no calendar has; give a day such"
                                + " as 2026-11-28");
    }

    @Test
    void anOldANewerAndAHugeLogAreToldInOneSentence() {
        assertThatThrownBy(() -> LogJson.read(GOOD.replace("\"version\": 1,", "")))
                .hasMessageContaining("has no \"version\", so it is older than all; save the log");
        assertThatThrownBy(() -> LogJson.read(GOOD.replace("\"version\": 1", "\"version\": 0")))
                .hasMessageContaining("version: is 0, older than all; save the log anew");
        assertThatThrownBy(() -> LogJson.read(GOOD.replace("\"version\": 1", "\"version\": 7")))
                .hasMessageContaining("version: is 7, newer than this deferent, which reads logs");
        String huge = GOOD.replace("blew", "blew ".repeat(1_000_000));
        assertThatThrownBy(() -> LogJson.read(huge))
                .hasMessageContaining("bytes long; a log has at most 5000000");
        String entry = LogJson.line(entry("abcdefgh", "2026-11-28", 1));
        String many =
                "{\"format\": \"deferent-log\", \"version\": 1, \"entries\": ["
                        + (entry + ",").repeat(20_000)
                        + entry
                        + "]}";
        assertThatThrownBy(() -> LogJson.read(many))
                .hasMessageContaining("entries: has 20001 entries; give 0 to 20000");
    }

    @Test
    void aLogIsToldFromADocumentByItsFormatWhereverThatStands() {
        assertThat(LogJson.isLog("{\"entries\": [{\"format\": 1}], \"format\": \"deferent-log\"}"))
                .isTrue();
        assertThat(LogJson.isLog("{\"format\": 1, \"note\": \"deferent-log\"}")).isFalse();
        assertThat(LogJson.isLog("{\"a\": {\"format\": \"deferent-log\"}}")).isFalse();
        assertThat(LogJson.isLog("{\"format\"")).isFalse();
        assertThat(LogJson.isLog("[\"format\", \"deferent-log\"]")).isFalse();
        assertThat(LogJson.isLog("{\"format\": \"other\", \"entries\": []}")).isFalse();
    }

    @Test
    void aLogWithoutItsFormatIsToldSoInASentence() {
        String without = GOOD.replace("\"format\": \"deferent-log\", ", "");
        assertThat(LogJson.isLog(without)).isTrue();
        assertThatThrownBy(() -> LogJson.read(without))
                .hasMessageContaining(
                        "lists entries as a log does, but has no \"format\";"
                                + " save the log anew from the page it was written on");
    }

    @Test
    void everyIdThatIsDrawnIsOneThatIsRead() {
        Random chance = new Random(3);
        List<LogEntry> drawn =
                java.util.stream.Stream.generate(
                                () ->
                                        LogEntry.drawn(
                                                chance,
                                                LocalDate.of(2026, 11, 28),
                                                "weave",
                                                Optional.empty(),
                                                5,
                                                OptionalDouble.empty(),
                                                Optional.empty(),
                                                ""))
                        .limit(1000)
                        .toList();
        assertThat(drawn).extracting(LogEntry::id).doesNotHaveDuplicates();
        assertThat(LogJson.read(LogJson.write(drawn))).isEqualTo(drawn);
    }
}
