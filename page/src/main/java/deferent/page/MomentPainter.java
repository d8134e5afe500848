package deferent.page;

import deferent.motion.shared.Side;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** A scene's moments in a framing: what never moves, the trails, what moves. */
final class MomentPainter {
    private final Scene scene;
    private final Framing framing;
    private final Brush brush;
    private final Set<Layer> layers;
    private final Rectangle2D paper;
    private final boolean whole;
    private final List<Item> behind = new ArrayList<>();
    private final List<Item> moving = new ArrayList<>();
    private final Map<Item, Trail> trails = new LinkedHashMap<>();

    /**
     * @param paper where it is painted, pixels
     */
    MomentPainter(Scene scene, Framing framing, Brush brush, Set<Layer> layers, Rectangle2D paper) {
        this(scene, framing, brush, layers, paper, false);
    }

    /**
     * As above.
     *
     * @param whole whether cords stay in one piece, because they are going to be moved
     */
    MomentPainter(
            Scene scene,
            Framing framing,
            Brush brush,
            Set<Layer> layers,
            Rectangle2D paper,
            boolean whole) {
        this.whole = whole;
        this.scene = scene;
        this.framing = framing;
        this.brush = brush;
        this.layers = layers;
        this.paper = paper;
        for (Item item : scene.items()) {
            if (!layers.contains(Layer.of(item.role()))) {
                continue;
            }
            if (item.role() == Role.HEAD_TRAIL && item.form() instanceof Item.Shape.Run run) {
                trails.put(item, Trail.of(scene, framing, brush, item, run));
            } else if (item.role().compareTo(Role.HEAD_TRAIL) < 0) {
                behind.add(item);
            } else {
                moving.add(item);
            }
        }
        Map<Item, Trail> crossed = Trail.crossing(trails);
        trails.clear();
        trails.putAll(crossed);
    }

    /** The performer at a moment, where one is painted. */
    Optional<Silhouette> body(double time) {
        for (Item item : behind) {
            if (item.form() instanceof Item.Shape.Body body) {
                return Optional.of(Silhouette.of(body.person(), scene, framing, time));
            }
        }
        return Optional.empty();
    }

    /** The trails, from the back to the front. */
    Map<Item, Trail> trails() {
        return trails;
    }

    /** What lies behind the trails: what stays as it is, and the performer at a moment. */
    void behind(Paper paper, String prefix, double time) {
        Optional<Silhouette> body = body(time);
        for (Item item : behind) {
            paper.group(prefix + item.id(), item.name(), g -> still(item, body, Brush.smooth(g)));
        }
    }

    /**
     * As {@link #behind(Paper, String, double)} of a moment's body on graphics that are smooth
     * already.
     */
    void behind(Graphics2D g, Optional<Silhouette> body) {
        for (Item item : behind) {
            still(item, body, g);
        }
    }

    /** Whether anything behind the trails moves. */
    boolean stirs() {
        return behind.stream().anyMatch(item -> item.form() instanceof Item.Shape.Body);
    }

    private void still(Item item, Optional<Silhouette> body, Graphics2D g) {
        Palette.Look look = Brush.look(item);
        if (item.form() instanceof Item.Shape.Run run) {
            Trail.of(scene, framing, brush, item, run).even(g, look.strength(), body);
        } else if (item.form() instanceof Item.Shape.Fixed fixed) {
            if (fixed.points().size() == 1) {
                brush.mark(g, framing.place(fixed.points().get(0)), look);
            } else {
                Shape line = framing.line(fixed.points(), fixed.closed());
                brush.draw(g, line, look);
            }
        } else if (item.form() instanceof Item.Shape.Body && body.isPresent()) {
            new PersonPainter(brush).paint(g, body.get());
            trails.values().forEach(trail -> trail.casing(g, body.get()));
        }
    }

    /** The paths as evenly drawn lines, about the performer at a moment. */
    void figure(Paper paper, String prefix, double time, double strength) {
        Optional<Silhouette> body = body(time);
        trails.forEach(
                (item, trail) ->
                        paper.group(
                                prefix + item.id(),
                                item.name(),
                                g -> trail.even(Brush.smooth(g), strength, body)));
    }

