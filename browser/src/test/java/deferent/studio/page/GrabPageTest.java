package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.options.ReducedMotion;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is seen on the stage can be taken hold of, and says before it moves what would. */
class GrabPageTest extends InChromium {
    private static final boolean DEEP = Boolean.getBoolean("deferent.deep");

    private static final List<String> PHRASES =
            List.of(
                    "isolation vs triquetra",
                    "static spin vs static spin",
                    "isolation vs isolation, split time",
                    "horizontal cat-eye vs extension, tether 40 cm",
                    "CAP riding pendulum",
                    "static spin vs triquetra, floor plane");

    /** Where a track is at a share of the cycle, pixels on the stage. */
    private static final String SEEN =
            """
            ([track, share]) => {
              const { session, camera } = deferentStage;
              const p = session.scene.at(track, share, [0, 0, 0]);
              const spot = [0, 0, 0];
              camera.project(p[0], p[1], p[2], spot);
              return [spot[0], spot[1]];
            }""";

    /** Pairs of handles that cover one another, and handles that the label of the link covers. */
    private static final String COVERED =
            """
            (() => {
              const box = (e) => e.getBoundingClientRect();
              const over = (a, b) => a.left < b.right - 0.5 && b.left < a.right - 0.5 && a.top < b.bottom - 0.5 && b.top < a.bottom - 0.5;
              const all = [...document.querySelectorAll('.handle')].map((e) => [e.dataset.key, box(e)]);
              const label = document.querySelector('.link-label');
              if (!label.hidden) all.push(['label', box(label)]);
              const found = [];
              for (let i = 0; i < all.length; i++) for (let j = i + 1; j < all.length; j++) if (over(all[i][1], all[j][1])) found.push(all[i][0] + ' and ' + all[j][0]);
              return found.join(', ');
            })()""";

    private static final String NEAR = "deferentStage.grab.near && deferentStage.grab.near.key";

    private static double[] seen(Visit visit, String track, double share) {
        List<?> spot = (List<?>) visit.page().evaluate(SEEN, List.of(track, share));
        return spot.stream().mapToDouble(v -> ((Number) v).doubleValue()).toArray();
    }

    private static void point(Visit visit, double x, double y) {
        visit.page().mouse().move(x - 1, y);
        visit.page().mouse().move(x, y);
        visit.frames(1);
    }

    private static void pull(Visit visit, double right, double down) {
        double x = visit.number("deferentStage.grab.at[0]");
        double y = visit.number("deferentStage.grab.at[1]");
        visit.page().mouse().down();
        for (int i = 1; i <= 8; i++) {
            visit.page().mouse().move(x + right * i / 8, y + down * i / 8);
            visit.frames(1);
        }
        visit.page().mouse().up();
        visit.settled();
    }

    private static String word(Visit visit) {
        return visit.page().locator(".grab-word").innerText().replace('\u202f', ' ');
    }

    private Visit still(String phrase, double phase) {
        Visit visit = visit();
        visit.say(phrase);
        visit.hands();
        visit.page()
                .evaluate(
                        "phase => { deferentDesk.clock.play(false); deferentDesk.clock.seek(phase);"
                                + " }",
                        phase);
        return visit;
    }

    @Test
    void theHandsCircleIsHadAnywhereOnItsLine() {
        try (Visit visit = still("isolation vs triquetra", 0.4)) {
            for (double share : new double[] {0.07, 0.18, 0.31, 0.64, 0.86}) {
                double[] spot = seen(visit, "left.hand", share);
                point(visit, spot[0], spot[1]);
                assertThat(visit.text(NEAR)).as("at %s of the circle", share).contains("circle");
            }
            double[] spot = seen(visit, "left.hand", 0.18);
            point(visit, spot[0], spot[1]);
            assertThat(visit.text(NEAR)).isEqualTo("left.circle");
            double[] across = seen(visit, "left.hand", 0.68);
            double radius = Math.hypot(spot[0] - across[0], spot[1] - across[1]) / 2;
            double further = 30 / radius;
            pull(
                    visit,
                    30 * (spot[0] - across[0]) / (2 * radius),
                    30 * (spot[1] - across[1]) / (2 * radius));
            assertThat(visit.size("left.hand_radius_m"))
                    .isCloseTo(0.3 * (1 + further), within(0.006));
        }
    }

