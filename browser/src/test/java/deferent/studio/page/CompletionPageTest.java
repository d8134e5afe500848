package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Words that help while a phrase is written, and the list of all words. */
class CompletionPageTest extends InChromium {
    private static void type(Visit visit, String text) {
        visit.page().locator("#phrase").click();
        visit.page().locator("#phrase").fill("");
        visit.page().keyboard().type(text);
    }

    @Test
    void whatIsBegunIsOfferedWithAPictureAndTakenWithTheKeys() {
        try (Visit visit = visit()) {
            visit.settled();
            type(visit, "isolation vs tri");
            visit.until("document.querySelectorAll('.offer-word canvas').length === 3");
            visit.until(
                    "document.querySelector('phrase-line [role=status]')?.textContent === '3 words go"
                            + " here; arrow down chooses.'");
            assertThat(visit.page().locator("#phrase").getAttribute("aria-activedescendant"))
                    .as("nothing is chosen before it is asked for")
                    .isNull();
            visit.page().keyboard().press("ArrowDown");
            visit.until(
                    "document.querySelector('[aria-selected=true] b')?.textContent === 'triquetra'");
            assertThat(
                            visit.text(
                                    "document.getElementById(document.querySelector('#phrase').getAttribute('aria-activedescendant')).innerText"))
                    .contains("triquetra")
                    .contains("three-petal antispin flower");
            visit.page().keyboard().press("Tab");
            visit.until("deferentDesk.session.answer?.phrase === 'isolation vs triquetra'");
            assertThat(visit.is("document.activeElement.id === 'phrase'"))
                    .as("one goes on writing")
                    .isTrue();
            visit.page().keyboard().press("Enter");
            visit.settled();
        }
    }

    @Test
    void theWordAtTheCaretIsCompletedAndTheRestStays() {
        try (Visit visit = visit()) {
            visit.settled();
            type(visit, "iso vs triquetra, split");
            visit.page().keyboard().press("Enter");
            visit.settled();
            visit.page()
                    .evaluate("() => document.querySelector('#phrase').setSelectionRange(3, 3)");
            visit.page().keyboard().press("ArrowDown");
            visit.until("document.querySelector('.offer-word')");
            visit.page().locator(".offer-word").first().click();
            assertThat(visit.page().locator("#phrase").inputValue())
                    .isEqualTo("isolation vs triquetra, split");
            visit.page().keyboard().press("Enter");
            visit.settled();
        }
    }

    @Test
    void escapeShutsTheListFirstAndEnterTakesNothingThatWasNotChosen() {
        try (Visit visit = visit()) {
            visit.settled();
            type(visit, "isolation vs ex");
            visit.until("document.querySelector('.offer-word')");
            visit.page().keyboard().press("Escape");
            visit.until("!document.querySelector('.offer-word')");
            assertThat(visit.page().locator("#phrase").inputValue()).isEqualTo("isolation vs ex");
            visit.page().keyboard().type("t");
            visit.until("document.querySelector('.offer-word')");
            visit.page().keyboard().press("Enter");
            visit.until("!document.querySelector('.offer-word')");
            assertThat(visit.page().locator("#phrase").inputValue()).isEqualTo("isolation vs ext");
            visit.settled();
        }
    }

    @Test
    void whatWasTypedSinceStaysWhenTheAnswerToEarlierWordsComes() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page()
                    .evaluate(
                            "() => { const { session } = deferentDesk;"
                                    + " session.say('isolation vs triquetra');"
                                    + " session.say('isolation vs tri, spl'); }");
            visit.until("deferentDesk.session.error?.text === 'isolation vs tri, spl'");
            assertThat(visit.page().locator("#phrase").inputValue())
                    .isEqualTo("isolation vs tri, spl");
            visit.page().evaluate("() => deferentDesk.session.clearError()");
            visit.until("document.querySelector('#phrase').value === 'isolation vs triquetra'");
        }
    }

    @Test
    void onAPhoneEachIsAsTallAsAFingerAndALongPhraseWraps() {
        try (Visit visit = visit(screen(400, 860).setHasTouch(true), "")) {
            visit.settled();
            type(visit, "four-petal antispin vs isolation, split time, opposite direction, te");
            visit.until("document.querySelector('.offer-word')");
            assertThat(visit.page().locator(".offer-word").first().boundingBox().height)
                    .isGreaterThanOrEqualTo(44);
            assertThat(
                            visit.is(
                                    "document.querySelector('#phrase').scrollHeight <= document.querySelector('#phrase').clientHeight + 1"))
                    .as("all of it is seen")
                    .isTrue();
            assertThat(visit.page().locator("#phrase").boundingBox().height).isGreaterThan(50);
            assertThat(visit.number("document.documentElement.scrollWidth"))
                    .isLessThanOrEqualTo(400);
        }
    }

    @Test
    void aWordOfTheListMovesAndIsPutIntoThatHand() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra, split time");
            visit.page().locator("deferent-stage canvas").focus();
            visit.page().keyboard().press("w");
            visit.until("document.querySelectorAll('.words-all canvas').length > 30");
            visit.page().locator("#words-find").fill("pentagram");
            visit.page().locator(".words-side input[value=right]").check();
            visit.page()
                    .locator(
                            ".word-put",
                            new com.microsoft.playwright.Page.LocatorOptions()
                                    .setHasText("pentagram"))
                    .click();
            visit.until(
                    "deferentDesk.session.answer?.phrase === 'isolation vs pentagram, split time'");
            assertThat(visit.is("document.activeElement.id === 'phrase'")).isTrue();
            visit.page().keyboard().press("Enter");
            visit.settled();
        }
    }
}
