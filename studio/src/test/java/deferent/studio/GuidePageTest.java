package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GuidePageTest {
    private static final Path DOCS = Path.of("..", "docs");
    private static final Pattern ADDRESS = Pattern.compile("(?:href|src)=\"(docs/[^\"]*)\"");

    @TempDir static Path folder;
    private static Visitor visitor;

    @BeforeAll
    static void open() throws Exception {
        visitor = Visitor.to(StudioOptions.of(folder.resolve("shelf")));
    }

    @AfterAll
    static void close() {
        visitor.close();
    }

    private static String html(String markdown) {
        Set<String> held = Set.of("README.md", "guide/two.md", "guide/two.svg");
        return GuidePage.html("guide/one.md", markdown, held::contains).strip();
    }

    @Test
    void addressesAreTheStudiosOwn() {
        assertThat(html("[two](two.md) [all](../README.md)"))
                .isEqualTo(
                        "<p><a href=\"docs/guide/two.md\">two</a> <a href=\"docs/README.md\">all</a></p>");
        assertThat(html("![a ring](two.svg)"))
                .contains("<img src=\"docs/guide/two.svg\" alt=\"a ring\"");
        assertThat(html("[out](../../README.md) [*a film*](../film.mp4) [x](javascript:alert(1))"))
                .isEqualTo("<p>out <em>a film</em> x</p>");
        assertThat(html("![a ring](https://elsewhere.example/ring.svg)"))
                .isEqualTo("<p>a ring</p>");
    }

    @Test
    void aPageHasNoHtmlOfItsOwn() {
        assertThat(html("one <img src=x onerror=alert(1)> two"))
                .isEqualTo("<p>one &lt;img src=x onerror=alert(1)&gt; two</p>");
        assertThat(html("<script>alert(1)</script>")).doesNotContain("<script");
        assertThat(html("<!-- words: HAND -->")).isEmpty();
        assertThat(html("<!-- x --><script>alert(1)</script>")).doesNotContain("<script");
    }

    @Test
    void aPhraseLeadsToTheStage() {
        assertThat(html("say `isolation vs triquetra, split`"))
                .contains("href=\"#phrase=isolation+vs+triquetra%2C+split\"")
                .contains("<code>isolation vs triquetra, split</code></a>");
        assertThat(html("say `salt vs pepper`")).doesNotContain("href");
        assertThat(
                        html(
                                "<!-- ./deferent draw \"static spin vs triquetra\" --out two.svg -->\n![a ring](two.svg)"))
                .contains("href=\"#phrase=static+spin+vs+triquetra\"");
    }

    @Test
    void everyPageIsServedWithAllThatItPointsAt() throws IOException {
        List<String> pages;
        try (Stream<Path> files = Files.walk(DOCS, 2)) {
            pages =
                    files.map(file -> DOCS.relativize(file).toString().replace('\\', '/'))
                            .filter(file -> file.matches("(guide/)?[\\w-]+\\.md"))
                            .toList();
        }
        assertThat(pages).contains("README.md", "guide/first-link.md");
        for (String page : pages) {
            HttpResponse<String> answer = visitor.get("/docs/" + page);
            assertThat(answer.statusCode()).as(page).isEqualTo(200);
            assertThat(answer.headers().firstValue("Content-Type").orElse(""))
                    .startsWith("text/html");
            assertThat(answer.body()).startsWith("<h2>").doesNotContain("&lt;!--");
            ADDRESS.matcher(answer.body())
                    .results()
                    .map(m -> m.group(1))
                    .distinct()
                    .forEach(
                            to ->
                                    assertThat(visitor.get("/" + to).statusCode())
                                            .as(page + " points at " + to)
                                            .isEqualTo(200));
        }
        assertThat(visitor.get("/docs/README.md").body()).contains("src=\"docs/two-lights.svg\"");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/docs/../page/index.html",
                "/docs/..%2fpage%2findex.html",
                "/docs/guide/%2e%2e/%2e%2e/page/main.js",
                "/docs/guide/..%5c..%5cpage%5cmain.js",
                "/docs/lessons.pdf",
                "/docs/guide/",
                "/docs//etc/passwd"
            })
    void nothingElseIs(String path) {
        assertThat(visitor.get(path).statusCode()).isBetween(400, 404);
    }
}
