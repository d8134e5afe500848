package deferent.page.sheet;

import deferent.motion.shared.Side;
import deferent.page.Palette;
import deferent.page.Role;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;

/** Draws a side's hand, tether and head in a row, in the looks of the {@link Palette}. */
final class LookSamples {
    /** Thousandths of a picture's edge that a point stands for here. */
    private static final double THOUSANDTHS = 3.4;

    private LookSamples() {}

    static void paint(Mark.Sample sample, Graphics2D g) {
        Side side = sample.side();
        double y = sample.box().height() / 2;
        double hand = size(Role.HAND, side) / 2 + 0.5;
        double head = sample.box().width() - size(Role.HEAD, side) / 2 - 1;
        line(g, Role.HEAD_TRAIL, side, hand, head, y);
        marker(g, Role.HAND, side, hand, y);
        marker(g, Role.HEAD, side, head, y);
    }

    private static double size(Role role, Side side) {
        return look(role, side).markerSize() / THOUSANDTHS;
    }

    private static Palette.Look look(Role role, Side side) {
        return Palette.of(role, Optional.of(side));
    }

    private static void line(Graphics2D g, Role role, Side side, double from, double to, double y) {
        Palette.Look look = look(role, side);
        float width = (float) (look.width() / THOUSANDTHS);
        List<Double> dash = look.dash();
        float[] pattern = new float[dash.size()];
        for (int i = 0; i < pattern.length; i++) {
            pattern[i] = (float) (dash.get(i) * width);
        }
        g.setColor(look.ink().on(Palette.Theme.LIGHT));
        g.setStroke(
                pattern.length == 0
                        ? new BasicStroke(width)
                        : new BasicStroke(
                                width,
                                BasicStroke.CAP_BUTT,
                                BasicStroke.JOIN_ROUND,
                                10,
                                pattern,
                                0));
        g.draw(new Line2D.Double(from, y, to, y));
    }

    private static void marker(Graphics2D g, Role role, Side side, double x, double y) {
        Palette.Look look = look(role, side);
        double r = size(role, side) / 2;
        Color ink = look.ink().on(Palette.Theme.LIGHT);
        Shape shape =
                switch (look.marker()) {
                    case SQUARE ->
                            new Rectangle2D.Double(x - 0.89 * r, y - 0.89 * r, 1.78 * r, 1.78 * r);
                    case DIAMOND -> diamond(x, y, 1.2 * r);
                    default -> new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r);
                };
        boolean open = role == Role.HAND;
        g.setColor(open ? Color.WHITE : ink);
        g.fill(shape);
        g.setColor(ink);
        g.setStroke(new BasicStroke((float) (look.width() / THOUSANDTHS)));
        if (open) {
            g.draw(shape);
        }
    }

    private static Path2D.Double diamond(double x, double y, double r) {
        Path2D.Double path = new Path2D.Double();
        path.moveTo(x, y - r);
        path.lineTo(x + r, y);
        path.lineTo(x, y + r);
        path.lineTo(x - r, y);
        path.closePath();
        return path;
    }
}
