package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import org.junit.jupiter.api.Test;

class TellBecameTest {
    private static String became(String before, String after) {
        return TellBecame.of(pairing(before), pairing(after));
    }

    private static Pairing pairing(String phrase) {
        return Phrase.parse(phrase).pairing();
    }

    /** A static spin is 2L wide. */
    @Test
    void aTetherHalfAsLongMakesAStaticSpinHalfAsWide() {
        assertThat(
                        became(
                                "static spin tether 60 cm vs static spin",
                                "static spin tether 30 cm vs static spin"))
                .isEqualTo(
                        "The left tether went from 60 cm to 30 cm; the left figure is now half as"
                                + " wide.");
    }

    /** A cat-eye is 2(R + L) wide: 240 cm, then 180. */
    @Test
    void eachSizeThatWentSomewhereIsSaidWithItsFigureAndTimingMakesNone() {
        assertThat(
                        became(
                                "static spin vs horizontal cat-eye hand radius 60 cm",
                                "static spin vs horizontal cat-eye hand radius 30 cm, split time"))
                .isEqualTo(
                        "The right hand radius went from 60 cm to 30 cm and the timing from together"
                                + " to split; the right figure is now 75% as wide.");
        assertThat(became("static spin vs static spin", "static spin vs static spin, split time"))
                .isEqualTo(
                        "The timing went from together to split; both figures are as wide as"
                                + " before.");
    }
}
