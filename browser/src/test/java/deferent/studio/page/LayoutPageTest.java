package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.ReducedMotion;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The moving figure is the page: how much of it is seen, and that nothing lies in its way. */
class LayoutPageTest extends InChromium {
    private static final List<String> PHRASES =
            List.of(
                    "isolation vs isolation, split time",
                    "static spin vs triquetra",
                    "isolation vs four-petal antispin, tether 40 cm",
                    "extension vs extension, opposites",
                    "CAP riding pendulum");

    /** Width and height of what the heads and hands draw, pixels, wherever it was drawn. */
    private static final String DRAWN =
            """
            (() => {
              const { least, most } = deferentDesk.session.scene.box();
              const spot = [0, 0, 0];
              const xs = [], ys = [];
              for (const track of ['left.hand', 'left.head', 'right.hand', 'right.head']) {
                const xyz = deferentDesk.session.scene.tracks[track];
                for (let i = 0; i < xyz.length; i += 3) {
                  deferentStage.camera.project(xyz[i], xyz[i + 1], xyz[i + 2], spot);
                  xs.push(spot[0]);
                  ys.push(spot[1]);
                }
              }
              return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
            })()""";

    /** The share of a grid of points over the page at which nothing lies over the stage. */
    private static final String FREE =
            """
            (() => {
              let free = 0, all = 0;
              for (let x = 5; x < innerWidth; x += 10) {
                for (let y = 5; y < innerHeight; y += 10) {
                  all++;
                  for (const e of document.elementsFromPoint(x, y)) {
                    if (e.matches('canvas.stage-canvas')) { free++; break; }
                    const paper = getComputedStyle(e).backgroundColor;
                    if (!/rgba\\(0, 0, 0, 0\\)|transparent/.test(paper)) break;
                  }
                }
              }
              return free / all;
            })()""";

    private static Browser.NewContextOptions still(int width, int height) {
        return screen(width, height).setReducedMotion(ReducedMotion.REDUCE);
    }

    private static double[] drawn(Visit visit) {
        List<?> box = (List<?>) visit.page().evaluate("() => " + DRAWN);
        return box.stream().mapToDouble(v -> ((Number) v).doubleValue()).toArray();
    }

    private static void free(double[] box, BoundingBox what, String as) {
        boolean apart =
                box[2] <= what.x
                        || box[0] >= what.x + what.width
                        || box[3] <= what.y
                        || box[1] >= what.y + what.height;
        assertThat(apart).as(as).isTrue();
    }

    @Test
    void theStageShowsThroughThePageAndTheFigureFillsIt() {
        for (int[] size : new int[][] {{1280, 800}, {1920, 1080}}) {
            try (Visit visit = visit(still(size[0], size[1]), "")) {
                visit.settled();
                assertThat(visit.number(FREE)).as("at %d", size[0]).isGreaterThan(0.7);
                for (String phrase : PHRASES) {
                    visit.say(phrase);
                    double[] box = drawn(visit);
                    double longer = Math.max(box[2] - box[0], box[3] - box[1]);
                    assertThat(longer)
                            .as("%s at %d", phrase, size[0])
                            .isGreaterThan(0.7 * Math.min(size[0], size[1]));
                    free(box, visit.page().locator(".phrase").boundingBox(), phrase);
                    free(box, visit.page().locator("transport-bar").boundingBox(), phrase);
                }
            }
        }
    }

    @Test
    void anOpenDrawerMovesTheFigureAsideAndAShutOneGivesTheRoomBack() {
        try (Visit visit = visit(still(1280, 800), "")) {
            visit.settled();
            double[] shut = drawn(visit);
            assertThat((shut[0] + shut[2]) / 2).isCloseTo(640, within(2.0));
            visit.page().keyboard().press("1");
            visit.until("document.querySelector('side-panel.open')");
            visit.frames(3);
            double[] open = drawn(visit);
            BoundingBox drawer = visit.page().locator("side-panel").boundingBox();
            assertThat(open[2]).isLessThan(drawer.x);
            assertThat((open[0] + open[2]) / 2).isCloseTo(drawer.x / 2, within(2.0));
            visit.page().reload();
            visit.until("document.querySelector('side-panel.open') && deferentDesk.session.answer");
            visit.settled();
            visit.page().locator(".drawer-shut").click();
            visit.until("!document.querySelector('side-panel.open')");
            visit.frames(3);
            assertThat(drawn(visit)).containsExactly(shut, within(1.0));
        }
    }

