package deferent.reading.body;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * How near everything comes to everything else, and when the tethers cross in view.
 *
 * <p>Heads and hands are points here (the head's centre, the grip), tethers straight lines between
 * them; take off the radius of a head or the half of a fist where it matters. Distances are in
 * space, so figures in neighbouring planes keep their planes' distance.
 *
 * @param headToHead between the two heads' centres
 * @param tetherToTether between any two points of the two tethers, hands and heads included
 * @param left the left side against the right hand and the body
 * @param right the right side against the left hand and the body
 * @param passings by time: when the tethers cross in view of the audience; tethers that lie along
 *     one another in view do not cross
 */
public record Room(
        Nearness headToHead,
        Nearness tetherToTether,
        SideRoom left,
        SideRoom right,
        List<Passing> passings) {
    public Room {
        passings = List.copyOf(passings);
    }

    /** In the room; against the body as it has turned by then. */
    public static Room of(Trace trace, Performer performer) {
        Trace body = performer.around(trace);
        Samples around = Reach.samples(body);
        BodyOutline outline = BodyOutline.of(performer);
        Samples samples = Reach.samples(trace);
        TetherSegments tethers = new TetherSegments(trace, samples);
        Nearness heads =
                Nearness.of(
                        trace,
                        samples,
                        Lengths.between(samples.head(Side.LEFT), samples.head(Side.RIGHT)),
                        between(trace.head(Side.LEFT), trace.head(Side.RIGHT))::at);
        return new Room(
                heads,
                tethers.nearness(),
                side(body, around, outline, Side.LEFT),
                side(body, around, outline, Side.RIGHT),
                passings(trace, samples, tethers));
    }

    public SideRoom side(Side side) {
        return side == Side.LEFT ? left : right;
    }

    private interface Distance {
        double at(double time);
    }

    private static Distance between(Course a, Course b) {
        return t -> a.position(t).distance(b.position(t));
    }

    private static SideRoom side(Trace trace, Samples samples, BodyOutline outline, Side side) {
        double[] hand = samples.hand(side);
        double[] head = samples.head(side);
        Course handCourse = trace.hand(side);
        Course headCourse = trace.head(side);
        int count = samples.count();
        double[] fromHand = new double[count];
        double[] fromHead = new double[count];
        double[] fromTether = new double[count];
        for (int i = 0; i < count; i++) {
            int x = 3 * i;
            fromHand[i] = outline.distance(hand[x], hand[x + 1], hand[x + 2]);
            fromHead[i] = outline.distance(head[x], head[x + 1], head[x + 2]);
            fromTether[i] =
                    outline.distance(
                            hand[x], hand[x + 1], hand[x + 2], head[x], head[x + 1], head[x + 2]);
        }
        Nearness tether =
                Nearness.of(
                        trace,
                        samples,
                        fromTether,
                        t -> outline.distance(handCourse.position(t), headCourse.position(t)));
        return new SideRoom(
                side,
                Nearness.of(
                        trace,
                        samples,
                        Lengths.between(head, samples.hand(side.other())),
                        between(headCourse, trace.hand(side.other()))::at),
                Nearness.of(
                        trace, samples, fromHead, t -> outline.distance(headCourse.position(t))),
                Nearness.of(
                        trace, samples, fromHand, t -> outline.distance(handCourse.position(t))),
                tether,
                outline.nearest(
                        handCourse.position(tether.time()), headCourse.position(tether.time())));
    }

    private static List<Passing> passings(Trace trace, Samples samples, TetherSegments tethers) {
        List<Passing> found = new ArrayList<>();
        for (Interval spell : Spells.of(trace, samples, tethers::cross, tethers::crossAt)) {
            double time = Nearness.within(trace, (spell.start() + spell.end()) / 2);
            Vector3D[] points = tethers.crossing(time);
            found.add(
                    new Passing(
                            spell,
                            time,
                            points[0],
                            points[1],
                            lying(trace, Side.LEFT, time),
                            lying(trace, Side.RIGHT, time)));
        }
        return found;
    }

    private static Lying lying(Trace trace, Side side, double time) {
        Pairing pairing = trace.pairing();
        double phase =
                pairing.startPhase(side) + pairing.part(side).cycles() * time / pairing.period();
        return Lying.of(pairing.part(side), pairing.mirrored(side), phase);
    }
}
