package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.film.FilmAsk;
import deferent.film.FilmReading;
import deferent.film.light.Lamps;
import deferent.film.light.LitSpot;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.page.Palette;
import deferent.reel.Reprint;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is taken away of the film that ships as an example, decoded again. */
class FilmTakenTest {
    private static final Path CLIP = Path.of("../docs/practice.mp4");
    private static final String MEANT = "static spin vs triquetra";

    @TempDir private Path folder;

    private record Frame(double time, BufferedImage picture) {}

    private static List<Frame> frames(Path film) throws IOException {
        List<Frame> all = new ArrayList<>();
        Reprint.look(
                film,
                (picture, time) -> {
                    BufferedImage copy =
                            new BufferedImage(
                                    picture.getWidth(),
                                    picture.getHeight(),
                                    BufferedImage.TYPE_INT_RGB);
                    copy.createGraphics().drawImage(picture, 0, 0, null);
                    return all.add(new Frame(time, copy));
                },
                share -> {},
                () -> false);
        return all;
    }

    private Path taken(String name, String... wishes) {
        Path file = folder.resolve(name);
        List<String> all =
                new ArrayList<>(List.of("film", CLIP.toString(), MEANT, "--out", file.toString()));
        all.addAll(List.of(wishes));
        Desk.Answer answer = Desk.asked(all.toArray(String[]::new));
        assertThat(answer.err()).isEmpty();
        assertThat(answer.code()).isZero();
        return file;
    }

    private static List<List<LitSpot>> lights() throws IOException {
        FilmAsk ask = FilmAsk.NOTHING.meaning(Phrase.parse(MEANT).pairing(), MEANT);
        return Lamps.without(
                FilmReading.Seen.of(CLIP, "practice", ask, s -> {}, () -> false)
                        .orElseThrow()
                        .frames());
    }

    /** Of the lights seen in a film, how many a print marks with a hand's ink there. */
    private static double marked(List<Frame> print, List<List<LitSpot>> lights, int later) {
        int all = 0;
        int marked = 0;
        for (int i = 0; i + later < print.size(); i++) {
            for (LitSpot spot : lights.get(i)) {
                all++;
                marked += inked(print.get(i + later).picture(), spot) ? 1 : 0;
            }
        }
        assertThat(all).isGreaterThan(300);
        return (double) marked / all;
    }

    private static boolean inked(BufferedImage picture, LitSpot spot) {
        double[] mean = new double[3];
        for (int dy = -1; dy <= 1; dy++) {
            for (int dx = -1; dx <= 1; dx++) {
                Color c =
                        new Color(
                                picture.getRGB(
                                        (int) Math.round(spot.x()) + dx,
                                        (int) Math.round(spot.y()) + dy));
                mean[0] += c.getRed() / 9.0;
                mean[1] += c.getGreen() / 9.0;
                mean[2] += c.getBlue() / 9.0;
            }
        }
        for (Side side : Side.values()) {
            Color ink =
                    (side == Side.LEFT ? Palette.Ink.LEFT : Palette.Ink.RIGHT)
                            .on(Palette.Theme.DARK);
            double off =
                    Math.abs(mean[0] - ink.getRed())
                            + Math.abs(mean[1] - ink.getGreen())
                            + Math.abs(mean[2] - ink.getBlue());
            if (off < 75) {
                return true;
            }
        }
        return false;
    }

    @Test
    void eachHeadIsMarkedWhereItsLightIsInEveryFrameAndAtItsTime() throws IOException {
        List<Frame> print = frames(taken("over.mp4"));
        List<Frame> film = frames(CLIP);
        assertThat(print).hasSameSizeAs(film);
        for (int i = 0; i < film.size(); i++) {
            assertThat(print.get(i).time()).isCloseTo(film.get(i).time(), within(2e-5));
        }
        assertThat(print.get(0).picture().getWidth()).isEqualTo(film.get(0).picture().getWidth());
        assertThat(print.get(0).picture().getHeight()).isEqualTo(film.get(0).picture().getHeight());
        List<List<LitSpot>> lights = lights();
        assertThat(marked(print, lights, 0)).isGreaterThan(0.9);
        // Three frames late it would be noticed. The film itself bears no marks, though some of its
        // lights are nearly of such a colour.
        assertThat(marked(print, lights, 3)).isLessThan(0.4);
        assertThat(marked(film, lights, 0)).isLessThan(0.4);
    }

