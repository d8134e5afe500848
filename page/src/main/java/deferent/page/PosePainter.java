package deferent.page;

import deferent.motion.pairing.Side;
import deferent.motion.trace.Count;
import deferent.motion.trace.Counts;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
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

    /** How large a hand is, of its usual size; and what lies on another mark. */
    private static final double SMALL = 0.62;

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
                new MomentPainter(scene, framing, layout.brush(), below, layout.paper());
        figure.behind(paper, "", moments.get(0));
        figure.figure(paper, "", moments.get(0), FIGURE);
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
     * All poses' heads, say, the left's below the right's. Hands are smaller and come last, for
     * they may lie on other poses' heads; so is a right head that lies on a left one.
     */
    private void poses(Paper paper, Layer layer) {
        for (Side side : Side.values()) {
            for (int i = 0; i < moments.size(); i++) {
                double time = moments.get(i);
                boolean small =
                        layer == Layer.HAND
                                || layer == Layer.HEAD
                                        && side == Side.RIGHT
                                        && onLeftHead(place(Track.head(side), time));
                Brush brush = layout.brush().marking(small ? SMALL : 1);
                new MomentPainter(scene, framing, brush, Set.of(layer), layout.paper())
                        .moving(paper, "pose-" + (i + 1) + "-", time, side);
            }
        }
    }

    private boolean onLeftHead(Point2D.Double at) {
        return moments.stream()
                .anyMatch(time -> place(Track.head(Side.LEFT), time).distance(at) < same());
    }

    /** Heads no further apart than this are taken for one place, pixels. */
    private double same() {
        return 0.6 * reach(Role.HEAD);
    }

    /** Poses of one side whose heads lie in one place. */
    private record Place(Side side, Point2D.Double head, Point2D.Double hand, Set<String> names) {}

    private List<Place> places() {
        List<Place> places = new ArrayList<>();
        for (Side side : Side.values()) {
            for (int i = 0; i < moments.size(); i++) {
                Point2D.Double head = place(Track.head(side), moments.get(i));
                Place here =
                        new Place(
                                side,
                                head,
                                place(Track.hand(side), moments.get(i)),
                                new LinkedHashSet<>());
                for (Place known : places) {
                    if (known.side() == side && known.head().distance(head) < same()) {
                        here = known;
                    }
                }
                if (here.names().isEmpty()) {
                    places.add(here);
                }
                here.names().add(names.get(i));
            }
        }
        return places;
    }

    private void numbers(Graphics2D g) {
        Lettering lettering = layout.brush().lettering(Face.BOLD, 1);
        List<Rectangle2D> marks = new ArrayList<>();
        for (double time : moments) {
            for (Side side : Side.values()) {
                marks.add(square(place(Track.head(side), time), reach(Role.HEAD)));
                marks.add(square(place(Track.hand(side), time), reach(Role.HAND)));
            }
        }
        List<Place> places = places();
        List<Rectangle2D> taken = new ArrayList<>();
        for (Place place : places) {
            List<Place> others =
                    places.stream()
                            .filter(o -> o.side() != place.side())
                            .filter(o -> o.head().distance(place.head()) < same())
                            .toList();
            boolean alike = others.stream().allMatch(o -> o.names().equals(place.names()));
            if (!others.isEmpty() && alike && place.side() == Side.RIGHT) {
                continue;
            }
            // Where both heads come by, but at other times, numbers say whose they are.
            String whose = alike ? "" : place.side().word() + " ";
            String name = whose + String.join(" ", place.names());
            Rectangle2D.Double plate =
                    free(place.head(), place.hand(), name, lettering, marks, taken);
            taken.add(plate);
            layout.brush().plate(g, plate, name, lettering, Palette.Ink.TEXT);
        }
    }

    /** The place beside a head where a number covers least; outward along the tether if it can. */
    private Rectangle2D.Double free(
            Point2D.Double head,
            Point2D.Double hand,
            String name,
            Lettering lettering,
            List<Rectangle2D> marks,
            List<Rectangle2D> taken) {
        double outward = Math.atan2(head.y - hand.y, head.x - hand.x);
        Rectangle2D.Double size = Brush.plate(lettering, name, 0, 0);
        Rectangle2D.Double best = size;
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
                double off =
                        HALO * reach(Role.HEAD) * FURTHER[further]
                                + Math.abs(ux) * size.width / 2
                                + Math.abs(uy) * size.height / 2;
                Rectangle2D.Double plate =
                        new Rectangle2D.Double(
                                size.x + head.x + off * ux,
                                size.y + head.y + off * uy,
                                size.width,
                                size.height);
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
