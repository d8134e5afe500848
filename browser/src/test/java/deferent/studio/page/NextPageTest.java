package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** What could come next, as cards that move. */
class NextPageTest extends InChromium {
    private static final String FOUND = "!deferentDesk.crossings.finding";

    @Test
    void itOpensFullAndACardPlaysItsPassageAndLeadsOn() {
        try (Visit visit = visit()) {
            visit.say("isolation vs isolation, tether 40 cm");
            visit.page().locator("#tab-crossings").click();
            visit.until("document.querySelector('.next-one canvas')");
            visit.until(FOUND);
            visit.until("document.querySelectorAll('.next-one').length === 12");
            assertThat(visit.text("deferentDesk.crossings.next.values().next().value.who"))
                    .isIn("left", "right");
            visit.page().locator(".next-one").first().click();
            visit.until("deferentDesk.session.passing");
            visit.until("document.querySelector('.find-told .go-on')");
            visit.page().locator(".find-told .go-on").click();
            visit.until(
                    "!deferentDesk.session.aside && deferentDesk.session.answer.phrase !=="
                            + " 'isolation vs isolation, tether 40 cm'");
            visit.settled();
            visit.until("document.querySelectorAll('.next-one').length > 0 && " + FOUND);
            assertThat(visit.page().locator(".next-one.chosen").count())
                    .as("what comes after that is asked anew")
                    .isZero();
        }
    }

    @Test
    void whereThereIsNoCrossingWhatWouldMakeOneIsOnePressAway() {
        try (Visit visit = visit()) {
            visit.say("extension vs extension, tether 30 cm");
            visit.page().locator("#tab-crossings").click();
            visit.page().locator("#crossing-near").selectOption("0");
            visit.page()
                    .locator("#crossing-phrase")
                    .fill("extension vs extension, tether 30 cm, split time");
            visit.page().locator("#crossing-phrase").press("Enter");
            visit.until("document.querySelector('.mend')");
            assertThat(visit.page().locator(".moment").count()).isZero();
            visit.page().locator(".mend").last().click();
            visit.until("document.querySelectorAll('.moment').length > 0");
        }
    }
}
