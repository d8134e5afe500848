package deferent.page;

import deferent.motion.shared.Side;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Paints how hands pass from one pattern into another: what is spun before and after lies faint
 * below, the passage of each hand and its poi strong above, with an arrow the way it goes, a ring
 * where it leaves and a disc where it joins.
 */
final class PassagePainter {
    /** Points a second that a path is drawn through. */
    private static final double RATE = 240;

    private static final double FAINT = 0.3;
    private static final double ARROW = 15;
    private static final double MARK = 22;

    private final Scene scene;
    private final StillForm.Passage passage;
    private final Still still;
    private final Layout layout;
    private final Framing framing;
    private final Brush brush;
    private final LabelRoom room;

    PassagePainter(Scene scene, Still still, Layout layout, StillForm.Passage passage) {
        this.scene = scene;
        this.passage = passage;
        this.still = still;
        this.layout = layout;
        this.framing = Framing.of(scene, still.view(), layout.room());
        this.brush = layout.brush();
        this.room = layout.labels();
    }

    /** Pixels a metre. */
    double paint(Paper paper) {
        EnumSet<Layer> body = EnumSet.of(Layer.BODY);
        body.retainAll(still.layers());
        new MomentPainter(scene, framing, brush, body, layout.paper())
                .behind(paper, "", still.time());
        for (Side side : Side.values()) {
            paper.group(
                    side.word() + "-patterns",
                    side.word() + " before and after",
                    g -> faint(Brush.smooth(g), side));
        }
        for (StillForm.Passing hand : passage.hands()) {
            paper.group(
                    hand.side().word() + "-passage",
                    hand.side().word() + " passage",
                    g -> strong(Brush.smooth(g), hand));
        }
        for (StillForm.Passing hand : passage.hands()) {
            paper.group(
                    hand.side().word() + "-moments",
                    hand.side().word() + " leaves and joins",
                    g -> moments(Brush.smooth(g), hand));
        }
        paper.group("labels", "where hands leave and join", g -> labels(Brush.smooth(g)));
        return framing.scale();
    }

    private void faint(Graphics2D g, Side side) {
        double start = scene.trace().interval().start();
        double end = scene.trace().interval().end();
        Optional<StillForm.Passing> passes =
                passage.hands().stream().filter(h -> h.side() == side).findFirst();
        double from = passes.map(StillForm.Passing::from).orElse(end);
        double to = passes.map(StillForm.Passing::to).orElse(end);
        for (Role role : List.of(Role.HAND_PATH, Role.HEAD_TRAIL)) {
            if (still.shows(Layer.of(role))) {
                stretch(g, side, role, start, from, FAINT);
                stretch(g, side, role, to, end, FAINT);
            }
        }
    }

    private void strong(Graphics2D g, StillForm.Passing hand) {
        for (Role role : List.of(Role.HAND_PATH, Role.HEAD_TRAIL)) {
            stretch(g, hand.side(), role, hand.from(), hand.to(), 1);
            arrow(g, hand, role);
        }
    }

    private void stretch(
            Graphics2D g, Side side, Role role, double from, double to, double strength) {
        if (to - from < 1e-6) {
            return;
        }
        int count = Math.max(2, (int) Math.ceil(RATE * (to - from)) + 1);
        List<Vector3D> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            points.add(at(side, role, from + (to - from) * i / (count - 1)));
        }
        Palette.Look look = Palette.of(role, Optional.of(side));
        Shape line = framing.line(points, false);
        boolean strong = strength >= 1;
        double[] xy = new double[2 * count];
        for (int i = 0; i < count; i++) {
            Point2D.Double p = framing.place(points.get(i));
            xy[2 * i] = p.x;
            xy[2 * i + 1] = p.y;
        }
        room.line(xy);
        double width = strong ? Math.max(3, 1.15 * look.width()) : 0.6 * look.width();
        brush.draw(g, line, look, width, strength, strong ? brush.dash(look) : new double[0], 0);
    }

    private Vector3D at(Side side, Role role, double time) {
        return role == Role.HEAD_TRAIL
                ? scene.trace().head(side).position(time)
                : scene.trace().hand(side).position(time);
    }

    /** In the middle of the passage, the way it goes. */
    private void arrow(Graphics2D g, StillForm.Passing hand, Role role) {
        double middle = (hand.from() + hand.to()) / 2;
        Point2D.Double at = framing.place(at(hand.side(), role, middle));
        Point2D.Double on = framing.place(at(hand.side(), role, middle + 1 / RATE));
        double far = at.distance(on);
        if (far * RATE < 0.1 * framing.scale()) {
            return;
        }
        double ux = (on.x - at.x) / far;
        double uy = (on.y - at.y) / far;
        double long1 = (role == Role.HEAD_TRAIL ? 1 : 0.7) * ARROW * brush.unit();
        double wide = 0.6 * long1;
        room.mark(at, long1);
        g.setColor(brush.ink(Palette.of(role, Optional.of(hand.side())).ink()));
        g.fill(
                Brush.path(
                        true,
                        at.x + long1 * ux,
                        at.y + long1 * uy,
                        at.x - long1 * ux - wide * uy,
                        at.y - long1 * uy + wide * ux,
                        at.x - long1 * ux + wide * uy,
                        at.y - long1 * uy - wide * ux));
    }

    private void moments(Graphics2D g, StillForm.Passing hand) {
        mark(g, hand.side(), hand.from(), Palette.Marker.RING);
        mark(g, hand.side(), hand.to(), Palette.Marker.DISC);
    }

    private void mark(Graphics2D g, Side side, double time, Palette.Marker marker) {
        Palette.Ink ink = Palette.of(Role.HEAD, Optional.of(side)).ink();
        for (Role role : List.of(Role.HAND_PATH, Role.HEAD_TRAIL)) {
            Point2D.Double at = framing.place(at(side, role, time));
            Palette.Look look =
                    role == Role.HEAD_TRAIL
                            ? new Palette.Look(ink, 3, List.of(), marker, MARK, 1)
                            : new Palette.Look(ink, 2, List.of(), marker, 0.6 * MARK, 1);
            brush.mark(g, at, look);
            room.mark(at, brush.round(look));
        }
    }

    private void labels(Graphics2D g) {
        for (StillForm.Passing hand : passage.hands()) {
            label(g, hand.side(), hand.from(), hand.leaves());
            label(g, hand.side(), hand.to(), hand.joins());
        }
    }

    private void label(Graphics2D g, Side side, double time, String said) {
        Palette.Ink ink = Palette.of(Role.HEAD, Optional.of(side)).ink();
        Point2D.Double head = framing.place(at(side, Role.HEAD_TRAIL, time));
        Point2D.Double hand = framing.place(at(side, Role.HAND_PATH, time));
        Lettering lettering = brush.lettering(Face.BOLD, 0.9);
        LabelRoom.Placed label =
                room.place(
                        head,
                        Math.atan2(head.y - hand.y, head.x - hand.x),
                        0.8 * MARK * brush.unit(),
                        Brush.plate(lettering, said, 0, 0));
        label.tie(g, brush, ink);
        brush.plate(g, label.plate(), said, lettering, ink);
    }
}
