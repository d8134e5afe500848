package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import deferent.page.Scene;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A file that has left the house, open in a browser that has no network. On closing it sees to it
 * that nothing was logged as an error and nothing was asked for but the file itself.
 */
final class Exported implements AutoCloseable {
    private final BrowserContext context;
    private final Page page;
    private final List<String> troubles = new ArrayList<>();

    private Exported(BrowserContext context) {
        this.context = context;
        context.setDefaultTimeout(Chromium.PATIENCE);
        this.page = context.newPage();
        page.onConsoleMessage(
                message -> {
                    if (message.type().equals("error") || message.type().equals("warning")) {
                        troubles.add("console: " + message.text());
                    }
                });
        page.onPageError(error -> troubles.add("page error: " + error));
    }

    /** From the disk, as a student opens it. */
    static Exported file(Browser browser, Path file, Browser.NewContextOptions options) {
        return file(browser, file, file.toUri().toString(), options);
    }

    /** A page of a site, which may ask for what lies in its own folder. */
    static Exported page(Browser browser, Path file, Browser.NewContextOptions options) {
        return file(
                browser, file, file.resolveSibling(".").normalize().toUri().toString(), options);
    }

    private static Exported file(
            Browser browser, Path file, String own, Browser.NewContextOptions options) {
        Exported seen = new Exported(browser.newContext(options));
        seen.page.onRequest(
                request -> {
                    // What the page itself made and hands out stays in the browser.
                    if (!request.url().startsWith(own)
                            && !request.url().startsWith("data:")
                            && !request.url().startsWith("blob:")) {
                        seen.troubles.add("asked for " + request.url());
                    }
                });
        seen.page.addInitScript(
                "globalThis.arcs = []; globalThis.rects = [];"
                        + "const {arc, rect} = CanvasRenderingContext2D.prototype;"
                        + "CanvasRenderingContext2D.prototype.arc = function (x, y, ...rest) {"
                        + " arcs.push([x, y]); return arc.call(this, x, y, ...rest); };"
                        + "CanvasRenderingContext2D.prototype.rect = function (x, y, w, h) {"
                        + " rects.push([x + w / 2, y + h / 2]); return rect.call(this, x, y, w, h); };");
        seen.page.navigate(file.toUri().toString());
        return seen;
    }

    /**
     * A page that holds nothing but a script, with the 3-D library at hand and no other address.
     */
    static Exported bench(Browser browser) {
        Exported seen = new Exported(browser.newContext());
        seen.context.route("**/*", Exported::library);
        seen.page.navigate("http://bench.test/");
        return seen;
    }

    private static void library(Route route) {
        String path = java.net.URI.create(route.request().url()).getPath();
        if (path.equals("/")) {
            route.fulfill(
                    new Route.FulfillOptions()
                            .setContentType("text/html")
                            .setBody(
                                    "<!doctype html><link rel=\"icon\" href=\"data:,\"><script"
                                            + " type=\"importmap\">{\"imports\": {\"three\":"
                                            + " \"/build/three.module.min.js\"}}</script>"));
            return;
        }
        try (InputStream in =
                Exported.class
                        .getClassLoader()
                        .getResourceAsStream("META-INF/resources/webjars/three/0.181.1" + path)) {
            if (in == null) {
                route.abort();
                return;
            }
            route.fulfill(
                    new Route.FulfillOptions()
                            .setContentType("text/javascript")
                            .setBodyBytes(in.readAllBytes()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Page page() {
        return page;
    }

    /** A trouble that the test made itself. */
    void forgive(String part) {
        troubles.removeIf(trouble -> trouble.contains(part));
    }

    void until(String expression) {
        Chromium.until(page, expression);
    }

    boolean is(String expression) {
        return Boolean.TRUE.equals(page.evaluate("() => !!(" + expression + ")"));
    }

    double number(String expression) {
        return ((Number) page.evaluate("() => Number(" + expression + ")")).doubleValue();
    }

    double[] numbers(String expression) {
        List<?> all = (List<?>) page.evaluate("() => Array.from(" + expression + ")");
        return all.stream().mapToDouble(n -> ((Number) n).doubleValue()).toArray();
    }

    String text(String expression) {
        return String.valueOf(page.evaluate("() => String(" + expression + ")"));
    }

    @Override
    public void close() {
        context.close();
        assertThat(troubles).as("what the browser complained of").isEmpty();
    }

    static Scene scene(String phrase) {
        return Scene.of(Trace.of(pairing(phrase)));
    }

    static Scene scene(String phrase, double tempo) {
        return Scene.of(Trace.of(pairing(phrase).withTempo(OptionalDouble.of(tempo))));
    }

    static Pairing pairing(String phrase) {
        return Phrase.parse(phrase).with(Tether.USUAL);
    }
}
