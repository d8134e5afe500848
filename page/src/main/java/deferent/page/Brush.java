package deferent.page;

import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;

/**
 * Lays the {@link Palette}'s looks on paper. Widths and markers are thousandths of the picture's
 * shorter edge, so a thumbnail and a poster are the same picture.
 */
final class Brush {
    /** Pixels a thousandth of the edge stands for at least, so that small pictures keep lines. */
    private static final double THINNEST = 0.42;

    /** Between what is nearer and what is farther, thousandths (our choice). */
    private static final double GAP = 3;

    private static final double TYPE = 0.0235;
    private static final double SMALLEST_TYPE = 9;

    /** How much of a mark's outline is seen through the body (our choice). */
    private static final double SHADE = 0.45;

    private final Palette.Theme theme;
    private final double unit;
    private final double type;
    private final double marking;

    private Brush(Palette.Theme theme, double unit, double type, double marking) {
        this.theme = theme;
        this.unit = unit;
        this.type = type;
        this.marking = marking;
    }

    /** For a picture whose shorter edge has so many pixels. */
    static Brush of(Palette.Theme theme, double edge) {
        return new Brush(
                theme, Math.max(edge / 1000, THINNEST), Math.max(SMALLEST_TYPE, TYPE * edge), 1);
    }

    /** Whose markers are so many times as large. */
    Brush marking(double times) {
        return new Brush(theme, unit, type, times);
    }

    /** Pixels a thousandth of the edge. */
    double unit() {
        return unit;
    }

    /** Size of plain type, pixels. */
    double type() {
        return type;
    }

    Color ink(Palette.Ink ink) {
        return ink.on(theme);
    }

    static Graphics2D smooth(Graphics2D g) {
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        return g;
    }

    static void strength(Graphics2D g, double strength) {
        g.setComposite(
                strength >= 1
                        ? AlphaComposite.SrcOver
                        : AlphaComposite.getInstance(
                                AlphaComposite.SRC_OVER, (float) Math.max(0, strength)));
    }

    /** A line in its look. */
    void draw(Graphics2D g, Shape shape, Palette.Look look) {
        draw(g, shape, look, look.width(), look.strength(), dash(look), 0);
    }

    /** A look's dash, pixels on and off; empty for unbroken. */
    double[] dash(Palette.Look look) {
        double[] dash = new double[look.dash().size()];
        for (int i = 0; i < dash.length; i++) {
            dash[i] = look.dash().get(i) * look.width() * unit;
        }
        return dash;
    }

    /**
     * @param width in thousandths
     * @param dash pixels on and off; empty for unbroken
     * @param phase pixels into the dash at which the line begins
     */
    void draw(
            Graphics2D g,
            Shape shape,
            Palette.Look look,
            double width,
            double strength,
            double[] dash,
            double phase) {
        int cap =
                dash.length == 0 || dotted(look, dash)
                        ? BasicStroke.CAP_ROUND
                        : BasicStroke.CAP_BUTT;
        draw(g, shape, look, width, strength, dash, phase, cap);
    }

    // Dots are round; without round ends nothing of them would be left.
    private static boolean dotted(Palette.Look look, double[] dash) {
        return dash.length > 0 && look.dash().get(0) <= 1;
    }

    /** As {@link #draw}, of a line that is cut off straight at its ends. */
    void cut(
            Graphics2D g,
            Shape shape,
            Palette.Look look,
            double width,
            double strength,
            double[] dash,
            double phase) {
        int cap = dotted(look, dash) ? BasicStroke.CAP_ROUND : BasicStroke.CAP_BUTT;
        draw(g, shape, look, width, strength, dash, phase, cap);
    }

    private void draw(
            Graphics2D g,
            Shape shape,
            Palette.Look look,
            double width,
            double strength,
            double[] dash,
            double phase,
            int cap) {
        g.setColor(ink(look.ink()));
        strength(g, strength);
        float broad = (float) (width * unit);
        if (dash.length == 0) {
            g.setStroke(new BasicStroke(broad, cap, BasicStroke.JOIN_ROUND));
        } else {
            float[] parts = new float[dash.length];
            for (int i = 0; i < dash.length; i++) {
                parts[i] = (float) dash[i];
            }
            g.setStroke(
                    new BasicStroke(broad, cap, BasicStroke.JOIN_ROUND, 10, parts, (float) phase));
        }
        g.draw(shape);
        strength(g, 1);
    }

    /** How far what is nearer keeps what is farther off where it passes before it, pixels. */
    double gap() {
        return GAP * unit;
    }

    /** A gap of the ground's colour on both sides of a line. */
    void casing(Graphics2D g, Shape shape, double width) {
        g.setColor(ink(Palette.Ink.PAPER));
        g.setStroke(
                new BasicStroke(
                        (float) (width * unit + 2 * gap()),
                        BasicStroke.CAP_BUTT,
                        BasicStroke.JOIN_ROUND));
        g.draw(shape);
    }

