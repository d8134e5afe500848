package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.BoundingBox;
import org.junit.jupiter.api.Test;

/** Whoever comes for the first time finds each next step on the desk, at one press. */
class NewcomerPageTest extends InChromium {
    private static Locator save(Visit visit) {
        return visit.page().locator(".save-now");
    }

    @Test
    void onePressSavesUnderTheNameThatThePhraseProposesAndOneMoreSaysAnother() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            save(visit).click();
            visit.until("document.querySelector('.save-now').textContent.trim() === 'Saved'");
            assertThat(visit.page().locator(".notice").innerText())
                    .contains("isolation vs triquetra");
            assertThat(visit.is("document.querySelector('side-panel.open')")).isFalse();
            visit.page().locator(".notice button").click();
            visit.until("document.activeElement.id === 'save-name'");
            visit.page().keyboard().type("Moth");
            visit.page().keyboard().press("Enter");
            visit.until("document.querySelector('.shelf-name')?.textContent === 'Moth'");
            assertThat(visit.number("deferentDesk.shelf.patterns.length")).isEqualTo(1);
        }
    }

    @Test
    void whatIsSavedAndThenChangedSaysSoAndIsSavedWithOnePressOrOneKey() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            visit.page().keyboard().press("Escape");
            visit.page().keyboard().press("p");
            visit.until("document.querySelector('.save-now').disabled");
            visit.page().keyboard().press("r");
            visit.until("document.querySelector('.save-now.changed')");
            assertThat(visit.page().locator("shelf-mark").innerText())
                    .contains("changed, not saved");
            save(visit).click();
            visit.until("document.querySelector('.save-now').disabled");
            assertThat(visit.page().locator("shelf-mark").innerText()).doesNotContain("changed");
            assertThat(visit.number("deferentDesk.shelf.patterns.length")).isEqualTo(1);
        }
    }

    @Test
    void aSecondOfThatNameIsAskedAboutWhereItCanBeAnswered() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            save(visit).click();
            visit.until("document.querySelector('.save-now').disabled");
            visit.page()
                    .evaluate(
                            "() => deferentDesk.session.open(deferentDesk.session.pattern, { shelved: null })");
            visit.until("!document.querySelector('.save-now').disabled");
            visit.settled();
            save(visit).click();
            visit.until("document.querySelector('.conflict')?.checkVisibility()");
        }
    }

    @Test
    void theTitleSaysThatItIsAFieldAtEveryWidth() {
        for (int width : new int[] {1280, 400}) {
            try (Visit visit = visit(screen(width, 800), "")) {
                visit.say("isolation vs triquetra");
                visit.page().keyboard().press("Escape");
                BoundingBox sign = visit.page().locator(".phrase-sign").boundingBox();
                BoundingBox field = visit.page().locator("#phrase").boundingBox();
                assertThat(sign.x).isBetween(field.x + 100, field.x + field.width);
                assertThat(sign.y).isBetween(field.y, field.y + field.height);
                assertThat(visit.page().locator("#phrase").getAttribute("title"))
                        .contains("type what each hand does");
                visit.page().locator("#phrase").focus();
                assertThat(visit.page().locator(".phrase-sign").isVisible()).isFalse();
            }
        }
    }

    @Test
    void theFirstSentenceTellsOneThingWithTheOneVerbThatHelps() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra, tempo 140");
            assertThat(visit.page().locator(".first .verb").allInnerTexts())
                    .singleElement()
                    .asString()
                    .startsWith("Slow to ");
            visit.page().locator(".first .slow").click();
            visit.settled();
            visit.until("document.querySelector('.first')?.dataset.tone !== 'danger'");
            assertThat(visit.page().locator(".first").innerText())
                    .startsWith("It does not link: ")
                    .doesNotContain("reach");
            assertThat(visit.page().locator(".first .verb").allInnerTexts()).containsExactly("Fit");
            visit.page().locator(".first .fit").click();
            visit.until("deferentDesk.session.fit?.chosen === 0");
            visit.settled();
            visit.until("document.querySelector('.first').textContent.startsWith('It links')");
            visit.say("static spin vs triquetra, tether 75 cm");
            assertThat(visit.page().locator(".first").innerText()).contains("reach");
            assertThat(visit.page().locator(".first .verb").allInnerTexts())
                    .containsExactly("Fit to my arms");
        }
    }

    @Test
    void aVerbStandsOnTheLineOnWhichItsSentenceEnds() {
        for (int width : new int[] {1280, 900, 400}) {
            try (Visit visit =
                    visit(screen(width, 800), "#phrase=static spin vs triquetra, tether 75 cm")) {
                visit.settled();
                BoundingBox end = visit.page().locator(".first-end").boundingBox();
                BoundingBox verb = visit.page().locator(".first .verb").boundingBox();
                assertThat(verb.x).isGreaterThan(end.x + 10);
                assertThat(Math.abs(verb.y + verb.height / 2 - end.y - end.height / 2))
                        .as("at " + width)
                        .isLessThan(8);
            }
        }
    }

    @Test
    void whatASentenceTellsOfIsShownWhileItIsPointedAt() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            visit.page().mouse().move(640, 790);
            visit.until("!document.querySelector('.seen').classList.contains('asked')");
            visit.page().locator(".first").hover();
            visit.until("document.querySelector('.seen').classList.contains('asked')");
            visit.page().waitForTimeout(3000);
            assertThat(visit.is("document.querySelector('.seen').classList.contains('asked')"))
                    .isTrue();
            visit.page().mouse().move(640, 790);
            visit.until("!document.querySelector('.seen').classList.contains('asked')");
        }
    }

    /** Remembers that hands were shown, however short the time and slow the machine. */
    private static final String WATCHED =
            """
            () => {
              const seen = document.querySelector('.seen');
              new MutationObserver(() => { window.asked ||= seen.classList.contains('asked'); }).observe(seen, { attributes: true });
            }""";

    private static final String RINGED = "deferentStage.show.meets";

    @Test
    void whereHeadAndHandMeetARingHoldsThemThoughNoHandIsShown() {
        try (Visit visit = visit()) {
            visit.say("static spin vs triquetra");
            assertThat(visit.is("deferentStage.always")).isFalse();
            visit.page().evaluate("() => deferentDesk.clock.seek(0.3)");
            assertThat(visit.text(RINGED)).isEqualTo("left");
            int marks = (int) visit.number("deferentStage.picture.marks");
            visit.say("isolation vs triquetra");
            visit.page().evaluate("() => deferentDesk.clock.seek(0.3)");
            assertThat(visit.text(RINGED)).isEqualTo("null");
            assertThat(visit.number("deferentStage.picture.marks")).isEqualTo(marks - 1);
        }
    }

    @Test
    void withAPatternThatIsNewHandsAreShownForACycleAndThenTheLightIsAlone() {
        try (Visit visit = movingVisit()) {
            visit.settled();
            // those of the first pattern may be there still; they must be gone to be seen to come
            visit.until("!document.querySelector('.seen').classList.contains('asked')");
            visit.page().evaluate(WATCHED);
            visit.say("isolation vs triquetra");
            visit.until("window.asked");
            visit.until("!document.querySelector('.seen').classList.contains('asked')");
            assertThat(visit.is("deferentStage.always")).isFalse();
        }
    }

    @Test
    void aFitSaysWhatItMadeOfTheFigureWhichStaysPaleForAMoment() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            visit.page().keyboard().press("Escape");
            double was =
                    visit.number("Math.max(...deferentDesk.session.scene.tracks['right.head'])");
            visit.page().keyboard().press("f");
            visit.until("deferentDesk.session.scene.was");
            assertThat(visit.number("Math.max(...deferentDesk.session.scene.was.right)"))
                    .isEqualTo(was);
            visit.until("document.querySelector('.fit-became')");
            assertThat(visit.page().locator(".fit-became").innerText())
                    .startsWith("The right hand radius went from 60 cm to 30 cm")
                    .containsPattern("the right figure is now \\d\\d% as wide\\.");
            visit.until("!deferentDesk.session.scene.was");
        }
    }

    @Test
    void aTradeWordOfASentenceShowsWhatItIs() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            visit.page().keyboard().press("Escape");
            visit.numbers();
            visit.page().locator("#tab-reading").click();
            visit.page()
                    .locator(
                            ".told .term",
                            new com.microsoft.playwright.Page.LocatorOptions()
                                    .setHasText("triquetra"))
                    .first()
                    .click();
            visit.until(
                    "document.querySelector('.term-told:popover-open') &&"
                            + " document.querySelector('word-told').moves");
            assertThat(visit.page().locator(".term-told").innerText()).contains("triquetra");
            assertThat(visit.page().locator(".term-picture canvas").boundingBox().width)
                    .isGreaterThan(60);
        }
    }
}