    void trails(Paper paper, String prefix, double time) {
        Optional<Silhouette> body = body(time);
        trails.forEach(
                (item, trail) -> {
                    if (paper.pixels().isPresent()) {
                        Pixels pixels = paper.pixels().get();
                        pixels(trail, pixels)
                                .paint(trail.lane().share(time), pixels.argb(), seen(trail, body));
                    } else {
                        paper.group(
                                prefix + item.id(),
                                item.name(),
                                g -> trail.strokes(Brush.smooth(g), time, edge(), body));
                    }
                });
    }

    /** How strongly a trail's points are seen, as pixels take it: none where all are in full. */
    static double[] seen(Trail trail, Optional<Silhouette> body) {
        return body.isPresent() ? trail.seen(body) : new double[0];
    }

    /** A trail made ready for pixels. */
    TrailPixels pixels(Trail trail, Pixels bounds) {
        return TrailPixels.of(trail, brush.ink(trail.look().ink()).getRGB() & 0xFFFFFF, bounds);
    }

    /**
     * What moves, from the farthest on: link, cords as far as they are seen, hands and heads, and
     * over these what of a cord passes before one of them.
     */
    void moving(Paper paper, String prefix, double time) {
        for (Item item : order(time)) {
            paper.group(
                    prefix + item.id(),
                    item.name(),
                    g -> move(item, time, body(time), false, Brush.smooth(g)));
        }
        for (Item item : over(time)) {
            paper.group(
                    prefix + item.id() + "-over",
                    item.name() + " before what is farther",
                    g -> move(item, time, body(time), true, Brush.smooth(g)));
        }
    }

    /** What moves and is a side's. */
    void moving(Paper paper, String prefix, double time, Side side) {
        for (Item item : order(time)) {
            if (item.side().equals(Optional.of(side))) {
                paper.group(
                        prefix + item.id(),
                        item.name(),
                        g -> move(item, time, body(time), false, Brush.smooth(g)));
            }
        }
    }

    /** As {@link #moving(Paper, String, double)} on graphics that are smooth already. */
    void moving(Graphics2D g, double time, Optional<Silhouette> body) {
        for (Item item : order(time)) {
            move(item, time, body, false, g);
        }
        for (Item item : over(time)) {
            move(item, time, body, true, g);
        }
    }

    private List<Item> order(double time) {
        List<Item> items = new ArrayList<>(moving);
        items.sort(
                Comparator.comparing((Item item) -> kind(item.role()))
                        .thenComparingDouble(item -> near(item, time)));
        return items;
    }

    // Hands and heads lie among each other as they are seen.
    private static Role kind(Role role) {
        return role == Role.HEAD ? Role.HAND : role;
    }

    // To a millimetre, so that equals stay in the order in which they came.
    private double near(Item item, double time) {
        if (item.form() instanceof Item.Shape.Spot spot) {
            return Math.rint(1000 * spot(spot.track(), time).near());
        }
        if (item.form() instanceof Item.Shape.Span span) {
            return Math.rint(500 * (spot(span.from(), time).near() + spot(span.to(), time).near()));
        }
        return 0;
    }

    /** Cords that pass before a hand or head of the other side. */
    private List<Item> over(double time) {
        return order(time).stream()
                .filter(item -> item.role() == Role.TETHER)
                .filter(
                        item ->
                                item.form() instanceof Item.Shape.Span span
                                        && pieces(item, span, time, Optional.empty()).stream()
                                                .anyMatch(Strand::above))
                .toList();
    }

    private void move(
            Item item, double time, Optional<Silhouette> body, boolean over, Graphics2D g) {
        Palette.Look look = Brush.look(item);
        if (item.form() instanceof Item.Shape.Span span) {
            Point2D.Double from = place(span.from(), time);
            Point2D.Double to = place(span.to(), time);
            if (from.distance(to) <= 0.01) {
                return;
            }
            for (Strand piece : pieces(item, span, time, body)) {
                if (piece.above() == over) {
                    strand(g, from, to, piece, look);
                }
            }
        } else if (item.form() instanceof Item.Shape.Spot spot) {
            Framing.Spot at = spot(spot.track(), time);
            if (body.isPresent() && body.get().side(at.x(), at.y(), at.near()) < 0) {
                brush.shade(g, place(spot.track(), time), look);
            } else {
                brush.mark(g, place(spot.track(), time), look);
            }
        }
    }

