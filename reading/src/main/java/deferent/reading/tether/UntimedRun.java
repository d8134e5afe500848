package deferent.reading.tether;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.HandLimits;
import java.util.SplittableRandom;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A whole poi, not only its small slips, behind a hand that answers late and within its limits and
 * holds the figure, not its clock ({@link UntimedAnswer}).
 *
 * <p>The poi goes by {@link CordStep}. What the hand feels of where it is: as it was a delay ago,
 * off by a share, then the same equation with what the hand did since. It goes on from the moment
 * of the motion to which that is nearest, and how much the motion's timing gave by that is told.
 *
 * <p>The hand keeps its {@link HandLimits}; where the motion itself asks nearly so much or more, a
 * quarter is left for its correction. Its acceleration can change at once (our choice); that
 * muscles take their time counts as part of the delay.
 */
final class UntimedRun {
    /** Seconds of a run at least, and whole cycles at least. */
    private static final double LASTING = 3;

    private static final int CYCLES = 3;

    /** A run that kept within so little of its slip over a cycle has come back; our choice. */
    private static final double LITTLE = 0.3;

    /** The delay is off anew every so many seconds; our choice. */
    private static final double ANEW = 0.1;

    /** No more than this share of a cycle is the hand's clock set in one step. */
    private static final double SET = 0.1;

    /** Seconds in which a hand brakes that may go no farther. */
    private static final double BRAKING = 0.05;

    /** In so much of a cycle round the hand's own moment the figure's nearest point is sought. */
    private static final double ROUND = 0.2;

    private final UntimedLaw law;
    private final double[][] gains;
    private final double delay;
    private final HandLimits limits;
    private final Cord cord;
    private final int steps;
    private final double h;
    private final double[][] hand;
    private final double[][] poi;
    private final double[][] head;
    private final double[][][] axes;

    /**
     * @param gains of {@link UntimedAnswer#gains}
     * @param delay seconds
     */
    UntimedRun(UntimedLaw law, double[][] gains, double delay, HandLimits limits) {
        this.law = law;
        this.gains = gains;
        this.delay = delay;
        this.limits = limits;
        this.cord = law.meant().cord();
        this.steps = law.steps();
        this.h = law.step();
        this.hand = new double[steps][];
        this.poi = new double[steps][];
        this.head = new double[steps][];
        this.axes = new double[steps][2][];
        for (int i = 0; i < steps; i++) {
            MeantMotion.Instant at = law.meant().start(i);
            hand[i] = three(at.hand().position(), at.hand().velocity(), at.hand().acceleration());
            poi[i] = three(at.direction(), at.rate(), at.bend());
            head[i] = at.head().position().toArray();
            axes[i][0] = at.axes()[0].toArray();
            axes[i][1] = at.axes()[1].toArray();
        }
    }

    private static double[] three(Vector3D place, Vector3D speed, Vector3D change) {
        double[] out = new double[9];
        System.arraycopy(place.toArray(), 0, out, 0, 3);
        System.arraycopy(speed.toArray(), 0, out, 3, 3);
        System.arraycopy(change.toArray(), 0, out, 6, 3);
        return out;
    }

    /**
     * How a run went.
     *
     * @param held whether the head came back within a hand's breadth of its figure
     * @param greatest metres that the head was off its figure at most
     * @param last the same over the last cycle
     * @param cycles the same over every cycle
     * @param given seconds by which the motion's timing gave at most, after that slip
     */
    record Run(boolean held, double greatest, double last, double[] cycles, double given) {}

    /**
     * @param begun the step of the cycle at whose start the head is put aside
     * @param first metres aside on the first axis, its speed as it should be
     * @param second on the second
     * @param seed of what is off in the senses; 0 for nothing
     */
    Run run(int begun, double first, double second, long seed) {
        return new Running(begun, seed).run(first, second);
    }

    private final class Running {
        private final int begun;
        private final SplittableRandom random;
        private final boolean off;
        private final int total;
        private final double[][] hands;
        private final double[][] pois;
        private final double[] clock;
        private double lateLook;
        private double share = 1;
        private double offUntil;
        private final CordStep step = new CordStep(cord, h);
        private final double[] meantHand = new double[9];
        private final double[] meantPoi = new double[9];

        Running(int begun, long seed) {
            this.begun = begun;
            this.random = new SplittableRandom(seed);
            this.off = seed != 0;
            int cycles = (int) Math.max(CYCLES, Math.ceil(LASTING / (steps * h)));
            this.total = cycles * steps;
            this.hands = new double[total + 1][9];
            this.pois = new double[total + 1][CordStep.POI];
            this.clock = new double[total + 1];
        }

