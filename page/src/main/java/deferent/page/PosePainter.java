package deferent.page;

import deferent.motion.pairing.Side;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The figure with hands and tethers at chosen moments. Each pose of several bears its number beside
 * both heads: the count it falls on ("2", "2&amp;"), or where one falls on none, its place in
 * order.
 */
final class PosePainter {
    private static final int LEAST = 4;

    /** How strong the figure is under the poses. */
    private static final double FIGURE = 0.32;

    /** How large a hand is, of its usual size. */
    private static final double HANDS = 0.62;

    /** How far a number stays off a head, in its marker's reaches: outside the light about it. */
    private static final double HALO = 1.6;

    private static final int WAYS = 16;
    private static final double[] FURTHER = {1, 1.5, 2.2};

    private final Scene scene;
    private final Still still;
    private final Layout layout;
    private final Framing framing;
    private final List<Double> moments;
    private final List<String> names;

    PosePainter(Scene scene, Still still, Layout layout) {
        this.scene = scene;
        this.still = still;
        this.layout = layout;
        framing = Framing.of(scene, still.view(), layout.room());
        moments = moments(scene, still, LEAST);
        names = names(scene, moments);
    }

    static List<Double> moments(Scene scene, Still still, int least) {
        return still.moments().isEmpty()
                ? Counts.moments(scene.trace(), least).stream().map(Count::time).toList()
                : still.moments();
    }

    private static List<String> names(Scene scene, List<Double> moments) {
        List<String> names = new ArrayList<>();
        for (double moment : moments) {
            Counts.name(scene.trace(), moment).ifPresent(names::add);
        }
        if (names.size() == moments.size()) {
            return names;
        }
        names.clear();
        for (int i = 0; i < moments.size(); i++) {
            names.add(Integer.toString(i + 1));
        }
        return names;
    }

    double paint(Paper paper) {
        Set<Layer> below = EnumSet.of(Layer.BODY, Layer.CENTRE, Layer.HAND_PATH, Layer.TRAIL);
        below.retainAll(still.layers());
        MomentPainter figure =
                new MomentPainter(scene, framing, layout.brush(), below, layout.edge());
        figure.behind(paper, "");
        figure.figure(paper, "", FIGURE);
        for (Layer layer : List.of(Layer.TETHER, Layer.HEAD, Layer.HAND)) {
            if (still.shows(layer)) {
                paper.within(layer.words(), layer.words(), () -> poses(paper, layer));
            }
        }
        if (moments.size() > 1) {
            paper.group("numbers", "numbers", g -> numbers(Brush.smooth(g)));
        }
        return framing.scale();
    }

    /**
     * All poses' heads, say; hands are smaller and come last, for they may lie on other poses'
     * heads.
     */
    private void poses(Paper paper, Layer layer) {
        double size = layer == Layer.HAND ? HANDS : 1;
        MomentPainter painter =
                new MomentPainter(
                        scene, framing, layout.brush().marking(size), Set.of(layer), layout.edge());
        for (int i = 0; i < moments.size(); i++) {
            painter.moving(paper, "pose-" + (i + 1) + "-", moments.get(i));
        }
    }

    private void numbers(Graphics2D g) {
        Font font = layout.brush().font(Font.BOLD, 1);
        List<Rectangle2D> marks = new ArrayList<>();
        Map<Point2D.Double, String> heads = new LinkedHashMap<>();
        Map<Point2D.Double, Point2D.Double> hands = new LinkedHashMap<>();
        double same = 0.6 * reach(Role.HEAD);
        for (int i = 0; i < moments.size(); i++) {
            for (Side side : Side.values()) {
                Point2D.Double head = place(Track.head(side), moments.get(i));
                Point2D.Double hand = place(Track.hand(side), moments.get(i));
                marks.add(square(head, reach(Role.HEAD)));
                marks.add(square(hand, reach(Role.HAND)));
                Point2D.Double at = head;
                for (Point2D.Double known : heads.keySet()) {
                    if (known.distance(head) < same) {
                        at = known;
                    }
                }
                String name = names.get(i);
                heads.merge(
                        at, name, (a, b) -> List.of(a.split(" ")).contains(b) ? a : a + " " + b);
                hands.putIfAbsent(at, hand);
            }
        }
        List<Rectangle2D> taken = new ArrayList<>();
        heads.forEach(
                (head, name) -> {
                    Point2D.Double hand = hands.getOrDefault(head, head);
                    Rectangle2D.Double plate = free(head, hand, name, font, marks, taken);
                    taken.add(plate);
                    layout.brush().plate(g, plate, name, font, Palette.Ink.TEXT);
                });
    }

    /** The place beside a head where a number covers least; outward along the tether if it can. */
    private Rectangle2D.Double free(
            Point2D.Double head,
            Point2D.Double hand,
            String name,
            Font font,
            List<Rectangle2D> marks,
            List<Rectangle2D> taken) {
        double outward = Math.atan2(head.y - hand.y, head.x - hand.x);
        Rectangle2D.Double best = Brush.plate(font, name, head.x, head.y);
        double least = Double.POSITIVE_INFINITY;
        double rim = layout.margin() / 4;
        Rectangle2D paper =
                new Rectangle2D.Double(rim, rim, still.width() - 2 * rim, still.height() - 2 * rim);
        for (int further = 0; further < FURTHER.length; further++) {
            for (int way = 0; way < WAYS; way++) {
                int steps = way % 2 == 0 ? way / 2 : -(way + 1) / 2;
                double angle = outward + 2 * Math.PI * steps / WAYS;
                double ux = Math.cos(angle);
                double uy = Math.sin(angle);
                Rectangle2D.Double plate = Brush.plate(font, name, 0, 0);
                double off =
                        HALO * reach(Role.HEAD) * FURTHER[further]
                                + Math.abs(ux) * plate.width / 2
                                + Math.abs(uy) * plate.height / 2;
                plate = Brush.plate(font, name, head.x + off * ux, head.y + off * uy);
                double cost =
                        0.02 * Math.abs(steps)
                                + 0.25 * further
                                + (paper.contains(plate) ? 0 : 20)
                                + 5 * covered(plate, taken)
                                + 3 * covered(plate, marks);
                if (cost < least) {
                    least = cost;
                    best = plate;
                }
            }
        }
        return best;
    }

    /** How much of a plate lies on others, in plates. */
    private static double covered(Rectangle2D plate, List<Rectangle2D> others) {
        double sum = 0;
        for (Rectangle2D other : others) {
            if (plate.intersects(other)) {
                Rectangle2D both = plate.createIntersection(other);
                sum += both.getWidth() * both.getHeight();
            }
        }
        return sum / (plate.getWidth() * plate.getHeight());
    }

    private double reach(Role role) {
        return layout.brush().reach(Palette.of(role, Optional.of(Side.RIGHT)));
    }

    private static Rectangle2D square(Point2D.Double at, double r) {
        return new Rectangle2D.Double(at.x - r, at.y - r, 2 * r, 2 * r);
    }

    private Point2D.Double place(Track track, double time) {
        return framing.place(scene.at(track, time));
    }
}
