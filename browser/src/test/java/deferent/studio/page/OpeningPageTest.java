package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import deferent.studio.Opening;
import deferent.studio.Studio;
import deferent.studio.StudioOptions;
import org.junit.jupiter.api.Test;

/** How the page is opened, and what it says when it no longer can be. */
class OpeningPageTest extends InChromium {
    private static final String PHRASE = "#phrase=isolation+vs+triquetra";

    @Test
    void theFileLeadsToAPageWhoseAddressShowsNoKeyAndWhichCanBeReloaded() {
        try (Studio studio = Studio.start(StudioOptions.of(shelf));
                BrowserContext context = browser().newContext(screen(1280, 800))) {
            context.addInitScript(Visit.OPENED);
            Page page = context.newPage();
            Opening opening = studio.opening();
            Chromium.open(page, opening.file().toUri().toString());
            Chromium.until(page, "location.hash.startsWith('#phrase=')");
            assertThat(page.url()).startsWith(studio.address() + "#phrase=");
            String key = (String) page.evaluate("new URL(document.baseURI).pathname.slice(1, -1)");
            assertThat(key).matches("[A-Za-z0-9_-]{32}");
            assertThat(page.url()).doesNotContain(key);
            assertThat(opening.file()).doesNotExist();
            page.reload();
            Chromium.until(page, "document.body?.classList.contains('ready')");
            page.goBack();
            assertThat(page.url()).doesNotContain(key);
        }
    }

    @Test
    void aSecondPageAsksTheProgramAnewAndKeepsItsPattern() {
        try (Studio studio = Studio.start(StudioOptions.of(shelf));
                BrowserContext context = browser().newContext(screen(1280, 800))) {
            Page first = context.newPage();
            String way = Visit.address(studio, "");
            Chromium.open(first, way);
            Page second = context.newPage();
            second.navigate(studio.address() + PHRASE);
            Chromium.until(second, "!document.querySelector('main').hidden");
            assertThat(second.innerText("main"))
                    .contains("opens only for the person who started it")
                    .contains("Press Enter in the terminal")
                    .contains("The pattern in this address is kept");
            Page used = context.newPage();
            used.navigate(way);
            Chromium.until(used, "!document.querySelector('main').hidden");
            assertThat(used.innerText("main")).contains("has been used already");
            Page third = context.newPage();
            Chromium.open(third, Visit.address(studio, ""));
            Chromium.until(third, "deferentDesk.session.answer");
            assertThat(third.evaluate("deferentDesk.session.answer.phrase"))
                    .isEqualTo("isolation vs triquetra");
        }
    }

    @Test
    void aPageWhoseStudioWasStartedAnewSaysSoAndLosesNothing() {
        Studio studio = Studio.start(StudioOptions.of(shelf));
        int port = studio.port();
        try (BrowserContext context = browser().newContext(screen(1280, 800))) {
            Page page = context.newPage();
            Chromium.open(page, Visit.address(studio, PHRASE));
            Chromium.until(page, "location.hash.includes('triquetra')");
            studio.close();
            Chromium.until(
                    page,
                    "document.querySelector('.notice')?.textContent.includes('does not answer')");
            studio = Studio.start(StudioOptions.of(shelf).withPort(port));
            Chromium.until(
                    page, "document.querySelector('.notice')?.textContent.includes('key died')");
            assertThat(page.innerText(".notice"))
                    .contains("the pattern stands in this page’s address")
                    .contains("press Enter in its terminal");
            assertThat(page.url()).contains(PHRASE);
            page.reload();
            Chromium.until(page, "document.querySelector('main')?.hidden === false");
            assertThat(page.innerText("main"))
                    .contains("has been started again")
                    .contains("is kept");
            assertThat(page.url()).contains(PHRASE);
        } finally {
            studio.close();
        }
    }
}
