package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.options.ReducedMotion;
import java.util.List;
import org.junit.jupiter.api.Test;

/** From where the stage is looked at, and that nothing is drawn while nothing moves. */
class ViewPageTest extends InChromium {
    private static final String VIEW = "deferentStage.camera.view";

    /**
     * Where a point of the frame is seen, from the middle of the stage, right and down positive.
     */
    private static List<?> from(Visit visit, double x, double y, double z) {
        return (List<?>)
                visit.page()
                        .evaluate(
                                "p => { const o = [0, 0, 0], q = [0, 0, 0], c ="
                                        + " deferentStage.camera; c.project(...c.target, q);"
                                        + " c.project(c.target[0] + p[0], c.target[1] + p[1],"
                                        + " c.target[2] + p[2], o); return [o[0] - q[0], o[1] -"
                                        + " q[1]]; }",
                                List.of(x, y, z));
    }

    private static double right(Visit visit, double x, double y, double z) {
        return ((Number) from(visit, x, y, z).get(0)).doubleValue();
    }

    private static double down(Visit visit, double x, double y, double z) {
        return ((Number) from(visit, x, y, z).get(1)).doubleValue();
    }

    @Test
    void oneKeyGoesThroughTheViewsAndBackAgain() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().locator("deferent-stage canvas").focus();
            for (String view : List.of("eyes", "mirror", "above", "side", "audience")) {
                visit.page().keyboard().press("v");
                assertThat(visit.text(VIEW)).isEqualTo(view);
            }
            visit.page().keyboard().press("Shift+V");
            assertThat(visit.text(VIEW)).isEqualTo("side");
            visit.tools();
            visit.page().locator("stage-tools label:has-text('Mirror')").click();
            assertThat(visit.text(VIEW)).isEqualTo("mirror");
        }
    }

    @Test
    void eachViewStandsWhereItSays() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().evaluate("deferentStage.see('audience')");
            assertThat(right(visit, 0.3, 0, 0)).as("performer's left").isPositive();
            visit.page().evaluate("deferentStage.see('mirror')");
            assertThat(right(visit, 0.3, 0, 0)).isNegative();
            visit.page().evaluate("deferentStage.see('above')");
            assertThat(down(visit, 0, 0, 0.3)).as("the audience is below").isPositive();
            assertThat(right(visit, 0.3, 0, 0)).isPositive();
            visit.page().evaluate("deferentStage.see('side')");
            assertThat(Math.abs(right(visit, 0, 0, 0.3))).isGreaterThan(20);
            assertThat(right(visit, 0.3, 0, 0)).isCloseTo(0, within(1e-6));
            visit.page().evaluate("deferentStage.see('eyes')");
            assertThat(visit.number("deferentStage.camera.eye[1]"))
                    .as("eye over breastbone, of one 1.70 m tall")
                    .isBetween(0.2, 0.4);
            assertThat(visit.number("deferentStage.camera.eye[0]")).isCloseTo(0, within(1e-9));
            assertThat(visit.number("deferentStage.camera.ahead[2]"))
                    .as("toward the audience")
                    .isGreaterThan(0.9);
            assertThat(visit.is("deferentStage.show.body")).isFalse();
        }
    }

    @Test
    void levelPlanesOpenFromAboveAndWheelPlanesFromTheSide() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.say("static spin vs triquetra, floor plane");
            assertThat(visit.text(VIEW)).isEqualTo("above");
            visit.say("static spin vs triquetra, wheel plane");
            assertThat(visit.text(VIEW)).isEqualTo("side");
            visit.say("static spin vs triquetra");
            assertThat(visit.text(VIEW)).isEqualTo("audience");
            visit.page().evaluate("deferentStage.see('mirror')");
            visit.say("isolation vs triquetra");
            assertThat(visit.text(VIEW)).as("a chosen view stays").isEqualTo("mirror");
        }
        try (Visit visit =
                visit(
                        screen(1280, 800).setReducedMotion(ReducedMotion.REDUCE),
                        "#phrase=isolation+vs+isolation,+floor+plane")) {
            visit.settled();
            assertThat(visit.text(VIEW)).isEqualTo("above");
        }
    }

    @Test
    void theViewGlidesOverAndUnderReducedMotionItIsThereAtOnce() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().evaluate("deferentStage.see('above')");
            assertThat(visit.number("deferentStage.camera.eye[1]")).isGreaterThan(2);
        }
        try (Visit visit = movingVisit()) {
            visit.settled();
            // Asked within one turn of the page, so that a busy machine has not glided on
            // meanwhile.
            assertThat(visit.number("(deferentStage.see('above'), deferentStage.camera.eye[1])"))
                    .isLessThan(1.5);
            visit.until("!deferentStage.look.gliding");
            assertThat(visit.number("deferentStage.camera.eye[1]")).isGreaterThan(2);
            assertThat(visit.number("deferentStage.camera.from[1]"))
                    .isCloseTo(Math.PI / 2, within(1e-9));
        }
    }

    @Test
    void oneFingerNeverTurnsTheViewAndTwoDo() {
        try (Visit visit =
                visit(
                        screen(400, 860)
                                .setHasTouch(true)
                                .setIsMobile(true)
                                .setReducedMotion(ReducedMotion.REDUCE),
                        "")) {
            visit.settled();
            Fingers fingers = new Fingers(visit.page());
            String before = visit.text("JSON.stringify(deferentStage.camera.stand)");
            String pattern = visit.text("JSON.stringify(deferentDesk.session.pattern)");
            // Over the middle of the figure, where nearly everything could be had.
            for (int row = 0; row < 4; row++) {
                fingers.press(120, 250 + 60 * row);
                for (int i = 1; i <= 6; i++) {
                    fingers.move(120 + 25 * i, 250 + 60 * row + 3 * i);
                }
                fingers.lift();
                visit.until("!deferentStage.asked || true");
                visit.page().evaluate("clearTimeout(deferentStage.resting)");
                visit.page().evaluate("deferentStage.rest()");
            }
            visit.settled();
            assertThat(visit.text("JSON.stringify(deferentStage.camera.stand)")).isEqualTo(before);
            assertThat(visit.text("JSON.stringify(deferentDesk.session.pattern)"))
                    .isEqualTo(pattern);
            fingers.press(150, 400, 250, 400);
            for (int i = 1; i <= 6; i++) {
                fingers.move(150 + 10 * i, 400, 250 + 10 * i, 400);
            }
            fingers.lift();
            assertThat(Math.abs(visit.number("deferentStage.camera.turn"))).isGreaterThan(0.1);
        }
    }

    @Test
    void nothingIsDrawnWhileNothingMoves() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().mouse().move(640, 400);
            visit.page().mouse().move(650, 400);
            visit.until("!deferentStage.asked");
            double frames = visit.rests("deferentStage.frames");
            visit.page().waitForTimeout(1200);
            assertThat(visit.number("deferentStage.frames")).isEqualTo(frames);
            visit.page().evaluate("deferentDesk.clock.play(true)");
            visit.until("deferentStage.frames > " + (frames + 5));
        }
    }

    @Test
    void nothingIsDrawnInATabThatIsHidden() {
        try (Visit visit = movingVisit()) {
            visit.settled();
            visit.until("deferentDesk.clock.playing");
            // A browser without a screen hides no tab, so the page is told that it is hidden.
            visit.page()
                    .evaluate(
                            "() => { Object.defineProperty(document, 'hidden', { value: true,"
                                    + " configurable: true }); document.dispatchEvent(new"
                                    + " Event('visibilitychange')); }");
            double frames = visit.rests("deferentStage.frames");
            visit.page()
                    .evaluate(
                            "() => { delete document.hidden; document.dispatchEvent(new"
                                    + " Event('visibilitychange')); }");
            visit.until("deferentStage.frames > " + (frames + 5));
        }
    }
}
