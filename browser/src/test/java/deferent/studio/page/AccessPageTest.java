package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.FilePayload;
import com.microsoft.playwright.options.ReducedMotion;
import deferent.sound.WaveFile;
import deferent.sound.tune.Manner;
import deferent.sound.tune.Tune;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Walks the states of the page and asks axe, in both themes and on both kinds of screen, what bars
 * anybody from it.
 */
class AccessPageTest extends InChromium {
    private static final String AXE = "/META-INF/resources/webjars/axe-core/4.6.3/axe.min.js";

    private static final String FOUND =
            """
            async () => (await axe.run(document, { resultTypes: ['violations'] })).violations
              .map((v) => v.id + ': ' + v.nodes.map((n) => n.target.join(' ')).join(', '))""";

    private static String axe() {
        try (InputStream in = AccessPageTest.class.getResourceAsStream(AXE)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Both sizes and both colours; every one with every other in the long form. */
    static List<Arguments> screens() {
        List<Arguments> screens =
                new ArrayList<>(
                        List.of(
                                Arguments.of(1280, 800, ColorScheme.DARK),
                                Arguments.of(400, 860, ColorScheme.LIGHT)));
        if (Boolean.getBoolean("deferent.deep")) {
            screens.add(Arguments.of(1280, 800, ColorScheme.LIGHT));
            screens.add(Arguments.of(400, 860, ColorScheme.DARK));
        }
        return screens;
    }

    @ParameterizedTest
    @MethodSource("screens")
    void axeFindsNothingInAnyState(int width, int height, ColorScheme scheme) {
        Browser.NewContextOptions options =
                screen(width, height).setReducedMotion(ReducedMotion.REDUCE).setColorScheme(scheme);
        List<String> found = new ArrayList<>();
        try (Visit visit = visit(options, "")) {
            Page page = visit.page();
            visit.settled();
            page.evaluate(axe());
            look(visit, "unasked", found);
            for (String door : List.of("reading", "sizes", "shelf", "next", "seek", "map", "set")) {
                page.locator("#tab-" + door).click();
                look(visit, door, found);
            }
            page.locator("#tab-next").click();
            page.locator(".next-one").first().click();
            visit.until("document.querySelector('.go-on')");
            look(visit, "a way into what comes next", found);
            page.keyboard().press("Escape");
            page.locator("#tab-set").click();
            page.keyboard().press("8");
            page.keyboard().press("s");
            visit.settled();
            page.keyboard().press("8");
            visit.until("deferentDesk.set.known && deferentDesk.set.steps.length === 2");
            look(visit, "a set", found);
            page.locator(".set-joint, .set-into").first().click();
            look(visit, "a transition of a set", found);
            page.evaluate("() => deferentDesk.set.show(false)");
            page.keyboard().press("s");
            visit.settled();
            visit.numbers();
            page.locator("#tab-reading").click();
            look(visit, "numbers", found);
            visit.page().evaluate("() => deferentDesk.session.keep('figure')");
            visit.settled();
            look(visit, "the figure kept", found);
            visit.tools();
            look(visit, "the menu", found);
            page.evaluate("() => deferentDesk.side.draw(false)");
            page.keyboard().press("o");
            look(visit, "the strip", found);
            page.keyboard().press("o");
            page.keyboard().press("j");
            look(visit, "the lesson look", found);
            page.keyboard().press("j");
            page.keyboard().press("g");
            visit.until("deferentDesk.session.letting");
            look(visit, "a poi let go", found);
            page.keyboard().press("Escape");
            for (String dialog : List.of("?", "w")) {
                page.keyboard().press(dialog);
                look(visit, "key " + dialog, found);
                page.keyboard().press("Escape");
            }
            page.keyboard().press("i");
            look(visit, "a film is asked for", found);
            page.locator(".film-drop input").setInputFiles(Path.of("..", "docs", "practice.mp4"));
            visit.until("document.querySelector('.film-told .told')");
            look(visit, "a film", found);
            page.locator(".film-point-anyway").click();
            look(visit, "lights to be pointed at", found);
            page.locator(".film-pointing button").click();
            page.keyboard().press("Escape");
            page.keyboard().press("Shift+I");
            look(visit, "a song is asked for", found);
            page.locator(".song-drop input").setInputFiles(tune());
            visit.until("document.querySelector('.song-beat')");
            page.locator(".song-beat").first().press("Enter");
            look(visit, "a song", found);
            page.keyboard().press("Escape");
            page.locator("#phrase").fill("isolation vs triqetra");
            visit.until("document.querySelector('.phrase-echo mark')");
            look(visit, "a wrong phrase", found);
            page.keyboard().press("Escape");
            page.evaluate("() => deferentDesk.session.live.dispatchEvent(new Event('close'))");
            visit.until("deferentDesk.unanswered");
            look(visit, "nobody answers", found);
        }
        assertThat(found).isEmpty();
    }

    /** A tune, rendered. */
    private static FilePayload tune() {
        float[] sound = Tune.of(Manner.plain(96, 3, 12), 8).sound(12_000);
        return new FilePayload("tune.wav", "audio/wav", WaveFile.bytes(sound, 12_000));
    }

    private static void look(Visit visit, String state, List<String> found) {
        visit.frames(2);
        visit.page().waitForTimeout(250);
        for (Object what : (List<?>) visit.page().evaluate(FOUND)) {
            found.add(state + ": " + what);
        }
    }
}
