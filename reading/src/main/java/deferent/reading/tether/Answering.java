package deferent.reading.tether;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.HandLimits;
import java.util.SplittableRandom;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A whole poi, not only its small slips, behind a hand that answers late and within its limits.
 *
 * <p>The equations of {@link Swinging} with the hand's shift added to its path, by the classic
 * Runge-Kutta method on the times of {@link MeantMotion}; what was seen a delay ago is read off the
 * kept history by Hermite's cubic (method of steps; Bellen and Zennaro, Numerical Methods for Delay
 * Differential Equations, 2003, chapter 3). The hand goes after what is wanted of it as a
 * critically damped mass does, in {@link #LAG}; it counts as part of the delay, so that for small
 * slips this is what {@link DelayedAnswer} and {@link Stroke} speak of.
 *
 * <p>The hand keeps its {@link HandLimits}. Where the motion itself asks nearly so much or more, a
 * quarter is left for its correction.
 *
 * <p>The cord must pull all the time: a motion whose cord goes slack counts as lost, though a
 * spinner may still catch it.
 */
final class Answering {
    /** Seconds that the hand is behind what is wanted of it; our choice. */
    static final double LAG = 0.02;

    /** The delay is off by up to so many seconds, anew every so often; our choice. */
    static final double JITTER = 0.02;

    private static final double ANEW = 0.1;

    /** What a run must come back to and keep within, metres: a hand's breadth. */
    static final double BREADTH = 0.08;

    /** Of its slip; our choice. */
    private static final double LITTLE = 0.3;

    /** Seconds of a run at least, and whole cycles at least. */
    private static final double LASTING = 3;

    private static final int CYCLES = 3;

    /**
     * So far a correction takes a hand off its path at most, metres, where its limits do not say;
     * our choice.
     */
    static final double SHIFT = 0.5;

    /** How a hand answers: where its shift should be at a node of the run. */
    sealed interface Way {
        /** Seconds. */
        double delay();
    }

    /**
     * Against place and speed of the slip as it was ({@link DelayedAnswer}).
     *
     * @param within gains on the first axis, in a plane the one within it
     * @param across on the second
     */
    record Steady(Gains within, Gains across, double delay) implements Way {
        static final Steady NONE = new Steady(Gains.NONE, Gains.NONE, Steadiness.REACTION);
    }

    /**
     * By one stroke a cycle ({@link Stroke}).
     *
     * @param within gains on the first axis, in a plane the one within it
     * @param across on the second
     * @param begins at which time of the cycle, seconds
     */
    record Once(Gains within, Gains across, double delay, double begins) implements Way {}

    /**
     * How a run went.
     *
     * @param held whether it came back within a hand's breadth and the cord pulled throughout
     * @param greatest metres that the head was off at most
     * @param last the same over the last cycle
     * @param cycles the same over every cycle
     */
    record Run(boolean held, double greatest, double last, double[] cycles) {}

    private final MeantMotion meant;
    private final Cord cord;
    private final HandLimits limits;
    private final Swinging swinging;

    Answering(MeantMotion meant, HandLimits limits) {
        this.meant = meant;
        this.cord = meant.cord();
        this.limits = limits;
        this.swinging = new Swinging(cord);
    }

    /**
     * @param begun the step of the cycle at whose start the head is put aside
     * @param first metres aside on the first axis, its speed as it should be
     * @param second on the second
     * @param seed of the delay's jitter; 0 for none
     */
    Run run(Way way, int begun, double first, double second, long seed) {
        return new Running(way, begun, seed).run(first, second);
    }

    private final class Running {
        private final Way way;
        private final int begun;
        private final SplittableRandom random;
        private final boolean jitters;
        private final int steps = meant.steps();
        private final int total;
        private final double[] times;
        private final double[] seen;
        private int now;
        private double off;
        private double offUntil;
        private final double[] struck = new double[2];
        private double strokeAt = Double.NEGATIVE_INFINITY;
        private final double[] shifts;
        private int planned;
        private double share = 1;

        Running(Way way, int begun, long seed) {
            this.way = way;
            this.begun = begun;
            this.random = new SplittableRandom(seed);
            this.jitters = seed != 0;
            int cycles = (int) Math.max(CYCLES, Math.ceil(LASTING / meant.period()));
            this.total = cycles * steps;
            this.seen = new double[4 * (total + 1)];
            // Some steps more, for what is planned ahead.
            this.times = new double[total + steps];
            this.shifts = new double[2 * times.length];
            for (int i = 0; i < times.length; i++) {
                times[i] = meant.times()[(begun + i) % steps] + cycle(i) * meant.period();
            }
        }

        Run run(double first, double second) {
            MeantMotion.Instant at = meant.start(begun);
            Vector3D along =
                    at.direction()
                            .add(at.axes()[0].scalarMultiply(first / cord.length()))
                            .add(at.axes()[1].scalarMultiply(second / cord.length()))
                            .normalize();
            Vector3D speed = at.hand().velocity().add(at.rate().scalarMultiply(cord.swingLength()));
            Vector3D across = speed.subtract(along.scalarMultiply(along.dotProduct(speed)));
            // e, q, the hand's shift on both axes and its rate.
            double[] y = {
                along.getX(),
                along.getY(),
                along.getZ(),
                across.getX(),
                across.getY(),
                across.getZ(),
                0,
                0,
                0,
                0
            };
            // A run that kept within so little over a cycle has come back.
            double little = LITTLE * Math.hypot(first, second);
            double greatest = note(at, y, 0);
            double last = 0;
            double[] each = new double[total / steps];
            for (now = 0; now < total; now++) {
                int step = (begun + now) % steps;
                plan();
                step(step, y);
                boolean anew = step + 1 == steps;
                MeantMotion.Instant end = meant.end(step);
                double aside = note(end, y, now + 1);
                if (!(aside < 2 * cord.length()) || slack(end, y)) {
                    return new Run(false, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, each);
                }
                if (anew) {
                    turn(y, 6, 1);
                    turn(y, 8, 1);
                    turn(seen, 4 * (now + 1), 1);
                    turn(seen, 4 * (now + 1) + 2, 1);
                }
                greatest = Math.max(greatest, aside);
                last = Math.max(last, aside);
                if ((now + 1) % steps == 0) {
                    each[(now + 1) / steps - 1] = last;
                    if (now + 1 == total || last < little) {
                        break;
                    }
                    last = 0;
                }
            }
            return new Run(last <= BREADTH, greatest, last, each);
        }

        /** How far the head is off, metres; keeps what is seen of it. */
        private double note(MeantMotion.Instant at, double[] y, int to) {
            Vector3D e = new Vector3D(y[0], y[1], y[2]);
            Vector3D hand = handVelocity(at, y);
            Vector3D turning = turning(e, hand, y);
            Vector3D shift =
                    at.axes()[0].scalarMultiply(y[6]).add(at.axes()[1].scalarMultiply(y[7]));
            Vector3D off = shift.add(e.subtract(at.direction()).scalarMultiply(cord.length()));
            Vector3D pace =
                    hand.add(turning.scalarMultiply(cord.length())).subtract(at.head().velocity());
            for (int a = 0; a < 2; a++) {
                seen[4 * to + a] = off.dotProduct(at.axes()[a]);
                seen[4 * to + 2 + a] =
                        pace.dotProduct(at.axes()[a])
                                - at.rate().dotProduct(at.axes()[a])
                                        * off.dotProduct(at.direction());
            }
            return off.getNorm();
        }

        private Vector3D turning(Vector3D e, Vector3D hand, double[] y) {
            return new Vector3D(y[3], y[4], y[5])
                    .subtract(hand)
                    .add(e.scalarMultiply(e.dotProduct(hand)))
                    .scalarMultiply(1 / cord.swingLength());
        }

        private Vector3D handVelocity(MeantMotion.Instant at, double[] y) {
            Vector3D v = at.hand().velocity();
            for (int a = 0; a < 2; a++) {
                v =
                        v.add(at.axes()[a].scalarMultiply(y[8 + a]))
                                .subtract(
                                        at.direction()
                                                .scalarMultiply(
                                                        y[6 + a]
                                                                * at.rate()
                                                                        .dotProduct(at.axes()[a])));
            }
            return v;
        }

        private void step(int step, double[] y) {
            double h = times[now + 1] - times[now];
            double[] k1 = rate(meant.start(step), y, times[now]);
            double[] k2 = rate(meant.middle(step), plus(y, k1, h / 2), times[now] + h / 2);
            double[] k3 = rate(meant.middle(step), plus(y, k2, h / 2), times[now] + h / 2);
            double[] k4 = rate(meant.end(step), plus(y, k3, h), times[now + 1]);
            for (int i = 0; i < y.length; i++) {
                y[i] += h / 6 * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
            }
            Swinging.tidy(y);
        }

        private double[] plus(double[] y, double[] k, double h) {
            double[] out = y.clone();
            for (int i = 0; i < y.length; i++) {
                out[i] += h * k[i];
            }
            return out;
        }

        private double[] rate(MeantMotion.Instant at, double[] y, double time) {
            Vector3D v = handVelocity(at, y);
            double[] out = new double[10];
            swinging.rate(new double[] {v.getX(), v.getY(), v.getZ()}, 0, y, 0, out);
            double[] push = push(at, y, v, time);
            for (int a = 0; a < 2; a++) {
                out[6 + a] = y[8 + a];
                out[8 + a] = push[a];
            }
            return out;
        }

        /** The acceleration of the hand's shift on either axis, as far as the hand can. */
        private double[] push(MeantMotion.Instant at, double[] y, Vector3D v, double time) {
            double[] wanted = wanted(time);
            double lag = LAG / 2;
            double[] push = new double[2];
            Vector3D added = Vector3D.ZERO;
            for (int a = 0; a < 2; a++) {
                push[a] = (wanted[a] - y[6 + a]) / (lag * lag) - 2 * y[8 + a] / lag;
                added = added.add(at.axes()[a].scalarMultiply(push[a]));
            }
            Vector3D own = ownAcceleration(at, y);
            double share = share(own, added, limits.acceleration());
            double speed = at.hand().velocity().getNorm() + limits.speed() / 4;
            if (v.getNorm() > Math.max(limits.speed(), speed) && added.dotProduct(v) > 0) {
                share = 0;
            }
            push[0] *= share;
            push[1] *= share;
            return push;
        }

        /** How much of what is added keeps within the limit, or within what is there already. */
        private static double share(Vector3D own, Vector3D added, double limit) {
            double square = added.getNormSq();
            double most = Math.max(limit, own.getNorm() + limit / 4);
            if (square == 0 || own.add(added).getNorm() <= most) {
                return 1;
            }
            double both = own.dotProduct(added);
            double root = Math.sqrt(both * both + square * (most * most - own.getNormSq()));
            return Math.max(0, Math.min(1, (root - both) / square));
        }

        /** The hand's acceleration but for that of its shift along the axes. */
        private Vector3D ownAcceleration(MeantMotion.Instant at, double[] y) {
            Vector3D sum = at.hand().acceleration();
            for (int a = 0; a < 2; a++) {
                Vector3D axis = at.axes()[a];
                double turning = at.rate().dotProduct(axis);
                sum =
                        sum.subtract(
                                        at.direction()
                                                .scalarMultiply(
                                                        2 * y[8 + a] * turning
                                                                + y[6 + a]
                                                                        * at.bend()
                                                                                .dotProduct(axis)))
                                .subtract(at.rate().scalarMultiply(y[6 + a] * turning));
            }
            return sum;
        }

        private boolean slack(MeantMotion.Instant at, double[] y) {
            Vector3D e = new Vector3D(y[0], y[1], y[2]);
            Vector3D v = handVelocity(at, y);
            Vector3D turning = turning(e, v, y);
            double[] push = push(at, y, v, times[now + 1]);
            Vector3D hand =
                    ownAcceleration(at, y)
                            .add(at.axes()[0].scalarMultiply(push[0]))
                            .add(at.axes()[1].scalarMultiply(push[1]));
            Vector3D head = v.add(turning.scalarMultiply(cord.length()));
            Vector3D forces =
                    cord.fall()
                            .subtract(
                                    head.scalarMultiply(
                                            cord.dragOverSpeed(head.getNorm()) / cord.swingMass()));
            double pull =
                    forces.subtract(hand).dotProduct(e) + cord.swingLength() * turning.getNormSq();
            return pull < -1e-3 * Gravity.STANDARD;
        }

        /** Where the hand's shift should be. */
        private double[] wanted(double time) {
            double soon = time + LAG;
            int node = now;
            while (node + 1 < planned - 1 && times[node + 1] <= soon) {
                node++;
            }
            double part = Math.min(1, (soon - times[node]) / (times[node + 1] - times[node]));
            double[] want = new double[2];
            double[] one = new double[2];
            for (int end = 0; end < 2; end++) {
                System.arraycopy(shifts, 2 * (node + end), one, 0, 2);
                turn(one, 0, cycle(now) - cycle(node + end));
                want[0] += (end == 0 ? 1 - part : part) * one[0];
                want[1] += (end == 0 ? 1 - part : part) * one[1];
            }
            double size = Math.hypot(want[0], want[1]);
            double most = limits.leave().orElse(SHIFT);
            if (size > most) {
                want[0] *= most / size;
                want[1] *= most / size;
            }
            return want;
        }

        private int cycle(int node) {
            return (begun + node) / steps;
        }

        /** Decides on the hand's shift at the nodes that it is on its way to. */
        private void plan() {
            while (planned < times.length
                    && (planned < now + 3 || times[planned - 2] <= times[now + 1] + LAG)) {
                feel(times[planned]);
                double[] u = new double[2];
                if (way instanceof Once once) {
                    strike(once, u);
                } else if (way instanceof Steady steady) {
                    double[] felt = felt(times[planned] - steady.delay() + off, planned);
                    answer(steady.within(), steady.across(), felt, u);
                }
                System.arraycopy(u, 0, shifts, 2 * planned, 2);
                planned++;
            }
        }

        /** How far the senses are off, anew every so often. */
        private void feel(double time) {
            if (jitters && time >= offUntil) {
                off = JITTER * (2 * random.nextDouble() - 1);
                share = 1 + Correction.UNSURE * (2 * random.nextDouble() - 1);
                offUntil = time + ANEW;
            }
        }

        private void answer(Gains within, Gains across, double[] felt, double[] u) {
            u[0] = -(within.place() * felt[0] + within.speed() * felt[2]);
            u[1] = -(across.place() * felt[1] + across.speed() * felt[3]);
        }

        private void strike(Once once, double[] u) {
            double period = meant.period();
            double time = times[planned];
            double latest = once.begins() + Math.floor((time - once.begins()) / period) * period;
            if (latest > strokeAt + period / 2) {
                double[] felt = felt(latest - once.delay() + off, planned);
                answer(once.within(), once.across(), felt, struck);
                strokeAt = latest;
            }
            double bump = Stroke.bump((time - strokeAt) / Stroke.lasting(period));
            u[0] = struck[0] * bump;
            u[1] = struck[1] * bump;
        }

        private int before(double time) {
            int node = now - 1;
            while (node > 0 && times[node] > time) {
                node--;
            }
            return Math.max(node, 0);
        }

        /** What is felt of the slip as it was at a time, on the axes of a node's cycle. */
        private double[] felt(double time, int onto) {
            double[] felt = new double[4];
            if (time < times[0] || now == 0) {
                return felt;
            }
            int node = before(time);
            double[] weights = new double[8];
            DelayedAnswer.hermite(
                    times[node], times[node + 1], Math.min(time, times[node + 1]), weights);
            double[] one = new double[4];
            for (int end = 0; end < 2; end++) {
                System.arraycopy(seen, 4 * (node + end), one, 0, 4);
                int turns = cycle(onto) - cycle(node + end);
                turn(one, 0, turns);
                turn(one, 2, turns);
                for (int a = 0; a < 2; a++) {
                    for (int p = 0; p < 2; p++) {
                        double value = share * one[2 * p + a];
                        felt[a] += weights[2 * end + p] * value;
                        felt[2 + a] += weights[4 + 2 * end + p] * value;
                    }
                }
            }
            return felt;
        }

        /** Onto the axes of a later cycle, to which these have turned; backwards below nought. */
        private void turn(double[] y, int at, int cycles) {
            if (meant.planar()) {
                return;
            }
            for (int i = 0; i < Math.abs(cycles); i++) {
                double sin = cycles > 0 ? meant.turnedSin() : -meant.turnedSin();
                double first = y[at];
                double second = y[at + 1];
                y[at] = meant.turnedCos() * first - sin * second;
                y[at + 1] = sin * first + meant.turnedCos() * second;
            }
        }
    }
}
