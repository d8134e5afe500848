package deferent.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class DocumentProperties {
    static final Schema SCHEMA =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(PatternJson.schema());

    @Provide
    Arbitrary<PatternDocument> patterns() {
        return PairingArbitraries.patterns();
    }

    @Provide
    Arbitrary<Double> angles() {
        return PairingArbitraries.angles();
    }

    @Property(tries = 400)
    void everyPatternReadsBackAsItWasToTheLastBit(@ForAll("patterns") PatternDocument pattern) {
        assertThat(PatternJson.read(PatternJson.write(pattern))).isEqualTo(pattern);
    }

    @Property(tries = 200)
    void everyPatternWrittenIsValidAfterThePublishedSchema(
            @ForAll("patterns") PatternDocument pattern) {
        assertThat(SCHEMA.validate(PatternJson.write(pattern), InputFormat.JSON)).isEmpty();
    }

    @Property(tries = 2000)
    void degreesAreWrittenOnlyWhereTheyGiveTheVerySameAngle(@ForAll("angles") double angle) {
        Angles.exactDegrees(angle)
                .ifPresent(
                        degrees ->
                                assertThat(Double.compare(Math.toRadians(degrees), angle))
                                        .isZero());
    }
}
