package deferent.page;

import deferent.motion.pairing.Side;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** A scene's moments in a framing: what never moves, the trails, what moves. */
final class MomentPainter {
    /** Sides in the order in which their labels are placed. */
    private static final Side[] SIDES = Side.values();

    private final Scene scene;
    private final Framing framing;
    private final Brush brush;
    private final Set<Layer> layers;
    private final Rectangle2D paper;
    private final List<Item> behind = new ArrayList<>();
    private final List<Item> moving = new ArrayList<>();
    private final Map<Item, Trail> trails = new LinkedHashMap<>();

    /**
     * @param paper where it is painted, pixels; labels stay on it
     */
    MomentPainter(Scene scene, Framing framing, Brush brush, Set<Layer> layers, Rectangle2D paper) {
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
    }

    /** The trails, from the back to the front. */
    Map<Item, Trail> trails() {
        return trails;
    }

    /** What lies behind the trails: what stays as it is, and the performer at a moment. */
    void behind(Paper paper, String prefix, double time) {
        for (Item item : behind) {
            paper.group(prefix + item.id(), item.name(), g -> still(item, time, Brush.smooth(g)));
        }
    }

    /** As {@link #behind(Paper, String, double)} on graphics that are smooth already. */
    void behind(Graphics2D g, double time) {
        for (Item item : behind) {
            still(item, time, g);
        }
    }

    /** Whether anything behind the trails moves. */
    boolean stirs() {
        return behind.stream().anyMatch(item -> item.form() instanceof Item.Shape.Body);
    }

    private void still(Item item, double time, Graphics2D g) {
        Palette.Look look = Brush.look(item);
        if (item.form() instanceof Item.Shape.Run run) {
            brush.draw(g, PaperRun.of(scene, framing, run).whole(), look);
        } else if (item.form() instanceof Item.Shape.Fixed fixed) {
            if (fixed.points().size() == 1) {
                brush.mark(g, framing.place(fixed.points().get(0)), look);
            } else {
                Shape line = framing.line(fixed.points(), fixed.closed());
                brush.draw(g, line, look);
            }
        } else if (item.form() instanceof Item.Shape.Body body) {
            new PersonPainter(scene, body.person(), framing, brush).paint(g, time);
        }
    }

    /** The paths as evenly drawn lines. */
    void figure(Paper paper, String prefix, double strength) {
        trails.forEach(
                (item, trail) ->
                        paper.group(
                                prefix + item.id(),
                                item.name(),
                                g -> trail.even(Brush.smooth(g), strength)));
    }

    void trails(Paper paper, String prefix, double time) {
        trails.forEach(
                (item, trail) -> {
                    if (paper.pixels().isPresent()) {
                        Pixels pixels = paper.pixels().get();
                        pixels(trail, pixels).paint(trail.lane().share(time), pixels.argb());
                    } else {
                        paper.group(
                                prefix + item.id(),
                                item.name(),
                                g -> trail.strokes(Brush.smooth(g), time, edge()));
                    }
                });
    }

    /** A trail made ready for pixels. */
    TrailPixels pixels(Trail trail, Pixels bounds) {
        return TrailPixels.of(trail, brush.ink(trail.look().ink()).getRGB() & 0xFFFFFF, bounds);
    }

    /** What moves: link, tethers, hands, heads. */
    void moving(Paper paper, String prefix, double time) {
        for (Item item : order(time)) {
            paper.group(prefix + item.id(), item.name(), g -> move(item, time, Brush.smooth(g)));
        }
    }

    /** What moves and is a side's. */
    void moving(Paper paper, String prefix, double time, Side side) {
        for (Item item : order(time)) {
            if (item.side().equals(Optional.of(side))) {
                paper.group(
                        prefix + item.id(), item.name(), g -> move(item, time, Brush.smooth(g)));
            }
        }
    }

    /** As {@link #moving(Paper, String, double)} on graphics that are smooth already. */
    void moving(Graphics2D g, double time) {
        for (Item item : order(time)) {
            move(item, time, g);
        }
    }

    private List<Item> order(double time) {
        List<Item> items = new ArrayList<>(moving);
        items.sort(Comparator.comparing(Item::role).thenComparingDouble(item -> near(item, time)));
        return items;
    }

