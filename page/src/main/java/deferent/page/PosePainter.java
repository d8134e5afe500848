package deferent.page;

import deferent.motion.shared.Side;
import deferent.motion.trace.Count;
import deferent.motion.trace.Counts;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
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
            paper.group("numbers", "numbers", g -> numbers(Brush.smooth(g), figure));
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

    /** Each number outward along its tether if it can be, and clear of all poses' marks. */
    private void numbers(Graphics2D g, MomentPainter figure) {
        Lettering lettering = layout.brush().lettering(Face.BOLD, 1);
        LabelRoom room = layout.labels();
        figure.lined(room);
        Set<Layer> marks = EnumSet.of(Layer.TETHER, Layer.HEAD, Layer.HAND);
        marks.retainAll(still.layers());
        MomentPainter poses =
                new MomentPainter(scene, framing, layout.brush(), marks, layout.paper());
        moments.forEach(time -> poses.marked(room, time));
        List<Place> places = places();
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
            LabelRoom.Placed label =
                    room.place(
                            place.head(),
                            Math.atan2(
                                    place.head().y - place.hand().y,
                                    place.head().x - place.hand().x),
                            HALO * reach(Role.HEAD),
                            Brush.plate(lettering, name, 0, 0));
            label.tie(g, layout.brush(), Palette.Ink.TEXT);
            layout.brush().plate(g, label.plate(), name, lettering, Palette.Ink.TEXT);
        }
    }

    private double reach(Role role) {
        return layout.brush().reach(Palette.of(role, Optional.of(Side.RIGHT)));
    }

    private Point2D.Double place(Track track, double time) {
        return framing.place(scene.at(track, time));
    }
}
