package deferent.search.seek;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CordMeritTest {
    /**
     * A slip of 1 cm, the figure kept, after a reaction time: 22.2 cm in an isolation at 60 a
     * minute, 52.9 cm in a horizontal cat-eye, tether 60 cm; the worse of two hands counts.
     * Independent calculation, at the worst of some hundred moments: a hundredth less than at the
     * worst of all.
     */
    @ParameterizedTest
    @CsvSource({
        "isolation vs isolation, 22.2",
        "horizontal cat-eye vs horizontal cat-eye, 52.9",
        "isolation vs horizontal cat-eye, 52.9"
    })
    void aSlipsGrowthIsHowManyTimesAsFarAsideItHasPutTheHead(String phrase, double times) {
        Trace trace = Trace.of(Phrase.parse(phrase + ", tempo 60").pairing());
        assertThat(CordMerit.of(trace, false, true).growth().orElseThrow())
                .isBetween(0.999 * times, 1.01 * times);
    }
}