    @Test
    void whatWouldMoveLightsUpAndSaysItsSizeBeforeItMoves() {
        try (Visit visit = still("isolation vs triquetra", 0.4)) {
            double[] spot = seen(visit, "right.hand", 0.13);
            point(visit, spot[0], spot[1]);
            assertThat(word(visit)).startsWith("right hand radius 60.0 cm");
            assertThat(visit.text("deferentStage.seen.lit.path")).isEqualTo("right");
            assertThat(visit.text("getComputedStyle(deferentStage.canvas).cursor"))
                    .endsWith("resize");
            assertThat(visit.size("right.hand_radius_m")).isEqualTo(0.6);
            visit.page().mouse().move(30, 600);
            assertThat(visit.is("deferentStage.seen.lit === null")).isTrue();
            assertThat(visit.page().locator(".grab-word").isVisible()).isFalse();
        }
    }

    @Test
    void handHeadCordAndWholeFigureAreHadWhereTheyAreSeen() {
        try (Visit visit = still("isolation vs triquetra", 0.13)) {
            double[] hand = seen(visit, "right.hand", 0.13);
            double[] head = seen(visit, "right.head", 0.13);
            point(visit, hand[0], hand[1]);
            assertThat(visit.text(NEAR)).isEqualTo("right.circle");
            point(visit, head[0], head[1]);
            assertThat(visit.text(NEAR)).isEqualTo("right.poi");
            double[] cord = {0.35 * hand[0] + 0.65 * head[0], 0.35 * hand[1] + 0.65 * head[1]};
            point(visit, cord[0], cord[1]);
            assertThat(visit.text(NEAR)).isEqualTo("right.tether");
            assertThat(word(visit)).startsWith("right tether 60.0 cm");
            String spin =
                    visit.text("JSON.stringify(deferentDesk.session.pattern.pairing.right.spin)");
            pull(visit, 0.325 * (head[0] - hand[0]), 0.325 * (head[1] - hand[1]));
            assertThat(visit.size("right.tether_m")).isCloseTo(0.9, within(0.01));
            assertThat(
                            visit.text(
                                    "JSON.stringify(deferentDesk.session.pattern.pairing.right.spin)"))
                    .as("a cord that is pulled does not turn")
                    .isEqualTo(spin);
            double[] line = seen(visit, "right.head", 0.62);
            point(visit, line[0], line[1]);
            assertThat(visit.text(NEAR)).isEqualTo("both.centre");
            assertThat(word(visit)).startsWith("whole figure");
            pull(visit, 50, 0);
            assertThat(Math.abs(visit.size("left.centre_x_m"))).isGreaterThan(0.05);
            assertThat(visit.size("left.centre_x_m")).isEqualTo(visit.size("right.centre_x_m"));
        }
    }

    @Test
    void aClickThatDoesNotDragOffersWhatLiesBeneath() {
        try (Visit visit = still("isolation vs triquetra", 0)) {
            double[] spot = seen(visit, "left.hand", 0);
            point(visit, spot[0], spot[1]);
            int count = (int) visit.number("deferentStage.grab.count");
            assertThat(count).isGreaterThan(1);
            String first = visit.text(NEAR);
            double steps = visit.number("deferentDesk.session.past.length");
            visit.page().mouse().down();
            visit.page().mouse().up();
            String second = visit.text(NEAR);
            assertThat(second).isNotEqualTo(first);
            for (int i = 1; i < count; i++) {
                visit.page().mouse().down();
                visit.page().mouse().up();
            }
            assertThat(visit.text(NEAR)).as("once round").isEqualTo(first);
            assertThat(visit.number("deferentDesk.session.past.length"))
                    .as("nothing was moved by it")
                    .isEqualTo(steps);
            assertThat(visit.text("deferentDesk.session.answer.phrase"))
                    .isEqualTo("isolation vs triquetra");
        }
    }

