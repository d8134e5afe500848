package deferent.page.sheet;

import deferent.page.Lettering;
import deferent.page.Palette;
import deferent.page.Picture;
import deferent.page.Png;
import deferent.page.Svg;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;

/**
 * A page as a picture: what {@link Press} prints, drawn on SVG or on pixels, as wide as the paper
 * and as high as what stands on it.
 */
public final class LeafPicture {
    /** Pixels a point of a PNG: some 190 to the inch. */
    private static final int FINE = 8;

    private static final int COARSE = 3;
    private static final double BELOW = 24;

    private LeafPicture() {}

    /** As an SVG document, a point of the page a pixel. */
    public static String svg(Leaf leaf) {
        return Svg.drawn(
                (int) Math.ceil(leaf.size().width()),
                (int) Math.ceil(height(leaf)),
                leaf.bookmark().orElse(""),
                g -> paint(leaf, g));
    }

    /** As a PNG file's bytes. */
    public static byte[] png(Leaf leaf) {
        double fine = (double) FINE / COARSE;
        return Png.drawn(
                (int) Math.ceil(fine * leaf.size().width()),
                (int) Math.ceil(fine * height(leaf)),
                g -> {
                    g.scale(fine, fine);
                    paint(leaf, g);
                });
    }

    private static double height(Leaf leaf) {
        double lowest =
                leaf.blocks().stream().mapToDouble(block -> block.box().bottom()).max().orElse(0);
        return Math.min(leaf.size().height(), lowest + BELOW);
    }

    private static void paint(Leaf leaf, Graphics2D g) {
        for (Mark mark : leaf.marks()) {
            Graphics2D own = (Graphics2D) g.create();
            try {
                paint(mark, own);
            } finally {
                own.dispose();
            }
        }
    }

    private static void paint(Mark mark, Graphics2D g) {
        Box box = mark.box();
        if (mark instanceof Mark.Text text) {
            ink(g, text.ink());
            new Lettering(text.face(), text.size())
                    .write(g, text.words(), text.x(), text.baseline());
        } else if (mark instanceof Mark.Rule rule) {
            ink(g, rule.ink());
            g.setStroke(new BasicStroke((float) rule.width()));
            g.draw(new Line2D.Double(box.x(), box.y(), box.right(), box.bottom()));
        } else if (mark instanceof Mark.Patch patch) {
            ink(g, patch.ink());
            g.setStroke(new BasicStroke((float) Mark.Patch.OUTLINE));
            Rectangle2D form = new Rectangle2D.Double(box.x(), box.y(), box.width(), box.height());
            if (patch.full()) {
                g.fill(form);
            } else {
                g.draw(form);
            }
        } else if (mark instanceof Mark.Plate plate) {
            g.translate(box.x(), box.y());
            g.scale(plate.scale(), plate.scale());
            Picture.paint(plate.scene(), plate.still(), g);
        } else if (mark instanceof Mark.Sample sample) {
            g.translate(box.x(), box.y());
            LookSamples.paint(sample, g);
        } else if (mark instanceof Mark.Drawn drawn) {
            g.translate(box.x(), box.y());
            PassageDrawing.paint(drawn, g);
        }
    }

    private static void ink(Graphics2D g, Palette.Ink ink) {
        g.setColor(ink.on(Palette.Theme.LIGHT));
    }
}
