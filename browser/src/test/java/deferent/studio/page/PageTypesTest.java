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
import java.util.stream.Collectors;
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
        return asked("complaints", of);
    }

    private static List<?> asked(String what, Map<String, String> of) {
        Map<String, Object> asked = new HashMap<>(of);
        asked.put("folders", List.of(STUDIO, SHARED));
        return (List<?>) page.evaluate("asked => " + what + "(asked)", asked);
    }

    /** The complaints by the file they are of, named below its folder. */
    private static Map<String, List<String>> byFile(List<?> complaints) {
        return complaints.stream()
                .map(Object::toString)
                .collect(
                        Collectors.groupingBy(
                                told ->
                                        ("/" + told.substring(0, told.indexOf(':')))
                                                .replace(STUDIO, "")
                                                .replace(SHARED, "")));
    }

    /**
     * Files not on the list of those that are not yet strict are, and one that has become so goes
     * from the list: it only ever gets shorter.
     */
    @Test
    void everyFileButThoseListedIsStrict() throws IOException {
        List<String> listed =
                Files.readAllLines(Path.of("src/test/resources/typescript/not-strict.txt"));
        Map<String, List<String>> strict = byFile(asked("strictComplaints", Map.of()));
        assertThat(
                        strict.entrySet().stream()
                                .filter(e -> !listed.contains(e.getKey()))
                                .flatMap(e -> e.getValue().stream()))
                .as("not strict")
                .isEmpty();
        assertThat(listed)
                .as("strict by now, so no longer to be listed")
                .isSubsetOf(strict.keySet());
    }

    @Test
    void noFileHasANameNeverUsedALooseEqualALetThatNeverChangesOrANameThatHidesAnother() {
        assertThat(asked("habits", Map.of())).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            textBlock =
                    """
                    steps | if (i === 1) f(i);                                      |
                    steps | if (i == 1) f(i);                                       | takes unlike things
                    steps | let j = i; f(j);                                        | j is never changed
                    steps | let j = i; j = 2; f(j);                                 |
                    steps | let j = i; [j] = [2]; f(j);                             |
                    steps | let j = i; ({ j } = { j: 2 }); f(j);                    |
                    steps | for (let j = 0; j < i; j++) f(j);                       |
                    steps | for (let j of [i]) f(j);                                | j is never changed
                    steps | let { j } = { j: i }; f(j);                             | j is never changed
                    steps | const j = i;                                            | 'j' is declared but
                    steps | for (const j of [i]) { f(j); for (const j of [i]) f(j); }  | j hides another j
                    steps | [i].map((i) => f(i));                                   | i hides another i
                    steps | for (const j of [i]) f(j); for (const j of [i]) f(j);   |
                    """)
    void eachHabitIsSeenAndNothingElse(String file, String says, String complaint) {
        String text =
                "/** @param {number} i */ const f = (i) => i; "
                        + "/** @param {number} i */ export function g(i) { "
                        + says
                        + " f(i); }";
        List<?> found =
                asked("habits", Map.of("of", STUDIO + "state/" + file + ".js", "text", text));
        if (complaint == null) {
            assertThat(found).isEmpty();
        } else {
            assertThat(found).hasSize(1);
            assertThat(found.get(0)).asString().contains(complaint);
        }
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
                    state/transitions.js | limit: ROWS               | most: ROWS
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
