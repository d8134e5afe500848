package deferent.page;

import deferent.motion.trace.Count;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import java.util.Locale;

/** Where things go on a still's paper: the room for the picture, counts above, caption below. */
final class Layout {
    private static final double MARGIN = 0.075;
    private static final int MOST_COUNTS = 12;

    private final Still still;
    private final Brush brush;
    private final double margin;
    private final Rectangle2D.Double room;

    private Layout(
            Still still, Brush brush, double margin, double head, double foot, double beside) {
        this.still = still;
        this.brush = brush;
        this.margin = margin;
        room =
                new Rectangle2D.Double(
                        margin + beside,
                        margin + head,
                        Math.max(1, still.width() - 2 * (margin + beside)),
                        Math.max(1, still.height() - 2 * margin - head - foot));
    }

    static Layout of(Still still) {
        double edge = Math.min(still.width(), still.height());
        Palette.Theme theme =
                still.form() instanceof StillForm.Exposure ? Palette.Theme.DARK : still.theme();
        Brush brush = Brush.of(theme, edge);
        boolean counted = still.form() instanceof StillForm.Moment && still.shows(Layer.COUNTS);
        double head = counted ? 2 * brush.type() : 0;
        double foot =
                still.caption().isEmpty() ? 0 : (still.caption().size() + 2) * 1.5 * brush.type();
        // The words beside the heads need more room than the margin gives.
        boolean labelled = still.form() instanceof StillForm.Moment && still.shows(Layer.LABELS);
        double beside =
                labelled
                        ? Math.max(0, brush.lettering(Face.BOLD, 1).length("right") - 0.02 * edge)
                        : 0;
        return new Layout(still, brush, MARGIN * edge, head, foot, beside);
    }

    Brush brush() {
        return brush;
    }

    /** Pixels left free all round. */
    double margin() {
        return margin;
    }

    /** Where the picture goes. */
    Rectangle2D.Double room() {
        return room;
    }

    /** All of it. */
    Rectangle2D paper() {
        return new Rectangle2D.Double(0, 0, still.width(), still.height());
    }

    /**
     * Where labels may go: anywhere about the picture, but neither on counts nor on the caption.
     */
    LabelRoom labels() {
        double rim = 0.012 * edge();
        double top = room.y - margin + rim;
        return new LabelRoom(
                new Rectangle2D.Double(
                        rim, top, still.width() - 2 * rim, room.getMaxY() + margin - rim - top),
                brush.gap());
    }

    /** The shorter edge, pixels. */
    double edge() {
        return Math.min(still.width(), still.height());
    }

    void ground(Paper paper) {
        if (!still.transparent()) {
            paper.group(
                    "ground",
                    "ground",
                    g -> {
                        g.setColor(brush.ink(Palette.Ink.PAPER));
                        g.fill(new Rectangle2D.Double(0, 0, still.width(), still.height()));
                    });
        }
    }

    /**
     * Scale bar and caption, where there is one.
     *
     * @param scale pixels a metre; 0 for no bar
     */
    void caption(Paper paper, double scale) {
        if (still.caption().isEmpty()) {
            return;
        }
        if (scale > 0) {
            paper.group("scale", "scale bar", g -> scaleBar(Brush.smooth(g), scale));
        }
        paper.group("caption", "caption", g -> caption(Brush.smooth(g)));
    }

    /** A bar of a round length, about a fifth of the width, with its length beside it. */
    private void scaleBar(Graphics2D g, double scale) {
        double metres = round(still.width() / scale / 6);
        double length = metres * scale;
        double type = brush.type();
        double y = still.height() - margin - (still.caption().size() + 0.35) * 1.5 * type;
        double tick = 0.3 * type;
        g.setColor(brush.ink(Palette.Ink.QUIET));
        g.setStroke(
                new BasicStroke(
                        (float) (1.6 * brush.unit()),
                        BasicStroke.CAP_BUTT,
                        BasicStroke.JOIN_MITER));
        Path2D.Double bar = Brush.path(false, margin, y - tick, margin, y + tick);
        bar.append(Brush.path(false, margin, y, margin + length, y), false);
        bar.append(Brush.path(false, margin + length, y - tick, margin + length, y + tick), false);
        g.draw(bar);
        brush.lettering(Face.REGULAR, 0.85)
                .write(g, said(metres), margin + length + 0.6 * type, y + 0.3 * type);
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
        double room = still.width() - 2 * margin;
        // One size for all lines below the first, that of the longest.
        Lettering plain = brush.lettering(Face.REGULAR, 1);
        for (String line : still.caption().subList(1, lines)) {
            plain = plain.fitted(line, room);
        }
        Lettering bold = brush.lettering(Face.BOLD, 1.2).fitted(still.caption().get(0), room);
        for (int i = 0; i < lines; i++) {
            String line = still.caption().get(i);
            g.setColor(brush.ink(i == 0 ? Palette.Ink.TEXT : Palette.Ink.QUIET));
            double y = still.height() - margin - (lines - 1 - i) * 1.5 * brush.type();
            (i == 0 ? bold : plain).write(g, line, margin, y);
        }
    }

    /** The counts in a row at the upper left, the one that is on in front of the others. */
    void counts(Graphics2D g, List<Count> counts, Count on) {
        boolean all = counts.size() <= MOST_COUNTS;
        Lettering plain = brush.lettering(Face.REGULAR, 1.5);
        Lettering bold = brush.lettering(Face.BOLD, 1.5);
        double step = Math.max(2.2 * brush.type(), 1.2 * bold.length(on.said()));
        double y = margin + 0.9 * brush.type();
        double x = margin + step / 2;
        for (Count count : counts) {
            boolean now = count.equals(on);
            if (!all && !now) {
                continue;
            }
            if (now) {
                double r = 1.05 * brush.type();
                g.setColor(brush.ink(Palette.Ink.TEXT));
                g.fill(
                        new RoundRectangle2D.Double(
                                x - 0.46 * step, y - r, 0.92 * step, 2 * r, r, r));
            }
            g.setColor(brush.ink(now ? Palette.Ink.PAPER : Palette.Ink.QUIET));
            (now ? bold : plain).centre(g, count.said(), x, y);
            x += step;
        }
    }
}
