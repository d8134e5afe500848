package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.reading.body.Performer;
import deferent.record.PatternDocument;
import deferent.record.Shelf;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The shelf as a map on the page. */
class MapPageTest extends InChromium {
    private void shelve() {
        save("Long arms", "extension vs extension, tether 40 cm, tempo 60");
        save("One still", "extension vs static spin, tether 40 cm, tempo 60");
        save("Both still", "static spin vs static spin, tether 40 cm, tempo 60");
        save("Elsewhere", "static spin vs static spin, tether 20 cm");
    }

    private void save(String name, String phrase) {
        Shelf.at(shelf)
                .saveNew(PatternDocument.of(name, Phrase.parse(phrase).pairing(), Performer.USUAL));
    }

    private static void open(Visit visit) {
        open(visit, 4);
    }

    private static void open(Visit visit, int places) {
        visit.settled();
        visit.page().locator("#tab-map").click();
        visit.until("document.querySelectorAll('.place').length === " + places);
        visit.until("!deferentDesk.map.running");
    }

    @Test
    void twoPlacesMakeARouteThatPlaysThrough() {
        shelve();
        try (Visit visit = visit()) {
            open(visit);
            String places = visit.text("JSON.stringify([...deferentDesk.map.places])");
            visit.page().locator(".place[data-id=long-arms]").click();
            visit.page().locator(".place[data-id=both-still]").click();
            visit.until("document.querySelector('.play-route')");
            assertThat(visit.number("document.querySelectorAll('.map-ways .on').length"))
                    .isEqualTo(visit.number("deferentDesk.map.route.places.length - 1"));
            assertThat(visit.page().locator(".place[data-id=one-still] .place-name").isVisible())
                    .as("places have their names on the map")
                    .isTrue();
            assertThat(visit.page().locator(".leg figcaption").allInnerTexts())
                    .as("one change at a time, from its place into the next")
                    .isEqualTo(
                            visit.page()
                                    .evaluate(
                                            "() => deferentDesk.map.route.places.slice(0, 2).map((id) => deferentDesk.map.name(id))"));
            visit.page().locator(".play-route").click();
            visit.until("deferentDesk.session.passing");
            assertThat(
                            visit.is(
                                    "Math.abs(deferentDesk.session.passing.seconds -"
                                            + " deferentDesk.map.route.set.seconds) < 1e-3"))
                    .as("what was told is what is played")
                    .isTrue();
            visit.page().evaluate("() => deferentDesk.clock.play(false)");
            visit.page().evaluate("() => deferentDesk.clock.seek(0.98)");
            visit.until("document.querySelector('.happened b')?.textContent === 'Both still'");
            visit.page().evaluate("() => document.activeElement.blur()");
            visit.page().keyboard().press("Escape");
            visit.until("!deferentDesk.session.aside");
            assertThat(visit.text("deferentDesk.session.answer.phrase"))
                    .isEqualTo("isolation vs four-petal antispin");
            assertThat(visit.text("JSON.stringify([...deferentDesk.map.places])"))
                    .as("nothing jumps")
                    .isEqualTo(places);
            assertThat(
                            visit.is(
                                    "[...deferentDesk.map.places.values()].every((p, i, all) =>"
                                            + " all.every((q, j) => i === j || Math.hypot(p[0] - q[0], p[1] - q[1]) > 0.2))"))
                    .as("none upon another")
                    .isTrue();
            visit.page().locator(".route-set").click();
            visit.until("deferentDesk.set.known");
            assertThat(visit.text("deferentDesk.set.steps.map((s) => s.name).join()"))
                    .as("and it is a set")
                    .startsWith("Long arms,")
                    .endsWith("Both still");
        }
    }

