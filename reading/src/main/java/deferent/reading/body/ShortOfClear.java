package deferent.reading.body;

import deferent.motion.pairing.Place;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * By how much a placed pattern is short of clear, quickly: what {@link InTheWay} asks, at fewer
 * instants and as one number that falls as things get out of each other's way, for a search that
 * asks it thousands of times. 0 here is worth a look at full sampling and proves nothing.
 *
 * <p>The trunk turns anew for every place, and is otherwise held as it was at first.
 */
public final class ShortOfClear {
    private static final int CORDS = 240;
    private static final int ARMS = 120;

    // An instant at which something is still through counts as much beside how deep it is at most,
    // so that less is better even where the deepest stays, metres (our choice).
    private static final double LASTING = 0.05;

    private final Performer performer;
    private final Posture posture;
    private final BodyOutline body;
    private final KeptClear kept;
    private final boolean arms;
    private final double[] near = new double[2];
    private final double missed;
    private final double margin;
    private final double hands;

    /**
     * @param inTheRoom the pattern as it is placed at first, whose reach is to become no worse
     * @param reach its reach
     * @param margin how much further off all is kept than it need be, metres
     */
    public ShortOfClear(Trace inTheRoom, Reach reach, KeptClear kept, double margin) {
        this.performer = reach.performer();
        Trace trace = performer.around(inTheRoom);
        this.posture = Posture.of(reach.bend());
        this.body = BodyOutline.of(performer);
        this.kept = kept;
        this.margin = margin;
        this.arms = InTheWay.armsJudged(reach);
        for (Side side : Side.values()) {
            near[side.ordinal()] = Math.min(performer.bentArm(), nearest(trace, side));
        }
        this.missed = new Posed(trace).missed();
        this.hands = Math.min(Place.HAND_BREADTH, reach.hands().distance());
    }

    /** Metres, the sum over all that runs into something; 0 where nothing does. */
    public double of(Trace inTheRoom) {
        Trace trace = performer.around(inTheRoom);
        double sum = lines(trace);
        for (Side side : Side.values()) {
            sum += Math.max(0, near[side.ordinal()] - nearest(trace, side) - 1e-9);
        }
        Posed posed = new Posed(trace);
        sum += Math.max(0, posed.missed() - missed - 1e-3);
        return arms ? sum + posed.through() : sum;
    }

    private double nearest(Trace trace, Side side) {
        double[] hand = trace.samples(ARMS).hand(side);
        double[] off = Lengths.from(performer.shoulder(side), hand);
        double least = Double.POSITIVE_INFINITY;
        for (double one : off) {
            least = Math.min(least, one);
        }
        return least;
    }

    /** Depths of one thing over the cycle. */
    private static final class Depth {
        private double most;
        private int instants;

        void add(double depth) {
            if (depth > 0) {
                most = Math.max(most, depth);
                instants++;
            }
        }

        double sum(int count) {
            return most + LASTING * instants / count;
        }
    }

    private double lines(Trace trace) {
        Samples samples = trace.samples(CORDS);
        int count = samples.count();
        Depth cords = new Depth();
        Depth heads = new Depth();
        Depth grips = new Depth();
        Depth[] struck = {new Depth(), new Depth()};
        Depth[] bodies = {new Depth(), new Depth()};
        double[] ends = new double[12];
        double step = samples.time(1) - samples.time(0);
        for (int i = 0; i < count; i++) {
            for (Side side : Side.values()) {
                System.arraycopy(samples.hand(side), 3 * i, ends, 6 * side.ordinal(), 3);
                System.arraycopy(samples.head(side), 3 * i, ends, 6 * side.ordinal() + 3, 3);
            }
            cords.add(kept.cords() + margin - Clash.apart(ends, kept.headRadius()));
            grips.add(hands - distance(ends, 0, 6));
            int next = (i + 1) % count;
            knock(heads, samples, i, next, step, 2 * kept.headRadius(), Side.LEFT, true);
            for (Side side : Side.values()) {
                int s = side.ordinal();
                double fist = kept.headRadius() + Place.HAND_BREADTH / 2;
                knock(struck[s], samples, i, next, step, fist, side, false);
                int h = 6 * s;
                double tether =
                        body.distance(
                                ends[h],
                                ends[h + 1],
                                ends[h + 2],
                                ends[h + 3],
                                ends[h + 4],
                                ends[h + 5]);
                double head =
                        body.distance(ends[h + 3], ends[h + 4], ends[h + 5]) - kept.headRadius();
                bodies[s].add(kept.body() + margin - Math.min(tether, head));
            }
        }
        double sum = cords.sum(count) + heads.sum(count) + grips.sum(count);
        for (int s = 0; s < 2; s++) {
            sum += struck[s].sum(count) + bodies[s].sum(count);
        }
        return sum;
    }

