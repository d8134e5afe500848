package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** A film of practice, held against what is on the stage. */
class FilmPageTest extends InChromium {
    private static final Path PRACTICE = Path.of("..", "docs", "practice.mp4");

    @Test
    void aFilmSaysWhatIsOffAndShowsItOverThePicture() {
        try (Visit visit = visit()) {
            visit.say("static spin vs triquetra, tempo 40");
            visit.page().keyboard().press("Escape");
            visit.page().locator("deferent-stage canvas").focus();
            visit.page().keyboard().press("i");
            visit.until("document.querySelector('dialog.film[open]')");
            visit.page().locator(".film-drop input").setInputFiles(PRACTICE);
            visit.until("document.querySelector('.film-says li')");
            assertThat(visit.page().innerText(".film-says")).contains("hand's circle");
            visit.until("document.querySelector('.film-frame video').videoWidth > 0");
            visit.until(
                    "(() => { const c = document.querySelector('.film-frame canvas');"
                            + " return c.width > 0 && c.getContext('2d').getImageData(0, 0, c.width,"
                            + " c.height).data.some((v, i) => i % 4 === 3 && v > 0); })()");
            visit.page().locator(".film-says button").first().click();
            visit.until(
                    "[...document.querySelectorAll('.film-bar button')].some(b => b.textContent === 'The whole film')");
            visit.page().locator(".film-wishes input[type=radio]").nth(1).check();
            visit.until("document.querySelector('.film-told .told')");
            visit.page().keyboard().press("Escape");
            visit.until("!document.querySelector('dialog.film[open]')");
        }
    }

    @Test
    void whatIsNoFilmIsToldInOneSentenceAndAnotherCanBeChosen() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().evaluate("() => deferentDesk.act('film')");
            visit.page().locator(".film-drop input").setInputFiles(Path.of("pom.xml"));
            visit.until("document.querySelector('.film-told [role=alert]')");
            assertThat(visit.page().innerText(".film-told")).contains("is not a film");
            assertThat(visit.page().locator(".film-other input").count()).isEqualTo(1);
        }
    }
}
