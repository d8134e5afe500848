package deferent.studio.page;

import com.microsoft.playwright.Browser;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;

/**
 * Tests of the page in the installed Chromium. Where there is none they are skipped, saying so; but
 * where {@code CI=true} they fail, so that nobody takes a skipped page for a tested one.
 */
abstract class InChromium {
    private static @Nullable Chromium chromium;

    @TempDir Path shelf = Path.of("");

    @BeforeAll
    static void startChromium() {
        Optional<Path> found = Chromium.found();
        if (found.isEmpty()) {
            String told =
                    "no Chromium is installed, so the page is not tested: install chromium, or"
                            + " name one in DEFERENT_BROWSER";
            if ("true".equals(System.getenv("CI"))) {
                throw new AssertionError(told);
            }
            Assumptions.abort(told);
        }
        chromium = Chromium.start(found.orElseThrow(), true);
    }

    @AfterAll
    static void stopChromium() {
        if (chromium != null) {
            chromium.close();
            chromium = null;
        }
    }

    static Browser browser() {
        if (chromium == null) {
            throw new IllegalStateException("no browser was started");
        }
        return chromium.browser();
    }

    /**
     * Of a page that stands still until it is played: moving light costs a test most of its time.
     */
    Visit visit() {
        return Visit.to(browser(), shelf);
    }

    Visit movingVisit() {
        return visit(screen(1280, 800), "");
    }

    Visit visit(Browser.NewContextOptions options, String after) {
        return Visit.to(browser(), shelf, options, after);
    }

    static Browser.NewContextOptions screen(int width, int height) {
        return new Browser.NewContextOptions().setViewportSize(width, height);
    }
}
