package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.record.Practice.Clip;
import deferent.record.Practice.DatedBy;
import deferent.record.Practice.Finding;
import deferent.record.Practice.Scale;
import deferent.record.Practice.Size;
import deferent.record.Practice.Track;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A kept practice comes back as it was, and schema and reader agree on what one is. */
class PracticeJsonTest {
    private static final Schema SCHEMA =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(PracticeJson.schema(), InputFormat.JSON);
    static final String PATTERN = "static spin vs triquetra";

    static Practice practice(String name, String day, String sha, double small) {
        List<Integer> all = new ArrayList<>();
        List<Integer> some = new ArrayList<>();
        for (int i = 0; i < Practice.MOMENTS; i++) {
            all.add(i);
            if (i % 3 == 0) {
                some.add(i);
            }
        }
        return new Practice(
                name,
                "behind the barn",
                Optional.of("invented"),
                Instant.parse(day + "T18:30:00Z"),
                DatedBy.FILM,
                PATTERN,
                Phrase.parse(PATTERN).pairing(),
                "film",
                new Clip("lanterns.mp4", 1234567, sha.repeat(64), false),
                1.5,
                0.0003,
                9,
                new Scale(0.0027, 0.02, "figure", false),
                List.of(
                        new Size("size", Optional.of(Side.RIGHT), -small, 0.012, "m"),
                        new Size("late", Optional.empty(), -0.045, 0.004, "s")),
                List.of(
                        new Finding(
                                "size",
                                Optional.of(Side.RIGHT),
                                "The right hand's circle is too small.",
                                "Draw it with the empty hand first.",
                                small)),
                Map.of(Side.LEFT, track(all), Side.RIGHT, track(all)),
                Map.of(Side.LEFT, track(all), Side.RIGHT, track(some)),
                Extras.NONE);
    }

    private static Track track(List<Integer> moments) {
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        List<Double> error = new ArrayList<>();
        for (int moment : moments) {
            x.add(Math.cos(moment / 19.1));
            y.add(Math.sin(moment / 19.1));
            error.add(0.004);
        }
        return new Track(moments, x, y, error);
    }

    private static final String GOOD =
            PracticeJson.write(practice("At the barn", "2026-11-01", "a", 0.12));

    private static boolean valid(String text) {
        return SCHEMA.validate(text, InputFormat.JSON).isEmpty();
    }

    @Test
    void whatIsKeptComesBackAsItWas() {
        Practice practice = practice("At the barn", "2026-11-01", "a", 0.12);
        assertThat(PracticeJson.read(PracticeJson.write(practice))).isEqualTo(practice);
        assertThat(valid(GOOD)).isTrue();
    }

    @Test
    void whatOtherProgramsKeepInItStays() {
        String text = GOOD.replace("\"dated_by\"", "\"x_song\": \"a slow one\", \"dated_by\"");
        assertThat(valid(text)).isTrue();
        assertThat(PracticeJson.write(PracticeJson.read(text))).contains("x_song");
    }

    @ParameterizedTest(name = "{1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"format\": 1|\"format\": 2",
                "\"kind\": \"practice\"|\"kind\": \"pattern\"",
                "\"name\": \"At the barn\",|",
                "\"name\": \"lanterns.mp4\"|\"name\": \"barn/lanterns.mp4\"",
                "\"date\": \"2026-11-01T18:30:00Z\"|\"date\": \"last week\"",
                "\"dated_by\": \"film\"|\"dated_by\": \"heart\"",
                "\"pattern\": \"static spin vs triquetra\"|\"pattern\": \" \"",
                "\"bytes\": 1234567|\"bytes\": -1",
                "\"sha256\": \"aaaa|\"sha256\": \"ZZaa",
                "\"period_s\": 1.5|\"period_s\": 0",
                "\"period_s\": 1.5,|",
                "\"error_share\": 0.02|\"error_share\": 2",
                "\"unit\": \"m\"|\"unit\": \"cm\"",
                "\"hand\": \"right\"|\"hand\": \"both\"",
                "\"error\": 0.012|\"error\": -0.012",
                "\"weight_m\": 0.12|\"weight_m\": \"much\"",
                "\"left_head\"|\"left_foot\"",
                "\"looked_at_s\": 9|\"looked_at_s\": 9, \"place\": \"barn\"",
            })
    void aWrongRecordIsWrongForBoth(String right, String wrong) {
        assertThat(GOOD).contains(right);
        String text =
                GOOD.replaceFirst(
                        Pattern.quote(right), Matcher.quoteReplacement(wrong == null ? "" : wrong));
        assertThat(valid(text)).as("schema").isFalse();
        assertThatThrownBy(() -> PracticeJson.read(text))
                .isInstanceOfSatisfying(
                        DocumentError.class,
                        error -> {
                            assertThat(error.line()).isPositive();
                            assertThat(error.right()).isNotBlank();
                        });
    }

    @Test
    void aHandThatIsToldAtFewerMomentsThanItHasPlacesIsRefused() {
        String text = GOOD.replaceFirst("\"moments\": \\[\\s*0,", "\"moments\": [");
        assertThat(text).isNotEqualTo(GOOD);
        assertThatThrownBy(() -> PracticeJson.read(text))
                .isInstanceOf(DocumentError.class)
                .hasMessageContaining("different lengths");
    }
}
