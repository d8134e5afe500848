package deferent.app;

import deferent.motion.trace.Trace;
import deferent.page.Palette;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.StillForm;
import deferent.reading.photo.PhotoReading;
import deferent.record.PatternDocument;
import deferent.record.landing.Landing;
import deferent.take.Endings;
import java.nio.file.Path;

/** The picture a camera would take, in a file. */
record PhotoPreview(Path file) {
    private static final int EDGE = 1200;

    void draw(PatternDocument pattern, PhotoReading photo) {
        double open = photo.open();
        StillForm light =
                photo.led()
                        .map(led -> StillForm.exposure(open, led.hertz(), led.duty()))
                        .orElseGet(() -> StillForm.exposure(open));
        Scene scene = Scene.of(Trace.of(pattern.pairing()));
        Still still = Still.square(EDGE).with(Palette.Theme.DARK).with(light);
        Landing.write(file, Endings.picture(file, scene, still));
    }
}