    private double near(Item item, double time) {
        if (item.form() instanceof Item.Shape.Spot spot) {
            return framing.near(scene.at(spot.track(), time));
        }
        if (item.form() instanceof Item.Shape.Span span) {
            return framing.near(scene.at(span.from(), time));
        }
        return 0;
    }

    private void move(Item item, double time, Graphics2D g) {
        Palette.Look look = Brush.look(item);
        if (item.form() instanceof Item.Shape.Span span) {
            Point2D from = place(span.from(), time);
            Point2D to = place(span.to(), time);
            if (from.distance(to) > 0.01) {
                brush.draw(g, new Line2D.Double(from, to), look);
            }
        } else if (item.form() instanceof Item.Shape.Spot spot) {
            brush.mark(g, place(spot.track(), time), look);
        }
    }

    private Point2D.Double place(Track track, double time) {
        return framing.place(scene.at(track, time));
    }

    /** "left" and "right", beyond the heads. */
    void labels(Paper paper, String prefix, double time) {
        if (layers.contains(Layer.LABELS)) {
            paper.group(prefix + "labels", "labels", g -> labels(Brush.smooth(g), time));
        }
    }

    /** As {@link #labels(Paper, String, double)} on graphics that are smooth already. */
    void labels(Graphics2D g, double time) {
        if (!layers.contains(Layer.LABELS)) {
            return;
        }
        Lettering lettering = brush.lettering(Face.BOLD, 1);
        Map<Side, Rectangle2D.Double> plates = new EnumMap<>(Side.class);
        for (Side side : SIDES) {
            plates.put(side, beyond(side, time, lettering));
        }
        apart(plates);
        for (Side side : SIDES) {
            Rectangle2D.Double plate = plates.get(side);
            if (plate != null) {
                keep(plate);
                brush.plate(g, plate, side.word(), lettering, Palette.Ink.TEXT);
            }
        }
    }

    /** A side's label where its tether, drawn on, would reach it. */
    private Rectangle2D.Double beyond(Side side, double time, Lettering lettering) {
        Point2D.Double hand = place(Track.hand(side), time);
        Point2D.Double head = place(Track.head(side), time);
        double length = Math.max(1, hand.distance(head));
        double reach = 1.35 * brush.reach(Palette.of(Role.HEAD, Optional.of(side)));
        Rectangle2D.Double plate = Brush.plate(lettering, side.word(), 0, 0);
        double ux = (head.x - hand.x) / length;
        double uy = (head.y - hand.y) / length;
        double off = reach + Math.abs(ux) * plate.width / 2 + Math.abs(uy) * plate.height / 2;
        return Brush.plate(lettering, side.word(), head.x + off * ux, head.y + off * uy);
    }

    private double edge() {
        return Math.min(paper.getWidth(), paper.getHeight());
    }

    /** A label moved as little as brings all of it onto the paper. */
    private void keep(Rectangle2D.Double plate) {
        double rim = 0.012 * edge();
        plate.x =
                Math.max(
                        paper.getMinX() + rim,
                        Math.min(paper.getMaxX() - rim - plate.width, plate.x));
        plate.y =
                Math.max(
                        paper.getMinY() + rim,
                        Math.min(paper.getMaxY() - rim - plate.height, plate.y));
    }

    /** Labels that would lie on each other give way, the left's upward, along the shorter way. */
    private static void apart(Map<Side, Rectangle2D.Double> plates) {
        Rectangle2D.Double left = plates.get(Side.LEFT);
        Rectangle2D.Double right = plates.get(Side.RIGHT);
        if (left == null || right == null) {
            return;
        }
        double dx = right.getCenterX() - left.getCenterX();
        double dy = right.getCenterY() - left.getCenterY();
        double across = (left.width + right.width) / 2 - Math.abs(dx);
        double up = (left.height + right.height) / 2 - Math.abs(dy);
        if (across <= 0 || up <= 0) {
            return;
        }
        if (across < up) {
            double way = dx < 0 ? -1 : 1;
            left.x -= way * across / 2;
            right.x += way * across / 2;
        } else {
            double way = dy < 0 ? -1 : 1;
            left.y -= way * up / 2;
            right.y += way * up / 2;
        }
    }
}
