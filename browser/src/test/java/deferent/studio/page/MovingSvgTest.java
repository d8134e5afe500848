package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.options.ReducedMotion;
import deferent.page.MovingSvg;
import deferent.page.Palette;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.Svg;
import deferent.page.View;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MovingSvgTest extends InChromium {
    private static final Still STILL = Still.square(600).with(List.of("isolation & <four petals>"));
    private static final List<String> MARKS =
            List.of("left-hand", "left-head", "right-hand", "right-head");

    @TempDir Path folder = Path.of("");

    private Path saved(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private Exported open(Path file) {
        return Exported.file(browser(), file, screen(600, 600));
    }

    /** The middle of each hand and head, as the browser lays them out, pixels. */
    private static double[] middles(Exported seen) {
        return MARKS.stream()
                .flatMapToDouble(
                        id ->
                                Arrays.stream(
                                        seen.numbers(
                                                "(() => { const b = document.getElementById('"
                                                        + id
                                                        + "').getBoundingClientRect(); return [b.x + b.width /"
                                                        + " 2, b.y + b.height / 2]; })()")))
                .toArray();
    }

    private static void stop(Exported seen, double seconds) {
        seen.page()
                .evaluate(
                        "t => { const s = document.documentElement; s.pauseAnimations();"
                                + " s.setCurrentTime(t); }",
                        seconds);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "isolation vs four-petal antispin, split time",
                "static spin vs six-petal inspin",
                "pendulum vs pendulum",
                "toroid vs CAP"
            })
    void atAnyTimeItIsTheStillOfThatTimeWithinHalfAPixel(String phrase) throws IOException {
        Scene scene = Exported.scene(phrase);
        Still still = STILL.with(new View(View.Stand.PERFORMER, 0.3, 0.2));
        try (Exported moving = open(saved("moving.svg", MovingSvg.of(scene, still)))) {
            for (double share : new double[] {0, 0.137, 0.25, 0.5003, 0.81, 0.9999}) {
                double time = share * scene.period();
                stop(moving, time);
                double[] drawn = middles(moving);
                double[] ends =
                        moving.numbers(
                                "(l => [l.x1, l.y1, l.x2, l.y2].map(v => v.animVal.value))"
                                        + "(document.querySelector('#right-tether line'))");
                try (Exported at = open(saved("still.svg", Svg.of(scene, still.at(time))))) {
                    double[] meant = middles(at);
                    for (int i = 0; i < drawn.length; i += 2) {
                        assertThat(Math.hypot(drawn[i] - meant[i], drawn[i + 1] - meant[i + 1]))
                                .as(MARKS.get(i / 2) + " at " + share)
                                .isLessThan(0.5);
                    }
                    assertThat(Math.hypot(ends[0] - meant[4], ends[1] - meant[5])).isLessThan(0.5);
                    assertThat(Math.hypot(ends[2] - meant[6], ends[3] - meant[7])).isLessThan(0.5);
                }
            }
        }
    }

    @Test
    void theLoopHasNoSeamAndLastsOneCycle() throws IOException {
        Scene scene = Exported.scene("isolation vs four-petal antispin", 47);
        try (Exported moving = open(saved("moving.svg", MovingSvg.of(scene, STILL, 0.5)))) {
            stop(moving, 0);
            double[] first = middles(moving);
            // Half as fast: twice the cycle.
            stop(moving, 2 * scene.period() * (1 - 1e-6));
            double[] last = middles(moving);
            stop(moving, 2 * scene.period() * (1 + 1e-6));
            double[] again = middles(moving);
            for (int i = 0; i < first.length; i++) {
                assertThat(last[i]).isCloseTo(first[i], within(0.05));
                assertThat(again[i]).isCloseTo(first[i], within(0.05));
            }
        }
    }

    @Test
    void theFreshLightEndsAtTheHead() throws IOException {
        Scene scene = Exported.scene("isolation vs four-petal antispin");
        try (Exported moving = open(saved("moving.svg", MovingSvg.of(scene, STILL)))) {
            for (double time : new double[] {0.1, 0.4, 0.73}) {
                stop(moving, time);
                double[] front =
                        moving.numbers(
                                "(() => { const way = document.getElementById('left-head-trail-way');"
                                        + " const coat = [...document.querySelectorAll('#left-head-trail use')].pop();"
                                        + " const style = getComputedStyle(coat);"
                                        + " const length = parseFloat(style.strokeDasharray);"
                                        + " const whole = way.getTotalLength();"
                                        + " const at = (((length - parseFloat(style.strokeDashoffset)) % whole) +"
                                        + " whole) % whole; const p = way.getPointAtLength(at); return [p.x, p.y]; })()");
                double[] marks = middles(moving);
                assertThat(Math.hypot(front[0] - marks[2], front[1] - marks[3])).isLessThan(3);
            }
        }
    }

    @Test
    void itMovesInsideAnImage() throws IOException {
        Scene scene = Exported.scene("isolation vs four-petal antispin");
        saved("moving.svg", MovingSvg.of(scene, STILL));
        saved("lesson.html", "<!doctype html><img src=\"moving.svg\" alt=\"\">");
        var context = browser().newContext(screen(620, 620));
        var page = context.newPage();
        page.navigate(folder.resolve("lesson.html").toUri().toString());
        byte[] before = page.screenshot();
        // It moves on by itself: a few frames later there is another picture.
        boolean moved = false;
        for (int i = 0; i < 300 && !moved; i++) {
            Chromium.frames(page, 3);
            moved = !Arrays.equals(before, page.screenshot());
        }
        assertThat(moved).isTrue();
        context.close();
    }

    @Test
    void whoWantsLessMotionSeesTheStill() throws IOException {
        Scene scene = Exported.scene("isolation vs four-petal antispin");
        Path file = saved("moving.svg", MovingSvg.of(scene, STILL.at(0.3)));
        var options = screen(600, 600).setReducedMotion(ReducedMotion.REDUCE);
        try (Exported calm = Exported.file(browser(), file, options)) {
            for (String id : List.of("left-head", "right-tether", "left-head-trail")) {
                assertThat(shown(calm, id)).as(id).isEqualTo("none");
                assertThat(shown(calm, "resting-" + id)).as(id).isEqualTo("inline");
            }
        }
        try (Exported moving = Exported.file(browser(), file, screen(600, 600))) {
            assertThat(shown(moving, "left-head")).isEqualTo("inline");
            assertThat(shown(moving, "resting-left-head")).isEqualTo("none");
        }
    }

    private static String shown(Exported seen, String id) {
        return seen.text("getComputedStyle(document.getElementById('" + id + "')).display");
    }

    @Test
    void itHoldsNoScriptAndNoAddressAndEveryNameOnce() throws IOException {
        Scene scene = Exported.scene("isolation vs four-petal antispin");
        String svg = MovingSvg.of(scene, STILL.with(Palette.Theme.DARK).clear());
        assertThat(svg).doesNotContain("<script").doesNotContain("javascript:");
        assertThat(svg.replace("http://www.w3.org/2000/svg", "")).doesNotContain("http");
        try (Exported moving = open(saved("moving.svg", svg))) {
            assertThat(
                            moving.is(
                                    "new Set([...document.querySelectorAll('[id]')].map(e => e.id)).size"
                                            + " === document.querySelectorAll('[id]').length"))
                    .isTrue();
            assertThat(moving.text("document.querySelector('title').textContent"))
                    .isEqualTo("isolation & <four petals>");
        }
    }

    @Test
    void aLinkThatIsClosedAtTheStillsMomentStillComesApartLater() throws IOException {
        Scene scene = Exported.scene("static spin vs triquetra, opposite");
        try (Exported moving = open(saved("moving.svg", MovingSvg.of(scene, STILL.at(0.25))))) {
            double most = 0;
            for (int i = 0; i < 12; i++) {
                stop(moving, i / 12.0);
                most =
                        Math.max(
                                most,
                                moving.number(
                                        "(l => l ? Math.hypot(l.x1.animVal.value - l.x2.animVal.value,"
                                                + " l.y1.animVal.value - l.y2.animVal.value) : 0)"
                                                + "(document.querySelector('#left-link line'))"));
            }
            assertThat(most).isGreaterThan(100);
        }
    }
}
