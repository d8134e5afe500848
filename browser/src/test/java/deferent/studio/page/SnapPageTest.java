package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.options.ReducedMotion;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Where a link closes a dragged size is held, and a little more pull frees it. */
class SnapPageTest extends InChromium {
    private static final String CLOSES = "deferentStage.grab.snap.closings.length > 0";
    private static final String SNAPPED = "!!deferentStage.grab.snap.now";

    /** A place on the right hand's circle as if it had another radius, pixels. */
    private static final String AT =
            """
            radius => {
              const { session, camera, handles } = deferentStage;
              const p = session.scene.at('right.hand', 0.6, [0, 0, 0]);
              const c = handles.all.get('right.centre').handle.at;
              const now = Math.hypot(p[0] - c[0], p[1] - c[1]);
              const spot = [0, 0, 0];
              camera.project(c[0] + (p[0] - c[0]) * radius / now, c[1] + (p[1] - c[1]) * radius / now, p[2], spot);
              return [spot[0], spot[1]];
            }""";

    private static double[] at(Visit visit, double radius) {
        List<?> spot = (List<?>) visit.page().evaluate(AT, radius);
        return spot.stream().mapToDouble(v -> ((Number) v).doubleValue()).toArray();
    }

    /** The words of a move may come after its picture. */
    private static void answered(Visit visit) {
        visit.frames(2);
        visit.until("!deferentDesk.session.live.busy && !deferentDesk.session.answer.untold");
    }

    private void snaps(Visit visit) {
        visit.say("static spin vs triquetra, right hand radius 45 cm");
        visit.hands();
        visit.page().evaluate("deferentDesk.clock.play(false); deferentDesk.clock.seek(0.3)");
        visit.rests("deferentStage.frames");
        double[] from = at(visit, 0.45);
        double[] closed = at(visit, 0.6);
        double[] way = {closed[0] - from[0], closed[1] - from[1]};
        double long0 = Math.hypot(way[0], way[1]);
        visit.page().mouse().move(from[0] - 1, from[1]);
        visit.page().mouse().move(from[0], from[1]);
        visit.until("deferentStage.grab.near?.key === 'right.circle'");
        visit.page().mouse().down();
        visit.page().mouse().move(from[0] + 0.3 * way[0], from[1] + 0.3 * way[1]);
        visit.until(CLOSES);
        answered(visit);
        assertThat(visit.is(SNAPPED)).isFalse();
        double share = 1 - 5 / long0;
        visit.page().mouse().move(from[0] + share * way[0], from[1] + share * way[1]);
        // Five pixels short of it.
        visit.until(SNAPPED);
        answered(visit);
        assertThat(visit.size("right.hand_radius_m")).isCloseTo(0.6, within(1e-9));
        assertThat(visit.is("deferentDesk.session.linked")).isTrue();
        assertThat(visit.page().locator(".grab-word").innerText()).endsWith(", linked");
    }

    @Test
    void aSizeSnapsWhereTheLinkClosesAndLetsGoWithALittleMorePull() {
        try (Visit visit = visit(screen(1280, 800), "")) {
            snaps(visit);
            visit.rests("deferentStage.frames");
            assertThat(visit.text("deferentStage.seen.lit.one")).isEqualTo("left");
            assertThat(visit.number("deferentStage.seen.lit.strength"))
                    .as("how strongly both stay lit when the flash is over")
                    .isCloseTo(0.3, within(1e-9));
            double[] on = at(visit, 0.6);
            double[] out = at(visit, 0.75);
            double long0 = Math.hypot(out[0] - on[0], out[1] - on[1]);
            for (double pixels : new double[] {12, 24}) {
                visit.page()
                        .mouse()
                        .move(
                                on[0] + pixels / long0 * (out[0] - on[0]),
                                on[1] + pixels / long0 * (out[1] - on[1]));
                visit.until(pixels < 17 ? SNAPPED : "!" + SNAPPED);
                answered(visit);
                assertThat(visit.is(SNAPPED)).as("%s pixels on", pixels).isEqualTo(pixels < 17);
            }
            assertThat(visit.size("right.hand_radius_m"))
                    .isCloseTo(0.6 + 0.15 * 24 / long0, within(0.004));
            visit.page().mouse().up();
            visit.settled();
            visit.page().keyboard().press("Control+z");
            visit.until("deferentDesk.session.size('right.hand_radius_m').value === 0.45");
            visit.settled();
        }
    }

    @Test
    void underReducedMotionTheSnapIsAStillMark() {
        try (Visit visit = visit(screen(1280, 800).setReducedMotion(ReducedMotion.REDUCE), "")) {
            snaps(visit);
            assertThat(visit.number("deferentStage.seen.lit.strength")).isEqualTo(0.5);
            visit.rests("deferentStage.frames");
            visit.page().mouse().up();
            visit.settled();
            assertThat(visit.size("right.hand_radius_m")).isCloseTo(0.6, within(1e-9));
            assertThat(visit.is("deferentStage.grab.lit?.one === undefined")).isTrue();
        }
    }
}
