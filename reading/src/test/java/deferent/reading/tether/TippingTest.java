package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

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
        assertThat(best.lead().angle()).isCloseTo(0, within(0.01));
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

    private static final boolean DEEP = Boolean.getBoolean("deferent.deep");

    static Stream<Arguments> tipped() {
        List<String> motions =
                DEEP
                        ? List.of(
                                "static spin",
                                "isolation",
                                "extension",
                                "horizontal cat-eye",
                                "triquetra",
                                "four-petal antispin")
                        : List.of("triquetra", "isolation");
        int[] tips = DEEP ? new int[] {0, 5, 10, 30, 60, 90} : new int[] {10, 60};
        return motions.stream()
                .flatMap(m -> IntStream.of(tips).mapToObj(tip -> Arguments.of(m, tip)));
    }

    @ParameterizedTest
    @MethodSource("tipped")
    void theSlowestTempoIsTheSameWhateverTempoIsAskedAndTellsWhetherOneWorks(
            String motion, int tip) {
        double[] asked = DEEP ? new double[] {30, 40, 60, 90, 120} : new double[] {30, 90};
        String plane = motion + " tip " + tip + "°";
        SlowestTempo.Limit first =
                SlowestTempo.of(spun(plane, 77).pairing(), Side.LEFT, Kit.USUAL).handPathKept();
        for (double tempo : asked) {
            Trace ideal = spun(plane, tempo);
            SlowestTempo.Agreed agreed =
                    SlowestTempo.of(ideal.pairing(), Side.LEFT, Kit.USUAL)
                            .agreed(ideal, KeepTheHandPath.of(ideal, Side.LEFT, Kit.USUAL));
            SlowestTempo.Limit limit = agreed.slowest().handPathKept();
            assertThat(limit.reason()).isEqualTo(first.reason());
            assertThat(limit.fastest()).isEmpty();
            assertThat(limit.tempo().orElse(0))
                    .isCloseTo(first.tempo().orElse(0), withinPercentage(0.1));
            assertThat(agreed.handPathKept().best().isPresent()).isEqualTo(limit.met(tempo));
        }
    }

    /**
     * It comes down to where its own upright motion does, a little slower the more it is tipped.
     */
    @Test
    void aTriquetrasSlowestTempoChangesLittleAsItsPlaneIsTipped() {
        double last = slowest("triquetra");
        for (int tip : new int[] {10, 30, 60}) {
            double tipped = slowest("triquetra tip " + tip + "°");
            assertThat(tipped).isBetween(0.97 * last, last);
            last = tipped;
        }
    }

    private static double slowest(String motion) {
        return SlowestTempo.of(spun(motion, 60).pairing(), Side.LEFT, Kit.USUAL)
                .handPathKept()
                .tempo()
                .orElseThrow();
    }

    /**
     * At 30 a minute, tipped by 60 degrees, something pulls and turns as often near the figure's
     * place; but nothing comes down to it, so it is not the triquetra.
     */
    @Test
    void whatNoFasterTempoComesDownToIsAnotherMotion() {
        Trace ideal = spun("triquetra tip 60°", 30);
        KeepTheHandPath searched = KeepTheHandPath.of(ideal, Side.LEFT, Kit.USUAL);
        assertThat(searched.best()).isPresent();
        KeepTheHandPath agreed =
                SlowestTempo.of(ideal.pairing(), Side.LEFT, Kit.USUAL)
                        .agreed(ideal, searched)
                        .handPathKept();
        assertThat(agreed.best()).isEmpty();
        assertThat(agreed.solutions()).anyMatch(s -> s.pulls() && s.lead().meant());
    }
}
