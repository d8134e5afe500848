package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Media;
import com.microsoft.playwright.options.ReducedMotion;
import deferent.page.web.Site;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The site of the demo, opened from its folder by a browser that has no network. */
class SitePageTest extends InChromium {
    private static final String AXE = "/META-INF/resources/webjars/axe-core/4.6.3/axe.min.js";
    private static final Path PUBLISHED = Path.of("../docs/site");
    private static final String RING = "ring-under-the-eaves.html";
    private static final String SET = "six-for-the-lantern-night.html";

    @TempDir static Path folder = Path.of("");

    /** Pages as they are published, with the script and the style as they are made now. */
    @BeforeAll
    static void layTheSiteOut() throws IOException {
        try (Stream<Path> all = Files.walk(PUBLISHED)) {
            for (Path from : all.toList()) {
                Path to = folder.resolve(PUBLISHED.relativize(from).toString());
                if (Files.isDirectory(from)) {
                    Files.createDirectories(to);
                } else {
                    Files.copy(from, to);
                }
            }
        }
        for (Map.Entry<String, String> file : Site.shared().entrySet()) {
            Files.writeString(folder.resolve(file.getKey()), file.getValue());
        }
    }

    private static Browser.NewContextOptions phone() {
        return screen(390, 844).setDeviceScaleFactor(2).setHasTouch(true).setOffline(true);
    }

    private static Exported open(String page, Browser.NewContextOptions options) {
        Exported site = Exported.page(browser(), folder.resolve(page), options);
        site.page().waitForLoadState();
        return site;
    }

    private static void look(Exported site, String name) {
        Path shots = Path.of("target", "site");
        site.page()
                .screenshot(
                        new Page.ScreenshotOptions()
                                .setPath(shots.resolve(name + ".png"))
                                .setFullPage(true));
    }

    /** Small figures move once they come into view, and stand still when they are asked to. */
    @Test
    void theIndexMovesWhatIsInViewUntilItIsHeldStill() {
        try (Exported site = open(Site.INDEX, phone())) {
            site.until("document.querySelectorAll('.small.moving').length > 1");
            String last = "document.querySelector('moving-thumb').last";
            site.until(last + " > 0");
            double all = site.number("document.querySelectorAll('.small').length");
            assertThat(site.number("document.querySelectorAll('.small.moving').length"))
                    .as("those far below are not fetched yet")
                    .isLessThan(all);
            look(site, "index-390-light");
            site.page().locator("#still").tap();
            Chromium.frames(site.page(), 3);
            double before = site.number(last);
            site.page().waitForTimeout(300);
            assertThat(site.number(last)).isEqualTo(before);
            assertThat(site.number("document.documentElement.scrollWidth")).isEqualTo(390);
        }
        try (Exported site = open(Site.INDEX, phone().setReducedMotion(ReducedMotion.REDUCE))) {
            site.until("document.body.classList.contains('ready')");
            site.page().waitForTimeout(300);
            assertThat(site.page().locator("moving-thumb").count()).isZero();
            assertThat(site.page().locator("#still").isVisible()).isFalse();
        }
    }

    @Test
    void theSearchFindsNamesPhrasesLabelsAndWordsHoweverTheyAreSpelt() {
        try (Exported site = open(Site.INDEX, phone())) {
            Locator shown = site.page().locator("[data-words]:visible b");
            Locator field = site.page().locator("#find input");
            int all = shown.count();
            assertThat(all).isEqualTo(26);
            field.fill("late lant");
            assertThat(shown.allTextContents()).containsExactly("The late lantern");
            field.fill("CATEYE isolation");
            assertThat(shown.allTextContents()).contains("The late lantern");
            assertThat(shown.count()).isLessThan(6);
            field.fill("touching");
            assertThat(shown.allTextContents()).contains("Ring under the eaves");
            field.fill("globe of paper");
            assertThat(shown.allTextContents()).containsExactly("The paper globe");
            field.fill("elephant");
            assertThat(shown.count()).isZero();
            assertThat(site.page().locator("#find output").textContent())
                    .isEqualTo("Nothing here has all these words.");
            field.fill("");
            assertThat(shown.count()).isEqualTo(all);
        }
        // A label on a pattern's page leads to all that bear it.
        try (Exported site = open(RING, phone())) {
            site.page().locator(".labels a").getByText("touching").click();
            site.until("document.querySelector('#find input')?.value === 'touching'");
            assertThat(site.page().locator("[data-words]:visible b").allTextContents())
                    .contains("Ring under the eaves")
                    .doesNotContain("The paper globe");
        }
    }

    @Test
    void aPatternPlaysSlowsIsSeenFromOtherSidesAndByOneHand() {
        try (Exported site = open(RING, screen(1280, 900).setOffline(true))) {
            site.until("window.deferentSite.show?.pattern");
            assertThat(site.page().locator(".large > img").isVisible()).isFalse();
            look(site, "pattern-1280-light");
            String show = "deferentSite.show.";
            assertThat(site.is(show + "player.playing")).isFalse();
            assertThat(site.is(show + "player.aloud")).isFalse();
            // By keys alone.
            site.page().locator("#show #slower").focus();
            site.page().keyboard().press("Enter");
            assertThat(site.number(show + "player.speed")).isCloseTo(0.9, within(1e-9));
            site.page().evaluate("() => document.activeElement.blur()");
            site.page().keyboard().press("Space");
            site.until(show + "player.gone > 0.2");
            site.page().keyboard().press("Space");
            assertThat(site.is(show + "player.playing")).isFalse();
            double before = site.number(show + "figure.drawn");
            site.page().waitForTimeout(200);
            assertThat(site.number(show + "figure.drawn")).isEqualTo(before);
            site.page().getByText("Right alone").click();
            assertThat(site.page().locator(".letter[data-side=left]").isVisible()).isFalse();
            site.page().getByText("Mirror", new Page.GetByTextOptions().setExact(true)).click();
            assertThat(site.number(show + "figure.camera.flip")).isEqualTo(-1);
        }
    }

