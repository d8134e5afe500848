package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Side;
import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TippingTest {
    private static Trace spun(String motion, double tempo) {
        return Trace.of(Phrase.parse(motion + " vs static spin, tempo " + tempo).pairing());
    }

    /** An independent calculation: continuation in tip from the upright plane. */
    @ParameterizedTest
    @CsvSource({"tip 10°, 90, 0.5322", "tip -10°, 90, 0.5322", "wheel tip 10°, 120, 2.5977"})
    void aTippedIsolationStaysAnIsolation(String plane, double tempo, double leastPull) {
        KeepTheHandPath.Solution best =
                KeepTheHandPath.of(spun("isolation " + plane, tempo), Side.LEFT, Kit.USUAL)
                        .best()
                        .orElseThrow();
        assertThat(best.leastPullWeights()).isCloseTo(leastPull, within(1e-4));
        assertThat(best.growth()).isCloseTo(84.9, within(0.2));
        assertThat(best.lead()).isCloseTo(0, within(0.01));
    }

    /**
     * √(g/L), where the cone closes: 38.61 a minute at 0.60 m. Landau and Lifshitz, Mechanics, §14
     * (from memory).
     */
    @ParameterizedTest
    @CsvSource({"30, false", "40, true", "90, true"})
    void aLevelStaticSpinGoesRoundOnlyFasterThanItsPendulumWhateverTempoIsAsked(
            double tempo, boolean round) {
        Trace level = spun("static spin floor", tempo);
        KeepTheHandPath kept = KeepTheHandPath.of(level, Side.LEFT, Kit.USUAL);
        SlowestTempo slowest =
                SlowestTempo.of(level.pairing(), Side.LEFT, Kit.USUAL)
                        .agreed(level, kept)
                        .slowest();
        assertThat(slowest.handPathKept().tempo().orElseThrow()).isCloseTo(38.61, within(5e-3));
        assertThat(kept.best().isPresent()).isEqualTo(round);
    }
}
