package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import deferent.motion.pairing.AnyPairing;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;

class DocumentProperties {
    static final Schema SCHEMA =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(PatternJson.schema());

    @Property(tries = 400)
    void everyPatternReadsBackAsItWasToTheLastBit(Any any) {
        PatternDocument pattern = any.from(AnyPattern::of);
        assertThat(PatternJson.read(PatternJson.write(pattern))).isEqualTo(pattern);
    }

    @Property(tries = 200)
    void everyPatternWrittenIsValidAfterThePublishedSchema(Any any) {
        PatternDocument pattern = any.from(AnyPattern::of);
        assertThat(SCHEMA.validate(PatternJson.write(pattern), InputFormat.JSON)).isEmpty();
    }

    @Property(tries = 2000)
    void degreesAreWrittenOnlyWhereTheyGiveTheVerySameAngle(Any any) {
        double angle = any.from(AnyPairing::angle);
        Angles.exactDegrees(angle)
                .ifPresent(
                        degrees ->
                                assertThat(Double.compare(Math.toRadians(degrees), angle))
                                        .isZero());
    }
}
