package deferent.reading.link;

import deferent.motion.pairing.Place;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.TimedBreak;
import deferent.motion.trace.Trace;
import deferent.reading.shared.LinkKind;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The reading of one link: the carrier's head path against the rider's hand path.
 *
 * <p>Three gaps, from the most forgiving on. The shape gap forgets place, turn and time; the clock
 * gap keeps the time but may shift it; the placed gap forgets nothing. Placed distances are split
 * in the carrier's plane and across it, since real links run in neighbouring planes; that plane is
 * the carrier's own where it stands at the start (a toroid's plane at rest), also when the rider's
 * differs.
 *
 * <p>The kind is the first that holds within the tolerance, as placed: touching, carried, followed,
 * rod. Followed is asked before rod, because head and hand that go round one circle half a turn
 * apart (an isolation and a cat-eye) keep a constant distance too, and what an onlooker sees is one
 * following the other. A rod proper is left when no lag helps, as with head and hand on two lines
 * that cross.
 *
 * @param carrier whose head leads; the hand is the other side's
 * @param kind what links them, as placed
 * @param tolerance metres within which the kind holds
 * @param shapeGap Fréchet distance of sampled paths after the best rigid motion, metres: the
 *     discrete one, or that of the polygons where it is lower by more than a few millimetres
 * @param shapeGapError how far the sampled shape gap may be from the curves' own for that motion,
 *     metres; NaN for a quick reading, which makes no such promise
 * @param shapeGapAtLeast no rigid motion can bring it below this, metres
 * @param quick whether the shape gap is an estimate
 * @param clockGap root mean square distance after the best rigid motion and time shift, metres
 * @param lag that time shift, as a share of the common cycle in [−0.5, 0.5), positive when the hand
 *     trails the head
 * @param unturnedLag the lag that brings hand and head nearest without any turning, same measure
 * @param placedGap greatest distance at one instant, metres
 * @param inPlaneGap the same seen in the carrier's plane, metres
 * @param depthGap greatest distance across it, metres
 * @param offset mean vector from head to hand, in the frame, metres
 * @param wander how far that vector strays from its mean, metres
 * @param followed how far the hand follows; empty where the kind is another
 * @param worstTime when the distance in the plane is first greatest, seconds
 * @param headRadius radius of the least circle (sphere) round the head's path, metres
 * @param handRadius the same of the hand's path, metres; 0 for a still hand
 * @param gapOverCycle distance in the plane at the even times of {@link Trace#samples()}, metres;
 *     the reading's own, read it and do not write
 */
public record LinkReading(
        Side carrier,
        LinkKind kind,
        double tolerance,
        double shapeGap,
        double shapeGapError,
        double shapeGapAtLeast,
        boolean quick,
        double clockGap,
        double lag,
        double unturnedLag,
        double placedGap,
        double inPlaneGap,
        double depthGap,
        Vector3D offset,
        double wander,
        Optional<Following> followed,
        double worstTime,
        double headRadius,
        double handRadius,
        double[] gapOverCycle) {
    public LinkReading {
        String where = "the link from the " + carrier.word() + " head";
        Refusal.numbers(
                where,
                tolerance,
                shapeGap,
                quick ? 0 : shapeGapError,
                shapeGapAtLeast,
                clockGap,
                lag,
                unturnedLag,
                placedGap,
                inPlaneGap,
                depthGap,
                offset.getNorm(),
                worstTime,
                headRadius,
                handRadius);
        Refusal.numbers(where, gapOverCycle);
    }

    /**
     * A hand that comes where the head was, or is where the head will be.
     *
     * @param lag by what share of the cycle, as the reading's lag
     * @param touching whether it then comes to the very place, not only beside it
     */
    public record Following(double lag, boolean touching) {}

    /** A hand's breadth, metres. */
    public static final double USUAL_TOLERANCE = Place.HAND_BREADTH;

    private static final int FINE = 1440;
    private static final int SEARCHED = 240;

    /** The left head's link with the right hand. */
    public static LinkReading of(Trace trace) {
        return of(trace, Side.LEFT);
    }

    /** With the shape gap certified, in some milliseconds. */
    public static LinkReading of(Trace trace, Side carrier) {
        return of(trace, carrier, USUAL_TOLERANCE);
    }

    /** With the shape gap certified, and kinds judged within {@code tolerance} metres. */
    public static LinkReading of(Trace trace, Side carrier, double tolerance) {
        return read(trace, carrier, tolerance, false);
    }

    /**
     * With an estimate of the shape gap, well within a millisecond: for while something is dragged.
     */
    public static LinkReading quick(Trace trace, Side carrier) {
        return quick(trace, carrier, USUAL_TOLERANCE);
    }

    /** With an estimate of the shape gap, and kinds judged within {@code tolerance} metres. */
    public static LinkReading quick(Trace trace, Side carrier, double tolerance) {
        return read(trace, carrier, tolerance, true);
    }

    /** The estimated shape gap alone, metres: the cheapest of all, for searches over sizes. */
    public static double quickShapeGap(Trace trace, Side carrier) {
        boolean closed = trace.periodic();
        return ShapeGap.estimated(
                WalkedCurve.of(
                        trace.head(carrier),
                        trace.interval(),
                        closed,
                        corners(trace, carrier),
                        SEARCHED),
                WalkedCurve.of(
                        trace.hand(carrier.other()),
                        trace.interval(),
                        closed,
                        corners(trace, carrier.other()),
                        SEARCHED));
    }

    /**
     * The shape gap alone, metres, as a search's last steps want it: where the shapes agree as sure
     * as the certified one, elsewhere an upper bound.
     */
    public static double refinedShapeGap(Trace trace, Side carrier) {
        boolean closed = trace.periodic();
        Side rider = carrier.other();
        return ShapeGap.refined(
                WalkedCurve.of(
                        trace.head(carrier),
                        trace.interval(),
                        closed,
                        corners(trace, carrier),
                        FINE),
                WalkedCurve.of(
                        trace.hand(rider), trace.interval(), closed, corners(trace, rider), FINE));
    }

    /** Both links, the left head's first, certified. */
    public static List<LinkReading> both(Trace trace) {
        return List.of(of(trace, Side.LEFT), of(trace, Side.RIGHT));
    }

    /** The shape gap as a share of the greater path's width: what an onlooker sees of it. */
    public double shareOfFigure() {
        double width = 2 * Math.max(headRadius, handRadius);
        return width > 0 ? shapeGap / width : 0;
    }

    /** The shape gap counted in hands' breadths. */
    public double handsBreadths() {
        return shapeGap / Place.HAND_BREADTH;
    }

    private static LinkReading read(Trace trace, Side carrier, double tolerance, boolean quick) {
        Refusal.positive(tolerance, 10, "tolerance", "m");
        Side rider = carrier.other();
        Samples samples = trace.samples();
        double[] head = samples.head(carrier);
        double[] hand = samples.hand(rider);
        Vector3D across = trace.pairing().part(carrier).place().plane().normal();
        Placed placed = Placed.of(head, hand, across);
        ClockGap clock = ClockGap.of(head, hand, trace.periodic(), !quick);
        boolean closed = trace.periodic();
        ShapeGap shape =
                quick
                        ? ShapeGap.quick(
                                WalkedCurve.of(trace.head(carrier), trace.interval(), closed, head),
                                WalkedCurve.of(trace.hand(rider), trace.interval(), closed, hand))
                        : ShapeGap.certified(
                                WalkedCurve.of(
                                        trace.head(carrier),
                                        trace.interval(),
                                        closed,
                                        corners(trace, carrier),
                                        FINE),
                                WalkedCurve.of(
                                        trace.hand(rider),
                                        trace.interval(),
                                        closed,
                                        corners(trace, rider),
                                        FINE));
        Optional<Following> followed =
                trace.periodic()
                        ? following(head, hand, across, clock, tolerance)
                        : Optional.empty();
        LinkKind kind = kind(placed, followed.isPresent(), shape, tolerance);
        return new LinkReading(
                carrier,
                kind,
                tolerance,
                shape.gap(),
                shape.error(),
                shape.atLeast(),
                quick,
                clock.gap(),
                clock.lag(),
                clock.unturnedLag(),
                placed.gap(),
                placed.inPlane(),
                placed.depth(),
                placed.offset(),
                placed.wander(),
                kind == LinkKind.FOLLOWED ? followed : Optional.empty(),
                samples.time(placed.worst()),
                shape.headRadius(),
                shape.handRadius(),
                placed.over());
    }

    private static double[] corners(Trace trace, Side side) {
        return trace.breaks().stream()
                .filter(b -> b.side() == side && b.order() <= 1)
                .mapToDouble(TimedBreak::time)
                .toArray();
    }

    private static Optional<Following> following(
            double[] head, double[] hand, Vector3D across, ClockGap clock, double tolerance) {
        for (double lag : new double[] {clock.lag(), clock.unturnedLag()}) {
            Placed late = Placed.of(Placed.later(head, lag), hand, across);
            if (late.inPlane() <= tolerance || late.wander() <= tolerance) {
                return Optional.of(new Following(lag, late.inPlane() <= tolerance));
            }
        }
        return Optional.empty();
    }

    private static LinkKind kind(
            Placed placed, boolean followed, ShapeGap shape, double tolerance) {
        if (placed.inPlane() <= tolerance) {
            return LinkKind.TOUCHING;
        }
        if (placed.wander() <= tolerance) {
            return LinkKind.CARRIED;
        }
        if (followed) {
            return LinkKind.FOLLOWED;
        }
        boolean moving = shape.headRadius() > tolerance && shape.handRadius() > tolerance;
        if (moving && placed.stretch() <= tolerance && shape.gap() <= tolerance) {
            return LinkKind.ROD;
        }
        return LinkKind.NONE;
    }
}
