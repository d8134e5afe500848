package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import org.junit.jupiter.api.Test;

class TellFirstTest {
    private static String first(String phrase, double stature) {
        Readings readings =
                Readings.of(Phrase.parse(phrase).pairing(), Performer.of(stature), Detail.SETTLED);
        assertThat(Telling.of(readings).get(0).key()).isEqualTo("first");
        return Telling.of(readings).get(0).text();
    }

    @Test
    void anArmThatFallsShortIsSaidBeforeACordThatDoes() {
        assertThat(first("static spin vs triquetra, tempo 10", 1.60))
                .startsWith("It links, but the right hand is up to ")
                .endsWith(" beyond the arm's reach, even with the trunk turned and leaning.");
        assertThat(first("static spin vs static spin, tempo 10", 1.70)).contains("cord needs");
    }

    @Test
    void theTempoThatACordNeedsIsTheLeastThatIsToldOfIt() {
        // An even turn about a hand that gives: free fall at its top where ω²L = g (any mechanics
        // textbook), 38.6 a minute at 0.60 m; held still the hand needs 60.1.
        assertThat(first("static spin vs static spin, tempo 30", 1.70))
                .isEqualTo(
                        "It does not link as it stands, and the left cord needs a tempo of 38.6 a minute or"
                                + " more to stay taut.");
    }

    @Test
    void whatIsReachedAndTautIsSaidToLinkOrHowFarItIsFromIt() {
        assertThat(first("isolation vs isolation, split time, tether 40 cm, tempo 150", 1.90))
                .isEqualTo("It links, and both cords can stay taut at 150 a minute.");
        assertThat(first("static spin vs static spin", 1.70))
                .isEqualTo(
                        "Both cords can stay taut at this tempo, but it does not link: the left head and the"
                                + " right hand are up to 60 cm apart now.");
        // Beside it, 22 cm to the side and 8 cm below: √(22² + 8²).
        assertThat(
                        first(
                                "static spin at the shoulder, tether 30 cm vs isolation tether 60 cm, tempo 150",
                                1.90))
                .isEqualTo(
                        "Danger: too near the body. Both cords can stay taut at this tempo, and it links"
                                + " without touching: the left head and the right hand are up to 23 cm apart"
                                + " now.");
    }
}
