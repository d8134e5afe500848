package deferent.bench;

import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import deferent.page.Caption;
import deferent.page.Frames;
import deferent.page.Layer;
import deferent.page.Picture;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.StillForm;
import deferent.page.Svg;
import deferent.page.View;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.EnumSet;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What painting costs: a frame of 1920 by 1080 with everything on (trails, link, tethers, labels,
 * counts, caption), wanted under 10 ms on one core; baseline in the same run: the plain painter, as
 * for a page, on the same image. And an SVG of the pairing in every form, wanted under 100 ms, from
 * the phrase on.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class FramesBench {
    private static final int FRAMES = 60;

    @Param({"isolation vs four-petal antispin", "static spin vs triquetra", "pendulum vs CAP"})
    public String phrase = "";

    private Scene scene = empty();
    private Still still = Still.of(1920, 1080);
    private Frames frames = Frames.of(scene, still);
    private BufferedImage image = image();
    private int frame;

    private static Scene empty() {
        return Scene.of(Trace.of(Phrase.parse("static spin vs static spin").pairing()));
    }

    private static BufferedImage image() {
        return new BufferedImage(1920, 1080, BufferedImage.TYPE_INT_ARGB_PRE);
    }

    @Setup
    public void open() {
        Trace trace = Trace.of(Phrase.parse(phrase).pairing());
        scene = Scene.of(trace);
        still =
                Still.of(1920, 1080)
                        .with(EnumSet.allOf(Layer.class))
                        .with(Caption.of(phrase, trace.pairing(), View.AUDIENCE));
        frames = Frames.of(scene, still);
        image = image();
    }

    private double next() {
        frame = (frame + 1) % FRAMES;
        return frame * scene.period() / FRAMES;
    }

    @Benchmark
    public BufferedImage frame() {
        frames.paint(next(), image);
        return image;
    }

    /** Baseline. */
    @Benchmark
    public BufferedImage plainPainter() {
        Graphics2D g = image.createGraphics();
        Picture.paint(scene, still.at(next()), g);
        g.dispose();
        return image;
    }

    /** What a clip pays once. */
    @Benchmark
    public Frames readyForFrames() {
        return Frames.of(scene, still);
    }

    @Benchmark
    public String svgOfAMoment() {
        return svg(StillForm.MOMENT);
    }

    @Benchmark
    public String svgOfAFigure() {
        return svg(StillForm.FIGURE);
    }

    @Benchmark
    public String svgOfPoses() {
        return svg(StillForm.POSES);
    }

    @Benchmark
    public String svgOfAStrip() {
        return svg(StillForm.STRIP);
    }

    @Benchmark
    public String svgOfAnExposure() {
        return svg(StillForm.EXPOSURE);
    }

    private String svg(StillForm form) {
        Trace trace = Trace.of(Phrase.parse(phrase).pairing());
        return Svg.of(
                Scene.of(trace),
                Still.square(1200)
                        .with(form)
                        .with(Caption.of(phrase, trace.pairing(), View.AUDIENCE)));
    }
}
