package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Whoever spins, and the tethers they have. */
class YouPageTest extends InChromium {
    @Test
    void fitToMyArmsTakesTheLongestTetherOneHasThatWillDoAndItIsKeptOverAReload() {
        try (Visit visit = visit()) {
            visit.say("static spin vs triquetra");
            visit.settled();
            visit.page().keyboard().press("Escape");
            visit.page().evaluate("() => deferentDesk.side.show('sizes')");
            visit.page().locator("#owned").fill("35, 40 55");
            visit.page().locator("#owned").blur();
            visit.page().evaluate("() => deferentDesk.act('arms')");
            visit.until("deferentDesk.session.answer.phrase.includes('tether 40 cm')");
            visit.page().evaluate("() => deferentDesk.side.show('sizes')");
            visit.page().locator("#owned").fill("forty");
            visit.page().locator("#owned").blur();
            assertThat(visit.page().locator(".notice").allInnerTexts().toString())
                    .contains("40, 50, 60");
            visit.page().locator("#arm").fill("70");
            visit.page().locator("#arm").blur();
            visit.until("deferentDesk.session.pattern.performer?.arm_m === 0.7");
            visit.page().reload();
            visit.until("window.deferentDesk?.session?.answer");
            assertThat(visit.text("deferentDesk.session.you.owned_m.join()"))
                    .isEqualTo("0.35,0.4,0.55");
            assertThat(visit.number("deferentDesk.session.you.performer.arm_m")).isEqualTo(0.7);
        }
    }
}
