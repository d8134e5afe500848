package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicContainer;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The modules of the page one by one, without a server: what each {@code modules/*.test.js} states
 * of them is run in the browser they are written for.
 */
class PageModulesTest extends InChromium {
    private static final String HOME = "http://modules.test/";
    private static final Path STATEMENTS = Path.of("src/test/resources/modules");

    /** Where a module is looked for, first to last. */
    private static final List<Path> FOLDERS =
            List.of(
                    STATEMENTS.getParent(),
                    Path.of("../studio/src/main/resources/deferent/studio/page"),
                    Path.of("../page/src/main/resources/deferent/page/web"));

    private static void answer(Route route) {
        String path = route.request().url().substring(HOME.length());
        for (Path folder : FOLDERS) {
            Path file = folder.resolve(path);
            if (Files.isRegularFile(file)) {
                String kind = path.endsWith(".html") ? "text/html" : "text/javascript";
                route.fulfill(
                        new Route.FulfillOptions()
                                .setPath(file)
                                .setContentType(kind + ";charset=utf-8"));
                return;
            }
        }
        route.fulfill(new Route.FulfillOptions().setStatus(404));
    }

    private static Page open() {
        BrowserContext context = browser().newContext(screen(800, 600));
        Page page = context.newPage();
        page.setDefaultTimeout(Chromium.PATIENCE);
        page.route(HOME + "**", PageModulesTest::answer);
        page.navigate(HOME + "modules/index.html");
        return page;
    }

    private static List<?> statements(Page page, String file) {
        return (List<?>)
                page.evaluate(
                        "async file => { await import('/modules/' + file); const {statements} ="
                                + " await import('/modules/statements.js'); window.statements ="
                                + " statements; return statements.map(s => s.says); }",
                        file);
    }

    private static void run(Page page, int statement) {
        Object wrong =
                page.evaluate(
                        "async i => { try { await statements[i].holds(); return ''; } catch (wrong)"
                                + " { return String(wrong.stack || wrong); } }",
                        statement);
        assertThat(wrong).asString().isEmpty();
    }

    private static DynamicContainer file(String name) {
        Page page = open();
        List<?> says = statements(page, name);
        assertThat(says).as(name).isNotEmpty();
        return DynamicContainer.dynamicContainer(
                name.replace(".test.js", ""),
                Stream.iterate(0, i -> i < says.size(), i -> i + 1)
                        .map(
                                i ->
                                        DynamicTest.dynamicTest(
                                                says.get(i).toString(), () -> run(page, i)))
                        .onClose(() -> page.context().close()));
    }

    @TestFactory
    Stream<DynamicContainer> whatIsStatedOfTheModulesHolds() throws IOException {
        try (Stream<Path> files = Files.list(STATEMENTS)) {
            List<String> names =
                    files.map(path -> path.getFileName().toString())
                            .filter(name -> name.endsWith(".test.js"))
                            .sorted()
                            .toList();
            assertThat(names).isNotEmpty();
            return names.stream().map(PageModulesTest::file);
        }
    }

    @Test
    void aStatementThatDoesNotHoldIsSeen() {
        Page page = open();
        for (String lie :
                List.of(
                        "s.same([1, 2], [1, 3])",
                        "s.same(undefined, null)",
                        "s.same(NaN, null)",
                        "s.near(0.3, 0.1)",
                        "s.near(NaN, 0)",
                        "s.sure(1, 'true')")) {
            Object wrong =
                    page.evaluate(
                            String.format(
                                    Locale.ROOT,
                                    "async () => { const s = await"
                                            + " import('/modules/statements.js'); try { %s; return"
                                            + " ''; } catch (e) { return e.message; } }",
                                    lie));
            assertThat(wrong).as(lie).asString().isNotEmpty();
        }
        page.context().close();
    }
}
