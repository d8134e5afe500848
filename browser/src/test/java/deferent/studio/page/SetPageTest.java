package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.ReducedMotion;
import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.record.PatternDocument;
import deferent.record.Shelf;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A set is put together along the foot of the stage, and in the sheet of a phone. */
class SetPageTest extends InChromium {
    private static final String ORDER =
            "deferentDesk.set.steps.map((step) => step.name).join(' > ')";
    private static final String COUNTS =
            "deferentDesk.set.steps.map((step) => step.counts).join(' ')";

    @BeforeEach
    void shelve() {
        save("Narrow", "extension hand radius 10 cm vs extension hand radius 10 cm");
        save("Open", "extension hand radius 13 cm vs extension hand radius 13 cm");
        save("Wide", "extension hand radius 16 cm vs extension hand radius 16 cm");
    }

    private void save(String name, String phrase) {
        Shelf.at(shelf)
                .saveNew(PatternDocument.of(name, Phrase.parse(phrase).pairing(), Performer.USUAL));
    }

    /** A set of the three, in the order of their names. */
    private static void lay(Visit visit) {
        visit.settled();
        visit.page().locator("#tab-set").click();
        visit.until("document.querySelectorAll('.set-card').length === 3");
        for (int i = 0; i < 3; i++) {
            visit.page().locator(".set-card").nth(i).click();
        }
        known(visit);
    }

    private static void known(Visit visit) {
        visit.until("deferentDesk.set.known && !deferentDesk.set.working");
        visit.rests("document.querySelectorAll('.set-place, .set-row').length");
    }

    private static BoundingBox box(Visit visit, String name, String of) {
        return visit.page()
                .locator(".set-place:has(.set-block[aria-label^='" + name + ",'])" + of)
                .boundingBox();
    }

    private static Locator block(Visit visit, String name) {
        return visit.page().locator(".set-block[aria-label^='" + name + ",']");
    }

    private static void drag(Page page, BoundingBox from, double right) {
        double x = from.x + from.width / 2;
        double y = from.y + from.height / 2;
        page.mouse().move(x, y);
        page.mouse().down();
        for (int i = 1; i <= 8; i++) {
            page.mouse().move(x + right * i / 8, y);
            Chromium.frames(page, 1);
        }
        page.mouse().up();
    }

