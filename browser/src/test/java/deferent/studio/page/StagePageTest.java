package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.ReducedMotion;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.page.Scene;
import deferent.page.Track;
import deferent.studio.Studio;
import deferent.studio.StudioOptions;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class StagePageTest extends InChromium {
    /** Whether the middle of the stage shows more than its ground. */
    private static final String DRAWN =
            "(() => { deferentStage.draw(); const c = deferentStage.camera;"
                    + " const p = deferentStage.drawer.read(0, 0, c.width, c.height);"
                    + " const g = deferentStage.ink.ground.map((v) => Math.round(v * 255));"
                    + " let n = 0; for (let i = 0; i < p.length; i += 4)"
                    + " if (Math.abs(p[i] - g[0]) + Math.abs(p[i + 1] - g[1]) + Math.abs(p[i + 2] - g[2]) > 120) n++;"
                    + " return n > 500; })()";

    @Test
    void draggingTheHandCircleChangesItAndEverythingFollowsWhileDragging() {
        try (Visit visit = visit()) {
            visit.page().evaluate("() => deferentDesk.clock.play(false)");
            visit.page()
                    .evaluate(
                            "() => { window.seen = []; deferentStage.drawn.push((a) =>"
                                    + " window.seen.push(a.sizes.find((s) => s.key ==="
                                    + " 'left.hand_radius_m').value)); }");
            double before = visit.size("left.hand_radius_m");
            visit.drag("left.circle", 50, -45);
            double after = visit.size("left.hand_radius_m");
            assertThat(after).isGreaterThan(before + 0.1);
            assertThat(visit.number("new Set(window.seen).size"))
                    .as("radii drawn on the way")
                    .isGreaterThan(4);
            visit.page().keyboard().press("Control+z");
            visit.until("deferentDesk.session.size('left.hand_radius_m').value === " + before);
            visit.settled();
        }
    }

    @Test
    void draggingCentrePoiAndTiltEachSetTheirOwnSize() {
        try (Visit visit = visit()) {
            visit.say("static spin vs triquetra");
            visit.page()
                    .evaluate(
                            "() => { deferentDesk.clock.play(false); deferentDesk.clock.seek(0.1); }");
            double tilt = visit.size("right.tilt_deg");
            visit.drag("right.tilt", 60, 20);
            assertThat(visit.size("right.tilt_deg")).isNotCloseTo(tilt, within(1.0));
            double start = visit.size("left.start_deg");
            visit.drag("left.poi", 40, 40);
            assertThat(visit.size("left.start_deg")).isNotCloseTo(start, within(1.0));
            visit.drag("right.centre", -40, 0);
            assertThat(Math.abs(visit.size("right.centre_x_m"))).isGreaterThan(0.03);
            assertThat(visit.size("left.centre_x_m")).isZero();
            visit.drag("left.centre", 0, 30);
            assertThat(visit.size("left.centre_y_m")).isLessThan(-0.03);
        }
    }

    @Test
    void theKeyboardAloneDoesIt() {
        try (Visit visit = visit()) {
            visit.page().keyboard().press("/");
            visit.page().keyboard().type("isolation vs triquetra");
            visit.page().keyboard().press("Enter");
            visit.page().keyboard().press("Escape");
            visit.until("deferentDesk.session.answer.phrase === 'isolation vs triquetra'");
            visit.settled();
            visit.page().keyboard().press("h");
            assertThat(visit.text("document.activeElement.getAttribute('aria-label')"))
                    .startsWith("left hand circle");
            double before = visit.size("left.hand_radius_m");
            visit.page().keyboard().press("Shift+ArrowRight");
            visit.page().keyboard().press("Shift+ArrowUp");
            visit.until(
                    "deferentDesk.session.size('left.hand_radius_m').value > " + (before + 0.03));
            visit.settled();
            assertThat(visit.is("deferentDesk.clock.playing")).isFalse();
            visit.page().locator("deferent-stage canvas").focus();
            double turn = visit.number("deferentStage.camera.turn");
            visit.page().keyboard().press("ArrowRight");
            assertThat(visit.number("deferentStage.camera.turn")).isNotEqualTo(turn);
            visit.page().keyboard().press("v");
            assertThat(visit.text("deferentStage.camera.view")).isEqualTo("eyes");
            visit.page().keyboard().press("Space");
            assertThat(
                            visit.is(
                                    "deferentDesk.clock.playing || document.querySelector('.care').open"))
                    .isTrue();
            visit.page().keyboard().press("Escape");
            visit.page().keyboard().press("?");
            guide(visit);
            visit.page().keyboard().press("2");
            assertThat(visit.page().locator("size-list").isVisible()).isTrue();
            for (int i = 0; i < 30; i++) {
                visit.page().keyboard().press("Tab");
                assertThat(
                                visit.is(
                                        "document.activeElement === document.body || document.activeElement.getClientRects().length > 0"))
                        .as("the focus is on something seen")
                        .isTrue();
            }
        }
    }

    /**
     * Opened by its key: from the contents to a chapter, to the keys, and a phrase of it to the
     * stage.
     */
    private static void guide(Visit visit) {
        Locator guide = visit.page().locator("dialog.guide");
        guide.locator("a[href$='why-one-misses.md']").click();
        visit.until(
                "document.querySelector('.guide-page img')?.naturalWidth > 0"
                        + " && document.querySelector('.guide-page img').src.endsWith('/docs/guide/apart.svg')");
        guide.locator("nav").getByText("Keys").click();
        assertThat(guide.getByText("swap hands").first().isVisible()).isTrue();
        guide.locator("nav").getByText("Guide").click();
        guide.locator("a[href$='first-link.md']").click();
        guide.locator("a code", new Locator.LocatorOptions().setHasText("static spin vs triquetra"))
                .click();
        visit.until("deferentDesk.session.answer.phrase === 'static spin vs triquetra'");
        assertThat(visit.is("document.querySelector('.guide').open")).isFalse();
    }

    @Test
    void exactSizesCanBeTypedAndHeldFromTheFit() {
        try (Visit visit = visit()) {
            visit.page().keyboard().press("2");
            visit.page().locator("[data-key='right.hand_radius_m']").fill("45.5");
            visit.page().keyboard().press("Enter");
            visit.until("deferentDesk.session.size('right.hand_radius_m').value === 0.455");
            visit.settled();
            visit.page().locator(".size:has([data-key='right.hand_radius_m']) .hold").click();
            assertThat(visit.is("deferentDesk.session.locked.has('right.hand_radius_m')")).isTrue();
        }
    }

    @Test
    void theStripScrubsTheMomentAndTheStageFollows() {
        try (Visit visit = visit()) {
            var box = visit.page().locator(".strip-line").boundingBox();
            visit.page().mouse().click(box.x + 14 + (box.width - 28) / 2, box.y + box.height / 2);
            assertThat(visit.number("deferentDesk.clock.phase")).isCloseTo(0.5, within(0.01));
            assertThat(visit.is("deferentDesk.clock.playing")).isFalse();
            visit.page().keyboard().press(".");
            assertThat(visit.number("deferentDesk.clock.phase"))
                    .isCloseTo(0.5 + 1 / 72.0, within(0.01));
        }
    }

    @Test
    void ownEyesAndMirrorSeeLeftOnTheLeftAndTheAudienceOnTheRight() {
        try (Visit visit = visit()) {
            String leftOnTheRight =
                    "(() => { const o = [0, 0, 0]; deferentStage.camera.project(0.5, 0, 0.3, o);"
                            + " return o[0] > deferentStage.camera.width / 2; })()";
            assertThat(visit.is(leftOnTheRight)).isTrue();
            for (String view : List.of("eyes", "mirror")) {
                visit.page().evaluate("view => deferentStage.see(view)", view);
                assertThat(visit.is(leftOnTheRight)).as(view).isFalse();
                assertThat(visit.is(DRAWN)).as(view).isTrue();
            }
        }
    }

    @Test
    void whereWebglIsMissingTheStageDrawsOnAPlainCanvas() {
        try (Visit visit = visit(screen(1280, 800), "?stage=2d")) {
            assertThat(visit.text("deferentStage.drawer.name")).contains("two-dimensional");
            assertThat(visit.is(DRAWN)).isTrue();
            double before = visit.size("left.hand_radius_m");
            visit.drag("left.circle", 40, -36);
            assertThat(visit.size("left.hand_radius_m")).isGreaterThan(before);
        }
    }

    @Test
    void aStageThatLosesItsGraphicsGoesOnInTwoDimensions() {
        try (Visit visit = visit()) {
            assertThat(visit.text("deferentStage.drawer.name")).contains("WebGL");
            visit.page()
                    .evaluate(
                            "() => deferentStage.drawer.gl.getExtension('WEBGL_lose_context').loseContext()");
            visit.until("deferentStage.drawer.name.includes('two-dimensional')");
            assertThat(visit.is(DRAWN)).isTrue();
        }
    }

    @Test
    void whoeverAsksForLessMotionFindsTheStagePaused() {
        try (Visit visit = visit(screen(1280, 800).setReducedMotion(ReducedMotion.REDUCE), "")) {
            visit.settled();
            assertThat(visit.is("deferentDesk.clock.playing")).isFalse();
            double phase = visit.number("deferentDesk.clock.phase");
            visit.frames(20);
            assertThat(visit.number("deferentDesk.clock.phase")).isEqualTo(phase);
            assertThat(visit.is(DRAWN)).isTrue();
        }
    }

    @Test
    void fastLightsAreNotStartedWithoutAWord() {
        try (Visit visit =
                visit(screen(1280, 800), "#phrase=isolation+vs+four-petal+antispin,+tempo+120")) {
            visit.settled();
            visit.page()
                    .evaluate(
                            "() => { deferentDesk.clock.play(false); deferentDesk.clock.speed = 1; }");
            visit.page().locator("deferent-stage canvas").focus();
            visit.page().keyboard().press("Space");
            visit.until("document.querySelector('.care').open");
            assertThat(visit.is("deferentDesk.clock.playing")).isFalse();
            visit.page().locator(".care button.primary").click();
            visit.until("deferentDesk.clock.playing");
            assertThat(
                            visit.number(
                                    "deferentDesk.session.scene.turnsPerSecond() * deferentDesk.clock.speed"))
                    .isLessThanOrEqualTo(3);
        }
    }

    @Test
    void onAPhoneNothingRunsOffTheSide() {
        for (int width : new int[] {360, 400, 768, 1280}) {
            try (Visit visit = visit(screen(width, 800), "")) {
                visit.settled();
                assertThat(visit.number("document.documentElement.scrollWidth"))
                        .as("width of the page at " + width)
                        .isLessThanOrEqualTo(width);
                for (String part :
                        List.of("phrase-line", "deferent-stage", ".strip-line", ".play")) {
                    assertThat(visit.page().locator(part).first().isVisible()).as(part).isTrue();
                }
                assertThat(visit.is(DRAWN)).isTrue();
            }
        }
    }

    @Test
    void everythingThatCanBePressedHasAName() {
        try (Visit visit = visit()) {
            visit.settled();
            assertThat(
                            visit.text(
                                    "[...document.querySelectorAll('button, input, textarea, [role=slider], canvas')]"
                                            + ".filter((e) => !e.closest('[aria-hidden=true]') && !(e.getAttribute('aria-label') || e.textContent.trim() || e.labels?.length || e.title))"
                                            + ".map((e) => e.outerHTML.slice(0, 80)).join(' | ')"))
                    .isEmpty();
        }
    }

    @Test
    void aTappedTempoIsTheTempoOfTheTaps() {
        try (Visit visit = visit()) {
            visit.page().locator("deferent-stage canvas").focus();
            // The page's clock is held between the taps, so that a busy machine taps in time.
            visit.page()
                    .evaluate(
                            """
                            () => {
                              let now = performance.now();
                              Object.defineProperty(performance, 'now', { value: () => now, configurable: true });
                              for (let tap = 0; tap < 4; tap++, now += 500) {
                                const key = new KeyboardEvent('keydown', { key: 'b', bubbles: true });
                                document.activeElement.dispatchEvent(key);
                              }
                              delete performance.now;
                            }""");
            visit.settled();
            assertThat(visit.size("tempo_cycles_per_min")).isEqualTo(120);
        }
    }

    @Test
    void aDragDropsNoMove() {
        try (Studio studio = Studio.start(StudioOptions.of(shelf))) {
            DragBench.Measured measured =
                    DragBench.measure(
                            browser(), Visit.address(studio, DragBench.PATTERN), 40, true);
            assertThat(measured.moves()).isEqualTo(40);
            assertThat(measured.dropped()).as(measured.told()).isZero();
        }
    }

    /**
     * How far a head is drawn from where a point is seen, in pixels to the right and down: the
     * middle of what differs, near that point, from the picture half a cycle on. Along the tether
     * the tether differs too, so only the way across it counts.
     */
    private static final String ASTRAY =
            """
            ([phase, x, y, z]) => {
              const stage = deferentStage;
              stage.persistence = 0;
              const at = [0, 0, 0];
              stage.camera.project(x, y, z, at);
              const left = Math.round(at[0]) - 14;
              const top = Math.round(at[1]) - 14;
              const read = (moment) => {
                deferentDesk.clock.seek(moment % 1);
                stage.draw();
                return stage.drawer.read(left, top, 28, 28);
              };
              const here = read(phase);
              const elsewhere = read(phase + 0.5);
              const box = [99, -1, 99, -1];
              for (let i = 0; i < 28 * 28; i++) {
                let off = 0;
                for (let k = 0; k < 3; k++) off += Math.abs(here[4 * i + k] - elsewhere[4 * i + k]);
                if (off < 200) continue;
                const column = i % 28;
                const row = 27 - Math.floor(i / 28); // read from the foot up
                box[0] = Math.min(box[0], column);
                box[1] = Math.max(box[1], column);
                box[2] = Math.min(box[2], row);
                box[3] = Math.max(box[3], row);
              }
              return [left + (box[0] + box[1] + 1) / 2 - at[0], top + (box[2] + box[3] + 1) / 2 - at[1]];
            }
            """;

    @Test
    void headsAreOnTheStageWithinHalfAPixelOfTheScene() {
        String phrase = "static spin vs static spin, split time";
        Scene scene = Scene.of(Trace.of(Phrase.parse(phrase).pairing()));
        try (Visit visit = visit()) {
            visit.say(phrase);
            visit.settled();
            visit.page().evaluate("() => deferentDesk.clock.play(false)");
            for (int quarter = 0; quarter < 4; quarter++) {
                double phase = quarter / 4.0;
                Vector3D head = scene.at(Track.head(Side.LEFT), phase * scene.period());
                for (double moved : new double[] {0, 0.02}) {
                    Vector3D point = head.add(new Vector3D(moved, moved, 0));
                    List<?> astray =
                            (List<?>)
                                    visit.page()
                                            .evaluate(
                                                    ASTRAY,
                                                    List.of(
                                                            phase,
                                                            point.getX(),
                                                            point.getY(),
                                                            point.getZ()));
                    // The tether is level at the even quarters and upright at the odd ones.
                    double across = ((Number) astray.get(quarter % 2 == 0 ? 1 : 0)).doubleValue();
                    if (moved == 0) {
                        assertThat(Math.abs(across)).as("quarter %d", quarter).isLessThan(0.5);
                    } else {
                        // Two centimetres beside it would be noticed.
                        assertThat(Math.abs(across)).as("quarter %d", quarter).isGreaterThan(1);
                    }
                }
            }
        }
    }
}