    @Test
    void onAPhoneTheStageKeepsHalfThePageWhateverIsPulledUp() {
        for (int height : new int[] {640, 860}) {
            try (Visit visit = visit(still(400, height), "")) {
                visit.settled();
                for (String tab : List.of("reading", "sizes", "shelf")) {
                    visit.page().locator("#tab-" + tab).click();
                    visit.until("document.querySelector('side-panel.open')");
                    visit.frames(3);
                    BoundingBox stage = visit.page().locator(".seen").boundingBox();
                    BoundingBox sheet = visit.page().locator("side-panel").boundingBox();
                    assertThat(Math.min(stage.y + stage.height, sheet.y))
                            .as(tab)
                            .isGreaterThan(0.5 * height);
                    double[] box = drawn(visit);
                    assertThat(box[3]).as(tab).isLessThan(sheet.y);
                    assertThat(box[0]).as(tab).isGreaterThanOrEqualTo(0);
                    assertThat(box[2]).as(tab).isLessThanOrEqualTo(400);
                }
            }
        }
    }

    @Test
    void handsAndHandlesComeWithThePointerAndGoAgain() {
        try (Visit visit = visit()) {
            visit.settled();
            String handles = "Number(getComputedStyle(document.querySelector('.handle')).opacity)";
            visit.until("document.activeElement === document.body || true");
            visit.until(handles + " === 0");
            assertThat(visit.number("deferentStage.picture.strokes")).isZero();
            visit.page().mouse().move(640, 400);
            visit.page().mouse().move(650, 410);
            visit.until(handles + " === 1");
            assertThat(visit.number("deferentStage.picture.strokes")).isGreaterThan(1);
            visit.until(handles + " === 0");
            visit.page().keyboard().press("l");
            visit.until(handles + " === 1");
            assertThat(visit.is("deferentStage.always")).isTrue();
        }
    }

    @Test
    void theLabelOnTheStageSaysWhatTheStripSaysAtEveryMoment() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.hands();
            for (String phrase : PHRASES) {
                visit.say(phrase);
                for (double phase : new double[] {0, 0.21, 0.5, 0.83}) {
                    visit.page()
                            .evaluate(
                                    "phase => { deferentDesk.clock.play(false);"
                                            + " deferentDesk.clock.seek(phase); }",
                                    phase);
                    String said =
                            visit.text(
                                    "document.querySelector('.strip-scrub').ariaValueText || document.querySelector('.strip-scrub').getAttribute('aria-valuetext')");
                    String label = visit.page().locator(".link-label b").innerText();
                    assertThat(said).as(phrase).contains("apart now " + label);
                }
            }
        }
    }

    @Test
    void whileThePhraseIsWrongThePageSaysWhatItStillShowsAndEscapeBringsItBack() {
        try (Visit visit = visit()) {
            visit.say("isolation vs triquetra");
            visit.page().locator("#phrase").click();
            visit.page().locator("#phrase").fill("isolation vs triqetra");
            visit.until("document.querySelector('.phrase-echo mark')");
            assertThat(visit.page().locator(".phrase-note").innerText())
                    .contains("Still shown: isolation vs triquetra.");
            visit.until("Number(getComputedStyle(document.querySelector('.seen')).opacity) < 0.6");
            visit.page().keyboard().press("Escape");
            visit.until("document.querySelector('#phrase').value === 'isolation vs triquetra'");
            visit.until("Number(getComputedStyle(document.querySelector('.seen')).opacity) === 1");
        }
    }

    @Test
    void nothingButTheFigureIsOneKeyAwayAndOneKeyBack() {
        try (Visit visit = visit()) {
            visit.settled();
            visit.page().keyboard().press("x");
            visit.frames(3);
            assertThat(visit.page().locator("transport-bar").isVisible()).isFalse();
            assertThat(visit.page().locator("phrase-line").isVisible()).isFalse();
            double[] alone = drawn(visit);
            assertThat(alone[3] - alone[1]).isGreaterThan(0.9 * visit.number("innerHeight"));
            visit.page().keyboard().press("x");
            visit.frames(3);
            assertThat(visit.page().locator("transport-bar").isVisible()).isTrue();
        }
    }
}
