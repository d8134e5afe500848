package deferent.page.sheet;

import deferent.motion.pairing.Refusal;
import deferent.page.Scene;
import deferent.page.Still;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;

/** Stills as PDF: lines and curves at any size, and text that can be searched. */
public final class Pdf {
    /** The longest edge of a page that every reader opens, points (PDF 1.7, annex C). */
    private static final int LARGEST = 14400;

    private Pdf() {}

    /** A PDF file's bytes: one page, a pixel of the still a point. */
    public static byte[] still(Scene scene, Still still) {
        Refusal.within(still.width(), 48, LARGEST, "width of a PDF page", "points");
        Refusal.within(still.height(), 48, LARGEST, "height of a PDF page", "points");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            Press.print(scene, still, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }
}
