package deferent.studio.page;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.PlaywrightException;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The Chromium that is installed on this machine, without a window. None is ever downloaded. {@code
 * DEFERENT_BROWSER} names another than the first one on the path.
 */
final class Chromium implements AutoCloseable {
    /** First the one that never has a window: it draws the same and takes half the time over it. */
    private static final List<String> NAMES =
            List.of(
                    "chromium-headless-shell",
                    "chromium",
                    "chromium-browser",
                    "google-chrome",
                    "google-chrome-stable");

    /** How long a test waits for what must come, milliseconds: longer than any busy machine. */
    static final double PATIENCE = 120_000;

    private final Playwright driver;
    private final Browser browser;

    private Chromium(Playwright driver, Browser browser) {
        this.driver = driver;
        this.browser = browser;
    }

    /** Where it is, if there is one. */
    static Optional<Path> found() {
        String said = System.getenv("DEFERENT_BROWSER");
        if (said != null && !said.isBlank()) {
            return Optional.of(Path.of(said)).filter(Files::isExecutable);
        }
        List<String> folders = new ArrayList<>(List.of("/usr/bin", "/usr/local/bin", "/snap/bin"));
        String path = System.getenv("PATH");
        if (path != null) {
            folders.addAll(List.of(path.split(File.pathSeparator)));
        }
        return NAMES.stream()
                .flatMap(name -> folders.stream().map(folder -> Path.of(folder, name)))
                .filter(Files::isExecutable)
                .findFirst();
    }

    /**
     * Starts it.
     *
     * @param software draw WebGL in software, the same on every machine; else as the machine can
     */
    static Chromium start(Path executable, boolean software) {
        Playwright driver =
                Playwright.create(
                        new Playwright.CreateOptions()
                                .setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        List<String> arguments =
                new ArrayList<>(
                        List.of(
                                "--no-sandbox",
                                "--disable-gpu-sandbox",
                                "--disable-dev-shm-usage",
                                "--autoplay-policy=no-user-gesture-required",
                                "--force-color-profile=srgb"));
        if (software) {
            arguments.add("--disable-gpu");
            arguments.add("--enable-unsafe-swiftshader");
        }
        try {
            return new Chromium(
                    driver,
                    driver.chromium()
                            .launch(
                                    new BrowserType.LaunchOptions()
                                            .setExecutablePath(executable)
                                            .setHeadless(true)
                                            .setTimeout(PATIENCE)
                                            .setArgs(arguments)));
        } catch (RuntimeException e) {
            driver.close();
            throw e;
        }
    }

    Browser browser() {
        return browser;
    }

    /** Opens an address of the studio and waits until the page stands. */
    static void open(Page page, String address) {
        page.navigate(address);
        until(page, "document.body?.classList.contains('ready')");
    }

    /**
     * Waits until an expression is true in the page, as long as a busy machine may take. Asked from
     * outside, again and again, since the page's policy forbids the driver's own way of waiting;
     * more and more seldom, since asking takes time from what is waited for.
     */
    static void until(Page page, String expression) {
        long begun = System.nanoTime();
        while (!is(page, expression)) {
            double waited = (System.nanoTime() - begun) / 1e6;
            if (waited > PATIENCE) {
                throw new AssertionError("waited in vain for: " + expression);
            }
            page.waitForTimeout(Math.min(20 + waited / 10, 100));
        }
    }

    /** Lets the page draw itself that many times, however long it takes over it. */
    static void frames(Page page, int count) {
        page.evaluate(
                "count => new Promise(done => { const next = () => count-- > 0 ?"
                        + " requestAnimationFrame(next) : done(); next(); })",
                count);
    }

    private static boolean is(Page page, String expression) {
        try {
            return Boolean.TRUE.equals(page.evaluate("() => !!(" + expression + ")"));
        } catch (PlaywrightException gone) {
            // The shell goes on to the page, which may be in the middle of a question.
            if (String.valueOf(gone.getMessage()).contains("because of a navigation")) {
                return false;
            }
            throw gone;
        }
    }

    @Override
    public void close() {
        browser.close();
        driver.close();
    }
}
