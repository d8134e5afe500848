package deferent.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;

class FramesTest {
    /** Of 255: a frame is its moment's PNG but for the rounding of colours under alpha. */
    private static final int ROUNDING = 2;

    private final Scene scene =
            Scene.of(Trace.of(Phrase.parse("isolation vs four-petal antispin").pairing()));
    private final Still wide =
            Still.of(640, 360).with(Layer.COUNTS).with(List.of("isolation vs four-petal antispin"));

    @Test
    void aFrameIsThePngOfItsMoment() {
        for (String phrase :
                List.of(
                        "static spin vs triquetra",
                        "isolation vs four-petal antispin",
                        "pendulum vs CAP",
                        "linear extension vs cat-eye")) {
            Scene some = Scene.of(Trace.of(Phrase.parse(phrase).pairing()));
            for (Still still :
                    List.of(
                            wide,
                            wide.clear(),
                            wide.with(Palette.Theme.DARK).with(View.PERFORMER),
                            wide.clear().with(Set.of(Layer.TRAIL, Layer.HEAD)),
                            Still.square(300).with(new View(View.Stand.AUDIENCE, 0.7, 0.3)),
                            wide.without(Layer.TRAIL).without(Layer.COUNTS))) {
                Frames frames = Frames.of(some, still);
                BufferedImage frame = Papers.empty(still);
                for (double cycles : new double[] {0, 0.21, 0.77, 2.5, -0.3}) {
                    double time = cycles * some.period();
                    frames.paint(time, frame);
                    BufferedImage png = Papers.png(some, still.at(time));
                    assertThat(worst(frame, png)).as(phrase).isLessThanOrEqualTo(ROUNDING);
                }
            }
        }
    }

    @Test
    void strokesAndPixelsShowTheSameLight() {
        // Coats, where there are only strokes, come within a tenth of what the trails add.
        for (Still still : List.of(wide.at(0.3), wide.with(Palette.Theme.DARK).at(0.8))) {
            BufferedImage pixels = Papers.png(scene, still);
            double light = mean(pixels, Papers.png(scene, still.without(Layer.TRAIL)));
            assertThat(mean(Papers.graphics(scene, still), pixels)).isLessThan(0.1 * light);
            assertThat(mean(Papers.graphics(scene, still.at(0.4)), pixels))
                    .isGreaterThan(0.2 * light);
        }
    }

    @Test
    void aClipsLastStepToItsFirstFrameIsLikeAnyOther() {
        Frames frames = Frames.of(scene, wide);
        int count = 60;
        List<Double> steps = new ArrayList<>();
        BufferedImage before = Papers.empty(wide);
        frames.paint(0, before);
        for (int i = 1; i <= count; i++) {
            BufferedImage next = Papers.empty(wide);
            frames.paint(i * scene.period() / count, next);
            steps.add(mean(before, next));
            before = next;
        }
        double last = steps.remove(count - 1);
        assertThat(last)
                .isLessThanOrEqualTo(1.05 * steps.stream().max(Double::compare).orElse(0.0));
        BufferedImage first = Papers.empty(wide);
        frames.paint(0, first);
        assertThat(worst(before, first)).isLessThanOrEqualTo(1);
    }

    @Test
    void whatTheImageHeldBeforeIsGone() {
        Frames frames = Frames.of(scene, wide.clear());
        BufferedImage image = Papers.empty(wide);
        frames.paint(0.1, image);
        frames.paint(0.5, image);
        BufferedImage fresh = Papers.empty(wide);
        frames.paint(0.5, fresh);
        assertThat(worst(image, fresh)).isZero();
    }

    @Test
    void onATransparentGroundColoursAreMultipliedByAlpha() {
        BufferedImage image = Papers.frame(scene, wide.clear().at(0.4));
        int faint = 0;
        for (int argb : Pixels.of(image, 0).argb()) {
            int alpha = argb >>> 24;
            faint += alpha > 0 && alpha < 255 ? 1 : 0;
            assertThat(argb >> 16 & 255).isLessThanOrEqualTo(alpha);
            assertThat(argb >> 8 & 255).isLessThanOrEqualTo(alpha);
            assertThat(argb & 255).isLessThanOrEqualTo(alpha);
        }
        assertThat(faint).isGreaterThan(1000);
    }