    @Test
    void sideBySideAtHalfSpeedLastsTwiceAsLongAndLeavesTheFilmAsItWas() throws IOException {
        List<Frame> print = frames(taken("beside.mp4", "--form", "beside", "--slow", "1/2"));
        List<Frame> film = frames(CLIP);
        assertThat(print).hasSameSizeAs(film);
        int width = film.get(0).picture().getWidth();
        int height = film.get(0).picture().getHeight();
        assertThat(print.get(0).picture().getWidth()).isEqualTo(width + Math.min(width, height));
        List<List<LitSpot>> lights = lights();
        int apart = 0;
        int moves = 0;
        for (int i = 0; i < film.size(); i++) {
            assertThat(print.get(i).time()).isCloseTo(2 * film.get(i).time(), within(2e-5));
            for (LitSpot spot : lights.get(i)) {
                int x = (int) Math.round(spot.x());
                int y = (int) Math.round(spot.y());
                Color a = new Color(film.get(i).picture().getRGB(x, y));
                Color b = new Color(print.get(i).picture().getRGB(x, y));
                apart += Math.abs(a.getGreen() - b.getGreen()) > 40 ? 1 : 0;
            }
            moves += i > 0 && differs(print.get(i - 1), print.get(i), width) ? 1 : 0;
        }
        assertThat(apart).isLessThan(film.size() / 10);
        assertThat(moves).isGreaterThan(film.size() * 9 / 10);
    }

    private static boolean differs(Frame one, Frame other, int from) {
        int different = 0;
        for (int y = 0; y < one.picture().getHeight(); y += 3) {
            for (int x = from; x < one.picture().getWidth(); x += 3) {
                int a = new Color(one.picture().getRGB(x, y)).getGreen();
                int b = new Color(other.picture().getRGB(x, y)).getGreen();
                different += Math.abs(a - b) > 60 ? 1 : 0;
            }
        }
        return different > 3;
    }

    @Test
    void aLongExposureKeepsEveryLightThatWasAndGrows() throws IOException {
        BufferedImage whole = ImageIO.read(taken("all.png", "--form", "exposure").toFile());
        BufferedImage half =
                ImageIO.read(taken("half.png", "--form", "exposure", "--at", "0.7s").toFile());
        int lit = 0;
        int before = 0;
        int all = 0;
        for (List<LitSpot> spots : lights()) {
            for (LitSpot spot : spots) {
                all++;
                lit += bright(whole, spot) ? 1 : 0;
                before += bright(half, spot) ? 1 : 0;
            }
        }
        assertThat(lit).isEqualTo(all);
        assertThat((double) before / all).isBetween(0.3, 0.8);
    }

    private static boolean bright(BufferedImage picture, LitSpot spot) {
        Color c = new Color(picture.getRGB((int) Math.round(spot.x()), (int) Math.round(spot.y())));
        return Math.max(c.getRed(), Math.max(c.getGreen(), c.getBlue())) > 100;
    }

    @Test
    void whatWasMeasuredIsDrawnAsAnyTraceIs() throws IOException {
        assertThat(ImageIO.read(taken("strip.png", "--form", "strip", "--size", "600").toFile()))
                .matches(p -> p.getWidth() == 600);
        assertThat(Files.size(taken("figure.pdf"))).isGreaterThan(2000);
        assertThat(Files.readString(taken("moving.gltf"))).contains("\"animations\"");
    }
}
