package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.page.Face;
import deferent.page.Palette;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Whatever a browser is given names only letters that come along with it. */
class TypefacesTest {
    /** What may follow for scripts of which no letters come along. */
    private static final Set<String> LAST = Set.of("serif", "sans-serif");

    private static final Set<String> SAID_ELSEWHERE =
            Set.of("inherit", "var(--serif)", "var(--sans)");

    /** A family in a style sheet, in an attribute, or in a canvas's font. */
    private static final Pattern FAMILY =
            Pattern.compile(
                    "(?:font-family|--serif|--sans)\\s*[:=]\\s*[\"']?([^;\"'}]+(?:'[^']+'[^;\"}]*)*)");

    private static final Pattern SHORT = Pattern.compile("[;{\\s]font:([^;}]*)[;}]");

    /** What stands for a number in a style sheet: a sum, or a variable that is no family. */
    private static final Pattern NUMBER =
            Pattern.compile("(?:clamp|calc)\\([^()]*\\)|var\\(--(?!serif|sans)[\\w-]+\\)");

    /** All before the families: weight, size, line height. */
    private static final Pattern SIZES = Pattern.compile("^.*[\\d.](?:rem|px|em|%)?\\s+(?=\\D)");

    private static final Pattern CANVAS = Pattern.compile("'\\d+px ([^']*)'");

    private static Map<String, String> sources() throws IOException {
        Map<String, String> sources = new TreeMap<>();
        Path house = Path.of("").toAbsolutePath().getParent();
        for (String folder :
                List.of(
                        "studio/src/main/resources/deferent/studio/page",
                        "page/src/main/resources/deferent/page/web")) {
            try (Stream<Path> files = Files.walk(house.resolve(folder))) {
                for (Path file :
                        files.filter(f -> f.toString().matches(".*\\.(css|js|html|svg)"))
                                .toList()) {
                    sources.put(house.relativize(file).toString(), Files.readString(file));
                }
            }
        }
        assertThat(sources).hasSizeGreaterThan(30);
        return sources;
    }

    private static Set<String> families(String source) {
        Set<String> families = new TreeSet<>();
        for (Pattern pattern : List.of(FAMILY, SHORT, CANVAS)) {
            Matcher said = pattern.matcher(source);
            while (said.find()) {
                String plain = NUMBER.matcher(said.group(1)).replaceAll("1");
                String list = SIZES.matcher(plain).replaceFirst("");
                for (String family : list.split(",")) {
                    families.add(family.strip().replaceAll("['\"]", ""));
                }
            }
        }
        families.removeAll(SAID_ELSEWHERE);
        families.remove("");
        return families;
    }

    @Test
    void noFamilyIsNamedThatDoesNotComeAlong() throws IOException {
        Set<String> ours =
                Arrays.stream(Face.values()).map(Face::family).collect(Collectors.toSet());
        sources()
                .forEach(
                        (file, source) ->
                                assertThat(families(source))
                                        .as(file)
                                        .isSubsetOf(
                                                Stream.concat(ours.stream(), LAST.stream())
                                                        .collect(Collectors.toSet())));
        assertThat(families(Palette.css())).isEmpty();
    }

    @Test
    void aFamilyOfTheMachinesWouldBeSeen() {
        assertThat(families("a { font-family: 'Segoe UI', Roboto; }")).contains("Segoe UI");
        assertThat(families("a { font: 600 var(--plain) / 1.3 Georgia, serif; }"))
                .contains("Georgia");
        assertThat(families("a {\n  font: 0.75rem/1.5 ui-monospace, monospace;\n}"))
                .contains("ui-monospace");
        assertThat(families("a { font: 400 clamp(1rem, 2vw, 3rem)/1.2 Palatino; }"))
                .contains("Palatino");
        assertThat(families("ctx.font = '11px Arial';")).contains("Arial");
        assertThat(families("<text font-family=\"Verdana\">")).contains("Verdana");
    }

    /** What stands in for a sign that a family lacks would differ from machine to machine. */
    @Test
    void everySignOfThePagesIsInAFaceThatComesAlong() throws IOException {
        sources()
                .forEach(
                        (file, source) -> {
                            String said =
                                    source.replaceAll("(?s)/\\*.*?\\*/", "")
                                            .replaceAll("(?m)^\\s*//.*$", "");
                            assertThat(said.codePoints().filter(sign -> sign >= ' '))
                                    .as(file)
                                    .allMatch(
                                            sign -> Face.REGULAR.has(sign) || Face.SERIF.has(sign));
                        });
    }

    @Test
    void theStyleSheetsRulesLeadToTheFilesThatEverythingIsDrawnWith() throws IOException {
        String css = sources().get("studio/src/main/resources/deferent/studio/page/css/tokens.css");
        Matcher rule =
                Pattern.compile(
                                "font-family: (\\w+);\\s*font-weight: [\\d ]+;\\s*src: url\\('\\.\\./([^']+)'\\)")
                        .matcher(css);
        Assets assets = new Assets(Optional.empty());
        Set<String> found = new TreeSet<>();
        while (rule.find()) {
            String path = rule.group(2);
            Assets.Asset file =
                    (path.startsWith("vendor/roboto/")
                                    ? assets.vendor(
                                            "roboto", path.substring("vendor/roboto/".length()))
                                    : assets.page(path))
                            .orElseThrow();
            assertThat(file.kind()).isEqualTo("font/ttf");
            for (Face face : Face.values()) {
                if (Arrays.equals(face.file(), file.bytes())) {
                    assertThat(face.family()).isEqualTo(rule.group(1));
                    found.add(face.name());
                }
            }
        }
        assertThat(found)
                .containsExactlyInAnyOrderElementsOf(
                        Arrays.stream(Face.values()).map(Enum::name).toList());
    }

    /** As both licences demand of whoever hands the files on. */
    @Test
    void theLicencesComeAlong() throws IOException {
        assertThat(text("/com/formdev/flatlaf/fonts/roboto/LICENSE.txt"))
                .contains("Apache License");
        assertThat(text("/deferent/page/web/type/literata-OFL.txt"))
                .contains("The Literata Project Authors", "SIL OPEN FONT LICENSE");
    }

    private static String text(String resource) throws IOException {
        try (var in = Face.class.getResourceAsStream(resource)) {
            assertThat(in).as(resource).isNotNull();
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