    @Test
    void aTransparentFrameLaidOnTheGroundIsTheFrameOnTheGround() {
        BufferedImage on = Papers.empty(wide);
        var g = on.createGraphics();
        g.setColor(Palette.Ink.PAPER.on(Palette.Theme.LIGHT));
        g.fillRect(0, 0, on.getWidth(), on.getHeight());
        g.drawImage(Papers.frame(scene, wide.clear().at(0.4)), 0, 0, null);
        g.dispose();
        assertThat(worst(on, Papers.frame(scene, wide.at(0.4)))).isLessThanOrEqualTo(4);
    }

    @Test
    void twoThreadsPaintAtOnce() throws Exception {
        Frames frames = Frames.of(scene, wide);
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<Future<List<BufferedImage>>> halves = new ArrayList<>();
            for (int half = 0; half < 2; half++) {
                Frames own = half == 0 ? frames : frames.fork();
                Callable<List<BufferedImage>> work =
                        () -> {
                            List<BufferedImage> images = new ArrayList<>();
                            for (int i = 0; i < 12; i++) {
                                BufferedImage image = Papers.empty(wide);
                                own.paint(i * 0.08, image);
                                images.add(image);
                            }
                            return images;
                        };
                halves.add(two.submit(work));
            }
            for (int i = 0; i < 12; i++) {
                BufferedImage one = halves.get(0).get().get(i);
                assertThat(worst(one, halves.get(1).get().get(i))).isZero();
                assertThat(worst(one, Papers.png(scene, wide.at(i * 0.08))))
                        .isLessThanOrEqualTo(ROUNDING);
            }
        } finally {
            two.shutdownNow();
        }
    }

    @Test
    void onAGroundAFrameMayHaveNoAlpha() {
        BufferedImage plain = new BufferedImage(640, 360, BufferedImage.TYPE_INT_RGB);
        Frames.of(scene, wide).paint(0.2, plain);
        assertThat(worst(plain, Papers.png(scene, wide.at(0.2)))).isLessThanOrEqualTo(ROUNDING);
    }

    @Test
    void sizesThatCannotBeAreRefused() {
        assertThatThrownBy(() -> Frames.of(scene, Still.square(3841)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("3840");
        assertThatThrownBy(
                        () ->
                                Frames.of(scene, wide)
                                        .paint(
                                                0,
                                                new BufferedImage(
                                                        639, 360, BufferedImage.TYPE_INT_ARGB_PRE)))
                .isInstanceOf(Refusal.class);
        assertThatThrownBy(
                        () ->
                                Frames.of(scene, wide.clear())
                                        .paint(
                                                0,
                                                new BufferedImage(
                                                        640, 360, BufferedImage.TYPE_INT_RGB)))
                .isInstanceOf(Refusal.class);
    }

    /** The greatest difference of any pixel's alpha or colour on a white page, of 255. */
    static int worst(BufferedImage a, BufferedImage b) {
        int worst = 0;
        for (int y = 0; y < a.getHeight(); y++) {
            for (int x = 0; x < a.getWidth(); x++) {
                int p = a.getRGB(x, y);
                int q = b.getRGB(x, y);
                if (p != q) {
                    for (int shift = 0; shift <= 24; shift += 8) {
                        worst = Math.max(worst, Math.abs(shown(p, shift) - shown(q, shift)));
                    }
                }
            }
        }
        return worst;
    }

    private static int shown(int argb, int shift) {
        int alpha = argb >>> 24;
        int part = argb >>> shift & 255;
        return shift == 24 ? alpha : (part * alpha + 127) / 255;
    }

    /** The mean difference, of 255. */
    static double mean(BufferedImage a, BufferedImage b) {
        double sum = 0;
        for (int y = 0; y < a.getHeight(); y++) {
            for (int x = 0; x < a.getWidth(); x++) {
                int p = a.getRGB(x, y);
                int q = b.getRGB(x, y);
                for (int shift = 0; shift <= 24; shift += 8) {
                    sum += Math.abs(shown(p, shift) - shown(q, shift));
                }
            }
        }
        return sum / (4.0 * a.getWidth() * a.getHeight());
    }
}
