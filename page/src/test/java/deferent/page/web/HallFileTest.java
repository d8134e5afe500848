package deferent.page.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.page.sheet.Taught;
import deferent.reading.body.Performer;
import deferent.record.PatternDocument;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The hall file, before any browser opens it. */
class HallFileTest {
    private static List<Taught> taught = List.of();

    @BeforeAll
    static void workedOutOnce() {
        taught =
                Taught.of(
                                Stream.of(
                                                "static spin vs triquetra",
                                                "static spin vs triquetra, floor plane",
                                                "static spin vs triquetra, wheel plane")
                                        .map(HallFileTest::pattern)
                                        .toList(),
                                Lexicon.EMPTY,
                                0,
                                at -> {},
                                () -> false)
                        .orElseThrow();
    }

    private static PatternDocument pattern(String phrase) {
        return PatternDocument.of(phrase, Phrase.parse(phrase).pairing(), Performer.USUAL);
    }

    @Test
    void oneThatIsTooLargeIsRefusedInASentence() {
        TaughtShelf shelf = new TaughtShelf("A shelf", taught, 3, List.of(), Lexicon.EMPTY);
        assertThat(HallPage.of(shelf).length()).isLessThan(HallPage.MOST_BYTES);
        assertThatThrownBy(() -> HallPage.of(shelf, 100_000))
                .isInstanceOf(Refusal.class)
                .hasMessageMatching(
                        "the hall file \"A shelf\": would be 0\\.\\d MB with its 3 patterns, and a"
                                + " phone opens 0.1 MB at once; take a set of them away, or a"
                                + " folder with fewer");
    }

    @Test
    void wherePicturesStandWordsTellWhereThePerformersLeftIs() {
        assertThat(taught)
                .extracting(Taught::whoseLeft)
                .containsExactly(
                        "Seen by the audience; the performer's left is on the right.",
                        "Seen by the audience, from above; the performer's left is on the right.",
                        "Seen by the audience, from the performer's left; left and right in the"
                                + " words are the performer's.");
    }
}
