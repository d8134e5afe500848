package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PhrasePageTest extends InChromium {
    @Test
    void aTypedPhraseIsSeenAndRead() {
        try (Visit visit = visit()) {
            visit.numbers();
            visit.say("static spin vs triquetra");
            assertThat(visit.text("deferentDesk.session.answer.phrase"))
                    .isEqualTo("static spin vs triquetra");
            assertThat(visit.size("right.hand_radius_m")).isEqualTo(0.6);
            assertThat(visit.page().locator(".begin li").allInnerTexts()).isNotEmpty();
            assertThat(visit.page().locator(".numbers td").first().innerText()).isNotNull();
            visit.hands();
            assertThat(visit.page().locator(".link-label").innerText()).isEqualTo("0\u202fcm");
        }
    }

    @Test
    void aWrongWordIsUnderlinedAndTheNearestWordsCanBePressed() {
        try (Visit visit = visit()) {
            visit.page().locator("#phrase").click();
            visit.page().locator("#phrase").fill("isolation vs triqetra");
            visit.until("document.querySelector('.phrase-echo mark')");
            assertThat(visit.page().locator(".phrase-echo mark").innerText()).isEqualTo("triqetra");
            assertThat(visit.page().locator("#phrase").getAttribute("aria-invalid"))
                    .isEqualTo("true");
            assertThat(visit.text("deferentDesk.session.answer.phrase"))
                    .as("what stood goes on standing")
                    .isEqualTo("isolation vs four-petal antispin");
            visit.page()
                    .locator(
                            ".near",
                            new com.microsoft.playwright.Page.LocatorOptions()
                                    .setHasText("triquetra"))
                    .first()
                    .click();
            visit.until("deferentDesk.session.answer.phrase === 'isolation vs triquetra'");
            visit.settled();
            assertThat(visit.page().locator("#phrase").inputValue())
                    .isEqualTo("isolation vs triquetra");
            assertThat(visit.page().locator(".phrase-echo mark").count()).isZero();
        }
    }

    @Test
    void anErrorMovesNothingElseOnThePage() {
        try (Visit visit = visit()) {
            double before = visit.page().locator("deferent-stage").boundingBox().y;
            visit.page().locator("#phrase").fill("isolation vs nothing of the kind");
            visit.until("document.querySelector('.phrase-echo mark')");
            assertThat(visit.page().locator("deferent-stage").boundingBox().y).isEqualTo(before);
        }
    }

    @Test
    void everyChangeCanBeUndoneAndDoneAgain() {
        try (Visit visit = visit()) {
            visit.say("static spin vs triquetra");
            visit.page().locator("deferent-stage canvas").focus();
            visit.page().keyboard().press("s");
            visit.until("deferentDesk.session.size('left.hand_radius_m')?.value === 0.6");
            visit.page().keyboard().press("t");
            visit.until("deferentDesk.session.size('timing_cycles').value === 0.25");
            visit.page().keyboard().press("Control+z");
            visit.until("deferentDesk.session.size('timing_cycles').value === 0");
            visit.page().keyboard().press("Control+z");
            visit.until("deferentDesk.session.size('right.hand_radius_m')?.value === 0.6");
            assertThat(visit.page().locator("#phrase").inputValue())
                    .isEqualTo("static spin vs triquetra");
            visit.page().keyboard().press("Control+Shift+z");
            visit.page().keyboard().press("Control+Shift+z");
            visit.until("deferentDesk.session.size('timing_cycles').value === 0.25");
            visit.settled();
        }
    }

    @Test
    void swapReverseTimingAndDirectionAreOneKeyEach() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            visit.page().locator("deferent-stage canvas").focus();
            visit.page().keyboard().press("d");
            visit.until("deferentDesk.session.pattern.pairing.direction === 'opposite'");
            visit.page().keyboard().press("t");
            visit.page().keyboard().press("t");
            visit.until("deferentDesk.session.size('timing_cycles').value === 0.5");
            visit.page().keyboard().press("r");
            visit.until("deferentDesk.session.pattern.pairing.sense === 'counter-clockwise'");
            visit.page().keyboard().press("s");
            visit.until("deferentDesk.session.size('left.hand_radius_m').value === 0.6");
            visit.settled();
            assertThat(visit.number("deferentDesk.session.past.length")).isGreaterThanOrEqualTo(5);
        }
    }

    @Test
    void fitClosesTheLinkAndUndoBringsTheOldSizesBack() {
        try (Visit visit = visit()) {
            visit.say("static spin vs triquetra, right hand radius 54cm");
            double open = visit.number("Math.max(...deferentDesk.session.answer.strip.gap_m)");
            assertThat(open).isGreaterThan(0.05);
            visit.page().locator(".verb.fit").click();
            visit.until("document.querySelector('.fit-answer')");
            visit.settled();
            assertThat(visit.number("Math.max(...deferentDesk.session.answer.strip.gap_m)"))
                    .isLessThan(0.001);
            assertThat(visit.page().locator(".fit-answer :checked").count()).isEqualTo(1);
            visit.page().locator("deferent-stage canvas").focus();
            visit.page().keyboard().press("Control+z");
            visit.until("deferentDesk.session.size('right.hand_radius_m').value === 0.54");
            visit.settled();
        }
    }

    @Test
    void fittedToTheArmsItLinksAndIsReachedAndUndoBringsTheOldTethersBack() {
        try (Visit visit = visit()) {
            visit.say("four-petal antispin vs static spin");
            assertThat(visit.page().locator("reading-list").innerText()).contains("beyond the arm");
            visit.page().locator(".verb.arms").click();
            visit.until("document.querySelector('.arms-told[data-reached=true]')");
            visit.settled();
            assertThat(visit.size("right.tether_m")).isBetween(0.30, 0.59);
            assertThat(visit.size("left.hand_radius_m")).isEqualTo(visit.size("right.tether_m"));
            assertThat(visit.number("Math.max(...deferentDesk.session.answer.strip.gap_m)"))
                    .isLessThan(0.001);
            assertThat(visit.page().locator("reading-list").innerText())
                    .contains("both arms reach it")
                    .doesNotContain("beyond the arm");
            visit.page().locator("deferent-stage canvas").focus();
            visit.page().keyboard().press("Control+z");
            visit.until("deferentDesk.session.size('right.tether_m').value === 0.6");
            visit.settled();
            assertThat(visit.page().locator(".arms-told").count()).isZero();
        }
    }

    @Test
    void thePatternIsInTheAddressAndComesBackOnReload() {
        try (Visit visit = visit()) {
            visit.say("static spin vs triquetra");
            visit.until("location.hash.includes('static+spin+vs+triquetra')");
            visit.page().reload();
            visit.until("document.body?.classList.contains('ready')");
            visit.settled();
            assertThat(visit.page().locator("#phrase").inputValue())
                    .isEqualTo("static spin vs triquetra");
        }
    }

    @Test
    void aPatternThatNoPhraseSaysTravelsInTheAddressWhole() {
        try (Visit visit = visit()) {
            visit.settled();
            Object back =
                    visit.page()
                            .evaluate(
                                    """
                                    async () => {
                                      const address = await import(document.baseURI + 'state/address.js');
                                      const { answer } = deferentDesk.session;
                                      const written = await address.written({ ...answer, phrase: null });
                                      const read = await address.read('#' + written);
                                      return written.length < 1200
                                        && JSON.stringify(read.pattern) === JSON.stringify(answer.pattern);
                                    }
                                    """);
            assertThat(back).isEqualTo(true);
        }
    }

    @Test
    void anAddressThatHoldsNoPatternIsSaidSoAndAnotherPatternShown() {
        try (Visit visit = visit(screen(1280, 800), "#pattern=thisisnopattern")) {
            visit.settled();
            assertThat(visit.text("deferentDesk.session.answer.phrase"))
                    .isEqualTo("isolation vs four-petal antispin");
            visit.until(
                    "document.querySelector('page-notices').last?.includes('no pattern that can be"
                            + " read')");
        }
    }

    @Test
    void theWordsOfAPhraseCanBeLookedUp() {
        try (Visit visit = visit()) {
            visit.page().locator("deferent-stage canvas").focus();
            visit.page().keyboard().press("w");
            visit.until("document.querySelectorAll('.words-all dt').length > 10");
            visit.page().locator("#words-find").fill("triquetra");
            assertThat(visit.page().locator(".words-all dt").first().innerText())
                    .isEqualTo("triquetra");
        }
    }

    @Test
    void anAddressWithAWrongPhraseTellsTheErrorOverAStageThatIsNotEmpty() {
        try (Visit visit = visit(screen(1280, 800), "#phrase=isolation+vs+triqetra")) {
            visit.until("document.querySelector('.phrase-echo mark')");
            assertThat(visit.page().locator("#phrase").inputValue())
                    .isEqualTo("isolation vs triqetra");
            assertThat(visit.text("deferentDesk.session.answer.phrase"))
                    .isEqualTo("isolation vs four-petal antispin");
        }
    }
}
