package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import org.junit.jupiter.api.Test;

/**
 * A CAP on the head of a pendulum that swings a quarter turn to each side, tethers of 60 cm, on
 * real cords. Source: symmetry; independent calculation.
 */
class RidingCapTest {
    private static double offItsFigure(String phrase) {
        Trace ideal = Trace.of(Phrase.parse(phrase).pairing());
        return KeepTheHandPath.of(ideal, Side.LEFT, Kit.USUAL)
                .best()
                .orElseThrow()
                .away()
                .fromPath();
    }

    @Test
    void withTheHandOnItsPathTheHeadStraysTwelveCentimetresAtMost() {
        assertThat(offItsFigure("CAP riding pendulum"))
                .isCloseTo(0.113, within(5e-4))
                .isLessThan(0.12);
    }

    /** What a start that makes the figure lopsided costs. */
    @Test
    void fromAStartOffTheMirrorItStraysThreeTimesAsFar() {
        assertThat(offItsFigure("CAP start 0° riding pendulum")).isCloseTo(0.334, within(2e-3));
    }

    @Test
    void theHandThatKeepsTheFigureGivesFortyTwoCentimetres() {
        Trace ideal = Trace.of(Phrase.parse("CAP riding pendulum").pairing());
        KeepTheFigure keep = KeepTheFigure.of(ideal, Side.LEFT, Kit.USUAL);
        assertThat(keep.possible()).isTrue();
        assertThat(keep.away().greatest()).isCloseTo(0.417, within(5e-4));
    }
}
