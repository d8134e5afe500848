package deferent.film.held;

import deferent.film.hand.HandSight;
import deferent.film.measured.Measured;
import deferent.film.measured.MeasuredSide;
import deferent.motion.shared.Side;
import deferent.motion.trace.Count;
import deferent.motion.trace.Counts;
import deferent.motion.trace.Course;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What is off on each count: both heads and both hands against the meant pairing as cords let it be
 * spun. Of the meant one only the centre and the time of both sides together are fitted, so that a
 * late hand and a shifted circle show.
 */
final class BeatByBeat {
    private static final int STEPS = 240; // of a path, for its middle

    private final Held held;
    private final Trace meant;
    private final double[] origin;

    private BeatByBeat(Held held) {
        this.held = held;
        this.meant = held.asCordsLet();
        this.origin = held.origin();
    }

    static List<Beat> of(Held held) {
        return new BeatByBeat(held).beats();
    }

    private List<Beat> beats() {
        Measured measured = held.measured();
        double cycle = measured.period();
        List<Beat> all = new ArrayList<>();
        for (Count count : Counts.of(Trace.of(held.meant()))) {
            double time = count.time() / meant.period() - held.ahead();
            double moment = cycle * (time - Math.floor(time));
            Map<Side, Off> heads = new EnumMap<>(Side.class);
            Map<Side, Off> hands = new EnumMap<>(Side.class);
            for (Side side : Side.values()) {
                MeasuredSide one = measured.side(side);
                double[] head = one.head().at(moment)[0];
                heads.put(
                        side,
                        off(meant.head(side), count.time(), head, one.head().error(moment, 0)));
                one.handAt(moment)
                        .ifPresent(sight -> hands.put(side, off(side, count.time(), sight)));
            }
            all.add(new Beat(count.said(), moment, heads, hands));
        }
        return List.copyOf(all);
    }

    private Off off(Side side, double time, HandSight sight) {
        return off(meant.hand(side), time, new double[] {sight.x(), sight.y()}, sight.error());
    }

    private Off off(Course course, double time, double[] at, double error) {
        Vector3D place = course.at(time).position();
        Vector3D speed = course.at(time).velocity();
        Vector3D middle = middle(course);
        double x = at[0] - origin[0] - place.getX();
        double y = at[1] - origin[1] - place.getY();
        double unsure = held.measured().how().error() * Math.hypot(at[0], at[1]);
        return Off.of(
                x,
                y,
                Math.hypot(error, unsure),
                new double[] {speed.getX(), speed.getY()},
                new double[] {place.getX() - middle.getX(), place.getY() - middle.getY()});
    }

    private Vector3D middle(Course course) {
        Vector3D sum = Vector3D.ZERO;
        for (int i = 0; i < STEPS; i++) {
            double time = meant.interval().start() + meant.period() * i / STEPS;
            sum = sum.add(course.position(time));
        }
        return sum.scalarMultiply(1.0 / STEPS);
    }
}
