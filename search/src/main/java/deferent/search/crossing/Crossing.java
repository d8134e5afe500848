package deferent.search.crossing;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Side;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A moment at which one pairing can become another: the states of both are within tolerance there,
 * and nearer each other than at any moment beside.
 *
 * @param from the pairing that is left
 * @param to the pairing that is entered, as it has to stand: already adjusted
 * @param fromTime when in the common cycle of {@code from}, seconds
 * @param toTime when in the common cycle of {@code to}, seconds
 * @param who which hands cross; a hand that doesn't goes on as {@code from} has it
 * @param need what has to change, of all the most
 * @param left what has to change for the left hand and its poi
 * @param right what has to change for the right hand and its poi
 * @param adjustment what was done to the second pairing
 * @param placeGap greatest distance of a compared point from its counterpart, metres
 * @param speedGap greatest velocity difference, metres a second
 * @param roughness least extra acceleration of a passage
 * @param before how the props stand to each other as {@code from} has them
 * @param after how they do as {@code to} has them
 * @param together how long the two stay within tolerance when run side by side through the
 *     crossing, seconds; at most {@code from}'s common cycle
 * @param tetherChange greatest difference of the crossing hands' tethers, metres
 * @param blend the passage's time, seconds
 */
public record Crossing(
        Pairing from,
        Pairing to,
        double fromTime,
        double toTime,
        Who who,
        Need need,
        Need left,
        Need right,
        Adjustment adjustment,
        double placeGap,
        double speedGap,
        Roughness roughness,
        Props before,
        Props after,
        double together,
        double tetherChange,
        double blend) {
    private static final int LOOKS = 12;
    private static final double TETHERS_ALIKE = 1e-6;

    public Need need(Side side) {
        return side == Side.LEFT ? left : right;
    }

    /** Into {@code from}'s cycle, 0 to 1. */
    public double fromShare() {
        return fromTime / from.period();
    }

    /** Into {@code to}'s cycle, 0 to 1. */
    public double toShare() {
        return toTime / to.period();
    }

    /** Whether the crossing hands keep their tethers as they are. */
    public boolean keepsTethers() {
        return tetherChange < TETHERS_ALIKE;
    }

    /** Reads what a meeting means; {@code states} are those of the second pairing as searched. */
    static Crossing of(
            States from, States to, Meeting meeting, CrossingRequest request, boolean mirrored) {
        Adjustment adjustment = adjustment(from, to, meeting, request, mirrored);
        Adjustment again =
                new Adjustment(
                        false,
                        adjustment.timing(),
                        adjustment.turn(),
                        adjustment.about(),
                        adjustment.shift(),
                        adjustment.tempo());
        States there = again.none() ? to : States.of(again.of(to.pairing()));
        double fromTime = meeting.a() * from.period();
        double toTime = meeting.b() * there.period();
        double[] a = new double[State24.SIZE];
        double[] b = new double[State24.SIZE];
        from.exact(fromTime, a);
        there.exact(toTime, b);
        Reader reader = new Reader(from, there, fromTime, toTime, request);
        Differences differences = Differences.of(a, b, request);
        Need left = reader.need(Side.LEFT, a, b);
        Need right = reader.need(Side.RIGHT, a, b);
        Need need = left.compareTo(right) >= 0 ? left : right;
        need = Math.abs(adjustment.tempo() - 1) > 1e-3 ? Need.TEMPO : need;
        double stands = Math.min(request.speed(), CrossingRequest.USUAL.speed());
        double tether = 0;
        for (Side side : request.who().sides()) {
            tether =
                    Math.max(
                            tether,
                            Math.abs(
                                    from.pairing().part(side).tether().length()
                                            - to.pairing().part(side).tether().length()));
        }
        return new Crossing(
                from.pairing(),
                there.pairing(),
                fromTime,
                toTime,
                request.who(),
                adjustment.retimed() ? Need.TIMING : need,
                left,
                right,
                adjustment,
                differences.place(),
                differences.speed(),
                differences.roughness(),
                Props.of(from.pairing(), a, stands),
                Props.of(there.pairing(), reader.passed(a, b), stands),
                reader.together(),
                tether,
                request.blend());
    }

    private static Adjustment adjustment(
            States from, States to, Meeting meeting, CrossingRequest request, boolean mirrored) {
        Gauge gauge = new Gauge(request, to);
        boolean late = meeting.late() != 0;
        Landscape land = new Landscape(from, to, gauge, late);
        land.exactly(
                late
                        ? new double[] {meeting.a(), meeting.b(), meeting.b() + meeting.late()}
                        : new double[] {meeting.a(), meeting.b()});
        return new Adjustment(
                mirrored,
                meeting.late() * to.pairing().right().cycles(),
                gauge.turn(),
                gauge.pivot(),
                gauge.shift(),
                gauge.tempo());
    }

    /** Smooth, on a cord and playable. */
    public Passage passage() {
        return Passage.of(this);
    }

    /** What two pairings do about one moment of each. */
    private record Reader(States from, States to, double a, double b, CrossingRequest request) {

        /**
         * What changes for one hand, looked at until a passage's time after the two have parted:
         * the hand, or the tether, goes on alike while its difference stays within a tolerance of
         * what it is at the crossing.
         */
        Need need(Side side, double[] here, double[] there) {
            double along = within(step(), from.period());
            if (!request.who().sides().contains(side) || along >= from.period()) {
                return Need.NOTHING;
            }
            Vector3D hands = offHand(side, here, there);
            Vector3D tethers = offTether(side, here, there);
            boolean handAlike = true;
            boolean poiAlike = true;
            boolean stood = false;
            double sense = 0;
            double[] x = new double[State24.SIZE];
            double[] y = new double[State24.SIZE];
            double length = along + request.blend();
            int looks = (int) Math.ceil(LOOKS * length / request.blend());
            for (int i = 0; i <= looks; i++) {
                double later = length * i / looks;
                from.at(a + later, x);
                to.at(b + later, y);
                handAlike &= offHand(side, x, y).distance(hands) <= request.place();
                poiAlike &= offTether(side, x, y).distance(tethers) <= request.place();
                stood |= stands(side, x) && stands(side, y);
                sense += later > along ? turning(side, x).dotProduct(turning(side, y)) : 0;
            }
            if (poiAlike) {
                return handAlike ? Need.NOTHING : Need.HAND_PATH;
            }
            if (stood && sense < 0) {
                return Need.SPIN_REVERSAL;
            }
            return handAlike ? Need.SPIN : Need.HAND_AND_SPIN;
        }

        private boolean stands(Side side, double[] x) {
            return State24.tetherSpeed(x, side).getNorm()
                    <= Math.min(request.speed(), CrossingRequest.USUAL.speed());
        }

        private static Vector3D offHand(Side side, double[] x, double[] y) {
            int hand = State24.hand(side);
            return State24.place(y, hand).subtract(State24.place(x, hand));
        }

        private static Vector3D offTether(Side side, double[] x, double[] y) {
            return State24.tether(y, side).subtract(State24.tether(x, side));
        }

        private static Vector3D turning(Side side, double[] x) {
            return State24.tether(x, side).crossProduct(State24.tetherSpeed(x, side));
        }

        /** The state after the crossing: a hand that stays behind is as it was. */
        double[] passed(double[] x, double[] y) {
            double[] out = x.clone();
            for (int p = 0; p < 2 * State24.POINTS; p++) {
                Side side = p % 2 == 0 ? Side.LEFT : Side.RIGHT;
                if (request.who().sides().contains(side)) {
                    System.arraycopy(y, 3 * p, out, 3 * p, 3);
                }
            }
            return out;
        }

        double together() {
            double whole = from.period();
            double after = within(step(), whole);
            double before = after >= whole ? 0 : within(-step(), whole - after);
            return Math.min(whole, after + before);
        }

        private double step() {
            return Math.min(from.step(), to.step()) / 2;
        }

        private double within(double step, double most) {
            double[] x = new double[State24.SIZE];
            double[] y = new double[State24.SIZE];
            for (int i = 1; Math.abs(i * step) < most; i++) {
                from.at(a + i * step, x);
                to.at(b + i * step, y);
                if (!Differences.of(x, y, request).within(request)) {
                    return Math.abs((i - 0.5) * step);
                }
            }
            return most;
        }
    }
}
