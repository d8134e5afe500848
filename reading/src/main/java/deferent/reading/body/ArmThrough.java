package deferent.reading.body;

import deferent.motion.pairing.Place;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * An arm that can't but pass through the other cord, the other arm or the body.
 *
 * <p>An arm is two segments, shoulder to elbow to grip, the trunk turned as {@link TrunkTurn} has
 * it. With shoulder and grip given the elbow is free on a circle about the line between them; the
 * angle on it, the swivel angle, is 0 where the elbow hangs lowest and grows outward and up (Tolani
 * and Badler 1996; Kim, Miller and Rosen, IEEE Transactions on Biomedical Engineering 59 (2012),
 * both from memory). From −30° to 110° and at most {@value #RATE_DEG}°/s are our choice. Over the
 * cycle the course of swivels with the fewest instants of passing through is found by dynamic
 * programming (Bellman 1957), of equal ones the one that keeps the elbow nearest to {@value
 * #NATURAL_DEG}°: so an arm counts as through only where no elbow gets out of the way. Both arms
 * are first led past the other's cord and the body, then the right arm past the left.
 *
 * <p>What is within a hand's breadth of a grip is left out, as hands that meet are told apart, and
 * so is the upper half of an upper arm, which lies at the body. Half thicknesses, shares of stature
 * from memory: forearm and upper arm {@value #ARM_THICK}; a cord is through where it comes as near
 * to an arm's axis as that, two arms where theirs are twice that apart.
 *
 * @param side whose arm
 * @param forearm whether it is the forearm, else the upper arm
 * @param what through what it passes
 * @param time when first, seconds
 */
public record ArmThrough(Side side, boolean forearm, What what, double time) {
    private static final double RATE_DEG = 480;
    private static final double NATURAL_DEG = 25;
    private static final double ARM_THICK = 0.02;
    private static final double BREADTH = Place.HAND_BREADTH;
    // Flesh and clothes give way by so much, metres (our choice).
    private static final double SOFT = 0.02;
    private static final double LEAST = Math.toRadians(-30);
    private static final double STEP = Math.toRadians(10);
    private static final int SWIVELS = 15;
    private static final int FINE = 240;

    /** What an arm may pass through. */
    public enum What {
        CORD,
        ARM,
        BODY
    }

    public ArmThrough {
        Refusal.numbers("an arm that passes through", time);
    }

    /**
     * Those of a trace whose hands are reached with the trunk turned; at most one an arm and thing.
     *
     * @param reach the trace's reach
     */
    public static List<ArmThrough> of(Trace trace, Reach reach) {
        if (!reach.trunk().reached() || reach.left().near() || reach.right().near()) {
            return List.of();
        }
        return new Search(trace, reach.performer()).found();
    }

    /** One instant of an arm's course: where its elbow is, seen from the turned trunk. */
    private record Arm(Vector3D shoulder, Vector3D elbow, Vector3D grip) {
        // The half of the upper arm that is free of the body.
        Vector3D half() {
            return shoulder.add(elbow).scalarMultiply(0.5);
        }

        /** The forearm's end a hand's breadth before the grip. */
        Vector3D wrist() {
            Vector3D along = grip.subtract(elbow);
            double length = along.getNorm();
            return elbow.add(Math.max(0, length - BREADTH) / length, along);
        }
    }

    private static final class Search {
        private final Samples samples;
        private final Performer performer;
        private final BodyOutline body;
        private final boolean round;
        private final double thick;
        private final int count;
        private final int coarse;
        // By side, then by instant, seen from the turned trunk.
        private final Vector3D[][] grips = new Vector3D[2][];
        private final Vector3D[][] heads = new Vector3D[2][];
        private final Vector3D[][] downs = new Vector3D[2][];

        Search(Trace trace, Performer performer) {
            Samples all = Reach.samples(trace);
            this.samples = all;
            this.performer = performer;
            this.body = BodyOutline.of(performer);
            this.round = trace.periodic();
            this.thick = ARM_THICK * performer.stature();
            int stride = Math.max(1, all.count() / FINE);
            this.count = all.count() / stride;
            double step = all.time(stride) - all.time(0);
            this.coarse = Math.max(1, (int) Math.round(STEP / Math.toRadians(RATE_DEG) / step));
            double[] turns = TrunkTurn.turns(trace, all, performer, TrunkTurn.MOST);
            Vector3D joint = performer.shoulder(Side.LEFT);
            Vector3D axis = new Vector3D(0, joint.getY(), joint.getZ());
            for (Side side : Side.values()) {
                int s = side.ordinal();
                grips[s] = new Vector3D[count];
                heads[s] = new Vector3D[count];
                downs[s] = new Vector3D[count];
                for (int i = 0; i < count; i++) {
                    Rotation back =
                            new Rotation(
                                    Vector3D.PLUS_J,
                                    -turns[i * stride],
                                    RotationConvention.VECTOR_OPERATOR);
                    grips[s][i] = seen(back, axis, Samples.point(all.hand(side), i * stride));
                    heads[s][i] = seen(back, axis, Samples.point(all.head(side), i * stride));
                }
            }
        }

        private static Vector3D seen(Rotation back, Vector3D axis, Vector3D point) {
            return axis.add(back.applyTo(point.subtract(axis)));
        }

        private double time(int i) {
            return samples.time(i * Math.max(1, samples.count() / FINE));
        }

        List<ArmThrough> found() {
            Arm[][][] arms = new Arm[2][count][SWIVELS];
            for (Side side : Side.values()) {
                for (int i = 0; i < count; i++) {
                    for (int k = 0; k < SWIVELS; k++) {
                        arms[side.ordinal()][i][k] = arm(side, i, k);
                    }
                }
            }
            int[] swivels = least(costs(arms));
            List<ArmThrough> all = new ArrayList<>();
            for (Side side : Side.values()) {
                for (What what : What.values()) {
                    first(side, what, arms, swivels).ifPresent(all::add);
                }
            }
            return List.copyOf(all);
        }

        private Optional<ArmThrough> first(Side side, What what, Arm[][][] arms, int[] swivels) {
            for (int i = 0; i < count; i++) {
                int pair = swivels[i / coarse];
                Arm left = arms[0][i][pair / SWIVELS];
                Arm right = arms[1][i][pair % SWIVELS];
                Arm arm = side == Side.LEFT ? left : right;
                // Two arms are through one another: told of the right one.
                boolean asked = what != What.ARM || side == Side.RIGHT;
                for (boolean forearm : new boolean[] {true, false}) {
                    Arm other = side == Side.LEFT ? right : left;
                    if (asked && through(side, i, arm, other, what, forearm)) {
                        return Optional.of(new ArmThrough(side, forearm, what, time(i)));
                    }
                }
            }
            return Optional.empty();
        }

        /**
         * By slot, then by pair of swivels: instants of passing through, and a little for comfort.
         */
        private double[][] costs(Arm[][][] arms) {
            int slots = (count + coarse - 1) / coarse;
            double[][] cost = new double[slots][SWIVELS * SWIVELS];
            for (int i = 0; i < count; i++) {
                double[] here = cost[i / coarse];
                double[][] alone = new double[2][SWIVELS];
                for (Side side : Side.values()) {
                    for (int k = 0; k < SWIVELS; k++) {
                        Arm arm = arms[side.ordinal()][i][k];
                        double off = LEAST + k * STEP - Math.toRadians(NATURAL_DEG);
                        boolean through =
                                anyOf(side, i, arm, arm, What.CORD)
                                        || anyOf(side, i, arm, arm, What.BODY);
                        alone[side.ordinal()][k] = 1e-4 * off * off + (through ? 1 : 0);
                    }
                }
                boolean near = i % 2 == 0 && near(arms[0][i][0], arms[1][i][0]);
                for (int pair = 0; pair < here.length; pair++) {
                    Arm left = arms[0][i][pair / SWIVELS];
                    Arm right = arms[1][i][pair % SWIVELS];
                    here[pair] += alone[0][pair / SWIVELS] + alone[1][pair % SWIVELS];
                    if (near && anyOf(Side.RIGHT, i, right, left, What.ARM)) {
                        here[pair] += 2;
                    }
                }
            }
            return cost;
        }

        // Whether the arms' balls about the lines from shoulder to grip come together at all.
        private boolean near(Arm left, Arm right) {
            return apart(left.shoulder, left.grip, right.shoulder, right.grip)
                    < off(left) + off(right) + 2 * thick;
        }

        private static double off(Arm arm) {
            Vector3D line = arm.grip.subtract(arm.shoulder).normalize();
            Vector3D elbow = arm.elbow.subtract(arm.shoulder);
            return Vector3D.crossProduct(line, elbow).getNorm();
        }

        // Over two rounds where the trace comes round, of which the second is taken.
        private int[] least(double[][] cost) {
            int slots = cost.length;
            int pairs = SWIVELS * SWIVELS;
            int all = round ? 2 * slots : slots;
            double[] sum = cost[0].clone();
            int[][] from = new int[all][pairs];
            for (int j = 1; j < all; j++) {
                double[] next = new double[pairs];
                for (int pair = 0; pair < pairs; pair++) {
                    int best = pair;
                    for (int l = -1; l <= 1; l++) {
                        for (int r = -1; r <= 1; r++) {
                            int k = pair / SWIVELS + l;
                            int m = pair % SWIVELS + r;
                            if (k >= 0 && k < SWIVELS && m >= 0 && m < SWIVELS) {
                                int before = k * SWIVELS + m;
                                best = sum[before] < sum[best] ? before : best;
                            }
                        }
                    }
                    from[j][pair] = best;
                    next[pair] = sum[best] + cost[j % slots][pair];
                }
                sum = next;
            }
            int end = 0;
            for (int pair = 1; pair < pairs; pair++) {
                end = sum[pair] < sum[end] ? pair : end;
            }
            int[] swivels = new int[slots];
            for (int j = all - 1; j >= all - slots; j--) {
                swivels[j % slots] = end;
                end = from[j][end];
            }
            return swivels;
        }

        private Arm arm(Side side, int i, int k) {
            Vector3D shoulder = performer.shoulder(side);
            Vector3D grip = grips[side.ordinal()][i];
            Vector3D line = grip.subtract(shoulder);
            double a = performer.upperArm();
            double b = performer.elbowToGrip();
            double d = Math.max(1e-6, Math.min(line.getNorm(), a + b));
            Vector3D u = line.normalize();
            double along = Math.min(a, (a * a - b * b + d * d) / (2 * d));
            double out = Math.sqrt(Math.max(0, a * a - along * along));
            Vector3D down = downs[side.ordinal()][i];
            if (down == null) {
                down = down(u);
                downs[side.ordinal()][i] = down;
            }
            double outward = side == Side.LEFT ? 1 : -1;
            Vector3D aside = Vector3D.crossProduct(u, down).scalarMultiply(outward);
            double swivel = LEAST + k * STEP;
            Vector3D elbow =
                    shoulder.add(along, u)
                            .add(out * Math.cos(swivel), down)
                            .add(out * Math.sin(swivel), aside);
            return new Arm(shoulder, elbow, grip);
        }

        // Lowest; of an arm straight up or down, backward.
        private static Vector3D down(Vector3D u) {
            Vector3D low = Vector3D.MINUS_J.subtract(-u.getY(), u);
            return low.getNorm() > 1e-3
                    ? low.normalize()
                    : Vector3D.MINUS_K.subtract(-u.getZ(), u).normalize();
        }

        private boolean anyOf(Side side, int i, Arm arm, Arm other, What what) {
            return through(side, i, arm, other, what, true)
                    || through(side, i, arm, other, what, false);
        }

        private boolean through(Side side, int i, Arm arm, Arm other, What what, boolean forearm) {
            Vector3D p = forearm ? arm.elbow : arm.half();
            Vector3D q = forearm ? arm.wrist() : arm.elbow;
            return switch (what) {
                case CORD -> {
                    int o = side.other().ordinal();
                    Vector3D grip = grips[o][i];
                    Vector3D cord = heads[o][i].subtract(grip);
                    double length = cord.getNorm();
                    yield length > BREADTH
                            && apart(p, q, grip.add(BREADTH / length, cord), heads[o][i]) < thick;
                }
                case ARM ->
                        apart(p, q, other.elbow, other.wrist()) < 2 * thick
                                || apart(p, q, other.half(), other.elbow) < 2 * thick;
                case BODY -> body.distance(p, q) < -SOFT;
            };
        }

        private static double apart(Vector3D p, Vector3D q, Vector3D r, Vector3D s) {
            return TetherSegments.apart(
                    new double[] {
                        p.getX(), p.getY(), p.getZ(), q.getX(), q.getY(), q.getZ(),
                        r.getX(), r.getY(), r.getZ(), s.getX(), s.getY(), s.getZ()
                    });
        }
    }
}
