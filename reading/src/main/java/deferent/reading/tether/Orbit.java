package deferent.reading.tether;

import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Origin;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A cord's periodic motion behind a hand: what {@link KeepTheHandPath} finds and {@link
 * KeepTheFigure} makes, and what {@link Steadiness} asks about.
 */
public final class Orbit {
    private final HandTable table;
    private final Cord cord;
    private final double[] start;
    private final Vector3D normal;
    private final Optional<Course> known;

    /**
     * One whose head is known only from its start.
     *
     * @param start e and q at the table's start
     * @param normal of the plane everything stays in; the zero vector where it does not
     */
    Orbit(HandTable table, Cord cord, double[] start, Vector3D normal) {
        this(table, cord, start, normal, Optional.empty());
    }

    /** One whose head is known throughout. */
    Orbit(HandTable table, Cord cord, Course head, Vector3D normal) {
        this(
                table,
                cord,
                state(table.hand().at(table.start()), head.at(table.start()), cord),
                normal,
                Optional.of(head));
    }

    /**
     * A motion whose hand and head are known throughout and smooth.
     *
     * @param over one cycle
     * @param steps of the integrator over the cycle
     * @param normal of the plane everything stays in; the zero vector where it does not
     */
    public static Orbit of(
            Course hand, Course head, Cord cord, Interval over, int steps, Vector3D normal) {
        double[] cuts = {over.start(), over.end()};
        return new Orbit(HandTable.of(hand, cuts, steps), cord, head, normal);
    }

    /** A trace with a smooth motion in the place of one side's own; corded. */
    public static Trace in(Trace trace, Side side, Course hand, Course head) {
        return Replaced.in(
                trace,
                Origin.CORDED,
                side,
                hand,
                head,
                trace.breaks().stream().filter(b -> b.side() != side).toList(),
                List.of(),
                trace.gaps());
    }

    private Orbit(
            HandTable table, Cord cord, double[] start, Vector3D normal, Optional<Course> known) {
        this.table = table;
        this.cord = cord;
        this.start = start.clone();
        this.normal = normal;
        this.known = known;
    }

    public Cord cord() {
        return cord;
    }

    public Course hand() {
        return table.hand();
    }

    /** The head over one cycle, worked out anew. */
    public Course head() {
        return Following.cycle(table, cord, start);
    }

    /** Seconds. */
    public double period() {
        return table.period();
    }

    HandTable table() {
        return table;
    }

    double[] start() {
        return start.clone();
    }

    /**
     * e and q at the start of a step: from the head where that is known, else as integrated.
     *
     * @param integrated up to there; its first six numbers are e and q
     */
    double[] at(int step, double[] integrated) {
        double time = table.time(step);
        return known.map(head -> state(table.hand().at(time), head.at(time), cord))
                .orElseGet(() -> Arrays.copyOf(integrated, 6));
    }

    /** The head over one cycle, as known where it is. */
    Course course() {
        return known.orElseGet(this::head);
    }

    Vector3D normal() {
        return normal;
    }

    boolean planar() {
        return normal.getNormSq() > 0;
    }

    /** How far the head misses its own start after one cycle of integration, metres. */
    public double closing() {
        double[] y = start.clone();
        new Marching(cord, 0).cycle(table, y);
        return cord.length()
                * new Vector3D(y[0], y[1], y[2])
                        .distance(new Vector3D(start[0], start[1], start[2]));
    }

    /** The state of a head behind a hand, both at one instant. */
    static double[] state(State hand, State head, Cord cord) {
        Vector3D along = head.position().subtract(hand.position());
        double size = along.getNorm();
        Vector3D e = along.scalarMultiply(1 / size);
        Vector3D w = head.velocity().subtract(hand.velocity()).scalarMultiply(1 / size);
        return Following.state(
                hand.velocity(), cord, e, w.subtract(e.scalarMultiply(e.dotProduct(w))));
    }
}
