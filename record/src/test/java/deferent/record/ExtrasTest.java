package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.networknt.schema.InputFormat;
import deferent.motion.pairing.Size;
import deferent.motion.shared.Side;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Other programs may keep keys of their own in a document. */
class ExtrasTest {
    private static final String TEXT =
            PatternJson.write(PatternJsonTest.linked())
                    .replace(
                            "\"format\": 1,",
                            "\"format\": 1, \"x_app\": {\"deep\": [1, 2.50, -0.0, 1e300, null, \"é\\n\"]},")
                    .replace("\"timing_cycles\"", "\"x_colour\": true, \"timing_cycles\"")
                    .replace("\"path\": \"still\"", "\"path\": \"still\", \"x_~a/b\": 1")
                    .replace("\"stature_m\"", "\"x_shoe\": 43, \"stature_m\"")
                    .replace("\"head_mass_kg\"", "\"x_brand\": \"none\", \"head_mass_kg\"");

    @TempDir Path folder = Path.of("");

    @Test
    void theyAreKeptThroughReadingAndWriting() {
        Document read = PatternJson.read(TEXT);
        assertThat(read.extras().byPointer())
                .containsEntry("/x_app", "{\"deep\": [1, 2.5, -0.0, 1.0E300, null, \"é\\n\"]}")
                .containsEntry("/pairing/x_colour", "true")
                .containsEntry("/pairing/left/hand/x_~0a~1b", "1")
                .containsEntry("/performer/x_shoe", "43")
                .containsEntry("/kit/x_brand", "\"none\"")
                .hasSize(5);
        String written = PatternJson.write(read);
        assertThat(PatternJson.read(written)).isEqualTo(read);
        assertThat(DocumentProperties.SCHEMA.validate(written, InputFormat.JSON)).isEmpty();
    }

    @Test
    void theyAreKeptThroughShelfChangeAndBundle() {
        PatternDocument read = (PatternDocument) PatternJson.read(TEXT);
        Shelf shelf = Shelf.at(folder);
        Kept kept = shelf.saveNew(read);
        PatternDocument there = (PatternDocument) shelf.load(kept.id()).document();
        PatternDocument changed =
                there.withPairing(
                                Size.of(Side.RIGHT, Size.Kind.HAND_RADIUS)
                                        .set(there.pairing(), 0.4))
                        .withName("changed")
                        .withNote("note")
                        .withPerformer(deferent.reading.body.Performer.USUAL)
                        .withKit(deferent.reading.tether.Kit.USUAL);
        shelf.save(kept.id(), changed, kept.revision());
        assertThat(shelf.load(kept.id()).document().extras()).isEqualTo(read.extras());
        Document carried = PatternJson.readBundle(shelf.exportAll()).get(0);
        assertThat(carried).isEqualTo(changed);
        assertThat(carried.extras()).isEqualTo(read.extras());
    }

    @Test
    void aMotionKeepsThemToo() {
        String text =
                """
                {"format": 1, "kind": "motion", "name": "drop", "tether_m": 0.6, "x_id": "d1",
                 "hand": {"path": "circle", "radius_m": 0.5, "x_in": 2},
                 "spin": {"law": "turns", "turns": 1}}
                """;
        Document read = PatternJson.read(text);
        assertThat(read.extras().byPointer()).containsKeys("/x_id", "/hand/x_in");
        assertThat(PatternJson.readBundle(PatternJson.writeBundle(List.of(read))))
                .containsExactly(read);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "\"y_app\": 1",
                "\"x-app\": 1",
                "\"X_app\": 1",
                "\"xapp\": 1",
            })
    void anyOtherUnknownKeyIsRefusedAsBefore(String key) {
        String text = TEXT.replace("\"format\": 1,", "\"format\": 1, " + key + ",");
        assertThatThrownBy(() -> PatternJson.read(text))
                .isInstanceOf(DocumentError.class)
                .hasMessageContaining("is no key known here");
        assertThat(DocumentProperties.SCHEMA.validate(text, InputFormat.JSON)).isNotEmpty();
    }

    @Test
    void whatCannotBeKeptIsRefusedWithTheReason() {
        assertThatThrownBy(() -> PatternJson.read(TEXT.replace("1e300", "1e400")))
                .hasMessageContaining("x_app: ")
                .hasMessageContaining("is too large a number");
        assertThatThrownBy(
                        () ->
                                PatternJson.read(
                                        TEXT.replace("\"none\"", "\"" + "n".repeat(20_000) + "\"")))
                .hasMessageContaining("give at most 20000 together");
        assertThatThrownBy(
                        () ->
                                PatternJson.readBundle(
                                        "{\"format\": 1, \"kind\": \"bundle\", \"x_a\": 1, \"documents\": []}"))
                .hasMessageContaining("is no key known here");
    }
}