    /** On a narrow screen the performer's own eyes see both hands all the way round. */
    @Test
    void ownEyesSeeTheWholeFigureOnAPhone() {
        try (Exported site = open("two-lamps-on-one-shelf.html", phone())) {
            site.until("window.deferentSite.show?.pattern");
            site.page().getByText("Own eyes").click();
            double[] across =
                    site.numbers(
                            "['left', 'right'].flatMap((side) => [...Array(24).keys()].map((i) =>"
                                    + " deferentSite.show.figure.place(side + '.head', i / 24)[0]))");
            double wide = site.number("document.querySelector('#show canvas').clientWidth");
            assertThat(Arrays.stream(across)).hasSize(48).allMatch(x -> x > 0 && x < wide);
        }
    }

    @Test
    void aSetPlaysItsPatternsOneAfterTheOtherWithThePassagesBetween() {
        try (Exported site = open(SET, screen(1280, 900).setOffline(true))) {
            site.until("window.deferentSite.show?.pattern");
            look(site, "set-1280-light");
            assertThat(site.page().locator("#steps > li").count()).isEqualTo(6);
            assertThat(site.page().locator("[aria-current=step]").textContent())
                    .contains("Ring at the gate");
            site.page().locator(".from-here").nth(4).click();
            assertThat(site.text("document.querySelector('#now').textContent"))
                    .isEqualTo("Rocking boats");
            site.until("deferentSite.show.player.gone > 0");
            site.page().evaluate("() => deferentSite.show.player.pace(2)");
            site.until("deferentSite.show.passing");
            assertThat(site.text("document.querySelector('#now').textContent"))
                    .isEqualTo("Into Wide open arms");
            site.until("!deferentSite.show.passing");
            assertThat(site.page().locator("[aria-current=step]").textContent())
                    .contains("Wide open arms");
        }
    }

    @Test
    void withoutScriptItIsReadAllTheSame() {
        try (Exported site = open(Site.INDEX, phone().setJavaScriptEnabled(false))) {
            assertThat(site.page().locator("#find").isVisible()).isFalse();
            assertThat(site.page().locator("#still").isVisible()).isFalse();
            site.page().locator(".cards a").first().click();
            site.page().waitForURL("**/" + RING);
            assertThat(site.page().locator("h1").textContent()).isEqualTo("Ring under the eaves");
            assertThat(site.page().locator("#show").isVisible()).isFalse();
            assertThat(site.page().locator(".large > img").isVisible()).isTrue();
            assertThat(site.page().locator(".large > img").boundingBox().width).isGreaterThan(300);
            assertThat(site.page().locator("main").innerText()).contains("It begins with");
        }
    }

    @Test
    void itPrintsTheWordsAndPicturesOnWhiteAndNothingToPress() {
        for (String page : List.of(Site.INDEX, RING, SET)) {
            try (Exported site = open(page, screen(1280, 900).setColorScheme(ColorScheme.DARK))) {
                site.until("document.body.classList.contains('ready')");
                if (!page.equals(Site.INDEX)) {
                    site.until("window.deferentSite.show?.pattern");
                }
                site.page().evaluate("() => scrollTo(0, document.body.scrollHeight)");
                site.page().waitForTimeout(200);
                site.page()
                        .pdf(new Page.PdfOptions().setPath(Path.of("target/site", page + ".pdf")));
                site.page().emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
                assertThat(
                                site.page()
                                        .locator("button:visible, input:visible, canvas:visible")
                                        .count())
                        .as(page)
                        .isZero();
                assertThat(site.page().locator("img:visible").count()).isPositive();
                assertThat(site.text("getComputedStyle(document.body).backgroundColor"))
                        .isEqualTo("rgb(251, 250, 247)");
            }
        }
    }

    @ParameterizedTest
    @EnumSource(names = {"LIGHT", "DARK"})
    void axeFindsNothingOnAnyKindOfPage(ColorScheme scheme) throws IOException {
        List<String> found = new ArrayList<>();
        for (String page : List.of(Site.INDEX, RING, SET, "round-the-brazier.html")) {
            try (Exported site = open(page, phone().setColorScheme(scheme))) {
                site.until("document.body.classList.contains('ready')");
                if (!page.equals(Site.INDEX)) {
                    site.until("window.deferentSite.show?.pattern");
                }
                try (InputStream in = SitePageTest.class.getResourceAsStream(AXE)) {
                    site.page().evaluate(new String(in.readAllBytes(), StandardCharsets.UTF_8));
                }
                Object all =
                        site.page()
                                .evaluate(
                                        "async () => (await axe.run(document, { preload: false, resultTypes: ['violations'] })).violations"
                                                + ".map((v) => v.id + ': ' + v.nodes.map((n) => n.target.join(' ')).join(', '))");
                ((List<?>) all).forEach(one -> found.add(page + ": " + one));
                // What axe itself does to a canvas is told of as well.
                site.forgive("willReadFrequently");
                look(site, page.replace(".html", "-390-" + scheme));
            }
        }
        assertThat(found).isEmpty();
    }
}
