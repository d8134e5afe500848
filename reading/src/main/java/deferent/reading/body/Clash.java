package deferent.reading.body;

import deferent.motion.pairing.Place;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What of the one side runs into what of the other: heads, a head and the other hand, cords.
 *
 * <p>Heads meet where their centres come within a diameter of each other, a head and a hand within
 * a radius and half a hand's breadth. A cord is seen from the fist to the head's surface, so that a
 * head which a hand keeps to, as in every link, is no tangle.
 */
public final class Clash {
    private static final double FIST = Place.HAND_BREADTH / 2;

    // Half the share of a short cord that is kept.
    private static final double MIDDLE = 1e-3;

    // What is left open where planes were moved apart until nothing meets, metres.
    private static final double CLEAR = 1e-6;
    private static final int STEPS = 500;

    private final Trace trace;
    private final Samples samples;
    private final double headRadius;

    public Clash(Trace trace, double headRadius) {
        this.trace = trace;
        this.samples = Reach.samples(trace);
        this.headRadius = headRadius;
    }

    /** The side whose centre is nearer to the audience; the left of equals. */
    public Side front() {
        double left = trace.pairing().left().place().centre().getZ();
        double right = trace.pairing().right().place().centre().getZ();
        return right > left ? Side.RIGHT : Side.LEFT;
    }

    /** How near heads' centres are where they touch, metres. */
    public double headsTouch() {
        return 2 * headRadius;
    }

    /** How near a head's centre and a grip are where the head touches the fist, metres. */
    public double handTouched() {
        return headRadius + FIST;
    }

    /** The heads' meeting, where they do. */
    public Optional<Knock> heads() {
        return meeting(Side.LEFT, trace.head(Side.RIGHT), samples.head(Side.RIGHT), headsTouch());
    }

    /** The meeting of one side's head with the other hand, where they do. */
    public Optional<Knock> handStruck(Side head) {
        Side other = head.other();
        return meeting(head, trace.hand(other), samples.hand(other), handTouched());
    }

    private Optional<Knock> meeting(Side head, Course other, double[] others, double within) {
        Course heads = trace.head(head);
        double[] apart = Lengths.between(samples.head(head), others);
        Nearness nearest =
                Nearness.of(
                        trace, samples, apart, t -> heads.position(t).distance(other.position(t)));
        if (nearest.distance() >= within) {
            return Optional.empty();
        }
        double time = nearest.time();
        double most = passing(heads, other, time);
        for (int i = 0; i < apart.length; i++) {
            if (apart[i] < within) {
                double speed = passing(heads, other, samples.time(i));
                if (speed > most) {
                    most = speed;
                    time = samples.time(i);
                }
            }
        }
        return Optional.of(new Knock(most, time));
    }

    private static double passing(Course a, Course b, double time) {
        return a.at(time).velocity().distance(b.at(time).velocity());
    }

    /** How near the two cords come, from fists to heads, metres. */
    public Nearness cords() {
        return cords(Side.LEFT, 0);
    }

    private Nearness cords(Side side, double forward) {
        double[] sampled = new double[samples.count()];
        double[] ends = new double[12];
        for (int i = 0; i < sampled.length; i++) {
            for (Side one : Side.values()) {
                System.arraycopy(samples.hand(one), 3 * i, ends, 6 * one.ordinal(), 3);
                System.arraycopy(samples.head(one), 3 * i, ends, 6 * one.ordinal() + 3, 3);
            }
            sampled[i] = bare(ends, side, forward, headRadius);
        }
        return Nearness.of(
                trace,
                samples,
                sampled,
                t -> {
                    for (Side one : Side.values()) {
                        put(ends, 6 * one.ordinal(), trace.hand(one).position(t));
                        put(ends, 6 * one.ordinal() + 3, trace.head(one).position(t));
                    }
                    return bare(ends, side, forward, headRadius);
                });
    }

