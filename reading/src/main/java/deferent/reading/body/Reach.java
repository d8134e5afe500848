package deferent.reading.body;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Whether each hand can get where its path goes, and whether the two hands would meet.
 *
 * <p>An arm turns freely at its shoulder and bends at elbow and wrist, so a hand can be anywhere
 * between two spheres about its own shoulder: the straight arm's and the fully bent arm's. Each
 * hand is read with the trunk straight ahead, then both at once with the trunk turned, and where
 * that falls short with the shoulders forward or raised and the trunk leant. Joint limits other
 * than elbow's, wrist's, trunk's and shoulder girdle's and the body in the way are left out, which
 * is why this warns and never forbids.
 *
 * @param performer whose arms
 * @param left the left hand
 * @param right the right hand
 * @param hands how near the two grips come to each other, metres, and when
 * @param trunk the least turn of the trunk that helps both hands
 * @param bend what the body does beside, where that alone falls short
 */
public record Reach(
        Performer performer,
        HandReach left,
        HandReach right,
        Nearness hands,
        TrunkTurn trunk,
        Optional<Bend> bend) {
    /** Less than this is no miss, metres. */
    static final double SLACK = 1e-4;

    /**
     * By less than this an arm at full stretch still gets there, metres: what a grip gives in a
     * fist (our choice).
     */
    public static final double GIVES = 0.01;

    private static final int SAMPLES = 720;

    // At so many instants it is looked where a turning body stands.
    private static final int HEADINGS = 72;

    /** Even times over the whole, more where a motion has many cycles in it. */
    static Samples samples(Trace trace) {
        Pairing pairing = trace.pairing();
        int cycles = Math.max(pairing.left().cycles(), pairing.right().cycles());
        return trace.samples(SAMPLES * ((cycles + 1) / 2));
    }

    public static Reach of(Trace inTheRoom, Performer performer) {
        Trace trace = performer.around(inTheRoom);
        Samples samples = samples(trace);
        Course a = trace.hand(Side.LEFT);
        Course b = trace.hand(Side.RIGHT);
        Nearness hands =
                Nearness.of(
                        trace,
                        samples,
                        Lengths.between(samples.hand(Side.LEFT), samples.hand(Side.RIGHT)),
                        t -> a.position(t).distance(b.position(t)));
        TrunkTurn trunk = TrunkTurn.of(trace, samples, performer, TrunkTurn.MOST);
        return new Reach(
                performer,
                hand(inTheRoom, trace, samples, performer, Side.LEFT),
                hand(inTheRoom, trace, samples, performer, Side.RIGHT),
                hands,
                trunk,
                Bend.where(trunk, trace, samples, performer));
    }

    /** The turn of the trunk, with whatever else bends. */
    public TrunkTurn turned() {
        return bend.map(Bend::trunk).orElse(trunk);
    }

    /**
     * Whether both hands get everywhere, the body turned and bent where that helps, and neither too
     * near its own shoulder.
     */
    public boolean reached() {
        return turned().reached() && !left.near() && !right.near();
    }

    /** Whether both hands get everywhere only with an arm at full stretch, by what a grip gives. */
    public boolean atFullStretch() {
        return !reached() && tooNear() <= SLACK && turned().tooFar() < GIVES;
    }

    public HandReach hand(Side side) {
        return side == Side.LEFT ? left : right;
    }

    /** Whether the grips come nearer to each other than a hand's breadth. */
    public boolean handsMeet() {
        return hands.distance() < Place.HAND_BREADTH - SLACK;
    }

    /** Whether both hands can get everywhere with the trunk straight ahead. */
    public boolean everywhere() {
        return left.everywhere() && right.everywhere();
    }

    /**
     * By how much a hand fails to get where its path goes with the trunk turned at best, or comes
     * too near its own shoulder, at the worst, metres; 0 where neither.
     */
    public double worst() {
        return Math.max(trunk.tooFar(), tooNear());
    }

    /** By how much a hand comes too near its own shoulder at the worst, metres. */
    public double tooNear() {
        return Math.max(left.tooNear(), right.tooNear());
    }

    /**
     * Whether a few instants show already that a hand gets somewhere with no turn of the trunk,
     * even one for this hand alone. Quick; where false it may be so all the same.
     */
    public static boolean hopeless(Trace trace, Performer performer) {
        Samples few = performer.around(trace).samples(24);
        for (Side side : Side.values()) {
            Vector3D shoulder = performer.shoulder(side);
            Vector3D axis = new Vector3D(0, shoulder.getY(), shoulder.getZ());
            for (int i = 0; i < few.count(); i++) {
                Vector3D from = Samples.point(few.hand(side), i).subtract(axis);
                double out = Math.hypot(from.getX(), from.getZ());
                double facing = Math.atan2(-from.getZ() * signed(side), from.getX() * signed(side));
                double off = Math.max(0, Math.abs(facing) - TrunkTurn.MOST);
                double w = Math.abs(shoulder.getX());
                double square = from.getNormSq() + w * w - 2 * w * out * Math.cos(off);
                if (Math.sqrt(Math.max(0, square)) > performer.arm() + 10 * SLACK) {
                    return true;
                }
            }
        }
        return false;
    }

    private static double signed(Side side) {
        return side == Side.LEFT ? 1 : -1;
    }

    private static HandReach hand(
            Trace inTheRoom, Trace trace, Samples samples, Performer performer, Side side) {
        Vector3D shoulder = performer.shoulder(side);
        Course course = trace.hand(side);
        DoubleUnaryOperator exact = t -> course.position(t).distance(shoulder);
        double[] sampled = Lengths.from(shoulder, samples.hand(side));
        double[] turnedOver = new double[sampled.length];
        for (int i = 0; i < sampled.length; i++) {
            turnedOver[i] = -sampled[i];
        }
        Nearness near = Nearness.of(trace, samples, sampled, exact);
        Nearness far = Nearness.of(trace, samples, turnedOver, t -> -exact.applyAsDouble(t));
        double arm = performer.arm();
        double bent = performer.bentArm();
        boolean anywhere = -far.distance() > arm + SLACK || near.distance() < bent - SLACK;
        List<Interval> missing =
                anywhere
                        ? Spells.of(
                                trace,
                                samples,
                                i -> misses(sampled[i], arm, bent),
                                t -> misses(exact.applyAsDouble(t), arm, bent))
                        : List.of();
        return new HandReach(
                side,
                arm,
                bent,
                -far.distance(),
                far.time(),
                near.distance(),
                near.time(),
                missing,
                largestRadius(inTheRoom, side, performer));
    }

    private static boolean misses(double distance, double arm, double bent) {
        return distance > arm + SLACK || distance < bent - SLACK;
    }

    /** The least over the cycle, where the body turns and so its place before the body moves. */
    private static OptionalDouble largestRadius(Trace trace, Side side, Performer performer) {
        Part part = trace.pairing().part(side);
        Vector3D shoulder = performer.shoulder(side);
        double arm = performer.arm();
        double bent = performer.bentArm();
        if (!trace.turned()) {
            return largestRadius(part, shoulder, arm, bent);
        }
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < HEADINGS; i++) {
            double time = trace.interval().start() + i * trace.period() / HEADINGS;
            Vector3D there = performer.axis().turned(shoulder, trace.heading(time).value());
            OptionalDouble radius = largestRadius(part, there, arm, bent);
            if (radius.isEmpty()) {
                return radius;
            }
            least = Math.min(least, radius.getAsDouble());
        }
        return OptionalDouble.of(least);
    }

    /**
     * The plane cuts the two spheres in a disc and, near the shoulder, a hole. A circle about the
     * centre may reach the disc's rim; where it would run through the hole it shrinks until it
     * passes beside it. A figure whose plane turns has the spheres themselves for its limits.
     */
    static OptionalDouble largestRadius(Part part, Vector3D shoulder, double arm, double bent) {
        Vector3D from = part.place().centre().subtract(shoulder);
        double rim = arm;
        double hole = bent;
        double off = from.getNorm();
        PlaneTurn turn = part.place().turn();
        if (turn.turns() == 0 || turn.carries() == PlaneTurn.Carries.POI) {
            double across = from.dotProduct(part.place().plane().normal());
            if (Math.abs(across) > arm) {
                return OptionalDouble.empty();
            }
            off = Math.sqrt(Math.max(0, off * off - across * across));
            rim = Math.sqrt(arm * arm - across * across);
            hole = Math.abs(across) < bent ? Math.sqrt(bent * bent - across * across) : 0;
        }
        double radius = rim - off;
        if (hole > 0 && radius > off - hole && radius < off + hole) {
            radius = off - hole;
        }
        return radius > 0 ? OptionalDouble.of(radius) : OptionalDouble.empty();
    }
}