    private void strand(
            Graphics2D g, Point2D.Double from, Point2D.Double to, Strand piece, Palette.Look look) {
        double dx = to.x - from.x;
        double dy = to.y - from.y;
        Shape line =
                new Line2D.Double(
                        from.x + piece.from() * dx,
                        from.y + piece.from() * dy,
                        from.x + piece.to() * dx,
                        from.y + piece.to() * dy);
        if (piece.cased()) {
            brush.casing(g, line, look.width());
        }
        boolean whole = piece.from() == 0 && piece.to() == 1;
        if (whole) {
            brush.draw(g, line, look);
            return;
        }
        double[] dash = brush.dash(look);
        double phase =
                dash.length == 0 ? 0 : piece.from() * Math.hypot(dx, dy) % (dash[0] + dash[1]);
        brush.cut(g, line, look, look.width(), look.strength(), dash, phase);
    }

    private List<Strand> pieces(
            Item item, Item.Shape.Span span, double time, Optional<Silhouette> body) {
        if (whole) {
            return List.of(new Strand(0, 1, false, false));
        }
        List<Strand.Mark> marks = new ArrayList<>();
        List<Framing.Spot> other = new ArrayList<>();
        for (Item one : moving) {
            // A link is no cord: only the body lies before it.
            if (item.role() != Role.TETHER || one.side().equals(item.side())) {
                continue;
            }
            if (one.form() instanceof Item.Shape.Spot spot) {
                marks.add(new Strand.Mark(spot(spot.track(), time), brush.reach(Brush.look(one))));
            } else if (one.role() == Role.TETHER && one.form() instanceof Item.Shape.Span beside) {
                other.add(spot(beside.from(), time));
                other.add(spot(beside.to(), time));
            }
        }
        double own = brush.reach(Palette.of(Role.HEAD, item.side()));
        return Strand.of(
                spot(span.from(), time),
                spot(span.to(), time),
                body,
                marks,
                other,
                own,
                brush.gap());
    }

    private Framing.Spot spot(Track track, double time) {
        return framing.spot(scene.at(track, time));
    }

    private Point2D.Double place(Track track, double time) {
        return framing.place(scene.at(track, time));
    }

    /** "left" and "right", beyond the heads: clear of marks and, if it can be, of all lines. */
    void labels(Paper paper, String prefix, double time, LabelRoom room) {
        if (layers.contains(Layer.LABELS)) {
            lined(room);
            paper.group(prefix + "labels", "labels", g -> labels(Brush.smooth(g), time, room));
        }
    }

    /**
     * As above on graphics that are smooth already, for one picture of many: these labels keep
     * clear of marks alone, since they would jump from picture to picture if they avoided lines.
     */
    void labels(Graphics2D g, double time, LabelRoom room) {
        if (!layers.contains(Layer.LABELS)) {
            return;
        }
        marked(room, time);
        Lettering lettering = brush.lettering(Face.BOLD, 1);
        for (Side side : Side.values()) {
            Point2D.Double hand = place(Track.hand(side), time);
            Point2D.Double head = place(Track.head(side), time);
            LabelRoom.Placed label =
                    room.place(
                            head,
                            Math.atan2(head.y - hand.y, head.x - hand.x),
                            1.35 * brush.round(Palette.of(Role.HEAD, Optional.of(side))),
                            Brush.plate(lettering, side.word(), 0, 0));
            label.tie(g, brush, Palette.Ink.TEXT);
            brush.plate(g, label.plate(), side.word(), lettering, Palette.Ink.TEXT);
        }
    }

    /** The lines that labels cross only where they must: figures and the hands' paths. */
    void lined(LabelRoom room) {
        trails.values().forEach(trail -> room.line(trail.lane()));
        for (Item item : behind) {
            if (item.form() instanceof Item.Shape.Run run) {
                room.line(PaperRun.of(scene, framing, run));
            }
        }
    }

    /** What of a moment no label may lie on. */
    void marked(LabelRoom room, double time) {
        for (Item item : moving) {
            if (item.form() instanceof Item.Shape.Span span) {
                room.cord(place(span.from(), time), place(span.to(), time));
            } else if (item.form() instanceof Item.Shape.Spot spot) {
                room.mark(place(spot.track(), time), brush.round(Brush.look(item)));
            }
        }
    }

    private double edge() {
        return Math.min(paper.getWidth(), paper.getHeight());
    }
}
