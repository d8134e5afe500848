package deferent.reading.body;

import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The pose of a body over the cycle: how its trunk is held and turned, and where shoulder joints,
 * elbows, wrists and grips of both arms are, at even instants.
 *
 * <p>The trunk turns as {@link TrunkTurn} has it and is held as {@link Bend} has it, the least that
 * does; elbows are led by {@link Swivels}. Where a hand is out of reach its arm is stretched toward
 * it and ends where it ends.
 */
public final class PoseOver {
    /** Farthest from one instant to the next that still looks like one movement, seconds. */
    private static final double APART = 0.05;

    private static final int COARSE = 12;

    // Instants of a cycle.
    private static final int FINE = 240;

    // Less is no miss; what the search for turns leaves, metres.
    private static final double MISSED = 2e-3;

    private final Performer performer;
    private final Posture posture;
    private final double[] times;
    private final double[] turns;
    private final ArmLine[][] arms;
    private final boolean[] stretched;
    private final Swivels.Course course;
    private final double[] headings;

    private PoseOver(
            Performer performer,
            Posture posture,
            double[] times,
            double[] turns,
            ArmLine[][] arms,
            boolean[] stretched,
            Swivels.Course course,
            double[] headings) {
        this.performer = performer;
        this.posture = posture;
        this.times = times;
        this.turns = turns;
        this.arms = arms;
        this.stretched = stretched;
        this.course = course;
        this.headings = headings;
    }

    /** As it is seen: for a trace whose reach was read already. */
    public static PoseOver of(Trace trace, Reach reach) {
        return of(trace, reach.performer(), reach.bend(), stride(trace), false);
    }

    /** For any trace, such as what a cord makes of another. */
    public static PoseOver of(Trace inTheRoom, Performer performer) {
        Trace trace = performer.around(inTheRoom);
        Samples samples = Reach.samples(trace);
        TrunkTurn trunk = TrunkTurn.of(trace, samples, performer, TrunkTurn.MOST);
        return of(
                inTheRoom,
                performer,
                Bend.where(trunk, trace, samples, performer),
                stride(trace),
                false);
    }

    /**
     * At as many instants as tell what passes what, and with elbows by which an arm passes through
     * something only where no elbow avoids it; dearer.
     */
    public static PoseOver surely(Trace trace, Reach reach) {
        return surely(trace, reach, 0);
    }

    /**
     * The same with the arms led past heads of a size too.
     *
     * @param headRadius metres
     */
    static PoseOver surely(Trace trace, Reach reach, double headRadius) {
        int stride = Math.max(1, Reach.samples(trace).count() / FINE);
        return of(trace, reach.performer(), reach.bend(), stride, true, headRadius);
    }

    private static int stride(Trace trace) {
        double step = trace.period() / Reach.samples(trace).count();
        return Math.max(1, Math.min(COARSE, (int) (APART / step)));
    }

    /**
     * At every so manieth sample of a reach.
     *
     * @param surely whether an arm passes through something only where no elbow avoids it
     */
    static PoseOver of(
            Trace inTheRoom, Performer performer, Optional<Bend> bend, int stride, boolean surely) {
        return of(inTheRoom, performer, bend, stride, surely, 0);
    }

