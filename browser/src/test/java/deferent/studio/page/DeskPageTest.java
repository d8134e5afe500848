package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.ReducedMotion;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The desk round the stage: what stands on it unasked, how much it tells, and how time is gone
 * through.
 */
class DeskPageTest extends InChromium {
    /** What can be pressed and is seen, by its name, from the top of the page on. */
    private static final String PRESSED =
            """
            [...document.querySelectorAll('button, input, textarea, summary, a')]
              .filter((e) => e.checkVisibility({ opacityProperty: true }) && !e.closest('.handles, .loop-end, .strip-gates')
                && !e.matches('.loop-end, .strip-scrub') && !e.querySelector('span')?.matches('[role=tab] span'))
              .map((e) => e.id || e.className).join(' ')""";

    private static final String SAID =
            "document.querySelector('reading-list').innerText.replace(/\\s+/g, ' ')";

    @Test
    void unaskedThereIsThePhraseOneSentenceOneLineAndOneMenu() {
        try (Visit visit = visit()) {
            visit.settled();
            assertThat(visit.text(PRESSED).split(" "))
                    .contains("tools-open", "phrase", "play", "tempo", "save-now", "share")
                    .allMatch(
                            name ->
                                    List.of(
                                                    "tools-open",
                                                    "phrase",
                                                    "play",
                                                    "tempo",
                                                    "share",
                                                    "save-now",
                                                    "slow",
                                                    "near",
                                                    "verb",
                                                    "fit",
                                                    "arms",
                                                    "mark-home")
                                            .contains(name),
                            "nothing else");
            visit.tools();
            assertThat(visit.page().locator("desk-menu").innerText())
                    .contains(
                            "Save",
                            "Save as a file",
                            "Words",
                            "Guide and keys",
                            "Swap hands",
                            "Colours");
        }
    }

    @Test
    void thePlainReadingIsOneSentenceAQuestionAndTheDepthIsKept() {
        try (Visit visit = visit()) {
            visit.say("isolation vs four-petal antispin");
            visit.page().keyboard().press("Escape");
            visit.page().locator("#tab-reading").click();
            visit.until("document.querySelectorAll('.plain-told').length === 3");
            assertThat(visit.page().locator(".plain h2").allInnerTexts())
                    .containsExactly("Can I spin it", "Does it link", "What to watch");
            for (String told : visit.page().locator(".plain-told").allInnerTexts()) {
                assertThat(told.replaceAll("\\d\\.\\d", "").chars().filter(c -> c == '.').count())
                        .as(told)
                        .isEqualTo(1);
            }
            assertThat(visit.page().locator(".numbers").count()).isZero();
            visit.page().locator(".depth label").last().click();
            visit.until("document.querySelector('.numbers')");
            visit.page().reload();
            visit.until("document.querySelector('.numbers') && deferentDesk.session.answer");
            visit.settled();
            visit.page().keyboard().press("n");
            visit.until("document.querySelectorAll('.plain-told').length === 3");
        }
    }

    @Test
    void aWordOfASentenceSaysWhatItMeansWhenTapped() {
        try (Visit visit = visit()) {
            visit.say("isolation vs four-petal antispin");
            visit.page().locator("#tab-reading").click();
            visit.page().locator(".term", text("apart now")).click();
            visit.until("document.querySelector('.term-told:popover-open')");
            assertThat(visit.page().locator(".term-told").innerText())
                    .contains("placed and timed now");
            visit.page().keyboard().press("Escape");
            visit.until("!document.querySelector('.term-told:popover-open')");
        }
    }

