package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Trace;
import deferent.page.Palette;
import deferent.page.Png;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.StillForm;
import deferent.page.Svg;
import deferent.reading.photo.PhotoReading;
import deferent.record.PatternDocument;
import deferent.record.landing.Landing;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;

/** The picture a camera would take, in a file. */
record PhotoPreview(Path file) {
    private static final int EDGE = 1200;

    void draw(PatternDocument pattern, PhotoReading photo) {
        String name = file.toString().toLowerCase(Locale.ROOT);
        boolean png = name.endsWith(".png");
        if (!png && !name.endsWith(".svg")) {
            throw new Refusal(
                    "is no picture's name", "--preview " + file, "end it in .svg or .png");
        }
        double open = photo.shutter().orElse(photo.common().time());
        StillForm light =
                photo.led()
                        .map(led -> StillForm.exposure(open, led.hertz(), led.duty()))
                        .orElseGet(() -> StillForm.exposure(open));
        Scene scene = Scene.of(Trace.of(pattern.pairing()));
        Still still = Still.square(EDGE).with(Palette.Theme.DARK).with(light);
        Landing.write(
                file,
                png ? Png.of(scene, still) : Svg.of(scene, still).getBytes(StandardCharsets.UTF_8));
    }
}
