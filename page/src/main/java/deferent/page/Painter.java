package deferent.page;

import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Paints a still: one scene, one moment, one painting for every paper. Widths and markers come from
 * the {@link Palette} in thousandths of the shorter edge, so a thumbnail and a poster are the same
 * picture.
 */
final class Painter {
    /** How much of the cycle a trail takes to fade. */
    private static final double FADE = 0.72;

    /**
     * A trail is laid on in this many coats, the longest first, so its end has no edge; on a small
     * picture fewer do.
     */
    private static final int COATS = 14;

    private static final int COATS_SMALL = 6;
    private static final double SMALL = 320;

    /** What still shines through all the coats. */
    private static final double THROUGH = 0.044;

    /** Pixels a thousandth of the edge stands for at least, so that small pictures keep lines. */
    private static final double THINNEST = 0.42;

    private static final double OLD = 0.26;
    private static final double MARGIN = 0.075;
    private static final double TYPE = 0.0235;

    private final Scene scene;
    private final Still still;
    private final double unit;
    private final double margin;
    private final double type;
    private final Framing framing;

    private Painter(Scene scene, Still still) {
        this.scene = scene;
        this.still = still;
        double edge = Math.min(still.width(), still.height());
        unit = Math.max(edge / 1000, THINNEST);
        margin = MARGIN * edge;
        type = Math.max(9, TYPE * edge);
        double foot = still.caption().isEmpty() ? 0 : (still.caption().size() + 2) * 1.5 * type;
        framing = Framing.of(scene, still, margin, foot);
    }

    static void paint(Scene scene, Still still, Paper paper) {
        new Painter(scene, still).paint(paper);
    }

    private void paint(Paper paper) {
        if (!still.transparent()) {
            paper.group(
                    "ground",
                    "ground",
                    g -> {
                        g.setColor(Palette.Ink.PAPER.on(still.theme()));
                        g.fill(new Rectangle2D.Double(0, 0, still.width(), still.height()));
                    });
        }
        List<Item> items = new ArrayList<>(scene.items());
        items.sort(Comparator.comparing(Item::role).thenComparingDouble(this::near));
        for (Item item : items) {
            Palette.Look look = Palette.of(item.role(), item.side());
            paper.group(item.id(), item.name(), g -> paint(item, look, smooth(g)));
        }
        if (!still.caption().isEmpty()) {
            paper.group("scale", "scale bar", g -> scaleBar(smooth(g)));
            paper.group("caption", "caption", g -> caption(smooth(g)));
        }
    }