    @Test
    void cautionsAreSaidOnceASessionAndComeBackFromTheMenu() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().locator("#tab-reading").click();
            assertThat(visit.text(SAID)).contains("Clear the space");
            visit.page().locator(".known").click();
            visit.until("!document.querySelector('.care-list')");
            visit.page().reload();
            visit.until("document.querySelector('.plain-told')");
            assertThat(visit.page().locator(".care-list").count()).isZero();
            visit.tools();
            visit.page().locator(".cautions-again").click();
            visit.until("document.querySelector('.care-list')");
        }
    }

    @Test
    void aVerdictThatIsNotOfWhatIsShownSaysSo() {
        try (Visit visit = visit()) {
            visit.say("static spin vs triquetra");
            visit.page().locator("#tab-reading").click();
            assertThat(visit.page().locator(".of-ideal").count()).isZero();
            visit.page().evaluate("() => deferentDesk.session.keep('figure')");
            visit.until("deferentDesk.session.answer.shown.asked === 'figure'");
            visit.settled();
            visit.until("document.querySelector('.of-ideal')");
            assertThat(visit.page().locator(".plain.dimmed").count()).isEqualTo(1);
            visit.page().evaluate("() => deferentDesk.session.keep('ideal')");
            visit.until("!document.querySelector('.of-ideal')");
        }
    }

    @Test
    void theLineBearsTheCountsOfItsCycle() {
        try (Visit visit = visit()) {
            visit.say("isolation vs four-petal antispin");
            assertThat(visit.page().locator(".line-counts").innerText().replaceAll("\\s", ""))
                    .isEqualTo("1&2&3&");
            visit.say("static spin vs static spin");
            assertThat(visit.page().locator(".line-counts").innerText().replaceAll("\\s", ""))
                    .isEqualTo("1&");
        }
    }

    @Test
    void aPullAtTheLineOpensTheStripAndLeavesTheMoment() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().evaluate("() => deferentDesk.clock.seek(0.4)");
            BoundingBox line = visit.page().locator(".strip-line").boundingBox();
            visit.page().mouse().move(line.x + line.width / 2, line.y + 20);
            visit.page().mouse().down();
            visit.page().mouse().move(line.x + line.width / 2, line.y - 5);
            visit.page().mouse().move(line.x + line.width / 2, line.y - 30);
            visit.page().mouse().up();
            visit.until("!deferentDesk.strip.shut");
            assertThat(visit.page().locator(".strip-full").isVisible()).isTrue();
            assertThat(visit.number("deferentDesk.clock.phase")).isCloseTo(0.4, within(1e-9));
            visit.page().keyboard().press("o");
            visit.until("deferentDesk.strip.shut");
        }
    }

    @Test
    void aLoopPlaysItsPartOverAndOver() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().evaluate("() => deferentDesk.clock.seek(0.25)");
            visit.page().keyboard().press("(");
            visit.page().evaluate("() => deferentDesk.clock.seek(0.5)");
            visit.page().keyboard().press(")");
            assertThat(visit.number("deferentDesk.clock.from")).isCloseTo(0.25, within(1e-9));
            assertThat(visit.number("deferentDesk.clock.to")).isCloseTo(0.5, within(1e-9));
            visit.page()
                    .evaluate(
                            """
                            () => {
                              window.seen = [];
                              window.ends = 0;
                              const { clock } = deferentDesk;
                              let last = 0;
                              clock.addEventListener('tick', () => {
                                window.seen.push(clock.phase);
                                if (clock.phase < last) window.ends++;
                                last = clock.phase;
                              });
                              clock.play(true);
                            }""");
            visit.until("window.ends >= 2");
            visit.page().evaluate("() => deferentDesk.clock.play(false)");
            assertThat(visit.number("Math.min(...window.seen)")).isGreaterThanOrEqualTo(0.25);
            assertThat(visit.number("Math.max(...window.seen)")).isLessThanOrEqualTo(0.5);
            visit.page().keyboard().press("\\");
            assertThat(visit.is("deferentDesk.clock.looped")).isFalse();
        }
    }

    @Test
    void theEndsOfALoopAreDraggedAndMovedByKeys() {
        try (Visit visit = visit()) {
            visit.settled();
            BoundingBox line = visit.page().locator(".strip-line").boundingBox();
            double width = line.width - 28;
            visit.page().mouse().move(line.x + 14 + width, line.y + 18);
            visit.page().mouse().down();
            visit.page().mouse().move(line.x + 14 + width * 0.7, line.y + 18);
            visit.page().mouse().move(line.x + 14 + width * 0.6, line.y + 18);
            visit.page().mouse().up();
            assertThat(visit.number("deferentDesk.clock.to")).isCloseTo(0.6, within(0.01));
            visit.page().locator("[data-end=to]").focus();
            visit.page().keyboard().press("ArrowLeft");
            assertThat(visit.number("deferentDesk.clock.to")).isCloseTo(0.59, within(0.01));
        }
    }

    @Test
    void theStripCanBeDrawnCloserRoundAMoment() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().evaluate("() => deferentDesk.clock.seek(0.5)");
            visit.page().keyboard().press("o");
            visit.until("document.querySelector('.uplot')");
            visit.page().locator("[data-zoom='2']").click();
            assertThat(visit.number("deferentDesk.strip.plot.scales.x.min"))
                    .isCloseTo(0.25, within(1e-6));
            assertThat(visit.number("deferentDesk.strip.plot.scales.x.max"))
                    .isCloseTo(0.75, within(1e-6));
            visit.page().locator("[data-zoom='0.5']").click();
            assertThat(visit.number("deferentDesk.strip.plot.scales.x.max"))
                    .isCloseTo(1, within(1e-6));
        }
    }

    @Test
    void theLessonLookShowsNoMeasuredNumberAndGoesBackToWhatStood() {
        try (Visit visit = visit()) {
            visit.say("isolation vs four-petal antispin, tether 50 cm");
            visit.page().keyboard().press("Escape");
            visit.page().keyboard().press("j");
            visit.until("document.body.classList.contains('lesson')");
            visit.frames(3);
            assertThat(visit.page().locator(".mark").isVisible())
                    .as("a mark over the name")
                    .isFalse();
            assertThat(
                            visit.text(
                                    "document.querySelector('.desk').innerText.replace(document.querySelector('.line-counts').innerText, '').replace(document.querySelector('.stage-count').innerText, '')"))
                    .contains("isolation vs four-petal antispin")
                    .doesNotContainPattern("\\d");
            assertThat(visit.text("deferentStage.camera.view")).isEqualTo("mirror");
            assertThat(visit.is("deferentDesk.pulse.on")).isTrue();
            visit.page().locator(".lesson-mirror input").uncheck();
            assertThat(visit.text("deferentStage.camera.view")).isEqualTo("audience");
            visit.page().keyboard().press("j");
            assertThat(visit.is("document.body.classList.contains('lesson')")).isFalse();
            assertThat(visit.is("deferentDesk.pulse.on")).isFalse();
            assertThat(visit.page().locator("phrase-line").isVisible()).isTrue();
        }
    }

    @Test
    void aThumbPullsTheSheetUpAndFlicksItDown() {
        Browser.NewContextOptions phone =
                screen(400, 860)
                        .setReducedMotion(ReducedMotion.REDUCE)
                        .setHasTouch(true)
                        .setIsMobile(true);
        try (Visit visit = visit(phone, "")) {
            visit.settled();
            pull(visit, 860 - 400);
            visit.until("document.querySelector('side-panel.open')");
            assertThat(visit.page().locator(".seen").boundingBox().height).isGreaterThan(430);
            pull(visit, 840);
            visit.until("!document.querySelector('side-panel.open')");
            assertThat(
                            visit.text(
                                    "[...document.querySelectorAll('.foot button, .sheet-head [role=tab], .tools-open')]"
                                            + ".filter((e) => e.checkVisibility() && !e.matches('.loop-end, .gate') && e.getBoundingClientRect().height < 43.5)"
                                            + ".map((e) => e.className || e.id).join()"))
                    .as("too low for a finger")
                    .isEmpty();
        }
    }

    private static void pull(Visit visit, double to) {
        BoundingBox head = visit.page().locator(".sheet-head").boundingBox();
        visit.page().mouse().move(200, head.y + 8);
        visit.page().mouse().down();
        for (int i = 1; i <= 5; i++) {
            visit.page().mouse().move(200, head.y + 8 + (to - head.y - 8) * i / 5);
        }
        visit.page().mouse().up();
    }

    private static com.microsoft.playwright.Page.LocatorOptions text(String text) {
        return new com.microsoft.playwright.Page.LocatorOptions().setHasText(text);
    }
}
