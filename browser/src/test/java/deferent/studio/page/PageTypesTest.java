package deferent.studio.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What the page asks of the server, against the types of the protocol: the TypeScript compiler
 * reads the page's files as they are and says what does not fit.
 */
class PageTypesTest extends InChromium {
    private static final String STUDIO = "/studio/src/main/resources/deferent/studio/page/";
    private static final String SHARED = "/page/src/main/resources/deferent/page/web/";
    private static final String GIVEN = "/browser/src/test/resources/typescript/page.d.ts";
    private static final String COMPILER = "/META-INF/resources/webjars/typescript/5.9.3/lib/";
    private static final Pattern MORE = Pattern.compile("<reference lib=\"([\\w.]+)\" />");

    private static final Map<String, String> FILES = new HashMap<>();
    private static Page page;

    @BeforeAll
    static void loadCompiler() throws IOException {
        for (String folder : List.of(STUDIO, SHARED)) {
            try (Stream<Path> all = Files.walk(Path.of(".." + folder))) {
                all.map(path -> path.toString().replace('\\', '/').substring("..".length()))
                        .filter(name -> name.endsWith(".js") || name.endsWith(".d.ts"))
                        .forEach(name -> FILES.put(name, read(name)));
            }
        }
        assertThat(FILES).hasSizeGreaterThan(30).containsKey(STUDIO + "protocol.d.ts");
        FILES.put(GIVEN, read(GIVEN));
        for (String own : List.of("lib.es2023.d.ts", "lib.dom.d.ts", "lib.dom.iterable.d.ts")) {
            addLanguage(own);
        }
        page = browser().newPage();
        page.setDefaultTimeout(Chromium.PATIENCE);
        for (String script : List.of(COMPILER + "typescript.js", "/typescript/check.js")) {
            page.addScriptTag(new Page.AddScriptTagOptions().setContent(packed(script)));
        }
        page.evaluate("files => give(files)", FILES);
    }

    /** What the language and the browser themselves have. */
    private static void addLanguage(String name) {
        if (!FILES.containsKey("/lib/" + name)) {
            String text = packed(COMPILER + name);
            FILES.put("/lib/" + name, text);
            MORE.matcher(text).results().forEach(m -> addLanguage("lib." + m.group(1) + ".d.ts"));
        }
    }

    private static String read(String name) {
        try {
            return Files.readString(Path.of(".." + name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String packed(String resource) {
        try (InputStream in = PageTypesTest.class.getResourceAsStream(resource)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<?> complaints(Map<String, String> of) {
        Map<String, Object> asked = new HashMap<>(of);
        asked.put("folders", List.of(STUDIO, SHARED));
        return (List<?>) page.evaluate("asked => complaints(asked)", asked);
    }

    @Test
    void everyFileOfThePageFitsTheProtocol() {
        assertThat(complaints(Map.of())).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            textBlock =
                    """
                    state/session.js   | slip_m: slip                | slip: slip
                    state/crossings.js | crossing: i                 | moment: i
                    state/seek.js      | limit: LIMIT                | most: LIMIT
                    state/session.js   | detail: 'settled' })        | detail: 1 })
                    parts/sizes.js     | typed_in: 'cm'              | typed_in: 'inch'
                    main.js            | do: what                    | do: 'juggle'
                    state/map.js       | from: this.from, to         | to
                    state/session.js   | pattern: this.pattern, show | show
                    """)
    void aWrongKeyAWrongValueAndOneLeftOutAreSeen(String name, String is, String other) {
        String file = STUDIO + name;
        String text = FILES.get(file);
        assertThat(text).containsOnlyOnce(is);
        long line = text.substring(0, text.indexOf(is)).lines().count();
        assertThat(complaints(Map.of("of", file, "text", text.replace(is, other))))
                .isNotEmpty()
                .allSatisfy(
                        complaint ->
                                assertThat(complaint.toString())
                                        .startsWith(file.substring(1) + ":" + line + " "));
    }
}
