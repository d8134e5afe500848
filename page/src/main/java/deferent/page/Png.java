package deferent.page;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;

/** Stills as pixels. */
public final class Png {
    private Png() {}

    /** A PNG file's bytes. */
    public static byte[] of(Scene scene, Still still) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            ImageIO.write(image(scene, still), "png", out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** The picture itself; with an alpha channel where the still is transparent. */
    public static BufferedImage image(Scene scene, Still still) {
        BufferedImage image =
                new BufferedImage(
                        still.width(),
                        still.height(),
                        still.transparent()
                                ? BufferedImage.TYPE_INT_ARGB
                                : BufferedImage.TYPE_INT_RGB);
        Painter.paint(
                scene,
                still,
                (id, name, strokes) -> {
                    Graphics2D g = image.createGraphics();
                    try {
                        strokes.accept(g);
                    } finally {
                        g.dispose();
                    }
                });
        return image;
    }
}
