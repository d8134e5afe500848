package deferent.tell;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import org.junit.jupiter.api.Test;

class TellFirstTest {
    private static final String LINKED = "isolation vs isolation, split time, tether 40 cm";

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
        assertThat(first(LINKED + ", tempo 10", 1.90))
                .startsWith("It links, but the left cord needs a tempo of ");
    }

    @Test
    void theTempoThatACordNeedsIsTheLeastThatIsToldOfIt() {
        // Hand and head go round one circle of 20 cm: free fall at its top where ω²·20 cm = g (any
        // mechanics textbook), 66.9 a minute.
        assertThat(first(LINKED + ", tempo 30", 1.70))
                .isEqualTo(
                        "It links, but the left cord needs a tempo of 66.9 a minute or more to stay"
                                + " taut.");
    }

    @Test
    void whatDoesNotLinkIsSaidAloneAndTheArmThatFallsShortOnceItLinks() {
        String apart = first("isolation vs triquetra", 1.75);
        assertThat(apart)
                .isEqualTo(
                        "It does not link: the left head and the right hand are up to 90 cm apart"
                                + " now.");
        assertThat(first("isolation vs triquetra, hand radius 30 cm, tether 40 cm", 1.75))
                .doesNotContain("reach");
        assertThat(first("static spin vs triquetra", 1.60))
                .startsWith("It links, but the right hand is ")
                .endsWith(" beyond the arm's reach, even with the trunk turned and leaning.");
    }

    @Test
    void beforeADangerNothingElseIsSaid() {
        assertThat(first("isolation vs triquetra, tempo 140", 1.75))
                .isEqualTo("Danger: too much force or speed.");
        assertThat(first("static spin at the shoulder vs triquetra, tempo 150", 1.75))
                .as("of several the gravest")
                .matches("Danger: [a-z ]+\\.")
                .doesNotContain(" and ");
    }

    @Test
    void whatIsReachedAndTautIsSaidToLinkOrHowFarItIsFromIt() {
        assertThat(first("isolation vs isolation, split time, tether 40 cm, tempo 150", 1.90))
                .isEqualTo("It links, and both cords can stay taut at 150 a minute.");
        assertThat(first("static spin vs static spin", 1.70))
                .isEqualTo(
                        "It does not link: the left head and the right hand are up to 60 cm apart"
                                + " now.");
        assertThat(
                        first(
                                "static spin centre 30 cm left tether 30 cm vs isolation tether 60 cm, tempo 110",
                                1.90))
                .isEqualTo(
                        "It links without touching: the left head and the right hand are up to 30 cm"
                                + " apart now.");
    }
}
