package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.photo.Led;
import deferent.reading.photo.PhotoReading;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import deferent.tell.Lame;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the published schema of readings says is what readings are. */
class ReadingsSchemaTest {
    private static final SchemaRegistry SCHEMAS =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
    private static final Schema READINGS = SCHEMAS.getSchema(ReadingsJson.schema());
    private static final Schema PHOTO =
            SCHEMAS.getSchema(
                    ReadingsJson.schema().replace("\"#/$defs/readings\"", "\"#/$defs/photo\""));

    private static String read(String phrase, Detail detail) {
        return ReadingsJson.write(
                Readings.of(Phrase.parse(phrase).pairing(), Performer.USUAL, detail));
    }

    @Test
    void thePublishedFileIsWhatTheTablesGive() throws IOException {
        try (InputStream in = ReadingsJson.class.getResourceAsStream("readings.schema.json")) {
            assertThat(new String(in.readAllBytes(), StandardCharsets.UTF_8))
                    .as("write it anew: deferent shelf schema --readings")
                    .isEqualTo(ReadingsJson.schema());
        }
    }

    @Test
    void itIsItselfADraft202012Schema() {
        var meta =
                SCHEMAS.getSchema(
                        SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        assertThat(meta.validate(ReadingsJson.schema(), InputFormat.JSON)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "static spin vs triquetra",
                "isolation vs four-petal antispin",
                "pendulum vs CAP",
                "CAP riding pendulum",
                "toroid vs static spin",
                "static spin vs square turns 2",
                "box vs diamond, opposite",
                "extension vs extension, split time",
                "isolation in wheel plane vs static spin in floor plane",
                "extension vs horizontal cat-eye, opposite, quarter time"
            })
    void readingsAreAsItSays(String phrase) {
        for (Detail detail : Detail.values()) {
            assertThat(READINGS.validate(read(phrase, detail), InputFormat.JSON))
                    .as(phrase + ", " + detail)
                    .isEmpty();
        }
    }

    @Test
    void whatCouldNotBeWorkedOutIsAsItSays() {
        assertThat(
                        READINGS.validate(
                                ReadingsJson.write(Lame.wholly("CAP riding pendulum")),
                                InputFormat.JSON))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"static spin vs triquetra", "pendulum vs CAP", "toroid vs isolation"})
    void photographsAreAsItSays(String phrase) {
        Trace trace = Trace.of(Phrase.parse(phrase).pairing());
        for (PhotoReading photo :
                new PhotoReading[] {
                    PhotoReading.of(trace, 0.07),
                    PhotoReading.of(
                            trace, 0.07, Optional.of(new Led(400, 0.5)), OptionalDouble.of(0.5))
                }) {
            assertThat(PHOTO.validate(PhotoJson.write(photo), InputFormat.JSON)).isEmpty();
        }
        assertThat(
                        READINGS.validate(
                                PhotoJson.write(PhotoReading.of(trace, 0.07)), InputFormat.JSON))
                .isNotEmpty();
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"kind\": \"touching\"|\"kind\": \"tied\"",
                "\"kind\": \"touching\",|",
                "\"width_m\"|\"width_cm\"",
                "\"period_s\": 1|\"period_s\": \"1 s\"",
                "\"petals\": 3|\"petals\": 3.5",
                "\"offset_m\": [0, 0, |\"offset_m\": [0, ",
                "\"reach\": {|\"far\": {",
            })
    void anotherObjectIsNot(String right, String wrong) {
        String good = read("static spin vs triquetra", Detail.LIVE);
        assertThat(good).contains(right);
        assertThat(
                        READINGS.validate(
                                good.replace(right, wrong == null ? "" : wrong), InputFormat.JSON))
                .isNotEmpty();
    }
}
