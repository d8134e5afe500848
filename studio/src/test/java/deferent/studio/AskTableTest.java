package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.node.ObjectNode;

/** The published schema of questions and the studio that reads them say yes and no to the same. */
class AskTableTest {
    private static final SchemaRegistry REGISTRY =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
    private static final Schema SCHEMA = REGISTRY.getSchema(Studio.protocol());

    private static final String PHRASE = "\"phrase\": \"static spin vs triquetra\"";

    private static final Map<Ask, String> ASKED = new EnumMap<>(Ask.class);

    static {
        ASKED.put(
                Ask.PAIRING,
                PHRASE
                        + ", \"detail\": \"settled\", \"samples\": 24, \"time_s\": 0.1, \"body\": false,"
                        + " \"show\": \"hand-path\", \"performer\": {\"stature_m\": 1.6},"
                        + " \"kit\": {\"air\": true}, \"change\": [{\"set\": \"left.tether_m\", \"to\":"
                        + " 0.5, \"typed_in\": \"cm\"}, {\"grab\": \"both.centre\", \"to\": [0, 0, 0]},"
                        + " {\"do\": \"swap\"}]");
        ASKED.put(
                Ask.FIT,
                PHRASE
                        + ", \"carrier\": \"left\", \"free\": [\"right.hand_radius_m\"], \"arms\": true,"
                        + " \"owned_m\": [0.4, 0.5]");
        ASKED.put(
                Ask.LETGO,
                PHRASE + ", \"side\": \"left\", \"slip_m\": 0.01, \"seconds\": 0.5, \"rate\": 30");
        ASKED.put(
                Ask.TRANSITIONS,
                PHRASE
                        + ", \"to\": {\"phrase\": \"triquetra vs static spin\"}, \"hardest\": \"hard\"");
        ASKED.put(
                Ask.TRANSITION_PLAY,
                PHRASE + ", \"to\": {" + PHRASE + "}, \"transition\": 2, \"rate\": 60");
        ASKED.put(
                Ask.TRANSITION_TAKE,
                PHRASE
                        + ", \"to\": {"
                        + PHRASE
                        + "}, \"as\": \"png\", \"wishes\": {\"dark\": true}");
        ASKED.put(
                Ask.LEARN,
                PHRASE + ", \"from\": \"2026-11-28\", \"by\": \"2026-12-18\", \"minutes\": 20");
        ASKED.put(Ask.NEXT, PHRASE + ", \"hardest\": \"easy\", \"limit\": 4");
        ASKED.put(Ask.ROUTE, "\"from\": \"one\", \"to\": \"another\", \"hardest\": \"easy\"");
        ASKED.put(Ask.PHOTO, PHRASE + ", \"led_hz\": 100, \"duty\": 0.3, \"shutter_s\": 2");
        ASKED.put(Ask.WORDS, "\"word\": \"triquetra\"");
        ASKED.put(Ask.MOVES, "\"phrases\": [\"static spin vs triquetra\"], \"samples\": 48");
        ASKED.put(Ask.COMPLETE, "\"text\": \"iso vs tri\", \"at\": 3");
        ASKED.put(
                Ask.SEEK,
                "\"motions\": 10000, \"order\": \"closest\", \"limit\": 1, \"filter\": {\"exact\":"
                        + " true}, \"tethers\": \"free\"");
        ASKED.put(
                Ask.SET,
                "\"name\": \"Evening\", \"steps\": [{\"id\": \"one\", \"name\": \"One\", \"counts\":"
                        + " 16}, {\"phrase\": \"static spin vs triquetra\", \"counts\": 8}],"
                        + " \"hardest\": \"hard\", \"round\": true");
        ASKED.put(
                Ask.SET_PLAY,
                "\"saved\": \"evening\", \"from_s\": 2, \"to_s\": 12.5, \"rate\": 60");
        ASKED.put(Ask.SET_TAKE, "\"saved\": \"evening\", \"as\": \"pdf\", \"wishes\": {}");
        ASKED.put(Ask.SET_SUGGEST, "\"count\": 6, \"begin\": \"one\", \"hardest\": \"easy\"");
        ASKED.put(Ask.MAP, "\"hardest\": \"hard\"");
        ASKED.put(
                Ask.FILM,
                PHRASE
                        + ", \"film\": \"a key\", \"called\": \"practice.mp4\", \"tether_m\": 0.6,"
                        + " \"pixel_m\": 0.0027, \"first\": \"left\", \"mirrored\": true, \"from_s\": 2,"
                        + " \"to_s\": 12.5, \"pointed\": [{\"time_s\": 3, \"x\": 310, \"y\": 420},"
                        + " {\"time_s\": 3, \"x\": 655, \"y\": 300}]");
        ASKED.put(
                Ask.FILMED,
                "\"film\": \"a key\", \"as\": \"mp4\", \"wishes\": {\"form\": \"beside\"}");
        ASKED.put(
                Ask.BEATS,
                "\"song\": \"a key\", \"taps_s\": [12.4, 13], \"beats_a_bar\": 3, \"mends\":"
                        + " [{\"level\": \"double\"}, {\"first_bar\": 2}, {\"beat\": 12, \"to_s\":"
                        + " 9.25}]");
        ASKED.put(Ask.TAKE, PHRASE + ", \"as\": \"svg\", \"wishes\": {}");
        ASKED.put(Ask.STOP, "\"of\": \"seek\"");
    }

