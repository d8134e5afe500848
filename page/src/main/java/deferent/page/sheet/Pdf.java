package deferent.page.sheet;

import deferent.motion.pairing.Refusal;
import deferent.page.Scene;
import deferent.page.Still;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;

/** Stills as PDF: lines and curves at any size, and text that can be searched. */
public final class Pdf {
    /** The longest edge of a page that every reader opens, points (PDF 1.7, annex C). */
    private static final int LARGEST = 14400;

    private Pdf() {}

    /**
     * A PDF file's bytes: a sheet of paper with the still on it, as large as its margins let it.
     */
    public static byte[] still(Scene scene, Still still, PageSize paper) {
        Box all = new Grid(paper).margins();
        double scale = Math.min(all.width() / still.width(), all.height() / still.height());
        Box box =
                new Box(
                        all.x() + (all.width() - scale * still.width()) / 2,
                        all.y(),
                        scale * still.width(),
                        scale * still.height());
        Tag tag = Tag.figure(PictureWords.still(scene, still));
        Leaf leaf =
                new Leaf(
                        paper,
                        all,
                        List.of(
                                new Block(
                                        "picture",
                                        box,
                                        List.of(
                                                new Mark.Plate(
                                                        box, scene, still, Optional.of(tag))))),
                        Optional.empty());
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            Press.print(List.of(leaf), PictureWords.title(scene, still), out, i -> {}, () -> false);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

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
