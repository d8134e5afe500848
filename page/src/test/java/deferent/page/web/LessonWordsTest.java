package deferent.page.web;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.page.Scene;
import deferent.reading.body.Performer;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import org.junit.jupiter.api.Test;

/** What a lesson page says of a pairing. */
class LessonWordsTest {
    @Test
    void figuresAndWarningsAreToldAndWhatTheHandWouldLeaveToKeepAFigureIsNot() {
        Readings readings =
                Readings.of(
                        Phrase.parse("isolation vs triquetra").pairing(),
                        Performer.USUAL,
                        Detail.SETTLED);
        assertThat(LessonPage.of(Scene.of(readings.trace()), readings, "lesson"))
                .contains("its head draws a figure 1.88 m wide")
                .contains("A practised hand draws the left figure within ")
                .doesNotContain("the hand leaves its path");
    }

    @Test
    void aDangerStandsBeforeThePictureAndOnlyThere() {
        String fast = "static spin vs triquetra, tempo 180";
        Readings readings =
                Readings.of(Phrase.parse(fast).pairing(), Performer.USUAL, Detail.PRINTED);
        String page = LessonPage.of(Scene.of(readings.trace()), readings, "lesson");
        int danger = page.indexOf("<ul class=\"dangers\">");
        assertThat(danger).isPositive().isLessThan(page.indexOf("<div class=\"lesson\">"));
        assertThat(page.substring(danger)).containsOnlyOnce("Danger: the right grip holds ");
        assertThat(page)
                .contains(".dangers li")
                .contains("The danger ends at 94.9 a minute or slower.");
    }
}
