package deferent.take;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.page.sheet.Taught;
import deferent.page.web.Site;
import deferent.page.web.TaughtShelf;
import deferent.reading.body.Performer;
import deferent.record.DemoShelf;
import deferent.record.PatternDocument;
import deferent.record.SetDocument;
import deferent.record.SetStep;
import deferent.record.Shelf;
import deferent.tell.Told;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import nu.validator.validation.SimpleDocumentValidator;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.ErrorHandler;
import org.xml.sax.InputSource;
import org.xml.sax.SAXParseException;

/** A small site in a folder. */
class SiteTakeTest {
    private static final String RING = "Ring under the eaves";
    private static final String SMALL = "A ring too small";
    private static final FileTime LONG_AGO = FileTime.fromMillis(1_000_000_000_000L);

    @TempDir static Path made = Path.of("");

    @TempDir Path folder = Path.of("");

    private static TaughtShelf taught = new TaughtShelf("", List.of(), 0, List.of(), Lexicon.EMPTY);
    private static String told = "";
    private static SortedMap<String, byte[]> files = new TreeMap<>();

    @BeforeAll
    static void makeOne() throws IOException {
        SiteTake take = new SiteTake(shelf().with(Map.of("transitions", "no")));
        taught = take.hall().taught(at -> {}, () -> false).orElseThrow();
        // Comparing takes long; what it finds is said here as it would be.
        Taught ring = taught.patterns().get(0);
        Told easy = new Told("next", Told.Tone.NOTE, "On 1 the right hand slides over.", "");
        taught = with(0, ring.pattern(), List.of(new Taught.Next(SMALL, easy)));
        told = put(made, taught);
        files = read(made);
    }

    /** The shelf with one pattern of other words. */
    private static TaughtShelf with(int at, PatternDocument pattern, List<Taught.Next> next) {
        Taught old = taught.patterns().get(at);
        List<Taught> all = new ArrayList<>(taught.patterns());
        all.set(
                at,
                new Taught(
                        pattern,
                        old.phrase(),
                        old.trace(),
                        old.view(),
                        old.seen(),
                        old.moments(),
                        old.side(),
                        old.dangers(),
                        old.does(),
                        old.drawn(),
                        old.links(),
                        old.watch(),
                        next));
        return new TaughtShelf(
                taught.title(), all, taught.listed(), taught.sets(), taught.lexicon());
    }

    private static String put(Path folder, TaughtShelf shelf) {
        SortedMap<String, byte[]> pages = Site.of(shelf, done -> {}, () -> false).orElseThrow();
        return SiteFolder.at(folder).put(pages).told();
    }

    private static PatternDocument demo(String name) {
        return PatternDocument.among(DemoShelf.documents()).stream()
                .filter(pattern -> pattern.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** Three patterns, one of them too fast, and a set of two. */
    private static HallTake shelf() {
        List<PatternDocument> all = new ArrayList<>(List.of(demo(RING), demo(SMALL)));

        all.add(
                PatternDocument.of(
                        "Index",
                        Phrase.parse("static spin vs triquetra, tempo 180").pairing(),
                        Performer.USUAL));
        List<SetStep> steps =
                List.of(
                        new SetStep(new SetStep.Held(all.get(0)), 8),
                        new SetStep(new SetStep.Held(all.get(1)), 8));
        SetDocument set = SetDocument.of("Two <rings> & a gate", steps);
        Shelf.Listing listing = new Shelf.Listing(List.of(), List.of(), 0);
        return new HallTake(
                "Rings",
                all,
                List.of(HallTake.Wanted.on(listing, set, Optional.empty(), false)),
                Lexicon.EMPTY);
    }

    private static SortedMap<String, byte[]> read(Path folder) throws IOException {
        SortedMap<String, byte[]> read = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                String path = folder.relativize(file).toString().replace('\\', '/');
                read.put(path, Files.readAllBytes(file));
            }
        }
        return read;
    }

    private static String text(String path) {
        return new String(files.get(path), java.nio.charset.StandardCharsets.UTF_8);
    }

    private static List<String> pages() {
        return files.keySet().stream().filter(path -> path.endsWith(".html")).toList();
    }

    /** Put into another folder as they are, each file as if it had been written long ago. */
    private void copy() throws IOException {
        for (var file : files.entrySet()) {
            Path to = folder.resolve(file.getKey());
            Files.createDirectories(to.resolveSibling("."));
            Files.write(to, file.getValue());
            Files.setLastModifiedTime(to, LONG_AGO);
        }
    }

