package deferent.page.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.page.Scene;
import deferent.page.web.LessonPage;
import deferent.reading.body.Performer;
import deferent.record.PatternDocument;
import deferent.search.whole.Readings;
import deferent.tell.Lame;
import deferent.tell.TellSizes;
import deferent.tell.Told;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Sheet and lesson page, where readings could not be worked out. */
class LameLessonTest {
    private static final String REASON = "could not be worked out: its sums run in a ring.";

    @Test
    void aSheetSaysWhatIsNotWorkedOutAndKeepsItsCautions() {
        Readings lame = Lame.wholly("extension vs triquetra");
        Lesson lesson =
                Lesson.of(
                        PatternDocument.of("lame", lame.pairing(), Performer.USUAL),
                        Edition.USUAL,
                        lame);
        for (List<Told> part : List.of(lesson.links(), lesson.performer(), lesson.watch())) {
            assertThat(part).anyMatch(told -> told.text().endsWith(REASON));
        }
        assertThat(lesson.sizes())
                .contains(
                        new TellSizes.Row("Tether", "60 cm", "60 cm"),
                        new TellSizes.Row("largest in reach", "not worked out", "not worked out"),
                        new TellSizes.Row("figure's width", "not worked out", "not worked out"));
        assertThat(lesson.cautions()).hasSize(6);
        assertThat(lesson.reach()).isEmpty();
    }

    @Test
    void aLessonPageSaysWhatIsNotWorkedOut() {
        Readings lame = Lame.wholly("extension vs triquetra");
        String page = LessonPage.of(Scene.of(lame.trace()), lame, "lame");
        assertThat(page)
                .contains(REASON)
                .contains("<td>not worked out</td><td>not worked out</td>")
                .contains("people, animals and lamps stand well outside the figures");
    }
}
