package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.Page;
import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import deferent.page.Face;
import deferent.page.Scene;
import deferent.page.web.LessonPage;
import deferent.reading.body.Performer;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a browser sets its words in. */
class TypefacesPageTest extends InChromium {
    private static final String WORDS = "isolation vs triquetra, 60";

    /** How long the words are in a family and weight, pixels at a size of 1000. */
    private static final String LENGTH =
            """
            ([family, weight, words]) => {
              const line = document.createElement('span');
              line.style.cssText = `position: absolute; white-space: pre; font-kerning: none; font-variant: none;
                font-feature-settings: "liga" 0, "tnum" 0; font-family: ${family}; font-weight: ${weight}; font-size: 1000px`;
              line.textContent = words;
              document.body.append(line);
              const length = line.getBoundingClientRect().width;
              line.remove();
              return length;
            }""";

    @Test
    void theStudioSetsItsWordsInTheLettersThatComeAlong() {
        try (Visit visit = visit()) {
            measured(visit.page());
            visit.settled();
            visit.page().keyboard().press("o");
            visit.until("document.querySelector('.uplot')");
            assertThat(
                            visit.page()
                                    .evaluate(
                                            "getComputedStyle(document.querySelector('.uplot')).fontFamily"))
                    .isEqualTo("Roboto, Literata, sans-serif");
        }
    }

    @Test
    void aLessonPageBringsItsLettersInItself() {
        Scene scene = Scene.of(Trace.of(Phrase.parse("isolation vs triquetra").pairing()));
        Readings readings = Readings.of(scene.trace().pairing(), Performer.USUAL, Detail.LIVE);
        try (Page page = browser().newPage()) {
            // Only what stands in the file may be used: the page's own policy lets nothing else in.
            page.setContent(LessonPage.of(scene, readings, "Lesson"));
            measured(page);
        }
    }

    private static void measured(Page page) {
        page.evaluate(
                "() => Promise.all([...document.fonts].map((face) => face.load())).then(() => document.fonts.ready).then(() => true)");
        assertThat(
                        page.evaluate(
                                "[...document.fonts].map((face) => face.status + ' ' + face.family + ' ' + face.weight).sort().join()"))
                .isEqualTo(
                        "loaded Literata 400,loaded Roboto 400,loaded Roboto 500 600,loaded Roboto 700");
        double[] weights = {400, 600, 700, 400};
        for (Face face : Face.values()) {
            assertThat(
                            ((Number)
                                            page.evaluate(
                                                    LENGTH,
                                                    List.of(
                                                            face.family(),
                                                            weights[face.ordinal()],
                                                            WORDS)))
                                    .doubleValue())
                    .as(face.name())
                    .isCloseTo(face.width(WORDS, 1000), within(0.5 * WORDS.length() + 1));
        }
    }
}
