package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.phrase.Words;
import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The guide is true today: whatever it shows as printed or drawn by a command is what that command
 * prints and draws now, and its links lead somewhere.
 *
 * <p>A printed output is a block of kind {@code console} that begins with its command. A picture
 * has its command in a comment before it; of a command that makes a PDF it is the first page.
 */
class GuideTest {
    private static final Path HOUSE = Path.of("..");
    private static final Path ANEW = Path.of("target", "docs");

    private static final Pattern PRINTED =
            Pattern.compile("(?m)^```console\n\\$ (\\./deferent .*)\n((?:(?!```).*\n)*)```$");
    private static final Pattern DRAWN =
            Pattern.compile("(?m)^<!-- (\\./deferent .*) -->\n!\\[[^\\]]+\\]\\(([\\w.-]+)\\)$");
    private static final Pattern WORDS =
            Pattern.compile("(?m)^<!-- words: ([A-Z]+) -->\n(?:\n?(?:\\|.*\n)*)");
    private static final Pattern FEW = Pattern.compile("(head|tail) -n (\\d+)");
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)#\\s]+)(?:#[^)]*)?\\)");
    private static final Pattern PHRASE = Pattern.compile("`([^`\n]* (?:vs|riding) [^`\n]*)`");

    private static final String ANEW_BY = "make it anew with: cp -r app/target/docs/. docs/";

    /** Two machines draw the edges of letters a little differently, on average, of 255. */
    private static final double LIKE = 0.5;

    @TempDir private static Path folder;
    private static final Map<String, String> SAID = new HashMap<>();

    @BeforeAll
    static void aDemoShelf() throws IOException {
        new Desk(folder).good("shelf", "demo");
        Files.createDirectories(ANEW.resolve("guide"));
    }

    private static List<Path> pages() throws IOException {
        try (Stream<Path> chapters = Files.list(HOUSE.resolve("docs/guide"))) {
            return Stream.concat(
                            Stream.of("README.md", "words.md", "mathematics.md")
                                    .map(HOUSE.resolve("docs")::resolve),
                            chapters.filter(f -> f.toString().endsWith(".md")).sorted())
                    .toList();
        }
    }

    /** What a command line prints, with a filter behind it or without. */
    private static String said(String line) {
        String[] pipe = line.split(" \\| ", 2);
        String out = SAID.computeIfAbsent(pipe[0], GuideTest::run).replace(folder + "/", "");
        return pipe.length == 1 ? out : piped(out, pipe[1]);
    }

    /** A file that it writes goes into the test's folder. */
    private static String run(String command) {
        String[] words =
                WORD.matcher(command).results().skip(1).map(GuideTest::word).toArray(String[]::new);
        for (int i = 1; i < words.length; i++) {
            if (words[i - 1].equals("--out")) {
                words[i] = folder.resolve(words[i]).toString();
            }
        }
        return new Desk(folder).good(words).out();
    }

    private static String word(MatchResult found) {
        String word = found.group(1) == null ? found.group(2) : found.group(1);
        return word.startsWith("docs/") ? HOUSE.resolve(word).toString() : word;
    }

    /** As {@code head -n 3} has it, or {@code tail}. */
    private static String piped(String out, String filter) {
        List<String> lines = out.lines().toList();
        Matcher few = FEW.matcher(filter);
        assertThat(few.matches()).as(filter).isTrue();
        int count = Integer.parseInt(few.group(2));
        return String.join(
                "\n",
                few.group(1).equals("head")
                        ? lines.subList(0, count)
                        : lines.subList(lines.size() - count, lines.size()));
    }

    /** The tool's words of one kind, as a table. */
    private static String table(String goes) {
        StringBuilder rows = new StringBuilder("\n| word | meaning |\n| --- | --- |\n");
        for (Words.Entry entry : Words.all(Lexicon.EMPTY)) {
            if (entry.goes() == Words.Goes.valueOf(goes)) {
                rows.append("| ").append(entry.word()).append(" | ").append(entry.means());
                if (!entry.sizesUnsaid().isEmpty()) {
                    rows.append(". Unless you say otherwise: ").append(entry.sizesUnsaid());
                }
                if (!entry.alsoSaid().isEmpty()) {
                    rows.append(". Also said: ").append(String.join(", ", entry.alsoSaid()));
                }
                rows.append(" |\n");
            }
        }
        return "<!-- words: " + goes + " -->\n" + rows;
    }

    private static String block(String command) {
        return "```console\n$ " + command + "\n" + said(command).stripTrailing() + "\n```";
    }

    @Test
    void whatIsShownAsPrintedIsWhatIsPrinted() throws IOException {
        List<Path> stale = new ArrayList<>();
        for (Path page : pages()) {
            String text = Files.readString(page);
            String now =
                    PRINTED.matcher(text)
                            .replaceAll(m -> Matcher.quoteReplacement(block(m.group(1))));
            now = WORDS.matcher(now).replaceAll(m -> Matcher.quoteReplacement(table(m.group(1))));
            assertThat(count(PRINTED, text))
                    .as("blocks of %s that begin with a command", page)
                    .isEqualTo(count(Pattern.compile("(?m)^```\\w"), text));
            Files.writeString(anew(page), now);
            // A wider terminal breaks lines elsewhere.
            if (!unwrapped(text).equals(unwrapped(now))) {
                stale.add(page);
            }
        }
        assertThat(stale).as(ANEW_BY).isEmpty();
        assertThat(SAID).hasSizeGreaterThan(5);
    }

    @Test
    void whatIsShownAsDrawnIsWhatIsDrawn() throws IOException {
        List<Path> stale = new ArrayList<>();
        for (Path page : pages()) {
            String text = Files.readString(page);
            assertThat(count(DRAWN, text))
                    .as("pictures of %s with the command that makes them", page)
                    .isEqualTo(count(Pattern.compile("!\\["), text));
            for (MatchResult one : DRAWN.matcher(text).results().toList()) {
                Path kept = page.resolveSibling(one.group(2));
                Path now = anew(kept);
                draw(one.group(1), now);
                if (!Files.exists(kept) || !alike(kept, now)) {
                    stale.add(kept);
                }
            }
        }
        assertThat(stale).as(ANEW_BY).isEmpty();
    }

    private static long count(Pattern pattern, String text) {
        return pattern.matcher(text).results().count();
    }

    private static String unwrapped(String text) {
        return text.replaceAll("\\s+", " ");
    }

    private static Path anew(Path file) {
        return ANEW.resolve(HOUSE.resolve("docs").relativize(file));
    }

    private static void draw(String command, Path picture) throws IOException {
        said(command);
        String[] words = command.split(" ");
        Path made = folder.resolve(words[words.length - 1]);
        if (!made.toString().endsWith(".pdf")) {
            Files.copy(made, picture, StandardCopyOption.REPLACE_EXISTING);
            return;
        }
        try (PDDocument print = Loader.loadPDF(made.toFile())) {
            BufferedImage page = new PDFRenderer(print).renderImageWithDPI(0, 96, ImageType.RGB);
            ImageIO.write(page, "png", picture.toFile());
        }
    }

    /** The same file; of pixels, as good as the same. */
    private static boolean alike(Path one, Path other) throws IOException {
        if (!one.toString().endsWith(".png")) {
            return Files.mismatch(one, other) < 0;
        }
        Raster a = ImageIO.read(one.toFile()).getRaster();
        Raster b = ImageIO.read(other.toFile()).getRaster();
        if (!a.getBounds().equals(b.getBounds())) {
            return false;
        }
        double sum = 0;
        for (int y = 0; y < a.getHeight(); y++) {
            for (int x = 0; x < a.getWidth(); x++) {
                sum += Math.abs(a.getSample(x, y, 0) - b.getSample(x, y, 0));
            }
        }
        return sum < LIKE * a.getWidth() * a.getHeight();
    }

    @Test
    void everyLinkOfThePagesLeadsSomewhere() throws IOException {
        List<Path> all;
        try (Stream<Path> docs = Files.list(HOUSE.resolve("docs"))) {
            all =
                    Stream.of(
                                    Stream.of("README.md", "CONTRIBUTING.md").map(HOUSE::resolve),
                                    docs.filter(f -> f.toString().endsWith(".md")),
                                    pages().stream())
                            .flatMap(s -> s)
                            .distinct()
                            .toList();
        }
        for (Path page : all) {
            assertThat(LINK.matcher(Files.readString(page)).results().map(m -> m.group(1)))
                    .filteredOn(link -> !link.startsWith("https://"))
                    .allSatisfy(
                            link ->
                                    assertThat(page.resolveSibling(link))
                                            .as("link of " + page)
                                            .exists());
        }
    }

    @Test
    void everyPhraseOfTheGuideIsRead() throws IOException {
        for (Path page : pages()) {
            PHRASE.matcher(Files.readString(page))
                    .results()
                    .filter(m -> !m.group(1).startsWith("./"))
                    .forEach(m -> assertThat(Phrase.parse(m.group(1)).pairing()).isNotNull());
        }
    }

    /** Every year that a comment of the mathematics gives with its source. */
    @Test
    void everySourceOfTheCodeIsOnThePageOfTheMathematics() throws IOException {
        String page = Files.readString(HOUSE.resolve("docs/mathematics.md"));
        Pattern year = Pattern.compile("\\b((?:18|19|20)\\d\\d)\\)");
        List<String> rooms = List.of("motion", "reading", "search", "sound", "film");
        for (String room : rooms) {
            try (Stream<Path> files = Files.walk(HOUSE.resolve(room + "/src/main/java"))) {
                for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                    assertThat(year.matcher(Files.readString(file)).results().map(m -> m.group(1)))
                            .as("years of the sources that " + file + " names")
                            .allSatisfy(y -> assertThat(page).contains(y));
                }
            }
        }
    }
}
