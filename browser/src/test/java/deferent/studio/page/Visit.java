package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.ConsoleMessage;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.ReducedMotion;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import deferent.studio.Studio;
import deferent.studio.StudioOptions;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.DoubleSupplier;

/**
 * One visit to a studio of its own: its server, a fresh browser profile and the page. On leaving it
 * sees to it that the page logged no error, asked nothing of any other address, and asked of its
 * own what the protocol's schema knows.
 */
final class Visit implements AutoCloseable {
    private static final Schema PROTOCOL =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(Studio.protocol());

    /** What the page keeps of whoever has been here before. */
    static final String OPENED =
            "try { localStorage.setItem('deferent.opened', 'yes') } catch { /* a sandboxed preview */ }";

    private final Studio studio;
    private final BrowserContext context;
    private final Page page;
    private final List<String> troubles = new ArrayList<>();
    private final List<String> questions = new CopyOnWriteArrayList<>();

    private Visit(Studio studio, BrowserContext context, Page page) {
        this.studio = studio;
        this.context = context;
        this.page = page;
    }

    /** To a page that stands still until it is played, since what is asked here rarely moves. */
    static Visit to(Browser browser, Path shelf) {
        return to(
                browser,
                shelf,
                new Browser.NewContextOptions()
                        .setViewportSize(1280, 800)
                        .setReducedMotion(ReducedMotion.REDUCE),
                "");
    }

    /**
     * @param after what follows the studio's address: "?stage=2d", "#phrase=..."
     */
    static Visit to(Browser browser, Path shelf, Browser.NewContextOptions options, String after) {
        return to(browser, shelf, options, after, true);
    }

    /** The first visit of somebody who has never opened a pattern here. */
    static Visit first(Browser browser, Path shelf, Browser.NewContextOptions options) {
        return to(browser, shelf, options, "", false);
    }

    private static Visit to(
            Browser browser,
            Path shelf,
            Browser.NewContextOptions options,
            String after,
            boolean again) {
        Studio studio = Studio.start(StudioOptions.of(shelf));
        BrowserContext context = browser.newContext(options);
        context.setDefaultTimeout(Chromium.PATIENCE);
        if (again) {
            context.addInitScript(OPENED);
        }
        Page page = context.newPage();
        Visit visit = new Visit(studio, context, page);
        visit.watch(page);
        Chromium.open(page, address(studio, after));
        return visit;
    }

    /**
     * A way in that has not been used.
     *
     * @param after what follows the studio's address: "?stage=2d", "#phrase=..."
     */
    static String address(Studio studio, String after) {
        String key = studio.opening().address().getFragment();
        int hash = after.indexOf('#');
        return hash < 0
                ? studio.address() + after + "#" + key
                : studio.address()
                        + after.substring(0, hash)
                        + "#"
                        + key
                        + "&"
                        + after.substring(hash + 1);
    }

    private void watch(Page seen) {
        String home = studio.address().toString();
        seen.onConsoleMessage(this::heard);
        seen.onPageError(error -> troubles.add("page error: " + error));
        seen.onRequest(
                request -> {
                    String url = request.url();
                    if (url.endsWith("/api/ask")) {
                        questions.add(request.postData());
                    }
                    if (!url.startsWith(home)
                            && !url.startsWith("blob:" + home)
                            && !url.startsWith("data:")) {
                        troubles.add("asked elsewhere: " + url);
                    }
                });
        seen.onWebSocket(
                socket -> {
                    socket.onFrameSent(frame -> questions.add(frame.text()));
                    if (!socket.url().startsWith(home.replace("http:", "ws:"))) {
                        troubles.add("asked elsewhere: " + socket.url());
                    }
                });
    }

    private void heard(ConsoleMessage message) {
        // The browser itself logs every refused request; those that a test provokes are answers.
        boolean answer = message.text().contains("status of 4");
        if (message.type().equals("error") && !answer) {
            troubles.add("console: " + message.text());
        }
    }

    /** A second tab of the same profile on the same studio. */
    Page secondTab() {
        Page second = context.newPage();
        watch(second);
        Chromium.open(second, address(studio, ""));
        return second;
    }

    Page page() {
        return page;
    }

    Studio studio() {
        return studio;
    }

    /** Opens the menu, where the tools of pattern, cord, view and time are. */
    void tools() {
        page.locator(".tools-open").click();
    }

    /** Has the readings tell everything, not three sentences. */
    void numbers() {
        page.evaluate("() => deferentDesk.tell('numbers')");
    }

    /** Has hands, cords and handles shown as long as the page stands. */
    void hands() {
        page.evaluate("() => deferentStage.ask(true)");
    }

    void until(String expression) {
        Chromium.until(page, expression);
    }

    void frames(int count) {
        Chromium.frames(page, count);
    }

    /**
     * Waits until a count stands still while the page draws itself twenty times more. On a busy
     * machine what is coming to rest may still be on its way; what never rests is told.
     *
     * @return the count at rest
     */
    double rests(String counted) {
        return rests(counted, () -> number(counted));
    }

    /**
     * @param what what is counted, for whoever reads that it never rests
     */
    double rests(String what, DoubleSupplier counted) {
        double was = counted.getAsDouble();
        for (int look = 0; look < 40; look++) {
            frames(20);
            double now = counted.getAsDouble();
            if (now == was) {
                return now;
            }
            was = now;
        }
        throw new AssertionError("never rests: " + what);
    }

    boolean is(String expression) {
        return Boolean.TRUE.equals(page.evaluate("() => !!(" + expression + ")"));
    }

    double number(String expression) {
        return ((Number) page.evaluate("() => Number(" + expression + ")")).doubleValue();
    }

    String text(String expression) {
        return String.valueOf(page.evaluate("() => String(" + expression + ")"));
    }

    /** Types a phrase as a person does and waits for its answer. */
    void say(String phrase) {
        Locator field = page.locator("#phrase");
        field.click();
        field.fill("");
        page.keyboard().type(phrase);
        page.keyboard().press("Enter");
        settled();
    }

    /** Waits until nothing is asked any more and the dear readings have come. */
    void settled() {
        until(
                "!deferentDesk.session.live.busy && (deferentDesk.session.error ||"
                        + " deferentDesk.session.answer?.detail === 'settled')");
    }

    double size(String key) {
        return number("deferentDesk.session.size('" + key + "').value");
    }

    /** Drags a handle by pixels, in ten moves. */
    void drag(String handle, double right, double down) {
        settled();
        double x = 0;
        double y = 0;
        // On a busy machine a handle may move on between the look at it and the press.
        for (int i = 0; i < 10 && !is("document.querySelector('.handle.held')"); i++) {
            page.mouse().up();
            frames(2);
            BoundingBox box = page.locator(".handle[data-key='" + handle + "']").boundingBox();
            x = box.x + box.width / 2;
            y = box.y + box.height / 2;
            page.mouse().move(x, y);
            page.mouse().down();
        }
        assertThat(is("document.querySelector('.handle.held')")).as("held " + handle).isTrue();
        for (int i = 1; i <= 10; i++) {
            page.mouse().move(x + right * i / 10, y + down * i / 10);
            Chromium.frames(page, 1);
        }
        page.mouse().up();
        settled();
    }

    @Override
    public void close() {
        context.close();
        studio.close();
        assertThat(troubles).as("what the page complained of").isEmpty();
        for (String question : questions) {
            assertThat(PROTOCOL.validate(question, InputFormat.JSON)).as(question).isEmpty();
        }
    }
}
