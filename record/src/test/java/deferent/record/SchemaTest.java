package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The published schema and the reader say yes and no to the same documents. */
class SchemaTest {
    private static final String GOOD = PatternJson.write(PatternJsonTest.linked());

    private static boolean valid(String text) {
        return DocumentProperties.SCHEMA.validate(text, InputFormat.JSON).isEmpty();
    }

    @Test
    void theSchemaIsItselfADraft202012Schema() {
        var meta =
                SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(
                                com.networknt.schema.SchemaLocation.of(
                                        "https://json-schema.org/draft/2020-12/schema"));
        assertThat(meta.validate(PatternJson.schema(), InputFormat.JSON)).isEmpty();
        assertThat(meta.validate("{\"type\": \"lamp\"}", InputFormat.JSON)).isNotEmpty();
    }

    @Test
    void goodDocumentsAreGoodForBoth() {
        for (String text :
                List.of(
                        GOOD,
                        GOOD.replace("\"kind\": \"pattern\",", ""),
                        GOOD.replace("\"format\": 1,", "\"$schema\": \"x\", \"format\": 1,"),
                        GOOD.replace("\"start_deg\": 0", "\"start_rad\": 0.1"),
                        formed("\"path\": \"polygon\", \"corners\": 5, \"radius_m\": 0.6"),
                        formed(
                                "\"path\": \"arc\", \"radius_m\": 0.6, \"middle_rad\": 1,"
                                        + " \"half_sweep_deg\": 180"),
                        stretched(""),
                        stretched("\"ease_share\": 0, "),
                        stretched("\"ease_share\": 0.01, "),
                        GOOD.replace("\"cycles\": 1", "\"cycles\": 2.0"))) {
            assertThat(PatternJson.read(text)).isNotNull();
            assertThat(valid(text)).as(text).isTrue();
        }
    }

    private static String stretched(String ease) {
        return GOOD.replace(
                "\"law\": \"turns\", \"turns\": 1",
                "\"law\": \"stretches\", "
                        + ease
                        + "\"stretches\": [{\"share\": 1, \"turns\": 1}]");
    }

    private static String formed(String path) {
        return GOOD.replace("\"path\": \"circle\", \"radius_m\": 0.6", path);
    }

