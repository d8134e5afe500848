package deferent.page;

import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Trace;
import deferent.page.sheet.Pdf;
import deferent.page.web.LessonPage;
import deferent.reading.body.Performer;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import java.awt.Font;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Draws one pattern on every paper there is and writes the files to a folder; run in a JVM of its
 * own as well, on a machine that has no typefaces.
 */
final class Bare {
    /** Says whether AWT found any typeface; beside the pictures. */
    static final String AWT = "awt.txt";

    private Bare() {}

    public static void main(String[] folder) throws IOException {
        Path into = Path.of(folder[0]);
        for (Map.Entry<String, byte[]> file : drawn().entrySet()) {
            Files.write(into.resolve(file.getKey()), file.getValue());
        }
        String awt = "has typefaces";
        try {
            new Font(Font.SANS_SERIF, Font.PLAIN, 12).getFamily();
        } catch (Throwable none) {
            awt = "none";
        }
        Files.writeString(into.resolve(AWT), awt);
    }

    static Map<String, byte[]> drawn() throws IOException {
        Trace trace = Trace.of(Phrase.parse("isolation vs triquetra, split time").pairing());
        Scene scene = Scene.of(trace);
        Still still =
                Still.of(400, 300)
                        .with(EnumSet.allOf(Layer.class))
                        .with(List.of("Isolation, split", "± 30 cm · 独楽"));
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("moment.png", Png.of(scene, still));
        files.put("strip.png", Png.of(scene, still.with(StillForm.STRIP)));
        files.put("poses.png", Png.of(scene, still.with(StillForm.POSES)));
        BufferedImage frame = new BufferedImage(400, 300, BufferedImage.TYPE_INT_ARGB_PRE);
        Frames.of(scene, still).paint(0.2, frame);
        files.put("frame.txt", text(Arrays.toString(Pixels.of(frame, 0).argb())));
        files.put("moment.svg", text(Svg.of(scene, still)));
        files.put("moving.svg", text(MovingSvg.of(scene, still)));
        files.put("moment.pdf", Pdf.still(scene, still));
        files.put(
                "page.html",
                text(
                        LessonPage.of(
                                scene,
                                Readings.of(trace.pairing(), Performer.USUAL, Detail.LIVE),
                                "Kreisel 独楽")));
        return files;
    }

    private static byte[] text(String words) {
        return words.getBytes(StandardCharsets.UTF_8);
    }
}