    /** How near two cords come, from fists to heads; hand and head of the one, then the other. */
    static double apart(double[] ends, double headRadius) {
        return bare(ends, Side.LEFT, 0, headRadius);
    }

    private static void put(double[] ends, int at, Vector3D p) {
        ends[at] = p.getX();
        ends[at + 1] = p.getY();
        ends[at + 2] = p.getZ();
    }

    // Both cut to what is bare of the cord; one that is all fist and head keeps its middle.
    private static double bare(double[] ends, Side side, double forward, double headRadius) {
        double[] cut = new double[12];
        for (int from = 0; from < 12; from += 6) {
            double dx = ends[from + 3] - ends[from];
            double dy = ends[from + 4] - ends[from + 1];
            double dz = ends[from + 5] - ends[from + 2];
            double length = Math.sqrt(dx * dx + dy * dy + dz * dz);
            double a = Math.min(FIST / length, 1);
            double b = Math.max(1 - headRadius / length, 0);
            if (a > b) {
                a = (a + b) / 2 - MIDDLE;
                b = a + 2 * MIDDLE;
            }
            double z = from == 6 * side.ordinal() ? forward : 0;
            cut[from] = ends[from] + a * dx;
            cut[from + 1] = ends[from + 1] + a * dy;
            cut[from + 2] = ends[from + 2] + a * dz + z;
            cut[from + 3] = ends[from] + b * dx;
            cut[from + 4] = ends[from + 1] + b * dy;
            cut[from + 5] = ends[from + 2] + b * dz + z;
        }
        return TetherSegments.apart(cut);
    }

    /**
     * How much further toward the audience the front side has to be until the heads keep clear of
     * one another, metres; empty where that is more than {@code most}.
     */
    public OptionalDouble headsApart(double most) {
        return apart(
                forward ->
                        moved(
                                trace.head(Side.LEFT),
                                trace.head(Side.RIGHT),
                                samples.head(Side.LEFT),
                                samples.head(Side.RIGHT),
                                front() == Side.LEFT ? forward : -forward),
                headsTouch(),
                most);
    }

    /** The same until one side's head keeps clear of the other hand. */
    public OptionalDouble handApart(Side head, double most) {
        Side other = head.other();
        return apart(
                forward ->
                        moved(
                                trace.head(head),
                                trace.hand(other),
                                samples.head(head),
                                samples.hand(other),
                                front() == head ? forward : -forward),
                handTouched(),
                most);
    }

    /** The same until the cords keep {@code limit} apart. */
    public OptionalDouble cordsApart(double limit, double most) {
        Side front = front();
        return apart(forward -> cords(front, forward).distance(), limit, most);
    }

    private double moved(Course a, Course b, double[] as, double[] bs, double forward) {
        double[] sampled = new double[samples.count()];
        for (int i = 0; i < sampled.length; i++) {
            double dx = as[3 * i] - bs[3 * i];
            double dy = as[3 * i + 1] - bs[3 * i + 1];
            double dz = as[3 * i + 2] + forward - bs[3 * i + 2];
            sampled[i] = Math.sqrt(dx * dx + dy * dy + dz * dz);
        }
        Vector3D by = new Vector3D(0, 0, forward);
        return Nearness.of(
                        trace, samples, sampled, t -> a.position(t).add(by).distance(b.position(t)))
                .distance();
    }

    private interface Distance {
        double at(double forward);
    }

    // As in Tender: no distance changes by more than one moves.
    private OptionalDouble apart(Distance distance, double limit, double most) {
        double moved = most + limit;
        for (int i = 0; i < STEPS; i++) {
            double spare = distance.at(moved) - limit;
            if (i == 0 && spare < 0) {
                return OptionalDouble.empty();
            }
            if (spare < CLEAR) {
                break;
            }
            moved -= spare - CLEAR / 2;
        }
        return moved > most ? OptionalDouble.empty() : OptionalDouble.of(Math.max(moved, 0));
    }
}
