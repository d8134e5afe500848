package deferent.motion.trade;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitTest {
    /** An inch is 2.54 cm, a foot twelve: international yard and pound agreement, 1959. */
    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '`',
            textBlock =
                    """
                    24in      | 0.6096
                    24 inches | 0.6096
                    2 ft      | 0.6096
                    1 foot    | 0.3048
                    60 cm     | 0.6
                    600 mm    | 0.6
                    1/2 m     | 0.5
                    1/3 ft    | 0.1016
                    """,
            delimiter = '|')
    void aTetherIsSaidInAnyUnitOfLength(String said, double metres) {
        assertThat(
                        Phrase.parse("isolation vs triquetra, tether " + said)
                                .pairing()
                                .part(Side.LEFT)
                                .tether()
                                .length())
                .isCloseTo(metres, within(1e-15));
    }
}
