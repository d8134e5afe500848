package deferent.film.practice;

import deferent.motion.shared.Side;
import deferent.page.Face;
import deferent.page.Palette;
import deferent.page.Palette.Ink;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Draws as pixels, twice as fine as the SVG. */
final class PixelPen implements Pen {
    private static final int FINE = 2;

    private final BufferedImage image;
    private final Graphics2D graphics;
    private final Palette.Theme theme;

    PixelPen(double width, double height, Palette.Theme theme) {
        this.theme = theme;
        image =
                new BufferedImage(
                        (int) (FINE * width), (int) (FINE * height), BufferedImage.TYPE_INT_RGB);
        graphics = image.createGraphics();
        graphics.setRenderingHint(
                RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(
                RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        graphics.scale(FINE, FINE);
        graphics.setColor(Ink.PAPER.on(theme));
        graphics.fill(new Rectangle2D.Double(0, 0, width, height));
    }

    byte[] png() {
        graphics.dispose();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageIO.write(image, "png", out);
        } catch (IOException inMemory) {
            throw new UncheckedIOException(inMemory);
        }
        return bytes.toByteArray();
    }

    @Override
    public void line(double[][] points, Ink ink, double width, boolean dashed, boolean closed) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < points.length; i++) {
            if (i == 0) {
                path.moveTo(points[i][0], points[i][1]);
            } else {
                path.lineTo(points[i][0], points[i][1]);
            }
        }
        if (closed) {
            path.closePath();
        }
        float[] dash = dashed ? new float[] {6, 5} : null;
        graphics.setColor(ink.on(theme));
        graphics.setStroke(
                new BasicStroke(
                        (float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, dash, 0));
        graphics.draw(path);
    }

    @Override
    public void mark(double x, double y, Optional<Side> side, Ink ink, boolean full) {
        Shape shape;
        if (side.filter(s -> s == Side.LEFT).isPresent()) {
            shape = new Ellipse2D.Double(x - 5, y - 5, 10, 10);
        } else {
            Shape square = new Rectangle2D.Double(x - 4.5, y - 4.5, 9, 9);
            shape =
                    side.isPresent()
                            ? square
                            : AffineTransform.getRotateInstance(Math.PI / 4, x, y)
                                    .createTransformedShape(square);
        }
        graphics.setColor(full ? ink.on(theme) : Ink.PAPER.on(theme));
        graphics.fill(shape);
        graphics.setColor(ink.on(theme));
        graphics.setStroke(new BasicStroke(2));
        graphics.draw(shape);
    }

    @Override
    public void words(double x, double y, double size, Ink ink, double along, String words) {
        String known = Face.REGULAR.known(words);
        double left = x - along * Face.REGULAR.width(known, size);
        graphics.setColor(ink.on(theme));
        graphics.fill(
                new AffineTransform(size, 0, 0, size, left, y)
                        .createTransformedShape(Face.REGULAR.outline(known)));
    }
}
