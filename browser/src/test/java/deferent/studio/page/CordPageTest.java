package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.options.ReducedMotion;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** The cord on the page: what is kept, what it pulls, and a poi that is let go. */
class CordPageTest extends InChromium {
    /** How wide the thinner of the two cords is drawn; what is wider of them is the gap beside. */
    private static final String THINNEST_CORD =
            "(({ strokes, strokeSide, strokeStyle }) => Math.min(...Array.from({ length: strokes },"
                    + " (_, i) => strokeSide[i] === 0 ? Infinity : strokeStyle[4 * i])))"
                    + "(deferentStage.picture)";

    // The ghost of what would be best comes when it is worked out, and only for the ideal.
    private static final String LINES =
            "deferentStage.drawer.ribbons.length - (deferentDesk.session.scene.best ? 1 : 0)";
    private static final String STILL =
            "() => { deferentDesk.clock.play(false); deferentDesk.clock.seek(0.1); }";

    @Test
    void theSwitchShowsWhatACordMakesOfItWithTheIdealAsAGhost() {
        for (String after : List.of("", "?stage=2d")) {
            try (Visit visit = visit(screen(1280, 800), after)) {
                visit.settled();
                visit.page().evaluate(STILL);
                visit.tools();
                visit.hands();
                assertThat(visit.number(LINES)).isPositive();
                double ribbons = visit.number(LINES);
                visit.page().locator(".keeps label", nth("Keep the figure")).click();
                visit.until("deferentDesk.session.answer.shown.asked === 'figure'");
                visit.settled();
                assertThat(visit.text("deferentDesk.session.scene.ghosts"))
                        .as("the hands are elsewhere, the heads are not")
                        .isEqualTo("left.hand,right.hand");
                assertThat(visit.number(LINES)).isEqualTo(ribbons + 2);
                assertThat(visit.page().locator(".legend .ghost").isVisible()).isTrue();
                visit.page().keyboard().press("k");
                visit.until("deferentDesk.session.answer.shown.asked === 'hand-path'");
                visit.settled();
                assertThat(visit.text("deferentDesk.session.scene.ghosts")).isEqualTo("right.head");
                assertThat(visit.page().locator("cord-told .happened").textContent())
                        .contains("left poi settles only on another motion");
                visit.page().keyboard().press("k");
                visit.until("deferentDesk.session.answer.shown.asked === 'closest'");
                visit.settled();
                visit.page().keyboard().press("k");
                visit.until("deferentDesk.session.answer.shown.asked === 'ideal'");
                visit.settled();
                assertThat(visit.number(LINES)).isEqualTo(ribbons);
                assertThat(visit.is("deferentDesk.session.past.length === 0"))
                        .as("looking changes nothing that could be undone")
                        .isTrue();
            }
        }
    }

