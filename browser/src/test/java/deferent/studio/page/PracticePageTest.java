package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import deferent.film.practice.DemoPractice;
import deferent.record.Log;
import deferent.record.LogEntry;
import deferent.record.LogJson;
import deferent.record.PracticeLog;
import deferent.record.Shelf;
import deferent.search.path.Went;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
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

    private static LogEntry practised(LocalDate day, double minutes) {
        return LogEntry.drawn(
                new SecureRandom(),
                day,
                "isolation vs triquetra",
                Optional.empty(),
                minutes,
                OptionalDouble.of(45),
                Optional.of(Went.WELL),
                "");
    }

    private static void drop(Visit visit, String name, String kind, String text) {
        visit.page()
                .evaluate(
                        "([name, type, text]) => { const all = new DataTransfer();"
                                + " all.items.add(new File([text], name, { type }));"
                                + " document.body.dispatchEvent(new DragEvent('drop', { dataTransfer:"
                                + " all, bubbles: true, cancelable: true })); }",
                        List.of(name, kind, text));
    }

    @Test
    void theLogIsACalendarThatIsWrittenInAndTakesWhatIsDropped() throws IOException {
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        List<LogEntry> entries = new ArrayList<>();
        for (int week = 2; week < 6; week++) {
            entries.add(practised(today.minusWeeks(week), 15));
        }
        entries.add(practised(today.minusDays(1), 99));
        Log.of(Shelf.at(folder)).add(entries);
        Browser.NewContextOptions narrow =
                new Browser.NewContextOptions().setViewportSize(400, 860);
        try (Visit visit =
                Visit.to(browser(), folder, narrow, "#phrase=isolation vs triquetra, tempo 50")) {
            visit.settled();
            Page page = visit.page();
            page.evaluate("() => deferentDesk.act('practice')");
            visit.until("document.querySelectorAll('.practice-calendar button').length === 5");
            assertThat(page.locator(".practice-rest p").first().innerText())
                    .contains("take a day or two off");
            page.locator(".practice-rest summary").click();
            assertThat(page.innerText(".practice-rest details")).contains("no permission");
            page.locator(".practice-calendar button", new Page.LocatorOptions().setHasText("99"))
                    .click();
            assertThat(page.innerText(".practice-day"))
                    .contains("isolation vs triquetra, 99 min, at 45 a minute, it went well.");
            assertThat(page.innerText(".practice-patterns"))
                    .contains("5 times, 2 h 39 min in all, up to 45 a minute; last on ");

            page.locator(".practice-form select[name=part]").selectOption("left hand");
            page.locator(".practice-form input[name=minutes]").fill("12.5");
            page.locator(".practice-form button").click();
            visit.until("document.querySelectorAll('.practice-calendar button').length === 6");
            assertThat(page.innerText(".practice-told"))
                    .isEqualTo("In the log: isolation vs triquetra (left hand), 12.5 min.");

            String log = LogJson.write(List.of(practised(today, 7)));
            drop(visit, "hall.json", "application/json", log);
            visit.until("document.querySelector('.practice-told').textContent.includes('hall')");
            assertThat(page.innerText(".practice-told"))
                    .isEqualTo("hall.json: 1 new entry in the log.");
            drop(visit, "new.json", "", log.replace("\"version\": 1", "\"version\": 2"));
            visit.until("document.querySelector('.practice-told').textContent.includes('newer')");
            drop(visit, "huge.json", "", log + " ".repeat(5_000_000));
            visit.until("document.querySelector('.practice-told').textContent.includes('at most')");
            assertThat(page.innerText(".practice-told"))
                    .startsWith("Huge.json, document is 5000")
                    .endsWith(" bytes long; a log has at most 5000000.");
            page.evaluate(axe());
            assertThat(
                            page.evaluate(
                                    "async () => (await axe.run('dialog.practice', { resultTypes:"
                                            + " ['violations'] })).violations.map(v => v.id + ': ' +"
                                            + " v.nodes.map(n => n.target).join(' '))"))
                    .isEqualTo(List.of());
            assertThat(
                            (Boolean)
                                    page.evaluate(
                                            "() => { const d = document.querySelector('dialog.practice');"
                                                    + " return d.scrollWidth <= d.clientWidth; }"))
                    .isTrue();
            // A film goes where films go.
            drop(visit, "film.mp4", "video/mp4", "no film at all");
            visit.until("document.querySelector('dialog.film[open] .film-room')");
        }
    }

    @Test
    void anOrderToLearnInIsPlayedDrillByDrillAndPlannedAnewFromWhatWasPractised() {
        try (Visit visit = visit()) {
            visit.say("static spin vs triquetra, tether 45 cm");
            Page page = visit.page();
            page.keyboard().press("Escape");
            page.locator("deferent-stage canvas").focus();
            page.keyboard().press("Shift+U");
            visit.until("document.querySelectorAll('.drill').length > 3");
            assertThat(page.locator(".drill.on b").first().innerText()).endsWith("all of it");
            assertThat(page.locator(".learn-days li").first().innerText())
                    .contains("1 left hand alone, 20 min");
            // The doors leave room for the cross that shuts the drawer.
            String right = "document.querySelector('#tab-set').getBoundingClientRect().right";
            String cross = "document.querySelector('.drawer-shut').getBoundingClientRect().left";
            assertThat((Boolean) page.evaluate(right + " <= " + cross)).isTrue();
            page.locator(".drill button").nth(1).click();
            visit.until(
                    "deferentDesk.session.answer.phrase.startsWith('static spin turns 0')"
                            + " && document.querySelector('.drill:nth-child(2).on')");
            assertThat(page.innerText(".drill-told")).contains("right poi", "Often: ");
            page.locator(".learn-back button").click();
            visit.until(
                    "deferentDesk.session.answer.phrase === 'static spin vs triquetra, tether 45 cm'"
                            + " && document.querySelector('.drill:last-child.on')");
            page.locator(".drill button").nth(0).click();
            visit.until("document.querySelector('.drill:first-child.on .drill-done')");
            page.locator(".drill-done input").fill("20");
            page.locator(".drill-done button").click();
            visit.until("document.querySelector('.drill:first-child .drill-known')");
            assertThat(page.locator(".learn-days li").first().innerText())
                    .contains("2 right hand alone, 20 min");
            page.locator(".learn-out summary").click();
            assertThat(page.innerText(".learn-out")).contains("another one changes less.");
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
