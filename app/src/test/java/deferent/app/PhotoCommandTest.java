package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PhotoCommandTest {
    @TempDir Path folder;
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        List<String> all = new ArrayList<>(List.of("photo"));
        all.addAll(List.of(args));
        all.addAll(List.of("--shelf", folder.toString()));
        Desk.Answer answer = Desk.asked(all.toArray(String[]::new));
        out.write(answer.out());
        err.write(answer.err());
        return answer.code();
    }

    @Test
    void itTellsShutterFilmEyeAndBlinkingLight() {
        int code =
                run(
                        "static spin vs triquetra",
                        "--led-hz",
                        "400",
                        "--duty",
                        "50%",
                        "--shutter",
                        "1/2");
        assertThat(err.toString()).isEmpty();
        assertThat(code).isZero();
        assertThat(out.toString().replaceAll("\\s+", " "))
                .contains("In 0.5 s either light draws only 50% of its figure.")
                .contains("frames a second")
                .contains("between 6% and 20%")
                .contains("leaves 200 dots in 0.5 s");
    }

    /** Of whatever sentence speaks of a shutter: the one that was asked, or the one advised. */
    @ParameterizedTest
    @CsvSource({
        "static spin vs triquetra, , 1 s",
        "static spin vs triquetra, 1/2, 0.5 s",
        "static spin turns 3 vs triquetra, , 1 s",
        "static spin turns 3 vs triquetra, 1/15, 0.067 s",
        "CAP riding pendulum, , 1.83 s",
        "'triquetra vs static spin, tempo 37', , 1.62 s",
        "'triquetra vs static spin, tempo 37', 1.6s, 1.6 s",
        "isolation cycles 2 vs horizontal cat-eye cycles 3, 1/8000, 0.00013 s",
        "'extension vs isolation, tempo 1', , 60 s"
    })
    void oneShutterStandsInAllSentences(String phrase, String asked, String shutter) {
        List<String> args = new ArrayList<>(List.of(phrase, "--led-hz", "60"));
        if (asked != null) {
            args.addAll(List.of("--shutter", asked));
        }
        assertThat(run(args.toArray(String[]::new))).isZero();
        String text = out.toString().replaceAll("\\s+", " ");
        List<String> told =
                Pattern.compile("([0-9.]+ s)\\b(?!econd)")
                        .matcher(text)
                        .results()
                        .map(found -> found.group(1))
                        .toList();
        assertThat(told).as(text).hasSizeGreaterThan(2).containsOnly(shutter);
        assertThat(text.contains("Open the shutter for")).isEqualTo(asked == null);
    }

    @Test
    void jsonHasLengthsInMetresAndTimesInSeconds() {
        assertThat(run("static spin vs triquetra", "--json", "--led-hz", "400")).isZero();
        assertThat(out.toString())
                .contains("\"light_diameter_m\": 0.07")
                .contains("\"a_figure\": 400")
                .contains("\"shortest_s\": 0.06")
                .contains("\"mark\": \"1 s\"")
                .contains("\"cautions\": []");
    }

    @ParameterizedTest
    @CsvSource({
        "--led-hz, 0, rate of a blinking light",
        "--shutter, 1/0, exposure",
        "--shutter, -1s, shutter time",
        "--light-size, 0cm, diameter of the light",
        "--duty, 50%, --led-hz",
        "--duty, half, share",
    })
    void whatCannotBeIsRefused(String option, String value, String told) {
        assertThat(run("static spin vs triquetra", option, value))
                .isEqualTo(Exit.WRONG_WORDS.code());
        assertThat(err.toString()).contains(told);
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void thePreviewShowsAsManyDotsAsAreTold() throws Exception {
        Path picture = folder.resolve("light.png");
        int code =
                run(
                        "static spin vs triquetra",
                        "--led-hz",
                        "24",
                        "--duty",
                        "5%",
                        "--light-size",
                        "1cm",
                        "--preview",
                        picture.toString());
        assertThat(code).isZero();
        assertThat(out.toString().replaceAll("\\s+", " ")).contains("left light leaves 24 dots");
        assertThat(bluePatches(ImageIO.read(picture.toFile()))).isEqualTo(24);
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(p -> p.getFileName().toString()))
                    .noneMatch(name -> name.endsWith(".part"));
        }
    }

    @Test
    void anOlderPreviewStaysWhereANewOneCannotBeMade() throws Exception {
        Path picture = folder.resolve("light.gif");
        Files.writeString(picture, "older");
        assertThat(run("static spin vs triquetra", "--preview", picture.toString()))
                .isEqualTo(Exit.WRONG_WORDS.code());
        assertThat(picture).hasContent("older");
        assertThat(
                        run(
                                "static spin vs triquetra",
                                "--preview",
                                folder.resolve("nowhere/light.png").toString()))
                .isEqualTo(Exit.WRONG_WORDS.code());
        assertThat(err.toString()).contains("there is no folder");
    }

    /** Patches of pixels, joined edge to edge, that are clearly the left's blue. */
    private static int bluePatches(BufferedImage image) {
        boolean[][] blue = new boolean[image.getWidth()][image.getHeight()];
        for (int x = 0; x < image.getWidth(); x++) {
            for (int y = 0; y < image.getHeight(); y++) {
                Color c = new Color(image.getRGB(x, y));
                blue[x][y] = c.getBlue() > 150 && c.getBlue() > c.getRed() + 60;
            }
        }
        int patches = 0;
        for (int x = 0; x < blue.length; x++) {
            for (int y = 0; y < blue[x].length; y++) {
                if (blue[x][y]) {
                    patches++;
                    clear(blue, x, y);
                }
            }
        }
        return patches;
    }

    private static void clear(boolean[][] blue, int x, int y) {
        Deque<int[]> left = new ArrayDeque<>();
        left.add(new int[] {x, y});
        while (!left.isEmpty()) {
            int[] at = left.remove();
            if (at[0] < 0
                    || at[1] < 0
                    || at[0] >= blue.length
                    || at[1] >= blue[0].length
                    || !blue[at[0]][at[1]]) {
                continue;
            }
            blue[at[0]][at[1]] = false;
            for (int dx = -1; dx <= 1; dx++) {
                for (int dy = -1; dy <= 1; dy++) {
                    left.add(new int[] {at[0] + dx, at[1] + dy});
                }
            }
        }
    }
}