    /** Of two that lead both ways alike one line tells; where they differ each has its arrow. */
    @Test
    void whatLeadsOneWayOnlyHasAnArrow() {
        shelve();
        try (Visit visit = visit()) {
            open(visit);
            visit.page()
                    .evaluate(
                            """
                            () => {
                              const { map } = deferentDesk;
                              map.answer.transitions = [
                                { from: 'long-arms', to: 'one-still', grade: 'easy' },
                                { from: 'one-still', to: 'long-arms', grade: 'easy' },
                                { from: 'one-still', to: 'both-still', grade: 'practised' },
                                { from: 'both-still', to: 'one-still', grade: 'hard' },
                                { from: 'both-still', to: 'long-arms', grade: 'hard' },
                              ];
                              map.dispatchEvent(new Event('state'));
                            }""");
            visit.until("document.querySelectorAll('.map-ways g').length === 4");
            assertThat(
                            visit.text(
                                    "[...document.querySelectorAll('.map-ways g')].map((g) =>"
                                            + " g.dataset.way + (g.querySelector('path') ? ' arrow' : '')).join()"))
                    .isEqualTo("hard arrow,hard arrow,practised arrow,easy");
            assertThat(
                            visit.text(
                                    "['easy', 'practised', 'hard'].map((way) => { const line ="
                                            + " getComputedStyle(document.querySelector(`[data-way=${way}] line`)); return"
                                            + " line.strokeWidth + ' ' + line.strokeDasharray; }).join()"))
                    .as("told by its shape")
                    .isEqualTo("3.4px none,1.6px none,1.2px 3px, 4px");
            assertThat(
                            visit.page()
                                    .locator(".place[data-id=both-still]")
                                    .getAttribute("aria-label"))
                    .isEqualTo("Both still, leads into 2, one leads into it");
            // The arrow points where it leads.
            assertThat(
                            visit.is(
                                    """
                                    (() => {
                                      const [x, y] = deferentDesk.map.places.get('long-arms').map((v) => v * 100);
                                      const all = [...document.querySelectorAll('.map-ways g')].filter((g) => g.querySelector('path'));
                                      const ends = all.map((g) => { const l = g.querySelector('line'); return Math.hypot(l.x2.baseVal.value - x, l.y2.baseVal.value - y); });
                                      const g = all[ends.indexOf(Math.min(...ends))];
                                      const [tip, wing] = g.querySelector('path').getAttribute('d').match(/-?[\\d.]+ -?[\\d.]+/g).map((p) => p.split(' ').map(Number));
                                      return Math.hypot(tip[0] - x, tip[1] - y) < Math.hypot(wing[0] - x, wing[1] - y);
                                    })()"""))
                    .isTrue();
        }
    }

    @Test
    void theMapIsWorkedByKeysAndAsAListOnAPhone() {
        shelve();
        try (Visit visit = visit(screen(400, 800), "")) {
            open(visit);
            visit.page().locator(".place[tabindex='0']").focus();
            String first = visit.text("document.activeElement.dataset.id");
            for (String key : List.of("ArrowRight", "ArrowDown", "ArrowLeft", "ArrowUp")) {
                visit.page().keyboard().press(key);
                if (!visit.text("document.activeElement.dataset.id").equals(first)) {
                    break;
                }
            }
            assertThat(visit.text("document.activeElement.dataset.id")).isNotEqualTo(first);
            visit.page().keyboard().press("Enter");
            visit.until("deferentDesk.map.from");
            visit.page().locator(".map-list summary").click();
            visit.page().locator(".map-list li button").first().click();
            visit.until("document.querySelector('.play-route')");
            assertThat(visit.text("document.querySelector('#map-from').value"))
                    .isEqualTo(visit.text("deferentDesk.map.from"));
            visit.page().locator("#map-to").selectOption("elsewhere");
            visit.until(
                    "document.querySelector('.map-route')?.textContent.includes('Nothing leads"
                            + " from')");
            visit.page().locator("#map-hardest").selectOption("easy");
            visit.until("!deferentDesk.map.running");
            assertThat(
                            visit.is(
                                    "deferentDesk.map.answer.transitions.every((t) => t.grade === 'easy')"))
                    .isTrue();
            assertThat(visit.number("document.documentElement.scrollWidth"))
                    .isLessThanOrEqualTo(400);
        }
    }

    @Test
    void aDozenNamesAreReadAtAGlance() {
        List<String> motions = List.of("static spin", "isolation", "triquetra");
        for (String left : motions) {
            for (String right : List.of("extension", "horizontal cat-eye", "CAP", "box")) {
                save("The " + left + " over the " + right, left + " vs " + right);
            }
        }
        try (Visit visit = visit()) {
            open(visit, 12);
            assertThat(
                            visit.text(
                                    """
                                    (() => {
                                      const boxes = [...document.querySelectorAll('.place-name, .place moving-thumb')]
                                        .map((e) => [e.closest('.place').dataset.id + (e.matches('.place-name') ? ' name' : ''), e.getBoundingClientRect()]);
                                      const map = document.querySelector('.map').getBoundingClientRect();
                                      const over = ([, a], [, b]) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
                                      const outside = ([, a]) => a.left < map.left || a.right > map.right || a.top < map.top || a.bottom > map.bottom;
                                      return [
                                        ...boxes.filter(outside).map(([name]) => name + ' outside'),
                                        ...boxes.flatMap((a, i) => boxes.slice(0, i).filter((b) => over(a, b)).map((b) => a[0] + ' on ' + b[0])),
                                      ].join('; ');
                                    })()"""))
                    .isEmpty();
        }
    }

    @Test
    void theMapFollowsTheShelf() {
        shelve();
        try (Visit visit = visit()) {
            open(visit);
            visit.page().keyboard().press("Control+s");
            visit.until("deferentDesk.map.answer.patterns.length === 5");
        }
    }
}
