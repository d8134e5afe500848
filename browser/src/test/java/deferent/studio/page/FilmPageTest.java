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

    private static Visit watched(Visit visit) {
        visit.say("static spin vs triquetra, tempo 40");
        visit.page().evaluate("() => deferentDesk.act('film')");
        visit.page().locator(".film-drop input").setInputFiles(PRACTICE);
        visit.until("document.querySelector('.film-says li')");
        visit.until("document.querySelector('.film-frame video').videoWidth > 0");
        return visit;
    }

    @Test
    void aFilmIsTakenAwayByOnePressAndCanBeStopped() {
        try (Visit visit = watched(visit())) {
            var buttons = visit.page().locator(".film-away-as button");
            assertThat(buttons.count()).isEqualTo(7);
            visit.page().selectOption(".film-bar select", new String[] {"0.25"});
            buttons.nth(1).click();
            visit.page().locator(".film-away button").getByText("Stop").click();
            visit.until("document.querySelectorAll('.film-away-as button').length === 7");
            assertThat(visit.page().locator(".film-away a").count()).isZero();
            buttons.nth(4).click();
            visit.until("document.querySelector('.film-away a')");
            assertThat(visit.page().locator(".film-away a").getAttribute("download"))
                    .endsWith(".png");
            assertThat(
                            visit.page()
                                    .evaluate(
                                            "async () => { const r = await fetch(document.querySelector('.film-away"
                                                    + " a').href); const b = await createImageBitmap(await r.blob());"
                                                    + " const v = document.querySelector('.film-frame video');"
                                                    + " return b.width === v.videoWidth && b.height ==="
                                                    + " v.videoHeight; }"))
                    .isEqualTo(true);
        }
    }

    @Test
    void bothLightsAreShownByKeyboardAndByTap() {
        try (Visit visit = watched(visit())) {
            visit.page().locator(".film-point-anyway").click();
            visit.until("document.activeElement.classList.contains('film-cross')");
            double before =
                    (double)
                            visit.page()
                                    .evaluate("() => document.querySelector('film-desk').cross[0]");
            visit.page().keyboard().press("ArrowLeft");
            assertThat(
                            (double)
                                    visit.page()
                                            .evaluate(
                                                    "() => document.querySelector('film-desk').cross[0]"))
                    .isLessThan(before);
            visit.page().keyboard().press("Enter");
            visit.until("document.querySelector('.film-pointing').textContent.includes('right')");
            visit.page().locator(".film-points").click();
            visit.until("!document.querySelector('.film-points')");
            visit.until("!document.querySelector('film-desk').film.running");
            // Nothing was lit where the cross stood or the tap fell: it says so, and offers again.
            visit.until(
                    "document.querySelector('.film-told').textContent.includes('Find them without me')");
            visit.page().getByText("Find them without me").click();
            visit.until("document.querySelector('.film-says li')");
        }
    }

    @Test
    void twoPlacesAreMeasuredByTheFilmsScaleOrGiveIt() {
        try (Visit visit = watched(visit())) {
            visit.page().locator(".film-measure").click();
            visit.until("document.activeElement.classList.contains('film-cross')");
            visit.page().keyboard().press("Enter");
            // A tenth of the picture further right; it is 464 pixels wide, of 5 mm each.
            visit.page().keyboard().press("Shift+ArrowRight");
            visit.page().keyboard().press("Shift+ArrowRight");
            visit.page().keyboard().press("Enter");
            visit.until("document.querySelector('.film-length')");
            assertThat(visit.page().innerText(".film-length")).contains("that is 23 cm");
            visit.page().locator(".film-length input").fill("46");
            visit.page().locator(".film-length input").press("Tab");
            visit.until(
                    "!document.querySelector('film-desk').film.running &&"
                            + " document.querySelector('film-desk').film.watched.film.scale.how ==="
                            + " 'given'");
            assertThat(
                            (double)
                                    visit.page()
                                            .evaluate(
                                                    "() => document.querySelector('film-desk').film.pixel"))
                    .isBetween(0.0098, 0.0100);
            // By that scale it is 46 cm, which may be an arm.
            visit.page().getByText("It is my arm").click();
            visit.until("deferentDesk.session.pattern.performer?.arm_m === 0.46");
        }
    }
}
