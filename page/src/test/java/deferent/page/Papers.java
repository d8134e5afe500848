package deferent.page;

import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Map;
import javax.imageio.ImageIO;
import org.apache.batik.transcoder.TranscoderException;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.ImageTranscoder;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.jspecify.annotations.Nullable;

/** The same still on every paper there is, as pixels with alpha, and where things should lie. */
final class Papers {
    private Papers() {}

    static Map<String, BufferedImage> all(Scene scene, Still still) {
        Map<String, BufferedImage> all = new LinkedHashMap<>();
        all.put("SVG", svg(scene, still));
        all.put("PNG", png(scene, still));
        all.put("frame", frame(scene, still));
        all.put("any graphics", graphics(scene, still));
        return all;
    }

    /** Drawn by an SVG viewer that is not ours. */
    static BufferedImage svg(Scene scene, Still still) {
        BufferedImage[] seen = new BufferedImage[1];
        ImageTranscoder viewer =
                new ImageTranscoder() {
                    @Override
                    public BufferedImage createImage(int width, int height) {
                        return new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
                    }

                    @Override
                    public void writeImage(BufferedImage image, @Nullable TranscoderOutput out) {
                        seen[0] = image;
                    }
                };
        try {
            viewer.transcode(
                    new TranscoderInput(new StringReader(Svg.of(scene, still))),
                    new TranscoderOutput());
        } catch (TranscoderException e) {
            throw new AssertionError(e);
        }
        return seen[0];
    }

    static BufferedImage png(Scene scene, Still still) {
        try {
            return ImageIO.read(new ByteArrayInputStream(Png.of(scene, still)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static BufferedImage frame(Scene scene, Still still) {
        BufferedImage image = empty(still);
        Frames.of(scene, still).paint(still.time(), image);
        return image;
    }

    /** As on a page of a document, beside other things: moved there and back. */
    static BufferedImage graphics(Scene scene, Still still) {
        BufferedImage image = empty(still);
        BufferedImage page =
                new BufferedImage(
                        still.width() + 40, still.height() + 30, BufferedImage.TYPE_INT_ARGB_PRE);
        Graphics2D g = page.createGraphics();
        g.translate(40, 30);
        Picture.paint(scene, still, g);
        g.dispose();
        Graphics2D cut = image.createGraphics();
        cut.drawImage(page, -40, -30, null);
        cut.dispose();
        return image;
    }

    static BufferedImage empty(Still still) {
        return new BufferedImage(still.width(), still.height(), BufferedImage.TYPE_INT_ARGB_PRE);
    }

    /** The image moved by whole pixels. */
    static BufferedImage moved(BufferedImage image, int right, int down) {
        BufferedImage moved =
                new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_ARGB);
        Graphics2D g = moved.createGraphics();
        g.drawImage(image, right, down, null);
        g.dispose();
        return moved;
    }

    /**
     * Where points of the frame should lie, worked out from the scene's points alone: all that
     * moves or is placed fits the paper less three fortieths of its shorter edge all round, for an
     * audience, without a caption.
     */
    record Expected(double scale, Rectangle2D extent, Still still) {
        static Expected of(Scene scene, Still still) {
            Rectangle2D.Double extent = null;
            for (Item item : scene.items()) {
                if (item.form() instanceof Item.Shape.Run run) {
                    double[] xyz = scene.points(run.track());
                    for (int i = 0; i < xyz.length; i += 3) {
                        extent = with(extent, xyz[i], xyz[i + 1]);
                    }
                } else if (item.form() instanceof Item.Shape.Fixed fixed) {
                    for (Vector3D p : fixed.points()) {
                        extent = with(extent, p.getX(), p.getY());
                    }
                }
            }
            if (extent == null) {
                throw new AssertionError("an empty scene");
            }
            double margin = 3.0 / 40 * Math.min(still.width(), still.height());
            double scale =
                    Math.min(
                            (still.width() - 2 * margin) / extent.width,
                            (still.height() - 2 * margin) / extent.height);
            return new Expected(scale, extent, still);
        }

        private static Rectangle2D.Double with(
                Rectangle2D.@Nullable Double extent, double x, double y) {
            if (extent == null) {
                return new Rectangle2D.Double(x, y, 0, 0);
            }
            extent.add(x, y);
            return extent;
        }

        Point2D.Double place(Vector3D p) {
            return new Point2D.Double(
                    still.width() / 2.0 + scale * (p.getX() - extent.getCenterX()),
                    still.height() / 2.0 - scale * (p.getY() - extent.getCenterY()));
        }
    }

    /** The middle of what is painted within a square about a point, weighed by alpha. */
    static Point2D.Double painted(BufferedImage image, Point2D about, int reach) {
        double sum = 0;
        double x = 0;
        double y = 0;
        for (int py = (int) about.getY() - reach; py <= about.getY() + reach; py++) {
            for (int px = (int) about.getX() - reach; px <= about.getX() + reach; px++) {
                if (px >= 0 && py >= 0 && px < image.getWidth() && py < image.getHeight()) {
                    double alpha = image.getRGB(px, py) >>> 24;
                    sum += alpha;
                    x += alpha * (px + 0.5);
                    y += alpha * (py + 0.5);
                }
            }
        }
        return new Point2D.Double(x / sum, y / sum);
    }
}
