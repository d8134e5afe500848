package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.options.ReducedMotion;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What could come next, the ways over, and one of them on the stage. */
class NextPageTest extends InChromium {
    private static final String FROM = "extension vs extension, tether 40 cm";
    private static final String TO = "extension vs static spin, tether 40 cm";

    private static void lookFor(Visit visit, String phrase) {
        visit.page().locator("#tab-next").click();
        visit.page().locator("#next-phrase").fill(phrase);
        visit.page().locator("#next-phrase").press("Enter");
        visit.until("deferentDesk.transitions.answer && !deferentDesk.transitions.asking");
    }

    @Test
    void theFirstRowComesSoonEachSaysHowHardItIsAndTheSearchStopsWhenAsked() {
        try (Visit visit = visit()) {
            visit.say(FROM);
            visit.settled();
            long begun = System.nanoTime();
            visit.page().locator("#tab-next").click();
            visit.until("document.querySelector('.next-one')");
            long first = (System.nanoTime() - begun) / 1_000_000;
            System.out.printf("next: first row after %d ms%n", first);
            assertThat(first).as("ms to the first row").isLessThan(4000);
            assertThat(visit.text("document.querySelector('.next-one').textContent"))
                    .containsPattern("hand|hands")
                    .containsPattern("easy|with practice");
            assertThat(visit.is("document.querySelector('.next-one .way-grade svg')")).isTrue();
            assertThat(visit.is("deferentDesk.transitions.finding")).isTrue();
            visit.until("document.querySelectorAll('.next-one').length > 2");
            visit.page().locator(".next-state button").click();
            visit.until("!deferentDesk.transitions.finding");
            assertThat(visit.text("document.querySelector('.next-state').textContent"))
                    .contains("Stopped after", "Look on");
            double rows = visit.number("document.querySelectorAll('.next-one').length");
            assertThat(rows).isGreaterThan(2);
            assertThat(
                            visit.is(
                                    "[...deferentDesk.transitions.next.values()].every((one, i, all) =>"
                                            + " !i || one.hardness >= all[i - 1].hardness)"))
                    .as("easiest first")
                    .isTrue();
        }
    }

    @Test
    void aRowIsPlayedTheStageGoesOnWithTheSecondAndEscapeLeadsBack() {
        for (String after : List.of("", "?stage=2d")) {
            try (Visit visit = visit(screen(1280, 800), after)) {
                visit.say(FROM);
                visit.page().evaluate("() => deferentDesk.clock.play(false)");
                visit.page().evaluate("() => deferentDesk.clock.seek(0.3)");
                lookFor(visit, TO);
                visit.until("document.querySelectorAll('.way').length > 0");
                double ways = visit.number("document.querySelectorAll('.way').length");
                visit.until("document.querySelectorAll('.gate').length === " + ways);
                double share =
                        visit.number(
                                "(deferentDesk.transitions.shown[0].leaves_s /"
                                        + " deferentDesk.session.scene.period) % 1");
                assertThat(
                                visit.number(
                                        "(document.querySelector('.gate').getBoundingClientRect().x"
                                                + " + 12 - 14 -"
                                                + " document.querySelector('.strip-line').getBoundingClientRect().x)"
                                                + " / (document.querySelector('.strip-line').clientWidth - 28)"))
                        .as("the mark stands where it leaves")
                        .isCloseTo(share, within(2e-3));
                visit.page().locator(".way button").first().click();
                visit.until("deferentDesk.session.passing");
                visit.page().evaluate("() => deferentDesk.clock.play(false)");
                String said = visit.text("deferentDesk.transitions.shown[0].told.text");
                visit.until("document.querySelector('.passage-on')");
                assertThat(visit.text("document.querySelector('.passage-on').textContent"))
                        .contains("this", said);
                String count =
                        visit.text("deferentDesk.session.passing.passages[0].moments[0].count");
                visit.until(
                        "document.querySelector('.moment-label')?.textContent.includes('leaves "
                                + count
                                + "')");
                assertThat(said.toLowerCase(java.util.Locale.ROOT))
                        .as("the sentence and the mark say the same count")
                        .startsWith(count);
                visit.page()
                        .evaluate(
                                "() => { const { passages, seconds } = deferentDesk.session.passing;"
                                        + " deferentDesk.clock.seek(passages[0].from_s / seconds); }");
                visit.until("document.querySelector('.moment-head.lit')");
                visit.page()
                        .evaluate(
                                "() => { deferentDesk.clock.seek(0.99); deferentDesk.act('play'); }");
                visit.until("deferentDesk.session.passing?.led");
                assertThat(visit.is("deferentDesk.clock.playing && !deferentDesk.clock.once"))
                        .as("the second pattern goes round and round")
                        .isTrue();
                visit.page().locator(".way [data-as=png]").click();
                visit.until("document.querySelector('.way-file a')");
                assertThat(visit.text("document.querySelector('.way-file a').download"))
                        .contains("into")
                        .endsWith(".png");
                visit.page().evaluate("() => document.activeElement.blur()");
                visit.page().keyboard().press("Escape");
                visit.until("!deferentDesk.session.aside");
                assertThat(visit.number("deferentDesk.clock.phase")).isCloseTo(0.3, within(1e-9));
                visit.page().locator(".way button").first().click();
                visit.until("document.querySelector('.go-on')");
                visit.page().locator(".go-on").click();
                visit.until(
                        "deferentDesk.session.answer.phrase?.startsWith('extension vs static spin')");
                visit.settled();
            }
        }
    }