    // A head that meets the other head or hand, faster than one that stays with it.
    private void knock(
            Depth depth,
            Samples samples,
            int i,
            int next,
            double step,
            double within,
            Side side,
            boolean heads) {
        double[] one = samples.head(side);
        double[] other = heads ? samples.head(side.other()) : samples.hand(side.other());
        double square = 0;
        double speed = 0;
        for (int k = 0; k < 3; k++) {
            double off = one[3 * i + k] - other[3 * i + k];
            double then = one[3 * next + k] - other[3 * next + k];
            square += off * off;
            speed += (then - off) * (then - off);
        }
        if (Math.sqrt(speed) / step > kept.knock()) {
            depth.add(within + margin - Math.sqrt(square));
        }
    }

    private static double distance(double[] ends, int a, int b) {
        double x = ends[a] - ends[b];
        double y = ends[a + 1] - ends[b + 1];
        double z = ends[a + 2] - ends[b + 2];
        return Math.sqrt(x * x + y * y + z * z);
    }

    /** Arms of a body that holds itself so, whatever its elbows do. */
    private final class Posed {
        private final Samples samples;
        private final boolean round;
        private final Vector3D[][] hands = new Vector3D[2][ARMS];
        private final Vector3D[][] heads = new Vector3D[2][ARMS];
        private final ArmLine.Hung[][] hung = new ArmLine.Hung[2][ARMS];

        Posed(Trace trace) {
            this.samples = trace.samples(ARMS);
            this.round = trace.periodic();
            double[] turns = Bend.turns(trace, samples, performer, posture, 1);
            for (Side side : Side.values()) {
                int s = side.ordinal();
                Vector3D joint = posture.joint(performer, side);
                for (int i = 0; i < ARMS; i++) {
                    Vector3D hand = Samples.point(samples.hand(side), i);
                    Vector3D head = Samples.point(samples.head(side), i);
                    hands[s][i] = posture.seen(performer, hand, turns[i]);
                    heads[s][i] = posture.seen(performer, head, turns[i]);
                    hung[s][i] = ArmLine.Hung.of(performer, side, joint, hands[s][i]);
                }
            }
        }

        /** By how much a hand is out of reach at the worst, metres. */
        double missed() {
            double most = 0;
            for (ArmLine.Hung[] side : hung) {
                for (ArmLine.Hung one : side) {
                    most = Math.max(most, one.missed());
                }
            }
            return most;
        }

        double through() {
            Swivels swivels =
                    new Swivels(
                            performer,
                            hung,
                            hands,
                            heads,
                            samples.time(1) - samples.time(0),
                            round,
                            kept.headRadius(),
                            margin);
            Swivels.Course course = swivels.course(true);
            double sum = 0;
            for (Side side : Side.values()) {
                for (ArmThrough.What what : ArmThrough.What.values()) {
                    if (what != ArmThrough.What.ARM || side == Side.RIGHT) {
                        Depth depth = new Depth();
                        for (int i = 0; i < ARMS; i++) {
                            depth.add(course.depth(side, i, what));
                        }
                        sum += depth.sum(ARMS);
                    }
                }
            }
            return sum;
        }
    }
}
