package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpeltNumberTest {
    @ParameterizedTest
    @CsvSource({
        "sixty,60",
        "Sixti,60",
        "twenty-five,25",
        "twenty five,25",
        "a hundred,",
        "hundred,100",
        "one hundred twenty,120",
        "thre,3",
        "beauty,",
        "xx,",
        "'',",
    })
    void wordsForNumbersAndWhatIsNearlyOne(String said, Integer number) {
        if (number == null) {
            assertThat(SpeltNumber.of(said)).isEmpty();
        } else {
            assertThat(SpeltNumber.of(said)).hasValue(number);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--tempo|sixty|is 60 meant?",
                "--tempo|60bpm|is 60 meant?",
                "--tether|60|is 60cm meant?",
                "--tether|0.6|is 0.6m meant?",
                "--tether|600|is 600mm meant?",
                "--tether|sixty|is 60cm meant?",
                "--tether|60cn|is 60cm meant?",
                "--tether|60deg|give one such as 60cm",
                "--tether|long|give one such as 60cm",
                "--head-mass|120|is 120g meant?",
                "--head-mass|0.12|is 0.12kg meant?",
                "--set|right.tilt=30|is 30deg meant?",
            })
    void aNumberThatIsNearlyRightIsAskedBack(String option, String value, String asked) {
        Desk.Answer answer =
                Desk.asked("read", "static spin vs triquetra", option, value, "--shelf", "none");
        assertThat(answer.code()).isEqualTo(Exit.WRONG_WORDS.code());
        assertThat(answer.err()).contains(asked);
    }

    @Test
    void aCountInWordsIsAskedBackToo() {
        assertThat(Desk.asked("seek", "--limit", "six").err()).contains("is 6 meant?");
        assertThat(Desk.asked("seek", "--limit", "many").err())
                .contains("\"many\" is no whole number");
    }
}