        Run run(double first, double second) {
            begin(first, second);
            double little = LITTLE * Math.hypot(first, second);
            double greatest = away(0);
            double last = 0;
            double given = 0;
            double[] each = new double[total / steps];
            for (int now = 0; now < total; now++) {
                act(now);
                march(now);
                clock[now + 1] = clock[now] + 1;
                given = Math.max(given, Math.abs(clock[now] - begun - now) * h);
                double away = away(now + 1);
                if (!(away < 2 * cord.length())) {
                    return new Run(
                            false, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, each, given);
                }
                greatest = Math.max(greatest, away);
                last = Math.max(last, away);
                if ((now + 1) % steps == 0) {
                    each[(now + 1) / steps - 1] = last;
                    if (now + 1 == total || last < little) {
                        break;
                    }
                    last = 0;
                }
            }
            return new Run(last <= Answering.BREADTH, greatest, last, each, given);
        }

        private void begin(double first, double second) {
            clock[0] = begun;
            System.arraycopy(hand[begun], 0, hands[0], 0, 9);
            double[] p = pois[0];
            double[] meant = poi[begun];
            for (int d = 0; d < 3; d++) {
                p[d] =
                        meant[d]
                                + (axes[begun][0][d] * first + axes[begun][1][d] * second)
                                        / cord.length();
            }
            double far = norm(p, 0);
            for (int d = 0; d < 3; d++) {
                p[d] /= far;
            }
            // The head's speed as it should be, but for what is along the cord.
            double along = 0;
            for (int d = 0; d < 3; d++) {
                along += p[d] * meant[3 + d];
            }
            for (int d = 0; d < 3; d++) {
                p[3 + d] = meant[3 + d] - along * p[d];
            }
        }

        /** Decides on what the hand does over the step that begins now. */
        private void act(int now) {
            if (off && now * h >= offUntil) {
                lateLook = Answering.JITTER * (2 * random.nextDouble() - 1);
                share = 1 + Correction.UNSURE * (2 * random.nextDouble() - 1);
                offUntil = now * h + ANEW;
            }
            int look = (int) Math.floor(now - delay / h + 1e-9);
            double[] push = new double[3];
            double[] felt = pois[now];
            if (look >= 0) {
                felt = felt(look, now);
                double[] slip = new double[UntimedLaw.SLIP];
                for (int i = 0; i < 2; i++) {
                    slip(now, felt, slip);
                    double by = law.lateBy(node(clock[now]), slip, 0) / h;
                    clock[now] += Math.max(-SET * steps, Math.min(SET * steps, by));
                }
                slip(now, felt, slip);
                UntimedAnswer.push(gains[node(clock[now])], slip, push, 0);
            } else {
                meant(clock[now], hand, meantHand);
            }
            double[] soon = new double[9];
            meant(clock[now] + 1, hand, soon);
            double[] at = hands[now];
            for (int d = 0; d < 3; d++) {
                // Held over the step, it takes the hand's speed to what it should be at its end.
                meantHand[6 + d] = (soon[3 + d] - meantHand[3 + d]) / h;
            }
            stay(push, at);
            double share = share(push, at);
            for (int d = 0; d < 3; d++) {
                at[6 + d] = meantHand[6 + d] + share * push[d];
            }
            if (look >= 0) {
                keepTaut(felt, at);
            }
        }

        /** No hand pushes on a cord: it leaves off what would, as it feels the poi. */
        private void keepTaut(double[] felt, double[] at) {
            double least = limits.leastPull() * Gravity.STANDARD;
            double missing = CordStep.straight(felt) ? least - step.pull(felt, at) : 0;
            for (int d = 0; d < 3 && missing > 0; d++) {
                at[6 + d] -= missing * felt[d];
            }
        }

        /** How much of a push keeps within what the hand can, or what the motion asks already. */
        private double share(double[] push, double[] at) {
            double own = norm(meantHand, 6);
            double most = Math.max(limits.acceleration(), own + limits.acceleration() / 4);
            double square = dot(push, 0, push, 0);
            double share = 1;
            double both = dot(push, 0, meantHand, 6);
            if (square > 0 && own * own + 2 * both + square > most * most) {
                share =
                        (Math.sqrt(both * both + square * (most * most - own * own)) - both)
                                / square;
            }
            double fast = Math.max(limits.speed(), norm(meantHand, 3) + limits.speed() / 4);
            if (norm(at, 3) > fast && dot(push, 0, at, 3) > 0) {
                return 0;
            }
            return share;
        }

        /** A hand that may go no farther from its path brakes in time. */
        private void stay(double[] push, double[] at) {
            double leave = limits.leave().orElse(Answering.SHIFT);
            double[] off = new double[6];
            for (int k = 0; k < 6; k++) {
                off[k] = at[k] - meantHand[k];
            }
            double from = norm(off, 0);
            double outward = from > 0 ? dot(off, 0, off, 3) / from : 0;
            if (outward <= 0 || from + outward * BRAKING < leave) {
                return;
            }
            double more = dot(push, 0, off, 0) / from + outward / BRAKING;
            for (int d = 0; d < 3 && more > 0; d++) {
                push[d] -= more * off[d] / from;
            }
        }

