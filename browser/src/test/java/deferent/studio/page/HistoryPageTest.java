package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.record.PatternDocument;
import deferent.record.Shelf;
import org.junit.jupiter.api.Test;

/** Going back, going on again, and what neither a reload nor a server that was away may lose. */
class HistoryPageTest extends InChromium {
    private static final String PHRASE = "deferentDesk.session.answer.phrase";

    private static void back(Visit visit, String phrase) {
        visit.page().evaluate("() => history.back()");
        visit.until(PHRASE + " === '" + phrase + "'");
        visit.settled();
    }

    @Test
    void backGoesToThePatternBeforeAndForwardToTheOneAfter() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            visit.say("static spin vs triquetra");
            visit.say("isolation vs four-petal antispin");
            back(visit, "static spin vs triquetra");
            back(visit, "isolation vs triquetra");
            assertThat(visit.text("document.querySelector('#phrase').value"))
                    .isEqualTo("isolation vs triquetra");
            visit.until("location.hash === '#phrase=isolation+vs+triquetra'");
            visit.page().evaluate("() => history.forward()");
            visit.until(PHRASE + " === 'static spin vs triquetra'");
            visit.settled();
            visit.page().evaluate("() => history.forward()");
            visit.until(PHRASE + " === 'isolation vs four-petal antispin'");
        }
    }

    @Test
    void aDragIsOneStepBackAndNotAHundred() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            visit.settled();
            double entries = visit.number("history.length");
            double before = visit.size("right.hand_radius_m");
            visit.hands();
            visit.drag("right.circle", 40, -40);
            assertThat(visit.size("right.hand_radius_m")).isNotEqualTo(before);
            visit.frames(3);
            assertThat(visit.number("history.length")).isEqualTo(entries + 1);
            visit.page().evaluate("() => history.back()");
            visit.until("deferentDesk.session.size('right.hand_radius_m').value === " + before);
        }
    }

    @Test
    void undoAndBackAreOneWay() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            visit.say("static spin vs triquetra");
            visit.say("isolation vs four-petal antispin");
            visit.page().locator("deferent-stage canvas").focus();
            visit.page().keyboard().press("Control+z");
            visit.until(PHRASE + " === 'static spin vs triquetra'");
            visit.settled();
            visit.until("history.state.step === deferentDesk.session.steps.stands.n");
            back(visit, "isolation vs triquetra");
            visit.page().keyboard().press("Control+Shift+z");
            visit.page().keyboard().press("Control+Shift+z");
            visit.until(PHRASE + " === 'isolation vs four-petal antispin'");
            visit.until("history.state.step === deferentDesk.session.steps.stands.n");
            back(visit, "static spin vs triquetra");
        }
    }

    @Test
    void aPhraseTypedIntoTheAddressIsAPatternToGoBackFrom() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            visit.until("location.hash === '#phrase=isolation+vs+triquetra'");
            visit.page().evaluate("() => { location.hash = '#phrase=static+spin+vs+triquetra'; }");
            visit.until(PHRASE + " === 'static spin vs triquetra'");
            visit.settled();
            back(visit, "isolation vs triquetra");
            visit.page().evaluate("() => history.forward()");
            visit.until(PHRASE + " === 'static spin vs triquetra'");
        }
    }

    @Test
    void aReloadKeepsTheStepsTheMomentTheViewAndWhatWasOpen() {
        Shelf.at(shelf)
                .saveNew(
                        PatternDocument.of(
                                "Moth",
                                Phrase.parse("isolation vs triquetra").pairing(),
                                Performer.USUAL));
        try (Visit visit = visit()) {
            visit.page().locator("#tab-shelf").click();
            visit.page().locator(".card-open").click();
            visit.until("deferentDesk.session.shelved");
            visit.settled();
            visit.say("static spin vs triquetra");
            visit.page().locator("deferent-stage canvas").focus();
            visit.page().keyboard().press("d");
            visit.until("deferentDesk.session.pattern.pairing.direction === 'opposite'");
            visit.settled();
            visit.page().keyboard().press("Control+z");
            visit.until("deferentDesk.session.pattern.pairing.direction === 'same'");
            visit.settled();
            visit.page().keyboard().press("v");
            visit.page().evaluate("() => deferentDesk.clock.seek(0.375)");
            double past = visit.number("deferentDesk.session.past.length");

            visit.page().reload();
            visit.until("document.body?.classList.contains('ready')");
            visit.settled();
            assertThat(visit.text(PHRASE)).isEqualTo("static spin vs triquetra");
            assertThat(visit.number("deferentDesk.clock.phase")).isEqualTo(0.375);
            assertThat(visit.text("deferentStage.camera.view")).isEqualTo("eyes");
            assertThat(visit.text("deferentDesk.side.tab")).isEqualTo("shelf");
            assertThat(visit.is("deferentDesk.side.open")).isTrue();
            assertThat(visit.text("deferentDesk.session.shelved.name")).isEqualTo("Moth");
            assertThat(visit.is("deferentDesk.session.unsaved")).isTrue();
            assertThat(visit.number("deferentDesk.session.past.length")).isEqualTo(past);

            visit.page().locator("deferent-stage canvas").focus();
            visit.page().keyboard().press("Control+Shift+z");
            visit.until("deferentDesk.session.pattern.pairing.direction === 'opposite'");
            visit.page().keyboard().press("Control+z");
            visit.until("deferentDesk.session.pattern.pairing.direction === 'same'");
            visit.settled();
            visit.page().keyboard().press("Control+z");
            visit.until("!deferentDesk.session.unsaved");
            assertThat(visit.is("document.querySelector('.shelf-changed')")).isFalse();
        }
    }

    @Test
    void backAfterAReloadStillGoesToThePatternBefore() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            visit.until("location.hash === '#phrase=isolation+vs+triquetra'");
            visit.say("static spin vs triquetra");
            visit.until("location.hash === '#phrase=static+spin+vs+triquetra'");
            visit.page().reload();
            visit.until("document.body?.classList.contains('ready')");
            visit.settled();
            visit.page().goBack();
            visit.until("document.body?.classList.contains('ready')");
            visit.until(PHRASE + " === 'isolation vs triquetra'");
            assertThat(visit.number("deferentDesk.session.future.length")).isEqualTo(1);
        }
    }

    @Test
    void aReloadGoesOnWhereThePageStoodThoughItsAddressWasWrittenTooLate() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            visit.until("location.hash === '#phrase=isolation+vs+triquetra'");
            visit.page().locator("#tab-shelf").click();
            // A reload takes the address that stood when it began; the page keeps a newer one.
            visit.page()
                    .evaluate(
                            "() => Object.defineProperty(deferentDesk.session.steps.stands, 'hash',"
                                    + " { get: () => '#phrase=later', set: () => {}, enumerable: true })");
            visit.page().reload();
            visit.until("document.body?.classList.contains('ready')");
            visit.settled();
            assertThat(visit.text("deferentDesk.side.tab")).isEqualTo("shelf");
            assertThat(visit.text(PHRASE)).isEqualTo("isolation vs triquetra");
        }
    }

    /** The socket is cut and every question refused, as when the program stands still. */
    private static void cut(Visit visit) {
        visit.page()
                .evaluate(
                        """
                        () => {
                          window.held = [WebSocket, fetch];
                          window.fetch = () => Promise.reject(new TypeError('nobody answers'));
                          window.WebSocket = class {
                            constructor() {
                              setTimeout(() => this.onclose(), 20);
                            }
                          };
                          deferentDesk.session.live.socket.close();
                        }
                        """);
        visit.until("deferentDesk.unanswered");
    }

    private static void mend(Visit visit) {
        visit.page().evaluate("() => { [window.WebSocket, window.fetch] = held; }");
    }

    @Test
    void whatWasSaidWhileNobodyAnsweredIsAskedAgainByItself() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            cut(visit);
            assertThat(visit.is("document.body.classList.contains('stands')")).isTrue();
            assertThat(visit.page().innerText(".notice")).contains("does not answer");
            visit.page().locator("#phrase").fill("static spin vs triquetra");
            visit.page().keyboard().press("Enter");
            visit.frames(20);
            assertThat(visit.text(PHRASE)).isEqualTo("isolation vs triquetra");
            mend(visit);
            visit.until(PHRASE + " === 'static spin vs triquetra'");
            visit.settled();
            assertThat(visit.is("document.body.classList.contains('stands')")).isFalse();
            assertThat(visit.is("document.querySelector('.notice')")).isFalse();
        }
    }
}