    private static String asked(Ask ask, String more) {
        return "{\"id\": 4, \"ask\": \"" + ask.word() + "\", " + ASKED.get(ask) + more + "}";
    }

    private static boolean fits(String question) {
        return SCHEMA.validate(question, InputFormat.JSON).isEmpty();
    }

    @Test
    void itIsASchema() {
        Schema meta =
                REGISTRY.getSchema(
                        SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        assertThat(meta.validate(Studio.protocol(), InputFormat.JSON)).isEmpty();
        assertThat(ASKED).containsOnlyKeys(Ask.values());
    }

    @ParameterizedTest
    @EnumSource(Ask.class)
    void whatCanBeAskedFits(Ask ask) {
        String question = asked(ask, "");
        assertThat(SCHEMA.validate(question, InputFormat.JSON)).as(question).isEmpty();
        assertThat(Ask.Asked.of(question).ask()).isEqualTo(ask);
        String slip = asked(ask, ", \"detial\": 1");
        assertThat(fits(slip)).isFalse();
        assertThatThrownBy(() -> Ask.Asked.of(slip))
                .isInstanceOf(BadRequest.class)
                .hasMessageContaining("detial");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"ask\": \"pairing\", \"phrase\": 3}",
                "{\"ask\": \"pairing\", \"phrase\": \"static spin vs triquetra\", \"samples\": 23}",
                "{\"ask\": \"pairing\", \"phrase\": \"static spin vs triquetra\", \"samples\": 24.5}",
                "{\"ask\": \"pairing\", \"phrase\": \"static spin vs triquetra\", \"body\": \"no\"}",
                "{\"ask\": \"pairing\", \"phrase\": \"static spin vs triquetra\", \"show\": \"rods\"}",
                "{\"ask\": \"pairing\", \"phrase\": \"static spin vs triquetra\", \"kit\": {\"air\": 1}}",
                "{\"ask\": \"pairing\", \"phrase\": \"static spin vs triquetra\", \"kit\": {\"wind\": 1}}",
                "{\"ask\": \"pairing\"}",
                "{\"ask\": \"pairing\", \"phrase\": \"static spin vs triquetra\", \"pattern\": {}}",
                "{\"ask\": \"pairing\", \"phrase\": \"static spin vs triquetra\", \"change\": [{}]}",
                "{\"ask\": \"pairing\", \"phrase\": \"static spin vs triquetra\", \"change\": [{\"do\": \"juggle\"}]}",
                "{\"ask\": \"pairing\", \"phrase\": \"static spin vs triquetra\", \"change\": [{\"set\": \"left.tether_m\"}]}",
                "{\"ask\": \"pairing\", \"phrase\": \"static spin vs triquetra\", \"change\": [{\"grab\": \"left.poi\"}]}",
                "{\"ask\": \"take\", \"as\": \"svg\", \"shelf\": false}",
                "{\"ask\": \"take\", \"as\": \"svg\", \"shelf\": true, \"patterns\": []}",
                "{\"ask\": \"lamp\"}",
                "{\"ask\": \"fit\", \"phrase\": \"static spin vs triquetra\", \"free\": \"all\"}",
                "{}"
            })
    void whatCannotBeReadDoesNotFit(String question, @TempDir Path shelf) {
        assertThat(fits(question)).isFalse();
        try (Visitor visitor = Visitor.to(shelf)) {
            assertThat(visitor.post("/api/ask", question).statusCode()).isEqualTo(400);
        }
    }

    @ParameterizedTest
    @EnumSource(Ask.class)
    void whatHasToBeThereIsWantedByBoth(Ask ask) {
        ObjectNode question = (ObjectNode) Desk.tree(asked(ask, ""));
        for (AskKey<?> key : ask.all()) {
            if (key.need() == AskKey.Need.MAY || !question.has(key.name())) {
                continue;
            }
            ObjectNode without = question.deepCopy();
            without.remove(key.name());
            assertThat(fits(without.toString())).as("without " + key.name()).isFalse();
            assertThatThrownBy(() -> Ask.Asked.of(without.toString()))
                    .isInstanceOf(BadRequest.class)
                    .hasMessageContaining(key.name());
        }
    }

    @Test
    void thePageMayFetchIt(@TempDir Path shelf) {
        try (Visitor visitor = Visitor.to(shelf)) {
            assertThat(Visitor.json(visitor.get("/api/protocol")))
                    .isEqualTo(Desk.JSON.readTree(Studio.protocol()));
        }
    }
}
