package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SayTest {
    @ParameterizedTest
    @CsvSource({
        "0, at the start of the cycle",
        "1, at the start of the cycle",
        "0.99, at the start of the cycle",
        "0.04, just after the start of the cycle",
        "0.95, just before the end of the cycle",
        "0.25, a quarter of the way through the cycle",
        "0.5, half way through the cycle",
        "0.56, just past half way through the cycle",
        "0.7, just before three quarters of the way through the cycle",
        "0.12, in the first quarter of the cycle",
        "0.87, in the last quarter of the cycle"
    })
    void aMomentOfTheCycleIsSaidAsSomebodyWhoSpinsCanTellIt(double share, String said) {
        assertThat(Say.into(share)).isEqualTo(said);
    }
}
