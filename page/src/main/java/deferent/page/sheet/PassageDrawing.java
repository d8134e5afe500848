package deferent.page.sheet;

import deferent.motion.shared.Side;
import deferent.page.Palette;
import deferent.page.Role;
import deferent.page.View;
import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Draws a passage small: both figures faint, and over them, strong, the way of each hand and head
 * that leaves. Where it leaves its head is open, where it joins its head is full, and an arrow
 * between says which way it goes. Sizes are points.
 */
final class PassageDrawing {
    private static final float FAINT = 0.32f;
    private static final double FIGURE = 0.7;
    private static final double HEAD_WAY = 1.7;
    private static final double HAND_WAY = 0.8;
    private static final double TETHER = 0.6;
    private static final double HEAD = 2.6;
    private static final double HAND = 1.7;
    private static final double ARROW = 5;
    private static final double MARGIN = 4;

    private final Graphics2D g;
    private final View view;
    private final double scale;
    private final double x;
    private final double y;

    private PassageDrawing(Passage passage, View view, double width, double height, Graphics2D g) {
        this.g = g;
        this.view = view;
        List<View.Seen> places = all(passage).stream().map(view::see).toList();
        Rectangle2D.Double seen =
                new Rectangle2D.Double(places.get(0).right(), -places.get(0).up(), 0, 0);
        places.forEach(at -> seen.add(at.right(), -at.up()));
        scale =
                Math.min(
                        (width - 2 * MARGIN) / Math.max(0.05, seen.width),
                        (height - 2 * MARGIN) / Math.max(0.05, seen.height));
        x = width / 2 - scale * seen.getCenterX();
        y = height / 2 - scale * seen.getCenterY();
    }

    private static List<Vector3D> all(Passage passage) {
        return Stream.concat(
                        passage.figures().stream().flatMap(figure -> figure.head().stream()),
                        passage.ways().stream()
                                .flatMap(
                                        way ->
                                                Stream.concat(
                                                        way.hand().stream(), way.head().stream())))
                .toList();
    }

    static void paint(Mark.Drawn drawn, Graphics2D g) {
        PassageDrawing drawing =
                new PassageDrawing(
                        drawn.passage(),
                        drawn.view(),
                        drawn.box().width(),
                        drawn.box().height(),
                        g);
        drawn.passage().figures().forEach(drawing::figure);
        drawn.passage().ways().forEach(drawing::way);
        drawn.passage().ways().forEach(drawing::ends);
    }

    private void figure(Passage.Figure figure) {
        g.setColor(ink(figure.side()));
        g.setComposite(AlphaComposite.getInstance(AlphaComposite.SRC_OVER, FAINT));
        g.setStroke(line(FIGURE));
        g.draw(path(figure.head()));
        g.setComposite(AlphaComposite.SrcOver);
    }

    private void way(Passage.Way way) {
        g.setColor(ink(way.side()));
        g.setStroke(line(HAND_WAY));
        g.draw(path(way.hand()));
        g.setStroke(
                way.side() == Side.RIGHT
                        ? new BasicStroke(
                                (float) HEAD_WAY,
                                BasicStroke.CAP_BUTT,
                                BasicStroke.JOIN_ROUND,
                                10,
                                new float[] {4.5f, 1.5f},
                                0)
                        : line(HEAD_WAY));
        g.draw(path(way.head()));
        arrow(way.head());
    }

    /** Hand, tether and head where it leaves, with an open head, and where it joins. */
    private void ends(Passage.Way way) {
        for (boolean joins : new boolean[] {false, true}) {
            int at = joins ? way.head().size() - 1 : 0;
            Point2D hand = seen(way.hand().get(at));
            Point2D head = seen(way.head().get(at));
            g.setColor(ink(way.side()));
            g.setStroke(line(TETHER));
            g.draw(new Line2D.Double(hand, head));
            Color ink = ink(way.side());
            double r = HAND;
            g.setColor(Color.WHITE);
            Shape grip =
                    way.side() == Side.RIGHT
                            ? new Rectangle2D.Double(
                                    hand.getX() - 0.89 * r,
                                    hand.getY() - 0.89 * r,
                                    1.78 * r,
                                    1.78 * r)
                            : new Ellipse2D.Double(hand.getX() - r, hand.getY() - r, 2 * r, 2 * r);
            g.fill(grip);
            g.setColor(ink);
            g.draw(grip);
            Shape end = way.side() == Side.RIGHT ? diamond(head) : disc(head);
            g.setColor(joins ? ink : Color.WHITE);
            g.fill(end);
            g.setColor(ink);
            g.setStroke(line(1));
            g.draw(end);
        }
    }

    /** Half way along, pointing on. */
    private void arrow(List<Vector3D> head) {
        Path2D.Double path = path(head);
        double length = 0;
        double[] run = new double[head.size()];
        for (int i = 1; i < head.size(); i++) {
            length += seen(head.get(i - 1)).distance(seen(head.get(i)));
            run[i] = length;
        }
        if (length < 2 * (HEAD + ARROW) || path.getCurrentPoint() == null) {
            return;
        }
        int middle = 1;
        while (run[middle] < length / 2) {
            middle++;
        }
        Point2D tip = seen(head.get(middle));
        int behind = middle;
        while (behind > 0 && seen(head.get(behind)).distance(tip) < ARROW) {
            behind--;
        }
        Point2D from = seen(head.get(behind));
        double away = Math.max(1e-9, from.distance(tip));
        double dx = (tip.getX() - from.getX()) / away;
        double dy = (tip.getY() - from.getY()) / away;
        Path2D.Double wings = new Path2D.Double();
        wings.moveTo(tip.getX() + 0.4 * ARROW * dx, tip.getY() + 0.4 * ARROW * dy);
        wings.lineTo(
                tip.getX() - 0.6 * ARROW * dx - 0.5 * ARROW * dy,
                tip.getY() - 0.6 * ARROW * dy + 0.5 * ARROW * dx);
        wings.lineTo(
                tip.getX() - 0.6 * ARROW * dx + 0.5 * ARROW * dy,
                tip.getY() - 0.6 * ARROW * dy - 0.5 * ARROW * dx);
        wings.closePath();
        g.fill(wings);
    }

    private static Color ink(Side side) {
        return Palette.of(Role.HEAD_TRAIL, Optional.of(side)).ink().on(Palette.Theme.LIGHT);
    }

    private static BasicStroke line(double width) {
        return new BasicStroke((float) width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
    }

    private static Ellipse2D disc(Point2D at) {
        return new Ellipse2D.Double(at.getX() - HEAD, at.getY() - HEAD, 2 * HEAD, 2 * HEAD);
    }

    private static Path2D diamond(Point2D at) {
        double r = 1.2 * HEAD;
        Path2D.Double path = new Path2D.Double();
        path.moveTo(at.getX(), at.getY() - r);
        path.lineTo(at.getX() + r, at.getY());
        path.lineTo(at.getX(), at.getY() + r);
        path.lineTo(at.getX() - r, at.getY());
        path.closePath();
        return path;
    }

    private Point2D seen(Vector3D place) {
        View.Seen at = view.see(place);
        return new Point2D.Double(x + scale * at.right(), y - scale * at.up());
    }

    private Path2D.Double path(List<Vector3D> places) {
        Path2D.Double path = new Path2D.Double();
        for (Vector3D place : places) {
            Point2D at = seen(place);
            if (path.getCurrentPoint() == null) {
                path.moveTo(at.getX(), at.getY());
            } else {
                path.lineTo(at.getX(), at.getY());
            }
        }
        return path;
    }
}
