package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import deferent.film.practice.DemoPractice;
import deferent.record.PracticeLog;
import deferent.record.Shelf;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What was practised, kept from a film at one press and seen over the weeks. */
class PracticePageTest extends InChromium {
    private static final Path PRACTICE = Path.of("..", "docs", "practice.mp4");
    private static final String AXE = "/META-INF/resources/webjars/axe-core/4.6.3/axe.min.js";

    @TempDir private Path folder;

    private static String axe() throws IOException {
        try (InputStream in = PracticePageTest.class.getResourceAsStream(AXE)) {
            return new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @ParameterizedTest
    @CsvSource({"1280, 800, DARK", "400, 860, LIGHT"})
    void theWeeksAreSeenAndReadInBothThemes(int width, int height, ColorScheme scheme)
            throws IOException {
        PracticeLog.of(Shelf.at(folder)).addAll(DemoPractice.records());
        Browser.NewContextOptions options =
                new Browser.NewContextOptions()
                        .setViewportSize(width, height)
                        .setColorScheme(scheme);
        try (Visit visit =
                Visit.to(browser(), folder, options, "#phrase=static spin vs triquetra")) {
            visit.settled();
            Page page = visit.page();
            page.evaluate("() => deferentDesk.act('practice')");
            visit.until("document.querySelector('.practice-picture')?.naturalWidth > 0");
            assertThat(page.innerText(".practice-says"))
                    .contains("Over 4 weeks the ", "right circle came from 12 cm too small to");
            assertThat(page.innerText("dialog.practice")).contains("invented demo data");
            // Nothing is wider than the page.
            assertThat(
                            (Boolean)
                                    page.evaluate(
                                            "() => { const d = document.querySelector('dialog.practice');"
                                                    + " return d.scrollWidth <= d.clientWidth; }"))
                    .isTrue();
            page.locator(".practice summary").click();
            assertThat(page.locator(".practice-table tbody tr").count()).isEqualTo(5);
            page.evaluate(axe());
            assertThat(
                            page.evaluate(
                                    "async () => (await axe.run('dialog.practice', { resultTypes:"
                                            + " ['violations'] })).violations.map(v => v.id + ': ' +"
                                            + " v.nodes.map(n => n.target).join(' '))"))
                    .isEqualTo(List.of());
        }
    }

    @Test
    void aPatternThatWasNeverKeptSaysHow() {
        try (Visit visit = visit()) {
            visit.say("isolation vs isolation");
            visit.page().keyboard().press("Escape");
            visit.page().locator("deferent-stage canvas").focus();
            visit.page().keyboard().press("u");
            visit.until("document.querySelector('dialog.practice[open] .practice-pattern')");
            assertThat(visit.page().innerText("dialog.practice"))
                    .contains("Nothing is kept of this pattern.");
            visit.page().locator("dialog.practice p button").click();
            visit.until("document.querySelector('dialog.film[open]')");
        }
    }

    @Test
    void onePressKeepsAFilmAndTheSecondAsks() {
        try (Visit visit = visit()) {
            visit.say("static spin vs triquetra, tempo 40");
            visit.page().evaluate("() => deferentDesk.act('film')");
            visit.page().locator(".film-drop input").setInputFiles(PRACTICE);
            visit.until("document.querySelector('.film-keep button')");
            visit.page().locator(".film-keep button").click();
            visit.until("document.querySelector('.film-keep').textContent.includes('Kept beside')");
            assertThat(visit.page().innerText(".film-keep")).contains("as its file says.");
            // Read in another way, the same film is kept once all the same.
            visit.page().evaluate("() => deferentDesk.filmed.film.wish({ pixel: 0.005 })");
            visit.until(
                    "document.querySelector('.film-keep button')?.textContent === 'Keep this practice'");
            visit.page().locator(".film-keep button").click();
            visit.until(
                    "document.querySelector('.film-keep').textContent.includes('kept already')");
            visit.page().locator(".film-keep button").click();
            visit.until("document.querySelector('.film-keep').textContent.includes('in place of')");
            visit.page().locator(".film-keep button").click();
            visit.until("document.querySelector('.practice-picture')?.naturalWidth > 0");
            assertThat(visit.page().innerText(".practice-says")).contains("Kept once, on ");
        }
    }
}