    @Test
    void noHandleCoversAnotherNorTheLabel() {
        List<Browser.NewContextOptions> screens =
                List.of(screen(1280, 800), screen(400, 860).setHasTouch(true).setIsMobile(true));
        for (int screen = 0; screen < screens.size(); screen++) {
            try (Visit visit =
                    visit(screens.get(screen).setReducedMotion(ReducedMotion.REDUCE), "")) {
                visit.settled();
                visit.hands();
                // Each phrase on one screen, or in the long form on both.
                for (int i = DEEP ? 0 : screen; i < PHRASES.size(); i += DEEP ? 1 : 2) {
                    String phrase = PHRASES.get(i);
                    visit.say(phrase);
                    for (double phase : new double[] {0, 0.125, 0.25, 0.5, 0.81}) {
                        visit.page()
                                .evaluate(
                                        "phase => { deferentDesk.clock.play(false);"
                                                + " deferentDesk.clock.seek(phase); }",
                                        phase);
                        assertThat(visit.text(COVERED)).as("%s at %s", phrase, phase).isEmpty();
                    }
                    assertThat(visit.number("document.querySelectorAll('.handle').length"))
                            .isGreaterThan(3);
                }
            }
        }
    }

    private Visit phone(String phrase) {
        Visit visit =
                visit(
                        screen(400, 860)
                                .setHasTouch(true)
                                .setIsMobile(true)
                                .setReducedMotion(ReducedMotion.REDUCE),
                        "#phrase=" + phrase.replace(' ', '+'));
        visit.settled();
        visit.hands();
        visit.page().evaluate("() => deferentDesk.clock.seek(0.4)");
        return visit;
    }

    @Test
    void aFingersHandlesAreBroadEnough() {
        try (Visit visit = phone("isolation vs triquetra")) {
            assertThat(
                            visit.number(
                                    "Math.min(...[...document.querySelectorAll('.handle')].map((e) => Math.min(e.getBoundingClientRect().width, e.getBoundingClientRect().height)))"))
                    .isGreaterThanOrEqualTo(44);
        }
    }

    /**
     * Where the right head is, with a finger held on it until there is something to choose: on a
     * busy machine the head may have moved on before the finger came.
     */
    private static double[] held(Visit visit, Fingers fingers) {
        for (int i = 0; i < 10; i++) {
            double[] head = seen(visit, "right.head", 0.4);
            fingers.press(head[0], head[1]);
            for (int wait = 0; wait < 12; wait++) {
                visit.page().waitForTimeout(100);
                if (visit.is("!document.querySelector('.grab-offers').hidden")) {
                    return head;
                }
            }
            fingers.lift();
            visit.frames(2);
        }
        throw new AssertionError("a held finger was offered nothing");
    }

    @Test
    void aHeldFingerOffersWhatLiesBeneathAndAFingerDragsWhatItChose() {
        try (Visit visit = phone("isolation vs triquetra")) {
            Fingers fingers = new Fingers(visit.page());
            double[] head = held(visit, fingers);
            fingers.lift();
            assertThat(visit.page().locator(".grab-offers button").allInnerTexts())
                    .anyMatch(text -> text.startsWith("right poi"))
                    .anyMatch(text -> text.equals("whole figure"));
            visit.page().locator(".grab-offers button", null).last().tap();
            assertThat(visit.text("deferentStage.grab.chosen")).isEqualTo("both.centre");
            fingers.press(head[0], head[1]);
            for (int i = 1; i <= 6; i++) {
                fingers.move(head[0], head[1] - 8 * i);
                visit.frames(1);
            }
            fingers.lift();
            visit.settled();
            assertThat(Math.abs(visit.size("left.centre_y_m"))).isGreaterThan(0.05);
            assertThat(visit.size("left.centre_y_m")).isEqualTo(visit.size("right.centre_y_m"));
        }
    }
}
