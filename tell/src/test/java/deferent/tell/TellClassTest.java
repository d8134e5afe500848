package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a teacher is told. */
class TellClassTest {
    private static final double OWN = 1.72;

    @Test
    void whoeverSpinsItReachesTheSizesOfTheirStature() {
        Pairing wide = Phrase.parse("isolation vs four-petal antispin, tether 80 cm").pairing();
        assertThat(Reach.of(Trace.of(wide), Performer.of(OWN)).worst()).isGreaterThan(0.01);
        for (double stature : new double[] {1.5, 1.7, 1.9}) {
            Pairing fits = TellClass.fit(wide, OWN, stature).orElseThrow().pairing();
            assertThat(Reach.of(Trace.of(fits), Performer.of(stature)).worst())
                    .as("%s", stature)
                    .isLessThan(1e-3);
        }
        List<List<String>> rows = TellClass.sizes(wide, OWN);
        assertThat(rows).hasSize(6).allSatisfy(row -> assertThat(row).hasSize(6));
        assertThat(rows.get(1).get(2)).isNotEqualTo("70 cm");
    }

    @Test
    void whatIsReachedGrowsWithTheStudent() {
        Pairing small =
                Phrase.parse("static spin vs triquetra hand radius 40 cm, tether 43 cm").pairing();
        assertThat(TellClass.sizes(small, OWN).get(5).subList(1, 5))
                .containsExactly("48 cm", "48 cm", "still", "44 cm");
    }
}
