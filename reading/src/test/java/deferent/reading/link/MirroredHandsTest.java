package deferent.reading.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What binds the hands of a weave. Counts and timings: common practice, no source. */
class MirroredHandsTest {
    private static MirroredHands of(String phrase) {
        return MirroredHands.of(Trace.of(Phrase.parse(phrase).pairing())).orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({"three-beat weave", "five-beat weave", "'three-beat weave, reversed'"})
    void theHandsOfAWeaveShareAPathInAMirrorHalfACycleApart(String phrase) {
        MirroredHands hands = of(phrase);
        assertThat(hands.gap()).isLessThan(1e-6);
        assertThat(Math.abs(hands.lag())).isCloseTo(0.5, within(1e-6));
    }

    @Test
    void thoseOfATwoBeatWeaveAreAQuarterOfACycleApartWhichIsHalfATurnOfThePoi() {
        MirroredHands hands = of("two-beat weave");
        assertThat(hands.gap()).isLessThan(1e-6);
        assertThat(hands.lag()).isCloseTo(-0.25, within(1e-6));
    }

    @Test
    void handsThatCrossAtOnceMirrorEachOtherButForTheHeightBetweenThem() {
        MirroredHands hands = of("crosser");
        assertThat(hands.gap()).isCloseTo(0.17, within(1e-6));
        assertThat(hands.lag()).isCloseTo(0, within(1e-6));
    }

    @Test
    void aWeaveOfOneHandAloneHasNothingToShare() {
        Trace trace = Trace.of(Phrase.parse("three-beat weave vs triquetra").pairing());
        assertThat(MirroredHands.of(trace)).isEmpty();
    }
}
