package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.options.BoundingBox;
import org.junit.jupiter.api.Test;

/** What a move of a drag costs, as far as it can be counted rather than timed. */
class MovePageTest extends InChromium {
    private static final int MOVES = 24;

    /** In the page: notes what is asked and answered, drawn and written while a hand drags. */
    private static final String WATCH =
            """
            () => {
              const { session, stage } = window.deferentDesk;
              const { socket } = session.live;
              const seen = (window.moved = { answers: [], draws: [], moves: [], told: [], states: 0 });
              const hear = socket.onmessage;
              socket.onmessage = (event) => {
                const answer = JSON.parse(event.data);
                const { asked } = session.live;
                if (asked?.kind === 'move' && asked.id === answer.id) seen.answers.push(answer);
                hear(event);
              };
              let frames = stage.frames;
              stage.drawn.push((answer, times) => {
                seen.draws.push(stage.frames - frames);
                seen.told.push(times.seen);
                frames = stage.frames;
              });
              stage.addEventListener('pointermove', (event) => stage.grip?.moved && seen.moves.push(event.timeStamp));
              seen.began = performance.now();
              session.addEventListener('state', () => seen.states++);
            }""";

    private static void drag(Visit visit) {
        BoundingBox box = visit.page().locator(".handle[data-key='left.circle']").boundingBox();
        double x = box.x + box.width / 2;
        double y = box.y + box.height / 2;
        visit.page().mouse().move(x, y);
        visit.page().mouse().down();
        visit.page().mouse().move(x + 5, y - 5);
        Chromium.until(visit.page(), "!deferentDesk.session.live.busy");
        visit.page().evaluate(WATCH);
        for (int i = 1; i <= MOVES; i++) {
            visit.page().mouse().move(x + 5 + i, y - 5 - i);
            visit.frames(1);
        }
    }

    @Test
    void aMoveIsAskedForWhatIsDrawnAndDrawnOnce() {
        try (Visit visit = visit()) {
            visit.say("isolation vs four-petal antispin");
            visit.hands();
            visit.settled();
            drag(visit);
            Chromium.until(visit.page(), "!deferentDesk.session.live.busy");
            assertThat(visit.number("moved.answers.length")).isGreaterThanOrEqualTo(MOVES);
            assertThat(
                            visit.page()
                                    .evaluate(
                                            "moved.answers.filter((a) => a.readings || a.numbers || a.begin).length"))
                    .as("answers to a move with words in them")
                    .isEqualTo(0);
            assertThat(
                            visit.page()
                                    .evaluate(
                                            "Math.max(...moved.answers.map((a) => a.scene.count))"))
                    .as("samples of a figure this round")
                    .isEqualTo(visit.page().evaluate("deferentDesk.session.dragging.samples"));
            assertThat(visit.number("deferentDesk.session.dragging.samples")).isLessThan(360);
            assertThat(visit.page().evaluate("moved.draws.filter((n) => n !== 1).length"))
                    .as("moves drawn more than once or never")
                    .isEqualTo(0);
            assertThat(
                            visit.page()
                                    .evaluate(
                                            "moved.moves.filter((at) => !moved.told.includes(at)).length"))
                    .as("moves of the pointer that were not answered")
                    .isEqualTo(0);
            assertThat(visit.number("moved.states"))
                    .as("times all else of the page was told, ten a second at most")
                    .isLessThanOrEqualTo(
                            visit.number("(performance.now() - moved.began) / 100") + 2)
                    .isLessThan(visit.number("moved.answers.length"));
            visit.page().mouse().up();
            visit.settled();
        }
    }

    @Test
    void whatIsToldOfAMoveFollowsIt() {
        try (Visit visit = visit()) {
            visit.say("isolation vs four-petal antispin");
            visit.hands();
            visit.settled();
            drag(visit);
            // The hand rests, and still holds.
            Chromium.until(
                    visit.page(),
                    "deferentDesk.session.dragging && !deferentDesk.session.live.busy &&"
                            + " !deferentDesk.session.answer.untold");
            // Both of one answer: a move that was still on its way may come between two looks.
            assertThat(
                            visit.number(
                                    LINK
                                            + " -"
                                            + " Math.max(...deferentDesk.session.answer.strip.gap_m)"))
                    .isCloseTo(0, within(2e-3));
            visit.page().mouse().up();
            visit.settled();
            assertThat(visit.page().evaluate("deferentDesk.session.answer.untold"))
                    .isEqualTo(false);
            assertThat(visit.number("deferentDesk.session.scene.count")).isEqualTo(720);
        }
    }

    private static final String LINK =
            "deferentDesk.session.answer.readings.links.find((l) => l.head ==="
                    + " deferentDesk.session.answer.strip.carrier).inplane_gap_m";
}