        /** Where the poi is felt to be by now: off as it was a little sooner or later. */
        private double[] felt(int look, int now) {
            int seen = Math.max(0, Math.min(now, look + (int) Math.rint(lateLook / h)));
            double[] felt = new double[CordStep.POI];
            meant(clock[look] + seen - look, poi, meantPoi);
            for (int k = 0; k < CordStep.POI; k++) {
                felt[k] = share * (pois[seen][k] - meantPoi[k]);
            }
            meant(clock[look], poi, meantPoi);
            for (int k = 0; k < CordStep.POI; k++) {
                felt[k] += meantPoi[k];
            }
            if (CordStep.straight(pois[seen]) || norm(felt, 0) > 1) {
                CordStep.straighten(felt);
            }
            for (int i = look; i < now; i++) {
                step.step(hands[i], felt, felt);
            }
            return felt;
        }

        /** How far hand and poi are off the motion at the hand's own moment. */
        private void slip(int now, double[] felt, double[] slip) {
            meant(clock[now], hand, meantHand);
            meant(clock[now], poi, meantPoi);
            double[][] a = axes[node(clock[now])];
            for (int d = 0; d < 6; d++) {
                slip[d] = hands[now][d] - meantHand[d];
            }
            double[] c = new double[CordStep.POI];
            for (int k = 0; k < CordStep.POI; k++) {
                c[k] = felt[k] - meantPoi[k];
            }
            for (int i = 0; i < 2; i++) {
                slip[6 + i] = dot(a[i], 0, c, 0);
                slip[8 + i] = dot(a[i], 0, c, 3);
            }
        }

        private void march(int now) {
            double[] at = hands[now];
            double[] to = hands[now + 1];
            for (int d = 0; d < 3; d++) {
                to[d] = at[d] + h * at[3 + d] + h * h / 2 * at[6 + d];
                to[3 + d] = at[3 + d] + h * at[6 + d];
            }
            step.step(at, pois[now], pois[now + 1]);
        }

        /** How far the head is from the figure's nearest point. */
        private double away(int now) {
            double[] p = new double[3];
            for (int d = 0; d < 3; d++) {
                p[d] = hands[now][d] + cord.length() * pois[now][d];
            }
            int middle = (int) Math.rint(clock[now]);
            int round = (int) Math.ceil(ROUND * steps);
            double least = Double.POSITIVE_INFINITY;
            for (int i = middle - round; i < middle + round; i++) {
                double[] from = head[Math.floorMod(i, steps)];
                double[] to = head[Math.floorMod(i + 1, steps)];
                least = Math.min(least, square(p, from, to));
            }
            return Math.sqrt(least);
        }
    }

    /** Squared distance to a segment. */
    private static double square(double[] p, double[] from, double[] to) {
        double x = to[0] - from[0];
        double y = to[1] - from[1];
        double z = to[2] - from[2];
        double px = p[0] - from[0];
        double py = p[1] - from[1];
        double pz = p[2] - from[2];
        double length = x * x + y * y + z * z;
        double along = px * x + py * y + pz * z;
        double share = length > 0 ? Math.max(0, Math.min(1, along / length)) : 0;
        double dx = px - share * x;
        double dy = py - share * y;
        double dz = pz - share * z;
        return dx * dx + dy * dy + dz * dz;
    }

    private int node(double clock) {
        return Math.floorMod((int) Math.rint(clock), steps);
    }

    /** Place, speed and change of a table at a moment between its nodes. */
    private void meant(double clock, double[][] table, double[] out) {
        double floor = Math.floor(clock);
        double s = clock - floor;
        double[] from = table[Math.floorMod((int) floor, steps)];
        double[] to = table[Math.floorMod((int) floor + 1, steps)];
        for (int d = 0; d < 3; d++) {
            out[d] = hermite(s, from[d], to[d], from[3 + d], to[3 + d]);
            out[3 + d] = hermite(s, from[3 + d], to[3 + d], from[6 + d], to[6 + d]);
            out[6 + d] = (1 - s) * from[6 + d] + s * to[6 + d];
        }
    }

    private double hermite(double s, double from, double to, double fromRate, double toRate) {
        return (1 + 2 * s) * (1 - s) * (1 - s) * from
                + h * s * (1 - s) * (1 - s) * fromRate
                + s * s * (3 - 2 * s) * to
                + h * s * s * (s - 1) * toRate;
    }

    private static double dot(double[] a, int at, double[] b, int bt) {
        return a[at] * b[bt] + a[at + 1] * b[bt + 1] + a[at + 2] * b[bt + 2];
    }

    private static double norm(double[] a, int at) {
        return Math.sqrt(dot(a, at, a, at));
    }
}