    @Test
    void anEmptySetInvitesInOneSentence() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().keyboard().press("7");
            visit.until("document.querySelector('.set-begin')");
            assertThat(visit.page().locator(".set-begin").innerText()).endsWith(".");
            assertThat(visit.page().locator(".set-place").count()).isZero();
            visit.page().keyboard().press("8");
            visit.until(ORDER + " === 'isolation vs four-petal antispin'");
        }
    }

    @Test
    void aBlockIsAsLongAsItsPatternLasts() {
        try (Visit visit = visit()) {
            lay(visit);
            assertThat(visit.text(ORDER)).isEqualTo("Narrow > Open > Wide");
            visit.page()
                    .evaluate("() => deferentDesk.set.stretch(deferentDesk.set.steps[1].key, 24)");
            known(visit);
            double ratio = box(visit, "Open", "").width / box(visit, "Narrow", "").width;
            double seconds =
                    visit.number(
                            "deferentDesk.set.answer.steps[1].seconds /"
                                    + " deferentDesk.set.answer.steps[0].seconds");
            assertThat(ratio).isCloseTo(seconds, offset(0.05));
            assertThat(seconds).isBetween(2.5, 3.5);
        }
    }

    @Test
    void aBlockIsCarriedToItsPlace() {
        try (Visit visit = visit()) {
            lay(visit);
            BoundingBox first = box(visit, "Narrow", "");
            BoundingBox last = box(visit, "Wide", "");
            drag(visit.page(), first, last.x + last.width - first.x - 4);
            visit.until(ORDER + " === 'Open > Wide > Narrow'");
            visit.until(
                    "document.querySelector('set-line [role=status]:last-child').textContent ==="
                            + " 'Narrow is now 3 of 3.'");
            visit.page().keyboard().press("Control+z");
            visit.until(ORDER + " === 'Narrow > Open > Wide'");
            visit.page().keyboard().press("Control+Shift+z");
            visit.until(ORDER + " === 'Open > Wide > Narrow'");
            known(visit);
        }
    }

    @Test
    void keysOrderStretchAndTakeOut() {
        try (Visit visit = visit()) {
            lay(visit);
            block(visit, "Narrow").focus();
            visit.page().keyboard().press("Shift+ArrowRight");
            visit.until(ORDER + " === 'Open > Narrow > Wide'");
            visit.until("document.activeElement.ariaLabel?.startsWith('Narrow, 2 of 3')");
            visit.page().keyboard().press("ArrowUp");
            visit.until(COUNTS + " === '8 16 8'");
            visit.page().keyboard().press("Shift+ArrowDown");
            visit.until(COUNTS + " === '8 15 8'");
            visit.page().keyboard().press("ArrowDown");
            visit.until(COUNTS + " === '8 8 8'");
            visit.page().keyboard().press("ArrowRight");
            visit.until("document.activeElement.ariaLabel?.startsWith('Wide, 3 of 3')");
            visit.page().keyboard().press("Delete");
            visit.until(ORDER + " === 'Open > Narrow'");
            visit.until("document.activeElement.ariaLabel?.startsWith('Narrow, 2 of 2')");
            visit.page().keyboard().press("Control+z");
            visit.until(ORDER + " === 'Open > Narrow > Wide'");
            known(visit);
        }
    }

    @Test
    void whatWasChangedLastIsTakenBackFirst() {
        try (Visit visit = visit()) {
            lay(visit);
            visit.page().waitForTimeout(5);
            visit.page().evaluate("() => document.activeElement.blur()");
            visit.page().keyboard().press("s");
            visit.until("deferentDesk.session.answer.phrase.startsWith('four-petal')");
            visit.settled();
            visit.page().keyboard().press("Control+z");
            visit.until("deferentDesk.session.answer.phrase.startsWith('isolation')");
            visit.settled();
            assertThat(visit.text(ORDER)).isEqualTo("Narrow > Open > Wide");
            visit.page().keyboard().press("Control+z");
            visit.until(ORDER + " === 'Narrow > Open'");
            visit.page().keyboard().press("Control+Shift+z");
            visit.until(ORDER + " === 'Narrow > Open > Wide'");
            visit.page().keyboard().press("Control+Shift+z");
            visit.until("deferentDesk.session.answer.phrase.startsWith('four-petal')");
            visit.settled();
            known(visit);
        }
    }

    @Test
    void aBlocksEndStretchesItByEights() {
        try (Visit visit = visit()) {
            lay(visit);
            BoundingBox block = box(visit, "Open", "");
            drag(visit.page(), box(visit, "Open", " .set-end"), block.width * 1.1);
            visit.until(COUNTS + " === '8 16 8'");
            known(visit);
            visit.page().keyboard().press("Control+z");
            visit.until(COUNTS + " === '8 8 8'");
            known(visit);
            visit.page().keyboard().down("Shift");
            drag(visit.page(), box(visit, "Open", " .set-end"), -block.width * 3 / 8);
            visit.page().keyboard().up("Shift");
            visit.until(COUNTS + " === '8 5 8'");
            known(visit);
        }
    }

    @Test
    void theSetPlaysInTimeAndGivesThePatternBack() {
        try (Visit visit = visit()) {
            lay(visit);
            visit.page()
                    .evaluate("() => deferentDesk.set.stretch(deferentDesk.set.steps[0].key, 16)");
            known(visit);
            visit.page().evaluate("() => deferentDesk.clock.seek(0.3)");
            visit.page().locator(".set-head .set-turn").click();
            visit.until("deferentDesk.player.playing && deferentDesk.player.now > 0.4");
            assertThat(visit.number("deferentDesk.clock.speed")).isEqualTo(1);
            assertThat(visit.text("document.querySelector('.line-counts').textContent"))
                    .as("the line at the foot is the set's clock")
                    .contains("0:00")
                    .contains("0:0");
            String eights = "1 2 3 4 5 6 7 8";
            assertThat(visit.text("deferentDesk.pulse.counts.map((c) => c.text).join(' ')"))
                    .isEqualTo(eights);
            assertThat(visit.text("deferentDesk.set.counts(0, 15.5).map((c) => c.text).join(' ')"))
                    .as("counted in eights")
                    .isEqualTo(eights + " " + eights);
            double at = visit.number("deferentDesk.player.now");
            visit.until("deferentDesk.player.now > " + (at + 0.2));
            visit.page().locator(".set-head .set-turn").click();
            visit.until("!deferentDesk.clock.playing");
            assertThat(visit.text("document.querySelector('.happened b').textContent"))
                    .isEqualTo("Narrow");
            visit.page().evaluate("() => document.activeElement.blur()");
            visit.page().keyboard().press("Escape");
            visit.until("!deferentDesk.session.aside");
            assertThat(visit.number("deferentDesk.clock.phase")).isCloseTo(0.3, offset(1e-9));
            assertThat(visit.number("deferentDesk.clock.speed")).isEqualTo(0.5);
            assertThat(visit.text("deferentDesk.session.answer.phrase"))
                    .isEqualTo("isolation vs four-petal antispin");
        }
    }

    @Test
    void aPartIsLoopedByItsEnds() {
        try (Visit visit = visit()) {
            lay(visit);
            double width = visit.page().locator(".set-track").boundingBox().width;
            drag(
                    visit.page(),
                    visit.page().locator(".set-loop-end[data-end=to]").boundingBox(),
                    -width * 0.7);
            visit.until("deferentDesk.set.loop");
            double to = visit.number("deferentDesk.set.loop.to");
            assertThat(to).isLessThan(visit.number("deferentDesk.set.laid.seconds") * 0.4);
            visit.page().keyboard().press("9");
            visit.until("deferentDesk.player.playing");
            assertThat(visit.number("deferentDesk.player.part.to")).isEqualTo(to);
            assertThat(visit.is("deferentDesk.clock.once")).isFalse();
            visit.page().evaluate("() => deferentDesk.clock.seek(0.97)");
            visit.until("deferentDesk.clock.playing && deferentDesk.clock.phase < 0.5");
            visit.page().locator(".set-whole").click();
            visit.until("deferentDesk.player.part.to > " + to + " && deferentDesk.clock.once");
        }
    }

    @Test
    void aTransitionPlaysWhenItIsPressed() {
        try (Visit visit = movingVisit()) {
            lay(visit);
            assertThat(visit.number("document.querySelectorAll('.set-joint').length")).isEqualTo(2);
            assertThat(
                            visit.is(
                                    "[...document.querySelectorAll('.set-joint')].every((j) =>"
                                            + " ['easy', 'practised', 'hard', 'none'].includes(j.dataset.grade)"
                                            + " && j.querySelector('svg'))"))
                    .isTrue();
            int led =
                    (int)
                            visit.number(
                                    "[...document.querySelectorAll('.set-joint')].findIndex((j) =>"
                                            + " j.dataset.grade !== 'none')");
            assertThat(led).as("one leads over").isNotNegative();
            visit.page().locator(".set-joint").nth(led).click();
            visit.until("deferentDesk.player.playing");
            assertThat(visit.number("deferentDesk.player.part.to - deferentDesk.player.part.from"))
                    .isLessThan(10);
            assertThat(visit.page().locator(".set-told").innerText()).isNotBlank();
        }
    }

    @Test
    void aSavedSetIsOpenedAgain() {
        try (Visit visit = visit()) {
            lay(visit);
            visit.page()
                    .evaluate("() => deferentDesk.set.stretch(deferentDesk.set.steps[0].key, 32)");
            known(visit);
            visit.page().locator("#set-name").fill("Lantern night");
            visit.page().locator("set-list .save button[type=submit]").click();
            visit.until("deferentDesk.set.kept && !deferentDesk.set.unsaved");
            visit.page().locator("text=Begin a new set").click();
            visit.until("!deferentDesk.set.steps.length");
            visit.page().locator(".set-other").first().click();
            visit.until(ORDER + " === 'Narrow > Open > Wide'");
            known(visit);
        }
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().locator("#tab-set").click();
            visit.page().locator(".set-other").first().click();
            visit.until(COUNTS + " === '32 8 8'");
            known(visit);
            assertThat(visit.page().locator("#set-name").inputValue()).isEqualTo("Lantern night");
            assertThat(visit.is("deferentDesk.set.unsaved")).isFalse();
            assertThat(visit.page().locator(".set-place").count()).isEqualTo(3);
        }
    }

    @Test
    void aReloadLosesNothingOfTheSet() {
        try (Visit visit = visit()) {
            lay(visit);
            visit.page().reload();
            visit.until("document.body?.classList.contains('ready')");
            known(visit);
            assertThat(visit.text(ORDER)).isEqualTo("Narrow > Open > Wide");
            assertThat(visit.page().locator(".set-place").count()).isEqualTo(3);
        }
    }

    @Test
    void aPatternThatIsNoLongerOnTheShelfIsShownAsGone() {
        try (Visit visit = visit()) {
            lay(visit);
            visit.page()
                    .evaluate(
                            "() => deferentDesk.saving.remove(deferentDesk.shelf.patterns.find((p) => p.id === 'open'))");
            visit.until("document.querySelector('.set-block.missing')");
            known(visit);
            block(visit, "Open").focus();
            visit.page().keyboard().press("ArrowLeft");
            visit.page().keyboard().press("ArrowRight");
            visit.until("document.querySelector('.set-told').textContent.includes('Open')");
            assertThat(visit.page().locator(".set-told").innerText()).contains("shelf");
            assertThat(visit.page().locator(".set-mind [data-kind=gone]").count()).isEqualTo(1);
            visit.page().keyboard().press("Delete");
            visit.until("!document.querySelector('.set-block.missing')");
            known(visit);
        }
    }

    @Test
    void aPhoneHasItsHandlesUnderOneThumb() {
        try (Visit visit =
                visit(
                        screen(400, 860)
                                .setHasTouch(true)
                                .setIsMobile(true)
                                .setReducedMotion(ReducedMotion.REDUCE),
                        "")) {
            visit.settled();
            visit.page().locator("#tab-set").tap();
            visit.until("document.querySelectorAll('.set-card').length === 3");
            for (int i = 0; i < 3; i++) {
                visit.page().locator(".set-card").nth(i).tap();
            }
            known(visit);
            assertThat(visit.page().locator(".set-row").count()).isEqualTo(3);
            visit.page().locator(".set-row").first().scrollIntoViewIfNeeded();
            Locator handle = visit.page().locator(".set-handle").first();
            BoundingBox box = handle.boundingBox();
            assertThat(box.width).isGreaterThanOrEqualTo(44);
            assertThat(box.height).isGreaterThanOrEqualTo(44);
            double x = box.x + box.width / 2;
            double y = box.y + box.height / 2;
            double second =
                    visit.page().locator(".set-row .set-one").nth(1).boundingBox().y - box.y;
            Fingers fingers = new Fingers(visit.page());
            fingers.press(x, y);
            for (int i = 1; i <= 8; i++) {
                fingers.move(x, y + (second + 10) * i / 8);
                visit.frames(1);
            }
            fingers.lift();
            visit.until(ORDER + " === 'Open > Narrow > Wide'");
            known(visit);
            visit.page().locator("[aria-label='Eight counts longer: Open']").tap();
            visit.until(COUNTS + " === '16 8 8'");
            known(visit);
            assertThat(visit.number("document.documentElement.scrollWidth"))
                    .isLessThanOrEqualTo(400);
            visit.page().locator("set-list .set-turn").tap();
            visit.until("deferentDesk.player.playing");
        }
    }

    @Test
    void fiveHundredPatternsAreDrawnOnlyWhereTheyAreSeen() {
        try (Visit visit = visit()) {
            lay(visit);
            visit.page()
                    .evaluate(
                            "() => { const { set } = deferentDesk; set.add(Array.from({ length: 497 }, (_, i) => {"
                                    + " const { id, name } = set.steps[i % 3]; return { id, name, counts: 8 }; })); }");
            visit.until("document.querySelectorAll('.set-place').length > 20");
            assertThat(visit.rests("document.querySelectorAll('.set-place').length"))
                    .isLessThan(120);
            visit.page()
                    .evaluate(
                            "() => deferentDesk.setLine.focusOn(deferentDesk.set.steps[400].key)");
            visit.until("document.activeElement.ariaLabel?.includes(', 401 of 500')");
            visit.until("!deferentDesk.set.working");
        }
    }

    @Test
    void nothingMovesInASetThatRests() {
        try (Visit visit = visit()) {
            lay(visit);
            double drawn =
                    ((Number)
                                    visit.page()
                                            .evaluate(
                                                    "async () => (await import('./stage/thumb.js')).drawings.count"))
                            .doubleValue();
            visit.frames(20);
            assertThat(
                            ((Number)
                                            visit.page()
                                                    .evaluate(
                                                            "async () => (await import('./stage/thumb.js')).drawings.count"))
                                    .doubleValue())
                    .as("who asked for calm sees stills")
                    .isEqualTo(drawn);
        }
    }

    @Test
    void aSetGoesToTheDownloadsAsASheet() {
        try (Visit visit = visit()) {
            lay(visit);
            var sheet =
                    visit.page()
                            .waitForDownload(
                                    () -> visit.page().locator("set-list [data-as=pdf]").click());
            assertThat(sheet.suggestedFilename()).isEqualTo("set.pdf");
            visit.until("document.querySelector('set-list .way-file')");
            known(visit);
            // The others stand behind a press; those that want a song are not offered without one.
            visit.page().locator(".set-files summary").click();
            visit.until("document.querySelector('.set-files [data-as=vtt]')");
            assertThat(visit.page().locator(".set-files li").allTextContents())
                    .anySatisfy(one -> assertThat(one).contains("PDF", "cue sheet"))
                    .noneSatisfy(one -> assertThat(one).contains("WAV"))
                    .noneSatisfy(one -> assertThat(one).contains("MID"));
            var cues =
                    visit.page()
                            .waitForDownload(
                                    () -> visit.page().locator(".set-files [data-as=cue]").click());
            assertThat(cues.suggestedFilename()).isEqualTo("set.pdf");
            visit.page()
                    .evaluate(
                            "() => { const { set } = deferentDesk; set.stands = { ...set.stands, song: { id: 'a', name: 'A', from_beat: 0 } }; set.tell(); }");
            visit.until(
                    "document.querySelector('.set-files [data-as=wav]') && document.querySelector('.set-files [data-as=mid]')");
        }
    }

    @Test
    void aSuggestionIsOfTheShelf() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().locator("#tab-set").click();
            visit.until("document.querySelector('.set-suggest')");
            visit.page().locator(".set-suggest input").fill("3");
            visit.page().locator(".set-suggest input").press("Enter");
            visit.until("deferentDesk.set.steps.length === 3");
            known(visit);
            assertThat(
                            visit.is(
                                    "deferentDesk.set.steps.every((s) => deferentDesk.shelf.patterns.some((p) => p.id === s.id))"))
                    .isTrue();
            assertThat(List.of(visit.text(ORDER).split(" > "))).doesNotHaveDuplicates();
        }
    }
}