    private SortedSet<String> touched() throws IOException {
        SortedSet<String> touched = new TreeSet<>();
        for (String path : read(folder).keySet()) {
            if (!Files.getLastModifiedTime(folder.resolve(path)).equals(LONG_AGO)) {
                touched.add(path);
            }
        }
        return touched;
    }

    @Test
    void everyPatternAndSetHasAPageThatIsCalledAfterIt() {
        assertThat(pages())
                .containsExactly(
                        "a-ring-too-small.html",
                        "index-2.html",
                        "index.html",
                        "ring-under-the-eaves.html",
                        "two-rings-a-gate.html");
        assertThat(told).isEqualTo("5 pages written, 0 kept, 0 removed");
        assertThat(files).containsKeys("site.js", "site.css", "pictures/index-2-poses.svg");
    }

    /** As a browser or a server finds them, with a style sheet that follows its rules. */
    @Test
    void everyPageAndTheStyleSheetAreValid() throws Exception {
        List<String> wrong = new ArrayList<>();
        SimpleDocumentValidator rules = rules(wrong);
        for (String page : pages()) {
            check(rules, page, text(page));
        }
        rules.checkCssFile(made.resolve("site.css").toFile(), true);
        assertThat(wrong).isEmpty();
        check(
                rules,
                "broken",
                text(Site.INDEX).replaceFirst("</ul>", "<p>").replaceAll("alt=", "al="));
        Path style = Files.writeString(folder.resolve("broken.css"), "p { colour: red }");
        rules.checkCssFile(style.toFile(), true);
        assertThat(wrong)
                .as("the check itself")
                .anyMatch(one -> one.contains("alt"))
                .anyMatch(one -> one.contains("colour"));
    }

    private static SimpleDocumentValidator rules(List<String> wrong) throws Exception {
        ErrorHandler heard =
                new ErrorHandler() {
                    @Override
                    public void warning(SAXParseException at) {
                        error(at);
                    }

                    @Override
                    public void error(SAXParseException at) {
                        wrong.add(
                                at.getSystemId()
                                        + ":"
                                        + at.getLineNumber()
                                        + " "
                                        + at.getMessage());
                    }

                    @Override
                    public void fatalError(SAXParseException at) {
                        error(at);
                    }
                };
        SimpleDocumentValidator rules = new SimpleDocumentValidator(true);
        rules.setUpMainSchema("http://s.validator.nu/html5-all.rnc", heard);
        rules.setUpValidatorAndParsers(heard, true, false);
        rules.setAllowCss(true);
        return rules;
    }

    private static void check(SimpleDocumentValidator rules, String page, String html)
            throws Exception {
        rules.checkHtmlInputSource(source(page, html));
    }

    private static InputSource source(String path, String text) {
        InputSource source = new InputSource(new StringReader(text));
        source.setSystemId("https://site.test/" + path);
        return source;
    }

    @Test
    void noPageAsksAnythingOfAnybodyButItsFolder() {
        Pattern asked = Pattern.compile("(?:src|href|data-moves)=\"([^\"]*)\"");
        for (String page : pages()) {
            String html = text(page);
            assertThat(html)
                    .contains("default-src 'none'")
                    .doesNotContain("unsafe")
                    .doesNotContain("://")
                    .doesNotContain(" style=")
                    .doesNotContain("<style")
                    .doesNotContain("onclick");
            Matcher found = asked.matcher(html);
            int links = 0;
            while (found.find()) {
                String to = found.group(1).replaceFirst("#.*", "");
                boolean moves = found.group().startsWith("data");
                assertThat(
                                to.equals("data:,")
                                        || files.containsKey(moves ? "moves/" + to + ".js" : to))
                        .as(page + " asks for " + to)
                        .isTrue();
                links++;
            }
            assertThat(links).isGreaterThan(5);
        }
        for (String path : files.keySet()) {
            String own = text(path).replace("http://www.w3.org/2000/svg", "");
            assertThat(own).as(path).doesNotContain("http://").doesNotContain("https://");
        }
    }

    @Test
    void everyPageHasOneHeadingATitleALanguageAndADescription() {
        for (String page : pages()) {
            assertThat(text(page).split("<h1", -1)).as(page).hasSize(2);
            assertThat(text(page))
                    .contains("<html lang=\"en\">")
                    .containsPattern("<title>[^<]{5,}</title>")
                    .containsPattern("name=\"description\" content=\"[^\"]{20,}\"")
                    .contains("Clear the space")
                    .doesNotContain("<rings>");
        }
    }

