package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.ReducedMotion;
import deferent.motion.shared.Side;
import deferent.page.Scene;
import deferent.page.Track;
import deferent.page.View;
import deferent.page.web.LessonPage;
import deferent.reading.body.Performer;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class LessonPageTest extends InChromium {
    private static final String PHRASE = "isolation vs four-petal antispin, split time";

    @TempDir Path folder = Path.of("");

    private Exported open(Scene scene, Browser.NewContextOptions options) throws IOException {
        Readings readings = Readings.of(scene.trace().pairing(), Performer.USUAL, Detail.LIVE);
        Path file = folder.resolve("a lesson & more.html");
        Files.writeString(
                file,
                LessonPage.of(
                        scene, readings, "Lesson <one> & two", "Slowly.", View.Stand.AUDIENCE));
        Exported seen = Exported.file(browser(), file, options);
        seen.until("document.body?.classList.contains('ready')");
        return seen;
    }

    private Exported open() throws IOException {
        return open(Exported.scene(PHRASE), screen(1100, 900));
    }

    @Test
    void itOpensFromTheDiskAndPlaysByItself() throws IOException {
        try (Exported lesson = open()) {
            assertThat(lesson.is("deferentLesson.clock.playing")).isTrue();
            double before = lesson.number("deferentLesson.clock.phase");
            lesson.until("deferentLesson.clock.phase !== " + before);
            assertThat(lesson.text("document.title")).isEqualTo("Lesson <one> & two");
            assertThat(lesson.text("document.querySelector('.phrase').textContent"))
                    .contains("isolation");
        }
    }

    @ParameterizedTest
    @EnumSource(View.Stand.class)
    void whatIsDrawnIsTheSceneWithinHalfAPixelFromEveryPlace(View.Stand stand) throws IOException {
        Scene scene = Exported.scene(PHRASE);
        try (Exported lesson = open(scene, screen(1100, 900))) {
            lesson.page()
                    .locator(
                            "input[name=view][value="
                                    + stand.name().toLowerCase(java.util.Locale.ROOT)
                                    + "]")
                    .check();
            for (int moment : List.of(0, 77, 333, 501, 998)) {
                lesson.page()
                        .evaluate(
                                "m => { const r = document.querySelector('#moment'); r.value = m;"
                                        + " arcs.length = rects.length = 0;"
                                        + " r.dispatchEvent(new Event('input')); }",
                                moment);
                double time = moment / 1000.0 * scene.period();
                // The left's marks are round, the right hand's is square.
                assertThat(apart(lesson, "arcs", scene.at(Track.head(Side.LEFT), time)))
                        .isLessThan(0.5);
                assertThat(apart(lesson, "arcs", scene.at(Track.hand(Side.LEFT), time)))
                        .isLessThan(0.5);
                assertThat(apart(lesson, "rects", scene.at(Track.hand(Side.RIGHT), time)))
                        .isLessThan(0.5);
                double[] drawn = lesson.numbers("deferentLesson.place('right.head')");
                double[] meant = projected(lesson, scene.at(Track.head(Side.RIGHT), time));
                assertThat(Math.hypot(drawn[0] - meant[0], drawn[1] - meant[1])).isLessThan(0.5);
            }
        }
    }

    /** How far the nearest mark of a kind is drawn from where a point of the frame is seen. */
    private static double apart(Exported lesson, String marks, Vector3D point) {
        double[] meant = projected(lesson, point);
        double least = Double.POSITIVE_INFINITY;
        double[] all = lesson.numbers(marks + ".flat()");
        for (int i = 0; i < all.length; i += 2) {
            least = Math.min(least, Math.hypot(all[i] - meant[0], all[i + 1] - meant[1]));
        }
        return least;
    }

    private static double[] projected(Exported lesson, Vector3D p) {
        return lesson.numbers(
                "(() => { const at = [0, 0, 0]; deferentLesson.camera.project("
                        + p.getX()
                        + ","
                        + p.getY()
                        + ","
                        + p.getZ()
                        + ", at); return at; })()");
    }

    @Test
    void thePerformerAndTheMirrorHaveTheLeftOnTheLeft() throws IOException {
        try (Exported lesson = open()) {
            double middle = lesson.number("deferentLesson.camera.width / 2");
            assertThat(projected(lesson, new Vector3D(0.5, 0, 0))[0]).isGreaterThan(middle);
            lesson.page().getByLabel("Performer").check();
            assertThat(projected(lesson, new Vector3D(0.5, 0, 0))[0]).isLessThan(middle);
            lesson.page().getByLabel("Mirror").check();
            assertThat(projected(lesson, new Vector3D(0.5, 0, 0))[0]).isLessThan(middle);
        }
    }

    @Test
    void itIsWorkedWithTheKeyboardAlone() throws IOException {
        try (Exported lesson = open()) {
            var keys = lesson.page().keyboard();
            keys.press("Space");
            assertThat(lesson.is("deferentLesson.clock.playing")).isFalse();
            keys.press("[");
            assertThat(lesson.text("document.querySelector('#speed').textContent"))
                    .isEqualTo("quarter speed");
            keys.press("]");
            keys.press("]");
            assertThat(lesson.text("document.querySelector('#speed').textContent"))
                    .isEqualTo("full speed");
            assertThat(lesson.is("document.querySelector('#faster').disabled")).isTrue();
            double before = lesson.number("deferentLesson.clock.phase");
            keys.press(".");
            assertThat(
                            Math.floorMod(
                                    Math.round(
                                            48
                                                    * (lesson.number("deferentLesson.clock.phase")
                                                            - before)),
                                    48L))
                    .isEqualTo(1);
            keys.press("v");
            assertThat(lesson.is("document.querySelector('[value=performer]').checked")).isTrue();
            // Tab by tab to the play button, which Enter then presses.
            for (int i = 0; i < 12 && !lesson.is("document.activeElement.id === 'play'"); i++) {
                keys.press("Tab");
            }
            keys.press("Enter");
            assertThat(lesson.is("deferentLesson.clock.playing")).isTrue();
            for (int i = 0; i < 12 && !lesson.is("document.activeElement.id === 'moment'"); i++) {
                keys.press("Tab");
            }
            keys.press("Home");
            assertThat(lesson.is("deferentLesson.clock.playing")).isFalse();
            assertThat(lesson.number("deferentLesson.clock.phase")).isZero();
        }
    }

    @Test
    void everythingThatCanBeWorkedHasANameThatIsReadOut() throws IOException {
        try (Exported lesson = open()) {
            Locator all = lesson.page().locator("main button, main input, canvas");
            for (int i = 0; i < all.count(); i++) {
                String name =
                        String.valueOf(
                                all.nth(i)
                                        .evaluate(
                                                "e => e.ariaLabel || e.labels?.[0]?.textContent ||"
                                                        + " e.textContent"));
                assertThat(name).isNotBlank();
            }
            assertThat(lesson.text("document.querySelector('canvas').ariaLabel"))
                    .contains("isolation")
                    .contains("petals");
            assertThat(lesson.text("document.querySelector('#moment').ariaValueText"))
                    .contains("count");
        }
    }

    @Test
    void theCountsFallWhereTheBeatsAre() throws IOException {
        try (Exported lesson = open()) {
            lesson.page().keyboard().press("Space");
            lesson.page().evaluate("() => deferentLesson.clock.seek(0.01)");
            assertThat(lesson.text("document.querySelector('#count').textContent")).isEqualTo("1");
            // Three turns of the right poi a cycle: the second beat begins after a third of it.
            lesson.page().evaluate("() => deferentLesson.clock.seek(0.34)");
            assertThat(lesson.text("document.querySelector('#count').textContent")).isEqualTo("2");
            lesson.page().evaluate("() => deferentLesson.clock.seek(0.99)");
            assertThat(lesson.text("document.querySelector('#count').textContent")).isEqualTo("3");
        }
    }

    @Test
    void whoWantsLessMotionIsNotGivenAny() throws IOException {
        try (Exported lesson =
                open(
                        Exported.scene(PHRASE),
                        screen(800, 800).setReducedMotion(ReducedMotion.REDUCE))) {
            assertThat(lesson.is("deferentLesson.clock.playing")).isFalse();
            lesson.page().locator("#play").click();
            assertThat(lesson.is("deferentLesson.clock.playing")).isTrue();
        }
    }

    @Test
    void fastLightsWaitUntilTheyAreAskedFor() throws IOException {
        // Three poi turns in half a second, at half speed: still just at three a second; faster.
        try (Exported lesson = open(Exported.scene(PHRASE, 180), screen(800, 800))) {
            assertThat(lesson.is("deferentLesson.clock.playing")).isFalse();
            lesson.page().locator("#play").click();
            assertThat(lesson.is("document.querySelector('.care').open")).isTrue();
            assertThat(lesson.text("document.querySelector('.care').textContent"))
                    .contains("three times a second");
            lesson.page().getByText("Stay paused").click();
            assertThat(lesson.is("deferentLesson.clock.playing")).isFalse();
            lesson.page().locator("#play").click();
            lesson.page().getByText("Play slower").click();
            lesson.until("deferentLesson.clock.playing");
            assertThat(
                            lesson.number(
                                    "deferentLesson.scene.turnsPerSecond() * deferentLesson.clock.speed"))
                    .isLessThanOrEqualTo(3);
        }
    }

    @Test
    void itIsDarkInTheDarkAndTheButtonTurnsItRound() throws IOException {
        try (Exported lesson =
                open(Exported.scene(PHRASE), screen(800, 800).setColorScheme(ColorScheme.DARK))) {
            assertThat(lesson.number("deferentLesson.ink.ground[0]")).isLessThan(0.2);
            lesson.page().locator("#colours").click();
            assertThat(lesson.number("deferentLesson.ink.ground[0]")).isGreaterThan(0.8);
            assertThat(lesson.text("getComputedStyle(document.documentElement).colorScheme"))
                    .isEqualTo("light");
        }
    }

    @Test
    void itsPolicyLetsNothingInButItself() {
        Scene scene = Exported.scene(PHRASE);
        Readings readings = Readings.of(scene.trace().pairing(), Performer.USUAL, Detail.LIVE);
        String html = LessonPage.of(scene, readings, "</script><b>");
        assertThat(html)
                .contains("default-src 'none'")
                .doesNotContain("unsafe")
                .doesNotContain("http://")
                .doesNotContain("https://")
                .doesNotContain("</script><b>");
        assertThat(html.length()).isCloseTo(190_000, within(60_000));
    }
}
