package deferent.page.sheet;

import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Trace;
import deferent.search.transition.Bridge;
import deferent.search.transition.Transition;
import deferent.search.transition.TransitionFinder;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What is drawn of a transition: the figures of both patterns, and for each hand that leaves the
 * one for the other where it and its head go meanwhile. Places are metres in the house's frame.
 *
 * @param figures of the pattern that is left, then of the one that is joined, left then right
 * @param ways of the hands that do not simply go on, left before right
 */
record Passage(List<Figure> figures, List<Way> ways) {
    private static final int FIGURE = 240;
    private static final int WAY = 96;

    /** A closed head path. */
    record Figure(Side side, List<Vector3D> head) {
        Figure {
            head = List.copyOf(head);
        }
    }

    /** From leaving to joining, as many places of the hand as of its head, evenly in time. */
    record Way(Side side, List<Vector3D> hand, List<Vector3D> head) {
        Way {
            hand = List.copyOf(hand);
            head = List.copyOf(head);
        }
    }

    Passage {
        figures = List.copyOf(figures);
        ways = List.copyOf(ways);
    }

    static Passage of(Transition transition, TransitionFinder finder) {
        List<Figure> figures = new ArrayList<>();
        for (Trace trace : List.of(finder.spun(transition.from()), finder.spun(transition.to()))) {
            double start = trace.interval().start();
            for (Side side : Side.values()) {
                figures.add(
                        new Figure(
                                side,
                                places(trace.head(side), start, start + trace.period(), FIGURE)));
            }
        }
        Trace played = finder.play(List.of(transition), transition.leaves(), 0, 0).trace();
        List<Way> ways = new ArrayList<>();
        for (Side side : Side.values()) {
            Bridge bridge = transition.bridge(side);
            if (!bridge.keeps()) {
                double leaves = bridge.leaves() - transition.leaves();
                double joins = leaves + bridge.seconds();
                ways.add(
                        new Way(
                                side,
                                places(played.hand(side), leaves, joins, WAY),
                                places(played.head(side), leaves, joins, WAY)));
            }
        }
        return new Passage(figures, ways);
    }

    private static List<Vector3D> places(Course course, double from, double to, int steps) {
        List<Vector3D> places = new ArrayList<>();
        for (int i = 0; i <= steps; i++) {
            places.add(course.position(from + (to - from) * i / steps));
        }
        return places;
    }
}
