package deferent.motion.phrase;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A number that was typed stands in what is offered instead. */
class KeptNumbersTest {
    @ParameterizedTest
    @CsvSource({
        "static spin 2x, tempo 120",
        "static spin vs triquetra 1 Hz, tempo 60",
        "static spin vs triquetra 1.5 Hz, tempo 90",
        "static spin phase 90 vs triquetra, start 90°",
        "static spin vs triquetra R = 30, hand radius 30 cm"
    })
    void anOfferKeepsTheNumber(String typed, String kept) {
        PhraseError error =
                catchThrowableOfType(PhraseError.class, () -> Phrase.parse(typed).pairing());
        assertThat(error).as(typed).isNotNull();
        assertThat(error.offers()).as(typed).anyMatch(offer -> offer.contains(kept));
    }
}
