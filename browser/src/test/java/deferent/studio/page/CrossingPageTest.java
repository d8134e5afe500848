package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.options.ReducedMotion;
import org.junit.jupiter.api.Test;

/** What could come next: moments on the strip, passages on the stage. */
class CrossingPageTest extends InChromium {
    private static final String FROM = "four-petal antispin vs four-petal antispin";
    private static final String TO = "triquetra vs triquetra";

    private static void lookFor(Visit visit, String phrase) {
        visit.page().locator("#tab-crossings").click();
        visit.page().locator("#crossing-phrase").fill(phrase);
        visit.page().locator("#crossing-phrase").press("Enter");
        visit.until("deferentDesk.crossings.answer && !deferentDesk.crossings.asking");
    }

    @Test
    void momentsAreMarkedOnTheStripAndThePassagePlaysUntilEscape() {
        for (String after : java.util.List.of("", "?stage=2d")) {
            try (Visit visit = visit(screen(1280, 800), after)) {
                visit.say(FROM);
                visit.page().evaluate("() => deferentDesk.clock.play(false)");
                visit.page().evaluate("() => deferentDesk.clock.seek(0.3)");
                lookFor(visit, TO);
                visit.until("document.querySelectorAll('.gate').length > 0");
                double marks = visit.number("document.querySelectorAll('.gate').length");
                visit.until("document.querySelectorAll('.moment').length === " + marks);
                assertThat(visit.text("document.querySelector('.moment').textContent"))
                        .contains("together, same direction")
                        .contains("times the head's weight");
                double share = visit.number("deferentDesk.crossings.shown[0].from_cycles");
                assertThat(
                                visit.number(
                                        "(document.querySelector('.gate').getBoundingClientRect().x"
                                                + " + 12 - 14 -"
                                                + " document.querySelector('.strip-line').getBoundingClientRect().x)"
                                                + " / (document.querySelector('.strip-line').clientWidth - 28)"))
                        .as("the mark stands at its moment")
                        .isCloseTo(share, within(2e-3));
                visit.page().locator(".gate").first().click();
                visit.until("deferentDesk.session.passing");
                visit.page().evaluate("() => deferentDesk.clock.play(false)");
                assertThat(visit.text("document.querySelector('.happened').textContent"))
                        .contains("triquetra");
                // The page draws itself anew a moment after its state has changed.
                visit.until("document.querySelectorAll('.gate').length === 0");
                assertThat(visit.page().locator(".handles").isVisible()).isFalse();
                visit.page().evaluate("() => document.activeElement.blur()");
                visit.page().keyboard().press("Escape");
                visit.until("!deferentDesk.session.aside");
                assertThat(visit.number("deferentDesk.clock.phase")).isCloseTo(0.3, within(1e-9));
                visit.until("document.querySelectorAll('.gate').length === " + marks);
                visit.page().locator(".moment button").first().click();
                visit.until("deferentDesk.session.passing");
                visit.page().locator(".go-on").click();
                visit.until("deferentDesk.session.answer.phrase?.startsWith('triquetra')");
                visit.settled();
            }
        }
    }

    @Test
    void momentsFollowThePatternAndWhatCountsAsOne() {
        try (Visit visit = visit()) {
            visit.say(FROM);
            lookFor(visit, TO);
            visit.page().locator("#crossing-near").selectOption("0");
            visit.until("document.querySelectorAll('.gate').length === 0");
            visit.until(
                    "document.querySelector('.crossing-told')?.textContent.includes('nearest')");
            visit.say(TO);
            visit.until("document.querySelectorAll('.gate').length > 0");
            assertThat(visit.text("document.querySelector('.moment').textContent"))
                    .contains("no extra pull");
        }
    }

    @Test
    void aPatternOfTheShelfCanBeChosenAndOthersAreTimedAnewWhereThatIsAllowed() {
        try (Visit visit = visit(screen(400, 800).setReducedMotion(ReducedMotion.REDUCE), "")) {
            visit.say("extension vs extension");
            visit.page().locator("#tab-shelf").click();
            visit.page().locator("#save-name").fill("Long arms");
            visit.page().locator("#save-name").press("Enter");
            visit.until("document.querySelector('.card b')?.textContent === 'Long arms'");
            visit.say("extension vs extension, split time");
            visit.page().locator("#tab-crossings").click();
            visit.page().locator("#crossing-near").selectOption("0");
            visit.page().locator("#crossing-shelf").selectOption("long-arms");
            visit.until("document.querySelector('.crossing-told')?.textContent.includes('cannot')");
            visit.page().locator(".crossing-how summary").click();
            visit.page().locator("[data-free=timing]").check();
            visit.until("document.querySelectorAll('.moment').length > 0");
            visit.page().locator(".moment button").first().click();
            visit.until("deferentDesk.session.passing");
            assertThat(visit.is("deferentDesk.clock.playing"))
                    .as("who asks for less motion scrubs through it")
                    .isFalse();
            assertThat(visit.number("document.documentElement.scrollWidth"))
                    .isLessThanOrEqualTo(400);
        }
    }
}
