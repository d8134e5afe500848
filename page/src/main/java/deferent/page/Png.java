package deferent.page;

import java.awt.AlphaComposite;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.function.Consumer;

/** Stills as pixels. */
public final class Png {
    /** Pixels painted at a time, so that a poster takes no more memory than a screen. */
    private static final int AT_ONCE = 1 << 22;

    private Png() {}

    /** A PNG file's bytes. */
    public static byte[] of(Scene scene, Still still) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            write(scene, still, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /**
     * Writes a PNG file, some rows at a time: memory does not grow with the picture's height. The
     * stream is left open.
     */
    public static void write(Scene scene, Still still, OutputStream out) throws IOException {
        int rows = Math.max(1, Math.min(still.height(), AT_ONCE / still.width()));
        try (PngFile file = new PngFile(still.width(), still.height(), still.transparent(), out)) {
            for (int top = 0; top < still.height(); top += rows) {
                file.rows(painted(scene, still, top, Math.min(rows, still.height() - top)));
            }
            file.end();
        }
    }

    /** What else is drawn, on white paper: a PNG file's bytes. */
    public static byte[] drawn(int width, int height, Consumer<Graphics2D> strokes) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB_PRE);
        Graphics2D g = Brush.smooth(image.createGraphics());
        g.setColor(Palette.Ink.CARD.on(Palette.Theme.LIGHT));
        g.fillRect(0, 0, width, height);
        strokes.accept(g);
        g.dispose();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (PngFile file = new PngFile(width, height, false, out)) {
            file.rows(image);
            file.end();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** The picture itself; with an alpha channel where the still is transparent. */
    public static BufferedImage image(Scene scene, Still still) {
        BufferedImage painted = painted(scene, still, 0, still.height());
        BufferedImage image =
                new BufferedImage(
                        still.width(),
                        still.height(),
                        still.transparent()
                                ? BufferedImage.TYPE_INT_ARGB
                                : BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setComposite(AlphaComposite.Src);
        g.drawImage(painted, 0, 0, null);
        g.dispose();
        return image;
    }

    private static BufferedImage painted(Scene scene, Still still, int top, int rows) {
        BufferedImage band =
                new BufferedImage(still.width(), rows, BufferedImage.TYPE_INT_ARGB_PRE);
        Painter.paint(scene, still, Pixels.paper(band, top));
        return band;
    }
}