    /** How far a look's marker reaches from its middle, pixels. */
    double reach(Palette.Look look) {
        double r = Math.max(marking * look.markerSize() * unit, 3) / 2;
        return look.marker() == Palette.Marker.DIAMOND ? 1.2 * r : r;
    }

    /** How far anything of a look's marker lies from its middle, a square's corners say, pixels. */
    double round(Palette.Look look) {
        double square = look.marker() == Palette.Marker.SQUARE ? 0.89 * Math.sqrt(2) : 1;
        return square * reach(look) + look.width() * unit / 2;
    }

    /** A point in its look as seen through the body: its outline, faintly. */
    void shade(Graphics2D g, Point2D at, Palette.Look look) {
        double r = Math.max(marking * look.markerSize() * unit, 3) / 2;
        strength(g, SHADE);
        g.setColor(ink(look.ink()));
        g.setStroke(new BasicStroke((float) (2 * unit)));
        g.draw(outline(look.marker(), at, r));
        strength(g, 1);
    }

    /** A point in its look. */
    void mark(Graphics2D g, Point2D at, Palette.Look look) {
        double r = Math.max(marking * look.markerSize() * unit, 3) / 2;
        Color ink = ink(look.ink());
        Color paper = ink(Palette.Ink.PAPER);
        g.setStroke(
                new BasicStroke(
                        (float) (look.width() * unit),
                        BasicStroke.CAP_ROUND,
                        BasicStroke.JOIN_ROUND));
        switch (look.marker()) {
            case RING, SQUARE -> {
                Shape shape = outline(look.marker(), at, r);
                g.setColor(paper);
                g.fill(shape);
                g.setColor(ink);
                g.draw(shape);
            }
            case DISC, DIAMOND -> {
                strength(g, 0.16);
                g.setColor(ink);
                g.fill(outline(Palette.Marker.DISC, at, 1.9 * r));
                strength(g, 1);
                Shape shape = outline(look.marker(), at, r);
                g.fill(shape);
                g.setColor(paper);
                g.draw(shape);
            }
            case CROSS -> {
                strength(g, look.strength());
                g.setColor(ink);
                g.draw(outline(look.marker(), at, r));
                strength(g, 1);
            }
            case NONE -> {}
        }
    }

    private static Shape outline(Palette.Marker marker, Point2D at, double r) {
        double x = at.getX();
        double y = at.getY();
        return switch (marker) {
            case NONE, RING, DISC -> new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r);
            case SQUARE -> new Rectangle2D.Double(x - 0.89 * r, y - 0.89 * r, 1.78 * r, 1.78 * r);
            case DIAMOND ->
                    path(true, x, y - 1.2 * r, x + 1.2 * r, y, x, y + 1.2 * r, x - 1.2 * r, y);
            case CROSS -> {
                Path2D.Double cross = path(false, x - r, y, x + r, y);
                cross.append(path(false, x, y - r, x, y + r), false);
                yield cross;
            }
        };
    }

    /** Straight lines through points x, y, x, y, … */
    static Path2D.Double path(boolean closed, double... xy) {
        Path2D.Double path = new Path2D.Double();
        path.moveTo(xy[0], xy[1]);
        for (int i = 2; i < xy.length; i += 2) {
            path.lineTo(xy[i], xy[i + 1]);
        }
        if (closed) {
            path.closePath();
        }
        return path;
    }

    /** Type of {@code times} the plain size. */
    Lettering lettering(Face face, double times) {
        return new Lettering(face, times * type);
    }

    /**
     * A word about a point, on a plate of the ground's colour, so that lines below do not spoil it.
     */
    void plate(Graphics2D g, Rectangle2D plate, String word, Lettering lettering, Palette.Ink ink) {
        g.setColor(ink(Palette.Ink.PAPER));
        strength(g, 0.82);
        double round = 0.5 * plate.getHeight();
        g.fill(
                new RoundRectangle2D.Double(
                        plate.getX(),
                        plate.getY(),
                        plate.getWidth(),
                        plate.getHeight(),
                        round,
                        round));
        strength(g, 1);
        g.setColor(ink(ink));
        lettering.centre(g, word, plate.getCenterX(), plate.getCenterY());
    }

    /** How much room a word on its plate takes, about a middle. */
    static Rectangle2D.Double plate(Lettering lettering, String word, double x, double y) {
        double across = lettering.length(word) + 0.5 * lettering.size();
        double up = 1.15 * lettering.size();
        return new Rectangle2D.Double(x - across / 2, y - up / 2, across, up);
    }

    /** What a side's or nobody's things of a role look like. */
    static Palette.Look look(Item item) {
        return Palette.of(item.role(), item.side());
    }

    /** A look without its dash. */
    static Palette.Look unbroken(Palette.Look look) {
        return new Palette.Look(
                look.ink(),
                look.width(),
                List.of(),
                look.marker(),
                look.markerSize(),
                look.strength());
    }
}