    @Test
    void aDragFollowsWhicheverIsKept() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().evaluate(STILL);
            for (String keep : List.of("figure", "hand-path")) {
                visit.page().evaluate("keep => deferentDesk.session.keep(keep)", keep);
                visit.settled();
                double before = visit.size("right.hand_radius_m");
                visit.drag("right.circle", -30, 20);
                assertThat(visit.size("right.hand_radius_m"))
                        .as(keep)
                        .isNotCloseTo(before, within(0.02));
                assertThat(visit.text("deferentDesk.session.answer.shown.right")).isEqualTo(keep);
                assertThat(visit.number("deferentDesk.session.past.length"))
                        .as("a drag is one step")
                        .isEqualTo(keep.equals("figure") ? 1 : 2);
            }
        }
    }

    @Test
    void aPoiLetGoPlaysWhatTheCordDoesAndEscapeGoesBackToTheMoment() {
        for (String after : List.of("", "?stage=2d")) {
            try (Visit visit = visit(screen(1280, 800), after)) {
                visit.settled();
                visit.page().evaluate(STILL);
                visit.tools();
                visit.page().locator(".let-go .more").click();
                visit.page().locator("#let-slip").fill("4");
                visit.page().locator("#let-seconds").fill("2.5");
                visit.page().locator("#let-seconds").press("Enter");
                visit.page().locator(".let-go .let").click();
                visit.until("deferentDesk.session.letting");
                assertThat(visit.number("deferentDesk.session.letting.seconds")).isEqualTo(2.5);
                assertThat(visit.is("deferentDesk.clock.playing")).isTrue();
                assertThat(visit.number("deferentDesk.session.scene.count")).isEqualTo(601);
                visit.until("!deferentDesk.clock.playing");
                assertThat(visit.number("deferentDesk.clock.phase")).isCloseTo(1, within(1e-3));
                assertThat(visit.page().locator(".happened").textContent())
                        .contains("left poi let go, 4")
                        .contains("snaps taut");
                assertThat(visit.page().locator(".handles").isVisible()).isFalse();
                visit.page().evaluate("() => document.activeElement.blur()");
                visit.page().keyboard().press("Escape");
                visit.until("!deferentDesk.session.letting");
                assertThat(visit.number("deferentDesk.clock.phase")).isCloseTo(0.1, within(1e-9));
                assertThat(visit.number("deferentDesk.clock.period")).isEqualTo(1);
                visit.page().keyboard().press("g");
                visit.until("deferentDesk.session.letting");
                visit.page().keyboard().press("r");
                visit.until("!deferentDesk.session.letting");
                visit.settled();
                assertThat(visit.number("deferentDesk.session.scene.period"))
                        .as("a change of the pattern shows the pattern")
                        .isEqualTo(1);
            }
        }
    }

    @Test
    void whoeverAsksForLessMotionScrubsThroughWhatTheCordDid() {
        try (Visit visit = visit(screen(400, 800).setReducedMotion(ReducedMotion.REDUCE), "")) {
            visit.settled();
            visit.tools();
            visit.page().locator(".let-go .let").click();
            visit.until("deferentDesk.session.letting");
            assertThat(visit.is("deferentDesk.clock.playing")).isFalse();
            assertThat(visit.page().locator(".happened").textContent()).doesNotContain("slack");
            visit.page().evaluate("() => deferentDesk.clock.seek(0.99)");
            visit.until("document.querySelector('.happened').textContent.includes('taut')");
        }
    }

    @Test
    void aSlackCordIsDrawnAsABowOfDotsAndAHarderPullAsAThickerTether() {
        try (Visit visit = visit()) {
            visit.say("isolation vs four-petal antispin, tempo 40");
            visit.hands();
            visit.page().evaluate("() => deferentDesk.clock.play(false)");
            visit.page().evaluate("() => deferentDesk.clock.seek(0.3)");
            assertThat(visit.is("deferentDesk.session.scene.pullAt('left', 0.3).slack")).isFalse();
            double taut = visit.number("deferentStage.picture.strokes");
            double width = visit.number(THINNEST_CORD);
            visit.page().evaluate("() => deferentDesk.clock.seek(0.75)");
            assertThat(visit.is("deferentDesk.session.scene.pullAt('left', 0.75).slack")).isTrue();
            // Cut where other things pass before it, a cord takes more strokes than one.
            assertThat(visit.number("deferentStage.picture.strokes"))
                    .isGreaterThanOrEqualTo(taut + 8);
            visit.say("isolation vs four-petal antispin, tempo 120");
            visit.page().evaluate("() => deferentDesk.clock.seek(0.3)");
            assertThat(visit.number(THINNEST_CORD)).isGreaterThan(width * 1.3);
        }
    }

    @Test
    void anotherKitPullsOtherwiseAndStaysWithAnotherPhrase() {
        try (Visit visit = visit()) {
            visit.settled();
            double weight = visit.number("deferentDesk.session.answer.pull.right.head_weight_n");
            String weights = visit.text("deferentDesk.session.answer.pull.right.weights");
            visit.page().keyboard().press("2");
            visit.page().locator("[data-kit=head_mass_kg]").fill("240");
            visit.page().locator("[data-kit=head_mass_kg]").press("Enter");
            visit.until("deferentDesk.session.answer.pull.right.head_weight_n > " + weight * 1.99);
            visit.settled();
            visit.page().locator("#kit-air").check();
            visit.until("deferentDesk.session.pattern.kit?.air");
            visit.settled();
            assertThat(visit.text("deferentDesk.session.answer.pull.right.weights"))
                    .as("in head weights, a heavier head pulls the same but for the air")
                    .isNotEqualTo(weights);
            visit.say("static spin vs triquetra");
            assertThat(visit.number("deferentDesk.session.pattern.kit.head_mass_kg"))
                    .isEqualTo(0.24);
            visit.until("location.hash.startsWith('#pattern=')");
        }
    }

    @Test
    void slowestTemposAreMarkedOnTheScaleAndEachHandsCardBeginsWithWhatAPractisedHandDraws() {
        try (Visit visit = visit()) {
            visit.numbers();
            visit.say("static spin vs triquetra");
            visit.until("document.querySelectorAll('.tempo-scale path').length >= 3");
            assertThat(visit.text("document.querySelector('#slowest-words').textContent"))
                    .contains("Slowest tempo for the left cord");
            for (String side : List.of("Left", "Right")) {
                assertThat(
                                visit.page()
                                        .locator("reading-list [aria-label='" + side + " cord'] p")
                                        .first()
                                        .textContent())
                        .startsWith(
                                "A practised hand draws the "
                                        + side.toLowerCase(Locale.ROOT)
                                        + " figure");
            }
            assertThat(visit.page().locator("reading-list [aria-label=Figures] .told").count())
                    .as("what is kept of a figure stands on the cord's card")
                    .isEqualTo(2);
            visit.tools();
            visit.page().locator(".tempo-slide").focus();
            double before = visit.size("tempo_cycles_per_min");
            visit.page().keyboard().press("PageDown");
            visit.until("deferentDesk.session.size('tempo_cycles_per_min').value < " + before);
            visit.settled();
        }
    }

    private static com.microsoft.playwright.Page.LocatorOptions nth(String text) {
        return new com.microsoft.playwright.Page.LocatorOptions().setHasText(text);
    }
}