    @Test
    void aPatternSaysWhatCanHurtThenHowToBeginThenWhatToWatchThenWhatComesNext() {
        String fast = text("index-2.html");
        assertThat(fast.indexOf("Danger: ")).isPositive().isLessThan(fast.indexOf("<figure"));
        String ring = text("ring-under-the-eaves.html");
        assertThat(ring).doesNotContain("Danger: ").contains("invented demo data");
        List<Integer> order =
                Stream.of(
                                "How to begin",
                                "It begins with",
                                "What to watch",
                                "What comes next",
                                "href=\"a-ring-too-small.html\"",
                                "href=\"two-rings-a-gate.html\"",
                                "Take care")
                        .map(ring::indexOf)
                        .toList();
        assertThat(order).isSorted().allMatch(at -> at > 0);
        assertThat(ring)
                .contains("alt=\"As it begins. Left hand: static spin; its head draws a figure")
                .contains("index.html#find=touching");
    }

    @Test
    void aSetHasItsPatternsInOrderWithTheirCountsAndThePassagesBetween() {
        String set = text("two-rings-a-gate.html");
        assertThat(set.indexOf("href=\"ring-under-the-eaves.html\""))
                .isPositive()
                .isLessThan(set.indexOf("href=\"a-ring-too-small.html\""));
        assertThat(set).contains("8 counts, from 0 s").contains("class=\"onward\"");
        assertThat(text("moves/two-rings-a-gate.js"))
                .startsWith("deferentSite.put('two-rings-a-gate', {")
                .containsPattern("\"wait_s\":[0-9.]+,\"passage\":\\{\"period_s\"");
    }

    @Test
    void writtenAgainNothingIsTouched() throws IOException {
        copy();
        assertThat(put(folder, taught)).isEqualTo("0 pages written, 5 kept, 0 removed");
        assertThat(touched()).isEmpty();
    }

    @Test
    void aChangedPatternChangesItsPageAndTheIndexAlone() throws IOException {
        copy();
        PatternDocument other = taught.patterns().get(1).pattern().withNote("Other words.");
        assertThat(put(folder, with(1, other, List.of())))
                .isEqualTo("2 pages written, 3 kept, 0 removed");
        assertThat(touched())
                .containsExactly("a-ring-too-small.html", SiteFolder.LIST, "index.html");
    }

    @Test
    void onlyWhatWasWrittenByASiteAndNotChangedSinceIsRemoved() throws IOException {
        copy();
        Files.writeString(folder.resolve("mine.html"), "mine");
        Files.writeString(folder.resolve("index-2.html"), "changed by hand");
        SortedMap<String, byte[]> fewer = new TreeMap<>(files);
        fewer.remove(SiteFolder.LIST);
        fewer.keySet().removeIf(path -> path.contains("index-2") || path.contains("two-rings"));
        SiteFolder.Put put = SiteFolder.at(folder).put(fewer);
        assertThat(put.told())
                .isEqualTo(
                        "0 pages written, 3 kept, 1 removed; left as changed by hand: index-2.html");
        assertThat(read(folder).keySet())
                .contains("mine.html", "index-2.html")
                .doesNotContain("two-rings-a-gate.html", "moves/index-2.js");
        // What was changed by hand is somebody's from now on.
        assertThatThrownBy(() -> put(folder, taught))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("index-2.html")
                .hasMessageContaining("move it away");
    }

    @Test
    void aFolderOfOtherThingsIsRefusedAndAListThatLeadsOutOfItToo() throws IOException {
        Files.writeString(folder.resolve("holiday.txt"), "mine");
        assertThatThrownBy(() -> SiteFolder.at(folder))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("not of a site");
        assertThatThrownBy(() -> SiteFolder.at(folder.resolve("holiday.txt")))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("is a file");
        Files.writeString(folder.resolve(SiteFolder.LIST), "00  ../holiday.txt\n");
        assertThatThrownBy(() -> SiteFolder.at(folder))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("../holiday.txt");
        assertThat(folder.resolve("holiday.txt")).hasContent("mine");
    }

    @Test
    void aSiteThatIsStoppedWritesNothing() {
        Path site = folder.resolve("site");
        assertThat(new SiteTake(shelf()).write(site, at -> {}, () -> true)).isEmpty();
        assertThat(site).doesNotExist();
    }
}