    private static PoseOver of(
            Trace inTheRoom,
            Performer performer,
            Optional<Bend> bend,
            int stride,
            boolean surely,
            double headRadius) {
        Trace trace = performer.around(inTheRoom);
        Samples samples = Reach.samples(trace);
        Posture posture = Posture.of(bend);
        // The same instants as the reading's, so that it turns as far as is said.
        int every = stride % TrunkTurn.STRIDE == 0 ? TrunkTurn.STRIDE : stride;
        double[] all = Bend.turns(trace, samples, performer, posture, every);
        int count = samples.count() / stride;
        double[] times = new double[count];
        double[] turns = new double[count];
        double[] headings = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = samples.time(i * stride);
            turns[i] = all[i * stride / every];
            headings[i] = inTheRoom.heading(times[i]).value();
        }
        Vector3D[][] hands = new Vector3D[2][count];
        Vector3D[][] heads = new Vector3D[2][count];
        ArmLine.Hung[][] hung = new ArmLine.Hung[2][count];
        boolean[] stretched = new boolean[2];
        for (Side side : Side.values()) {
            int s = side.ordinal();
            Vector3D joint = posture.joint(performer, side);
            for (int i = 0; i < count; i++) {
                Vector3D hand = Samples.point(samples.hand(side), i * stride);
                Vector3D head = Samples.point(samples.head(side), i * stride);
                hands[s][i] = posture.seen(performer, hand, turns[i]);
                heads[s][i] = posture.seen(performer, head, turns[i]);
                hung[s][i] = ArmLine.Hung.of(performer, side, joint, hands[s][i]);
                stretched[s] |= hung[s][i].missed() > MISSED;
            }
        }
        Swivels.Course course =
                new Swivels(
                                performer,
                                hung,
                                hands,
                                heads,
                                samples.time(stride) - samples.time(0),
                                trace.periodic(),
                                headRadius,
                                0)
                        .course(surely);
        ArmLine[][] arms = new ArmLine[2][count];
        for (Side side : Side.values()) {
            for (int i = 0; i < count; i++) {
                arms[side.ordinal()][i] = hung[side.ordinal()][i].at(course.swivel(side, i));
            }
        }
        return new PoseOver(performer, posture, times, turns, arms, stretched, course, headings);
    }

    public Performer performer() {
        return performer;
    }

    /** How many instants there are, evenly over the trace's interval from its start on. */
    public int count() {
        return times.length;
    }

    /** Seconds. */
    public double time(int i) {
        return times[i];
    }

    public Posture posture() {
        return posture;
    }

    /** How the feet face, radians from the audience, to the performer's left above 0. */
    public double heading(int i) {
        return headings[i];
    }

    /** Whether the feet ever face anywhere but the audience. */
    public boolean faces() {
        return Arrays.stream(headings).anyMatch(heading -> heading != 0);
    }

    /** How far the trunk is turned from there, radians, to the performer's left above 0. */
    public double turn(int i) {
        return turns[i];
    }

    /** Whether that side's hand is anywhere out of reach, its arm stretched toward it. */
    public boolean stretched(Side side) {
        return stretched[side.ordinal()];
    }

    /** A shoulder joint in the frame, metres. */
    public Vector3D shoulder(Side side, int i) {
        return placed(arms[side.ordinal()][i].shoulder(), 1, i);
    }

    /** An elbow in the frame, metres. */
    public Vector3D elbow(Side side, int i) {
        return placed(arms[side.ordinal()][i].elbow(), 1, i);
    }

    /** A wrist in the frame, metres. */
    public Vector3D wrist(Side side, int i) {
        return placed(arms[side.ordinal()][i].wrist(), 1, i);
    }

    /**
     * Where an arm ends, which is where its hand's path is wherever that is within reach; metres.
     */
    public Vector3D grip(Side side, int i) {
        return placed(arms[side.ordinal()][i].grip(), 1, i);
    }

    /**
     * Where a point of the upright body that looks straight at the audience is, metres.
     *
     * @param share of the trunk's turn that it goes along with: 1 at the shoulders, 0 at the hips
     */
    public Vector3D placed(Vector3D point, double share, int i) {
        return standing(posture.placed(performer, point, share * turns[i]), i);
    }

    /** The same of what neither leans nor turns with the trunk, such as a foot; metres. */
    public Vector3D standing(Vector3D point, int i) {
        return headings[i] == 0 ? point : performer.axis().turned(point, headings[i]);
    }

    /** The courses of both elbows by which what an arm passes through is judged. */
    Swivels.Course course() {
        return course;
    }
}
