package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.ReducedMotion;
import java.io.IOException;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;

/** Seek on the page: moving thumbnails that come as they are found. */
class SeekPageTest extends InChromium {
    private static final String DRAWN =
            "() => import(document.baseURI + 'stage/thumb.js').then(m => m.drawings.count)";

    private static void seek(Visit visit) {
        seek(visit, "closest");
    }

    private static void seek(Visit visit, String order) {
        visit.page().locator("#tab-seek").click();
        visit.page().locator("#seek-space").selectOption("10000");
        visit.page().locator("#seek-order").selectOption(order);
        visit.page().locator(".seek-all").click();
        visit.until("deferentDesk.seek.told && !deferentDesk.seek.running");
    }

    private static double drawn(Visit visit) {
        return ((Number) visit.page().evaluate(DRAWN)).doubleValue();
    }

    private static void outOfReachToo(Visit visit) {
        visit.page().locator("#tab-seek").click();
        visit.page().locator(".seek-only summary").click();
        visit.page().locator("[data-only=reachable]").uncheck();
        visit.page().locator(".seek-only summary").click();
    }

    @Test
    void unlessToldOtherwiseWhatIsFoundIsReached() {
        try (Visit visit = visit()) {
            visit.settled();
            seek(visit);
            assertThat(
                            visit.is(
                                    "[...deferentDesk.seek.found.values()].every(a =>"
                                            + " a.merit.missing_m < 1e-3)"))
                    .isTrue();
            double least = visit.number("deferentDesk.seek.found.size");
            assertThat(least).isPositive();
            outOfReachToo(visit);
            visit.until("deferentDesk.seek.told && !deferentDesk.seek.running");
            assertThat(visit.number("deferentDesk.seek.found.size")).isGreaterThan(least);
        }
    }

    @Test
    void whatOneMayNotHaveTriedIsCalledInFewWordsAndHasItsFamily() {
        try (Visit visit = visit()) {
            visit.settled();
            seek(visit, "try");
            assertThat(
                            visit.is(
                                    "[...deferentDesk.seek.found.values()].filter(a => !a.against.length)"
                                            + ".every(a => a.idea.split(' ').length <= 8)"))
                    .isTrue();
            assertThat(visit.text("document.querySelector('.find-said').textContent"))
                    .isEqualTo(visit.text("[...deferentDesk.seek.found.values()][0].idea"));
            visit.page()
                    .locator(".find")
                    .filter(new Locator.FilterOptions().setHasText("four-petal antispin"))
                    .first()
                    .click();
            visit.settled();
            visit.page().locator(".find-told .find-kin").first().click();
            visit.until("deferentDesk.session.answer.phrase?.includes('five-petal antispin')");
        }
    }

    @Test
    void findsFillThePageMoveOpenOnTheStageAndAreSavedWithOneKey() throws IOException {
        try (Visit visit = movingVisit()) {
            visit.settled();
            outOfReachToo(visit);
            seek(visit);
            assertThat(visit.number("document.querySelectorAll('.find').length")).isEqualTo(36);
            assertThat(visit.text("document.querySelector('.seek-state').textContent"))
                    .contains("links close exactly");
            double before = drawn(visit);
            for (int i = 0; i < 600 && drawn(visit) <= before + 8; i++) {
                visit.frames(1);
            }
            assertThat(drawn(visit)).as("they move").isGreaterThan(before + 8);
            visit.page().locator("#tab-reading").click();
            visit.rests("finds drawn where nobody looks", () -> drawn(visit));
            visit.page().locator("#tab-seek").click();
            visit.page().locator(".find").nth(2).click();
            visit.until(
                    "JSON.stringify(deferentDesk.session.pattern.pairing) ==="
                            + " JSON.stringify([...deferentDesk.seek.found.values()][2].pattern.pairing)");
            visit.settled();
            assertThat(visit.text("document.querySelector('.find-told').textContent"))
                    .contains("Linked exactly");
            visit.page().locator(".find").nth(2).focus();
            visit.page().keyboard().press("ArrowRight");
            assertThat(visit.text("document.activeElement.dataset.key"))
                    .isEqualTo(visit.text("[...deferentDesk.seek.found.keys()][3]"));
            visit.page().keyboard().press("a");
            visit.until("deferentDesk.shelf.patterns.length === 1");
            try (var files = Files.list(shelf)) {
                assertThat(files.filter(f -> f.toString().endsWith(".json"))).hasSize(1);
            }
        }
    }

    @Test
    void whoAsksForLessMotionSeesThemStandStillAndNothingIsWiderThanAPhone() {
        try (Visit visit = visit(screen(400, 800).setReducedMotion(ReducedMotion.REDUCE), "")) {
            visit.settled();
            seek(visit);
            visit.page().locator(".find").first().scrollIntoViewIfNeeded();
            assertThat(visit.rests("finds drawn", () -> drawn(visit))).isPositive();
            assertThat(visit.number("document.documentElement.scrollWidth"))
                    .isLessThanOrEqualTo(400);
        }
    }

    @Test
    void anotherFilterAsksAnewAndMoreLikeThisStartsFromTheStage() {
        try (Visit visit = visit()) {
            visit.say("static spin vs triquetra");
            seek(visit);
            visit.page().locator(".seek-only summary").click();
            visit.page().locator("[data-only=contrast]").fill("3");
            visit.page().locator("[data-only=contrast]").press("Enter");
            visit.until("deferentDesk.seek.filter.contrast === 3");
            visit.until("deferentDesk.seek.told && !deferentDesk.seek.running");
            assertThat(
                            visit.is(
                                    "[...deferentDesk.seek.found.values()].every(a =>"
                                            + " a.merit.contrast >= 3)"))
                    .isTrue();
            visit.page().evaluate("() => deferentDesk.seek.only('contrast')");
            visit.page().locator(".seek-like").click();
            visit.until("deferentDesk.seek.like && deferentDesk.seek.told");
            assertThat(visit.text("[...deferentDesk.seek.found.values()][0].told.text"))
                    .startsWith("The very same.");
        }
    }

    @Test
    void aSeekCanBeStoppedAndGoesOnBesideWorkOnThePattern() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().locator("#tab-seek").click();
            visit.page().locator("#seek-space").selectOption("200000");
            visit.page().locator("#seek-order").selectOption("slowest");
            outOfReachToo(visit);
            visit.page().locator(".seek-all").click();
            visit.until("deferentDesk.seek.found.size > 1");
            visit.page().evaluate("() => deferentDesk.session.say('isolation vs triquetra')");
            visit.until("deferentDesk.session.answer.phrase === 'isolation vs triquetra'");
            assertThat(visit.is("deferentDesk.seek.running")).isTrue();
            visit.page().locator(".seek-verbs .primary").click();
            visit.until("!deferentDesk.seek.running");
            assertThat(visit.number("document.querySelectorAll('.find').length")).isPositive();
            assertThat(visit.text("document.querySelector('.seek-state').textContent"))
                    .contains("stopped");
        }
    }
}