    private static Graphics2D smooth(Graphics2D g) {
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(
                RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        return g;
    }

    private double near(Item item) {
        if (item.form() instanceof Item.Form.Spot spot) {
            return framing.near(scene.at(spot.track(), still.time()));
        }
        if (item.form() instanceof Item.Form.Span span) {
            return framing.near(scene.at(span.from(), still.time()));
        }
        return 0;
    }

    private void paint(Item item, Palette.Look look, Graphics2D g) {
        g.setColor(look.ink().on(still.theme()));
        if (item.form() instanceof Item.Form.Run run) {
            if (item.role() == Role.HEAD_TRAIL) {
                trail(run, look, g);
            } else {
                draw(g, line(run), look, look.width(), look.strength());
            }
        } else if (item.form() instanceof Item.Form.Span span) {
            Point2D from = framing.place(scene.at(span.from(), still.time()));
            Point2D to = framing.place(scene.at(span.to(), still.time()));
            if (from.distance(to) > 0.01) {
                draw(g, new Line2D.Double(from, to), look, look.width(), look.strength());
            }
        } else if (item.form() instanceof Item.Form.Spot spot) {
            mark(g, framing.place(scene.at(spot.track(), still.time())), look);
        } else if (item.form() instanceof Item.Form.Fixed fixed) {
            if (fixed.points().size() == 1) {
                mark(g, framing.place(fixed.points().get(0)), look);
            } else {
                Shape line = framing.line(fixed.points(), fixed.closed());
                draw(g, line, look, look.width(), look.strength());
            }
        }
    }

    private Shape line(Item.Form.Run run) {
        return framing.line(samples(run.track()), run.closed());
    }

    private List<Vector3D> samples(Track track) {
        double[] xyz = scene.points(track);
        List<Vector3D> points = new ArrayList<>(scene.count());
        for (int i = 0; i < xyz.length; i += 3) {
            points.add(new Vector3D(xyz[i], xyz[i + 1], xyz[i + 2]));
        }
        return points;
    }

    /**
     * The whole figure faintly, then coats over ever younger parts of it. Each coat starts at the
     * head and runs back, so dashes fall on one another.
     */
    private void trail(Item.Form.Run run, Palette.Look look, Graphics2D g) {
        draw(g, line(run), unbroken(look), look.width() * 0.55, OLD);
        List<Vector3D> back = back(run);
        int coats = Math.min(still.width(), still.height()) < SMALL ? COATS_SMALL : COATS;
        double strength = 1 - Math.pow(THROUGH, 1.0 / coats);
        for (int coat = coats; coat >= 1; coat--) {
            double share = (double) coat / coats;
            int length = (int) Math.round(back.size() * share);
            if (length >= 2) {
                Shape young = framing.line(back.subList(0, length), false);
                draw(g, young, look, look.width() * (1.05 - 0.5 * share), strength);
            }
        }
    }

    private static Palette.Look unbroken(Palette.Look look) {
        return new Palette.Look(
                look.ink(),
                look.width(),
                List.of(),
                look.marker(),
                look.markerSize(),
                look.strength());
    }

    private List<Vector3D> back(Item.Form.Run run) {
        double step = scene.period() / (run.closed() ? scene.count() : scene.count() - 1);
        int steps = (int) Math.round(FADE * scene.count());
        double start = scene.trace().interval().start();
        List<Vector3D> points = new ArrayList<>(steps + 1);
        for (int i = 0; i <= steps; i++) {
            double time = still.time() - i * step;
            if (!run.closed() && time < start) {
                break;
            }
            points.add(scene.at(run.track(), time));
        }
        return points;
    }

    private void draw(Graphics2D g, Shape shape, Palette.Look look, double width, double strength) {
        float broad = (float) (width * unit);
        boolean dotted = !look.dash().isEmpty() && look.dash().get(0) <= 1;
        int cap = look.dash().isEmpty() || dotted ? BasicStroke.CAP_ROUND : BasicStroke.CAP_BUTT;
        float[] dash = null;
        if (!look.dash().isEmpty()) {
            dash = new float[look.dash().size()];
            for (int i = 0; i < dash.length; i++) {
                dash[i] = (float) (look.dash().get(i) * look.width() * unit);
            }
        }
        g.setComposite(AlphaComposite.getInstance(AlphaComposite.SRC_OVER, (float) strength));
        g.setStroke(
                dash == null
                        ? new BasicStroke(broad, cap, BasicStroke.JOIN_ROUND)
                        : new BasicStroke(broad, cap, BasicStroke.JOIN_ROUND, 10, dash, 0));
        g.draw(shape);
        g.setComposite(AlphaComposite.SrcOver);
    }

    private void mark(Graphics2D g, Point2D at, Palette.Look look) {
        double r = Math.max(look.markerSize() * unit, 3) / 2;
        Color ink = look.ink().on(still.theme());
        Color paper = Palette.Ink.PAPER.on(still.theme());
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
                g.setComposite(AlphaComposite.getInstance(AlphaComposite.SRC_OVER, 0.16f));
                g.setColor(ink);
                g.fill(outline(Palette.Marker.DISC, at, 1.9 * r));
                g.setComposite(AlphaComposite.SrcOver);
                Shape shape = outline(look.marker(), at, r);
                g.fill(shape);
                g.setColor(paper);
                g.draw(shape);
            }
            case CROSS -> {
                g.setComposite(
                        AlphaComposite.getInstance(
                                AlphaComposite.SRC_OVER, (float) look.strength()));
                g.setColor(ink);
                g.draw(outline(look.marker(), at, r));
                g.setComposite(AlphaComposite.SrcOver);
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

    private static Path2D.Double path(boolean closed, double... xy) {
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

    /** A bar of a round length, about a fifth of the width, with its length beside it. */
    private void scaleBar(Graphics2D g) {
        double metres = round(still.width() / framing.scale() / 6);
        double length = metres * framing.scale();
        double y = still.height() - margin - (still.caption().size() + 0.35) * 1.5 * type;
        double tick = 0.3 * type;
        g.setColor(Palette.Ink.QUIET.on(still.theme()));
        g.setStroke(
                new BasicStroke(
                        (float) (1.6 * unit), BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
        Path2D.Double bar = path(false, margin, y - tick, margin, y + tick);
        bar.append(path(false, margin, y, margin + length, y), false);
        bar.append(path(false, margin + length, y - tick, margin + length, y + tick), false);
        g.draw(bar);
        g.setFont(font(Font.PLAIN, 0.85 * type));
        g.drawString(
                said(metres), (float) (margin + length + 0.6 * type), (float) (y + 0.3 * type));
    }

    static double round(double metres) {
        double ten = Math.pow(10, Math.floor(Math.log10(metres)));
        double share = metres / ten;
        return ten * (share < 2 ? 1 : share < 5 ? 2 : 5);
    }

    static String said(double metres) {
        return metres < 0.995
                ? String.format(Locale.ROOT, "%.0f cm", metres * 100)
                : String.format(Locale.ROOT, "%.0f m", metres);
    }

    private void caption(Graphics2D g) {
        int lines = still.caption().size();
        for (int i = 0; i < lines; i++) {
            String line = still.caption().get(i);
            Font font =
                    fitted(font(i == 0 ? Font.BOLD : Font.PLAIN, i == 0 ? 1.2 * type : type), line);
            g.setFont(font);
            g.setColor((i == 0 ? Palette.Ink.TEXT : Palette.Ink.QUIET).on(still.theme()));
            double y = still.height() - margin - (lines - 1 - i) * 1.5 * type;
            g.drawString(line, (float) margin, (float) y);
        }
    }

    private static Font font(int style, double size) {
        return new Font(Font.SANS_SERIF, style, 1).deriveFont((float) size);
    }

    private Font fitted(Font font, String line) {
        FontRenderContext context = new FontRenderContext(null, true, true);
        double length = font.getStringBounds(line, context).getWidth();
        double room = still.width() - 2 * margin;
        return length <= room
                ? font
                : font.deriveFont((float) (font.getSize2D() * Math.max(0.45, room / length)));
    }
}
