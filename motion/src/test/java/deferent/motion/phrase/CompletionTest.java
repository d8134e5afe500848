package deferent.motion.phrase;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What helps whoever is writing a phrase. */
class CompletionTest {
    private static List<Completion> at(String marked) {
        int caret = marked.indexOf('|');
        return Completion.at(marked.replace("|", ""), caret, Lexicon.EMPTY, 8);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            ignoreLeadingAndTrailingWhitespace = false,
            textBlock =
                    """
                    iso|;isolation;isolation |
                    isolation vs tri|;triquetra;isolation vs triquetra |
                    iso| vs triquetra;isolation;isolation| vs triquetra
                    iso|lat vs triquetra;isolation;isolation| vs triquetra
                    isolation vs four-petal ant|;four-petal antispin;isolation vs four-petal antispin |
                    isolation vs 4 petal a|;four-petal antispin;isolation vs four-petal antispin |
                    hori|;horizontal;horizontal |
                    isolation |;vs;isolation vs |
                    isolation vs triquetra, sp|;split;isolation vs triquetra, split |
                    isolation vs triquetra, tet|;tether;isolation vs triquetra, tether |
                    """)
    void whatIsBegunIsOfferedWholeAndOneGoesOnAfterIt(String marked, String says, String then) {
        Completion first = at(marked).get(0);
        assertThat(first.says()).isEqualTo(says);
        assertThat(new StringBuilder(first.text()).insert(first.caret(), '|')).hasToString(then);
    }

    @Test
    void anEmptyHandIsOfferedMotionsAndWhatFollowsACommaIsSaidOfBoth() {
        assertThat(at("isolation vs |")).extracting(Completion::says).contains("extension");
        assertThat(at("isolation vs triquetra, |"))
                .extracting(Completion::says)
                .contains("split", "opposite direction")
                .doesNotContain("extension");
    }

    @ParameterizedTest
    @ValueSource(strings = {"|", "i|", "isolation |", "isolation vs |", "isolation vs t|", "s|"})
    void nothingIsOfferedThatCouldNotBeReadThen(String marked) {
        assertThat(at(marked))
                .isNotEmpty()
                .allSatisfy(c -> assertThat(Phrase.parse(c.shows()).pairing()).isNotNull());
    }

    @ParameterizedTest
    @ValueSource(strings = {"zzz|", "isolation vs triquetra|", "isolation vs|"})
    void whatIsWholeOrNoWordIsLeftAlone(String marked) {
        assertThat(at(marked)).extracting(Completion::says).doesNotContain("triquetra", "vs");
    }

    @Test
    void aMotionOfOnesOwnIsOfferedToo() {
        Phrase phrase = Phrase.parse("triquetra vs isolation");
        Lexicon own =
                Lexicon.EMPTY.with(
                        "lantern loop",
                        phrase.pairing().left().motion(),
                        phrase.pairing().left().tether());
        assertThat(Completion.at("lan", 3, own, 8))
                .extracting(Completion::says)
                .containsExactly("lantern loop");
    }
}