    /** One wrong thing each: what stands in the good document, and what is put in its place. */
    @ParameterizedTest(name = "{1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"format\": 1|\"format\": 2",
                "\"format\": 1|\"format\": \"1\"",
                "\"format\": 1,|",
                "\"kind\": \"pattern\"|\"kind\": \"patern\"",
                "\"name\": \"Ring under the eaves\"|\"name\": \" \"",
                "\"name\": \"Ring under the eaves\"|\"name\": \"a\\nb\"",
                "\"name\": \"Ring under the eaves\",|",
                "\"tags\": [\"links\", \"wall\"]|\"tags\": \"links\"",
                "\"tags\": [\"links\", \"wall\"]|\"tags\": [1]",
                "\"tags\": [\"links\", \"wall\"]|\"tag\": []",
                "\"timing_cycles\": 0|\"timing_cycles\": 1",
                "\"timing_cycles\": 0|\"timing_cycles\": -0.1",
                "\"timing_cycles\": 0|\"tempo_cycles_per_min\": 0.5",
                "\"timing_cycles\": 0|\"tempo_cycles_per_min\": null",
                "\"direction\": \"same\"|\"direction\": \"Same\"",
                "\"path\": \"still\"|\"path\": \"still\", \"radius_m\": 1",
                "\"path\": \"circle\", \"radius_m\": 0.6|\"path\": \"circle\"",
                "\"path\": \"circle\", \"radius_m\": 0.6|\"path\": \"arc\", \"radius_m\": 0.6, \"half_sweep_deg\": 90",
                "\"path\": \"circle\", \"radius_m\": 0.6|\"path\": \"arc\", \"radius_m\": 0.6, \"middle_deg\": -90, \"half_sweep_deg\": 181",
                "\"path\": \"circle\", \"radius_m\": 0.6|\"path\": \"arc\", \"radius_m\": 0.6, \"middle_deg\": -90, \"half_sweep_deg\": 0",
                "\"path\": \"circle\", \"radius_m\": 0.6|\"path\": \"arc\", \"middle_deg\": -90, \"half_sweep_deg\": 90",
                "\"path\": \"circle\", \"radius_m\": 0.6|\"path\": \"polygon\", \"radius_m\": 0.6, \"corners\": 2",
                "\"path\": \"circle\", \"radius_m\": 0.6|\"path\": \"polygon\", \"radius_m\": 0.6",
                "\"path\": \"circle\", \"radius_m\": 0.6|\"path\": \"polygon\", \"radius_m\": 0.6, \"corners\": 4, \"start_deg\": 1, \"start_rad\": 1",
                "\"radius_m\": 0.6|\"radius_m\": 0",
                "\"radius_m\": 0.6|\"radius_m\": 11",
                "\"radius_m\": 0.6|\"radius_m\": 0.6, \"start_deg\": 1, \"start_rad\": 1",
                "\"law\": \"turns\", \"turns\": 1|\"law\": \"turns\", \"turns\": 1.5",
                "\"law\": \"turns\", \"turns\": 1|\"law\": \"turns\", \"turns\": 25",
                "\"law\": \"turns\", \"turns\": 1|\"law\": \"turn\", \"turns\": 1",
                "\"law\": \"turns\", \"turns\": 1|\"turns\": 1",
                "\"law\": \"turns\", \"turns\": 1|\"law\": \"stretches\", \"ease_share\": 0.005, \"stretches\": [{\"share\": 1, \"turns\": 1}]",
                "\"law\": \"turns\", \"turns\": 1|\"law\": \"stretches\", \"ease_share\": 1.5, \"stretches\": [{\"share\": 1, \"turns\": 1}]",
                "\"law\": \"turns\", \"turns\": 1|\"law\": \"stretches\", \"ease_share\": \"1/8\", \"stretches\": [{\"share\": 1, \"turns\": 1}]",
                "\"law\": \"turns\", \"turns\": 1|\"law\": \"turns\", \"ease_share\": 0.125, \"turns\": 1",
                "\"tether_m\": 0.6|\"tether_m\": 5.1",
                "\"tether_m\": 0.6|\"tether_m\": \"60cm\"",
                "\"tether_m\": 0.6,|",
                "\"kind\": \"wall\"|\"kind\": \"roof\"",
                "\"kind\": \"wall\"|\"kind\": \"wall\", \"tip_deg\": 181",
                "\"centre_m\": [0, 0, 0.34]|\"centre_m\": [0, 0]",
                "\"centre_m\": [0, 0, 0.34]|\"centre_m\": [0, 0, 11]",
                "\"centre_m\": [0, 0, 0.34]|\"center_m\": [0, 0, 0]",
                "\"cycles\": 1|\"cycles\": 0",
                "\"cycles\": 1|\"plane_turn\": {\"turns\": 13}",
                "\"cycles\": 1|\"plane_turn\": {\"turns\": 1, \"axis\": \"up\"}",
                "\"direction\": \"same\"|\"facing\": {\"from_deg\": 45}",
                "\"direction\": \"same\"|\"facing\": {\"turns\": [{\"begins_cycles\": 1, \"takes_cycles\": 0.2, \"turn_deg\": 360}]}",
                "\"direction\": \"same\"|\"facing\": {\"turns\": [{\"begins_cycles\": 0, \"takes_cycles\": 0.2, \"turn_deg\": 60}]}",
                "\"direction\": \"same\"|\"facing\": {\"turns\": [{\"begins_cycles\": 0, \"turn_deg\": 360}]}",
                "\"stature_m\": 1.72|\"stature_m\": 172",
                "\"arm_m\": 0.61|\"arms_m\": 0.61",
                "\"arm_m\": 0.61|\"hand_speed_m_per_s\": 0",
                "\"arm_m\": 0.61|\"hand_acceleration_m_per_s2\": -1",
                "\"arm_m\": 0.61|\"hand_leave_m\": 11",
                "\"head_mass_kg\": 0.15|\"head_mass_kg\": 0",
                "\"air\": false|\"air\": 0",
                "\"cord_kg_per_m\": 0|\"cord_kg_per_m\": 2",
                "\"head_diameter_m\": 0.07|\"head_diameter_m\": 0.6",
            })
    void aWrongDocumentIsWrongForBoth(String right, String wrong) {
        assertThat(GOOD).contains(right);
        String text =
                GOOD.replaceFirst(
                        java.util.regex.Pattern.quote(right),
                        java.util.regex.Matcher.quoteReplacement(wrong == null ? "" : wrong));
        assertThat(valid(text)).as("schema").isFalse();
        assertThatThrownBy(() -> PatternJson.read(text))
                .isInstanceOfSatisfying(
                        DocumentError.class,
                        error -> {
                            assertThat(error.line()).isPositive();
                            assertThat(error.column()).isPositive();
                            assertThat(error.right()).isNotBlank();
                        });
    }

    @Test
    void ridingEachOtherIsWrongForBoth() {
        String text =
                GOOD.replace("\"path\": \"still\"", "\"path\": \"riding\"")
                        .replace("\"path\": \"circle\", \"radius_m\": 0.6", "\"path\": \"riding\"");
        assertThat(valid(text)).isFalse();
        assertThatThrownBy(() -> PatternJson.read(text)).isInstanceOf(DocumentError.class);
    }
}
