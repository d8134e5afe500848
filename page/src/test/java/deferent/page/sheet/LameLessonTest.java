package deferent.page.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.body.Performer;
import deferent.motion.pairing.Side;
import deferent.motion.phrase.Phrase;
import deferent.motion.tell.Advice;
import deferent.motion.tell.CordReading;
import deferent.motion.tell.Detail;
import deferent.motion.tell.Readings;
import deferent.motion.tell.Told;
import deferent.motion.tell.Worked;
import deferent.page.Scene;
import deferent.page.web.LessonPage;
import deferent.record.PatternDocument;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Sheet and lesson page, where readings could not be worked out. */
class LameLessonTest {
    private static final String REASON = "could not be worked out: its sums run in a ring.";

    @Test
    void aSheetSaysWhatIsNotWorkedOutAndKeepsItsCautions() {
        Readings lame = lame("extension vs triquetra");
        Lesson lesson =
                Lesson.of(
                        PatternDocument.of("lame", lame.pairing(), Performer.USUAL),
                        Edition.USUAL,
                        lame);
        for (List<Told> part : List.of(lesson.ties(), lesson.performer(), lesson.watch())) {
            assertThat(part).anyMatch(told -> told.text().endsWith(REASON));
        }
        assertThat(lesson.sizes())
                .anyMatch(row -> row.left().equals("not worked out"))
                .anyMatch(row -> row.left().equals("60 cm"));
        assertThat(lesson.cautions()).hasSize(4);
        assertThat(lesson.reach()).isEmpty();
    }

    @Test
    void aLessonPageSaysWhatIsNotWorkedOut() {
        Readings lame = lame("extension vs triquetra");
        String page = LessonPage.of(Scene.of(lame.trace()), lame, "lame");
        assertThat(page)
                .contains(REASON)
                .contains("<td>not worked out</td><td>not worked out</td>")
                .contains("Keep people, animals and lamps well outside the figures");
    }

    /** Readings of which nothing could be worked out. */
    private static Readings lame(String phrase) {
        Readings whole =
                Readings.of(Phrase.parse(phrase).pairing(), Performer.USUAL, Detail.SETTLED);
        return new Readings(
                whole.trace(),
                whole.performer(),
                whole.detail(),
                whole.phrase(),
                new Readings.Hand(whole.left().motion(), not()),
                new Readings.Hand(whole.right().motion(), not()),
                not(),
                not(),
                not(),
                not(),
                new CordReading(Side.LEFT, not(), not(), not(), not(), not(), not()),
                new CordReading(Side.RIGHT, not(), not(), not(), not(), not(), not()),
                Optional.of(new Advice(Side.LEFT, not(), not(), not(), not(), not())));
    }

    private static <T> Worked<T> not() {
        return new Worked.Not<>("a reading", "its sums run in a ring", "Inside: a test.");
    }
}
