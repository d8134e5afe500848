package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.take.Ending;
import deferent.take.Endings;
import deferent.take.Wish;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class DrawCommandTest {
    private static final String PAIRING = "static spin vs triquetra";

    @TempDir Path folder;
    private Desk desk = new Desk(Path.of("."));

    @BeforeEach
    void ask() {
        desk = new Desk(folder);
    }

    private Path file(String name) {
        return folder.resolve(name);
    }

    @ParameterizedTest
    @MethodSource("deferent.take.Endings#all")
    void aPairingIsTakenAwayAsEveryEnding(Ending ending) throws IOException {
        Path file = file("taken." + ending.key());
        boolean sized = !ending.many() && ending.takes(Wish.SIZE);
        List<String> words =
                sized
                        ? List.of("draw", PAIRING, "--size", "96", "--out", file.toString())
                        : List.of("draw", PAIRING, "--out", file.toString());
        assertThat(desk.good(words.toArray(String[]::new)).out()).startsWith("Drawn: " + file);
        assertThat(Files.size(file)).isPositive();
        assertThat(desk.good("draw", "--help").out())
                .contains("." + ending.key())
                .contains(ending.words());
    }

    @Test
    void thePageOnTakingAwayTellsOfEveryEnding() throws IOException {
        assertThat(Files.readString(Path.of("..", "docs", "taking-away.md")))
                .contains(Endings.all().stream().map(e -> "`." + e.key() + "`").toList());
    }

    /** Short work starts faster with a lesser compiler, which many frames would pay for. */
    @Test
    void theFirstCommandKnowsEveryClip() throws IOException {
        String first = Files.readString(Path.of("..", "deferent"));
        assertThat(Endings.all().stream().filter(Ending::filmed))
                .isNotEmpty()
                .allMatch(clip -> first.contains("draw\\ *." + clip.key() + "\\ *"));
    }

    @Test
    void aPictureHasTheSizeMomentAndLayersAskedFor() throws IOException {
        Path png = file("still.png");
        desk.good(
                "draw",
                PAIRING,
                "--out",
                png.toString(),
                "--size",
                "300x200",
                "--at",
                "1/4",
                "--without",
                "link,tether",
                "--transparent",
                "--caption",
                "no");
        assertThat(ImageIO.read(png.toFile()).getWidth()).isEqualTo(300);
        assertThat(ImageIO.read(png.toFile()).getHeight()).isEqualTo(200);
        assertThat(ImageIO.read(png.toFile()).getRGB(0, 0) >>> 24).isZero();
        Path svg = file("still.svg");
        desk.good("draw", PAIRING, "--out", svg.toString(), "--without", "link");
        assertThat(Files.readString(svg)).contains("left-head-trail").doesNotContain("-link\"");
    }

    /** JavaCPP looks for natives of a platform that there is none of. */
    private String withoutNatives(Path out) throws IOException, InterruptedException {
        Process process =
                new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-Dorg.bytedeco.javacpp.platform=none",
                                "-Djava.awt.headless=true",
                                "-cp",
                                System.getProperty("java.class.path"),
                                "deferent.app.Deferent",
                                "draw",
                                PAIRING,
                                "--size",
                                "96",
                                "--out",
                                out.toString())
                        .redirectErrorStream(true)
                        .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return process.waitFor() + " " + said;
    }

    @Test
    void whereTheVideoLibrariesDoNotLoadEverythingElseIsStillWritten() throws Exception {
        Path mp4 = file("clip.mp4");
        assertThat(withoutNatives(mp4))
                .startsWith("1 ")
                .contains("the video libraries do not load on this machine")
                .contains("PNG files in a zip");
        assertThat(mp4).doesNotExist();
        for (String name : List.of("clip.zip", "still.png")) {
            assertThat(withoutNatives(file(name))).startsWith("0 ").contains("Drawn: ");
            assertThat(Files.size(file(name))).isPositive();
        }
    }

    @Test
    void aClipOfFastLightsIsHandedOverWithACaution() {
        String fast = "static spin vs triquetra, tempo 120";
        String clip = file("clip.zip").toString();
        assertThat(desk.good("draw", fast, "--size", "96", "--out", clip).text())
                .contains("Caution: ")
                .contains("4 times a second")
                .contains("WCAG");
        assertThat(desk.good("draw", fast, "--size", "96", "--slow", "1/2", "--out", clip).text())
                .doesNotContain("Caution");
        assertThat(desk.good("draw", fast, "--out", file("still.svg").toString()).text())
                .doesNotContain("Caution");
    }

    @Test
    void theDemoShelfBecomesOneBooklet() throws IOException {
        Path pdf = file("lessons.pdf");
        assertThat(desk.good("draw", "demo", "--transitions", "no", "--out", pdf.toString()).text())
                .contains("booklet of 12");
        assertThat(Files.size(pdf)).isGreaterThan(50_000);
        assertThat(desk.bad("draw", "demo", "--out", file("demo.png").toString()).err())
                .contains("12 patterns")
                .contains(".pdf");
        assertThat(desk.bad("draw", "shelf", "--out", file("mine.pdf").toString()).err())
                .contains("save one on the shelf first");
    }

    @Test
    void aSetOfTheShelfIsTakenToTheHallAndAPatternToALesson() throws IOException {
        Path hall = file("practice.html");
        desk.good(
                "set",
                "static spin vs static spin, 8",
                "extension vs extension, 8",
                "--keep",
                "Two circles");
        assertThat(desk.good("draw", "two circles", "--out", hall.toString()).text())
                .contains("hall file of 2 patterns and a set");
        assertThat(Files.readString(hall))
                .contains("<h1>Two circles</h1>")
                .contains("id=\"hall\"")
                .contains("id=\"scene-1\"")
                .doesNotContain("id=\"scene-2\"");
        assertThat(
                        desk.bad(
                                        "draw",
                                        "two circles",
                                        "--view",
                                        "mirror",
                                        "--out",
                                        hall.toString())
                                .err())
                .contains("means nothing for a hall file");
        desk.good("draw", PAIRING, "--out", hall.toString());
        assertThat(Files.readString(hall)).contains("id=\"scene\"").doesNotContain("id=\"hall\"");
    }

    /** {@code docs/taking-away.md} says which command makes it. */
    @Test
    void theBookletThatShipsIsTheOneThatItsCommandMakes() throws IOException {
        Path pdf = file("lessons.pdf");
        desk.good("draw", "demo", "--out", pdf.toString());
        Path shipped = Path.of("").toAbsolutePath().resolveSibling("docs/lessons.pdf");
        assertThat(text(pdf)).isEqualTo(text(shipped)).contains("Ring under the eaves");
    }

    private static String text(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return new PDFTextStripper().getText(document);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "picture.xyz | --size 96 | .mp4",
                "picture | --size 96 | has no ending",
                "picture.svg | --fps 25 | means nothing for a .svg",
                "picture.png | --moving yes | end the file in .svg",
                "clip.gif | --captions no | end the file in .mp4",
                "clip.mp4 | --form moment | means nothing for a .mp4",
                "sheet.pdf | --size 96 | moment or figure",
                "sheet.pdf | --form moment --transitions no | sheet or booklet",
                "picture.svg | --size huge | 1920x1080",
                "picture.png | --size 99999 | 16384",
                "picture.svg | --with hat | hand-path",
                "picture.svg | --at 0,1/2 | poses or a strip",
                "clip.mp4 | --fps 1000 | 29.97",
                "clip.mp4 | --size 97 | 96 or 98",
                "clip.mp4 | --size 9000 | at most 3840",
                "clip.mp4 | --transparent yes | webm",
                "clip.webm | --slow 0 | slow motion",
                "clip.webm | --cycles 1.5 | whole number",
                "table.csv | --rate 1e99 | rate",
                "table.csv | --rate 1000000 --cycles 100000000 | rows",
                "sheet.pdf | --paper a5 | a4 or letter",
                "none/sheet.pdf | --paper a4 | there is no folder",
            })
    void whatCannotBeIsRefusedAndTheOlderFileIsLeftAlone(String name, String wish, String told)
            throws IOException {
        Path file = file(name);
        if (Files.isDirectory(file.getParent())) {
            Files.writeString(file, "older");
        }
        List<String> words =
                Stream.concat(
                                Stream.of("draw", PAIRING, "--out", file.toString()),
                                Arrays.stream(wish.split(" ")))
                        .toList();
        assertThat(desk.bad(words.toArray(String[]::new)).err()).contains(told);
        if (Files.exists(file)) {
            assertThat(file).hasContent("older");
            try (Stream<Path> left = Files.list(folder)) {
                assertThat(left.filter(path -> path.toString().endsWith(".part"))).isEmpty();
            }
        }
    }

    @Test
    void aRouteIsPrintedInTheOrderItIsGone() throws IOException {
        String arms = "extension vs extension, tether 40 cm, tempo 60";
        String still = "extension vs static spin, tether 40 cm, tempo 60";
        Path pdf = file("route.pdf");
        assertThat(desk.good("route", arms, still, "--out", pdf.toString()).text())
                .contains("Drawn: ")
                .contains("booklet of 2");
        assertThat(Files.size(pdf)).isGreaterThan(10_000);
        assertThat(desk.bad("route", arms, still, "--out", "route.mp4").err()).contains(".pdf");
    }
}