    @Test
    void whereTheTethersDifferTheReasonIsSaidAndTheSameTethersAreOnePressAway() {
        try (Visit visit = visit(screen(400, 860).setReducedMotion(ReducedMotion.REDUCE), "")) {
            visit.say(FROM);
            lookFor(visit, "extension vs static spin, tether 35 cm");
            visit.until(
                    "document.querySelector('.ways-told')?.textContent.includes('tethers differ')");
            assertThat(visit.page().locator(".way").count()).isZero();
            visit.until("document.querySelector('.mend')");
            assertThat(visit.text("document.querySelector('.mend').textContent"))
                    .contains("same tethers");
            visit.page().locator(".mend").click();
            visit.until("document.querySelectorAll('.way').length > 0");
            visit.page().locator(".way button").first().click();
            visit.until("deferentDesk.session.passing");
            assertThat(visit.is("deferentDesk.clock.playing"))
                    .as("who asks for less motion scrubs through it")
                    .isFalse();
            assertThat(visit.number("document.documentElement.scrollWidth"))
                    .isLessThanOrEqualTo(400);
        }
    }

    @Test
    void whereNothingLeadsOnItIsSaidWhy() {
        try (Visit visit = visit()) {
            // No arm reaches that far.
            visit.say("extension vs extension, tether 60 cm");
            visit.page().locator("#tab-next").click();
            visit.until("document.querySelector('.next-none')");
            assertThat(visit.text("document.querySelector('.next-none').textContent"))
                    .contains(
                            "Nothing leads on from here",
                            "the arms do not reach this one",
                            "Left out");
        }
    }

    @Test
    void aPatternOfTheShelfCanBeChosen() {
        try (Visit visit = visit()) {
            visit.say(TO);
            visit.page().locator("#tab-shelf").click();
            visit.page().locator("#save-name").fill("One stands");
            visit.page().locator("#save-name").press("Enter");
            visit.until("document.querySelector('.card b')?.textContent === 'One stands'");
            visit.say(FROM);
            visit.page().locator("#tab-next").click();
            visit.page().locator("#next-shelf").selectOption("one-stands");
            visit.until("document.querySelectorAll('.way').length > 0");
            assertThat(visit.text("deferentDesk.transitions.name")).isEqualTo("One stands");
        }
    }
}
