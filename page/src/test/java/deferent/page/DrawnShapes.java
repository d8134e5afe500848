package deferent.page;

import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderableImage;
import java.text.AttributedCharacterIterator;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.batik.ext.awt.g2d.AbstractGraphics2D;
import org.apache.batik.ext.awt.g2d.GraphicContext;
import org.jspecify.annotations.Nullable;

/** A paper that keeps each shape that is drawn on it, with the group it belongs to. */
final class DrawnShapes implements Paper {
    /**
     * A shape.
     *
     * @param group the group's id
     * @param given as it was handed over
     * @param stroke of a line; empty for what is filled
     * @param strength opacity
     */
    record Drawn(String group, Shape given, Optional<Stroke> stroke, double strength) {
        /** Whether anything of it lies within a box. */
        boolean on(Rectangle2D box) {
            return stroke.map(s -> s.createStrokedShape(given)).orElse(given).intersects(box);
        }
    }

    private final List<Drawn> all = new ArrayList<>();

    static List<Drawn> of(Scene scene, Still still) {
        DrawnShapes paper = new DrawnShapes();
        Painter.paint(scene, still, paper);
        return paper.all();
    }

    List<Drawn> all() {
        return List.copyOf(all);
    }

    @Override
    public void group(String id, String name, Consumer<Graphics2D> strokes) {
        strokes.accept(new Kept(id));
    }

    private final class Kept extends AbstractGraphics2D {
        private final String id;

        Kept(String id) {
            super(true);
            this.id = id;
            gc = new GraphicContext(new AffineTransform());
            setStroke(new BasicStroke(1));
        }

        private void keep(Shape given, Optional<Stroke> stroke) {
            double strength = getComposite() instanceof AlphaComposite a ? a.getAlpha() : 1;
            all.add(new Drawn(id, given, stroke, strength));
        }

        @Override
        public void draw(Shape shape) {
            keep(shape, Optional.of(getStroke()));
        }

        @Override
        public void fill(Shape shape) {
            keep(shape, Optional.empty());
        }

        @Override
        public Graphics create() {
            throw unwanted();
        }

        @Override
        public void dispose() {}

        private AssertionError unwanted() {
            return new AssertionError("a picture is drawn with shapes alone");
        }

        @Override
        public void drawString(String words, float x, float y) {
            throw unwanted();
        }

        @Override
        public void drawString(AttributedCharacterIterator words, float x, float y) {
            throw unwanted();
        }

        @Override
        public boolean drawImage(Image image, int x, int y, @Nullable ImageObserver observer) {
            throw unwanted();
        }

        @Override
        public boolean drawImage(
                Image image, int x, int y, int w, int h, @Nullable ImageObserver observer) {
            throw unwanted();
        }

        @Override
        public void drawRenderedImage(RenderedImage image, AffineTransform form) {
            throw unwanted();
        }

        @Override
        public void drawRenderableImage(RenderableImage image, AffineTransform form) {
            throw unwanted();
        }

        @Override
        public GraphicsConfiguration getDeviceConfiguration() {
            throw unwanted();
        }

        @Override
        public FontMetrics getFontMetrics(Font font) {
            throw unwanted();
        }

        @Override
        public void setXORMode(Color color) {
            throw unwanted();
        }

        @Override
        public void copyArea(int x, int y, int width, int height, int dx, int dy) {
            throw unwanted();
        }
    }
}
