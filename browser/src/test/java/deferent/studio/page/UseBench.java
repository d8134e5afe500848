package deferent.studio.page;

import com.google.gson.JsonObject;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;
import deferent.studio.Studio;
import deferent.studio.StudioOptions;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Uses the page for some minutes as somebody at play does - phrases, drags of whatever lies under
 * the pointer, views, pauses - and tells how much memory its scripts hold after each of ten equal
 * spans, rubbish collected first. What is flat stays where it was after the first span, in which
 * code is still being compiled and caches fill.
 *
 * <p>Run it by {@code browser/bench-drag --use MINUTES}.
 */
final class UseBench {
    private static final List<String> PHRASES =
            List.of(
                    "isolation vs four-petal antispin",
                    "static spin vs triquetra",
                    "extension vs extension, opposites",
                    "CAP riding pendulum",
                    "isolation vs triquetra, floor plane",
                    "horizontal cat-eye vs isolation, split time");
    private static final int SPANS = 10;

    private final Page page;
    private final CDPSession session;
    private final Random random = new Random(1);

    private UseBench(Page page) {
        this.page = page;
        this.session = page.context().newCDPSession(page);
    }

    /** Megabytes that scripts hold after each span, the first being before any use. */
    static List<Double> measure(Browser browser, Path shelf, double minutes) {
        try (Studio studio = Studio.start(StudioOptions.of(shelf));
                BrowserContext context =
                        browser.newContext(
                                new Browser.NewContextOptions().setViewportSize(1280, 800))) {
            Page page = context.newPage();
            page.setDefaultTimeout(Chromium.PATIENCE);
            Chromium.open(page, Visit.address(studio, DragBench.PATTERN));
            Chromium.until(page, "deferentDesk.session.answer");
            page.evaluate("deferentStage.ask(true); deferentDesk.lights.know()");
            UseBench bench = new UseBench(page);
            List<Double> held = new ArrayList<>(List.of(bench.held()));
            for (int span = 0; span < SPANS; span++) {
                long until = System.nanoTime() + (long) (minutes * 60e9 / SPANS);
                while (System.nanoTime() < until) {
                    bench.play();
                }
                held.add(bench.held());
            }
            return held;
        }
    }

    private double held() {
        Chromium.until(page, "!deferentDesk.session.live.busy");
        session.send("HeapProfiler.collectGarbage");
        JsonObject used = session.send("Runtime.getHeapUsage");
        return used.get("usedSize").getAsDouble() / 1e6;
    }

    private void play() {
        switch (random.nextInt(6)) {
            case 0 ->
                    page.evaluate(
                            "phrase => deferentDesk.session.say(phrase)",
                            PHRASES.get(random.nextInt(PHRASES.size())));
            case 1 -> page.evaluate("deferentStage.nextView()");
            case 2 -> page.evaluate("deferentDesk.clock.play(!deferentDesk.clock.playing)");
            default -> drag();
        }
        page.waitForTimeout(60);
    }

    private void drag() {
        double x = 340 + random.nextInt(600);
        double y = 150 + random.nextInt(450);
        page.mouse().move(x, y);
        page.mouse().down();
        for (int i = 1; i <= 12; i++) {
            page.mouse().move(x + random.nextInt(60) - 30, y + random.nextInt(60) - 30);
        }
        page.mouse().up();
    }

    static String told(List<Double> held) {
        StringBuilder told = new StringBuilder("held by scripts, MB:");
        held.forEach(mb -> told.append(String.format(Locale.ROOT, " %.1f", mb)));
        double grown = held.get(held.size() - 1) - held.get(1);
        return told.append(
                        String.format(
                                Locale.ROOT, "%ngrown since the first span: %.1f MB%n", grown))
                .toString();
    }
}
