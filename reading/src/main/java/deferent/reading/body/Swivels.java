package deferent.reading.body;

import deferent.motion.pairing.Place;
import deferent.motion.shared.Side;
import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.jspecify.annotations.Nullable;

/**
 * How the elbows are held over a cycle so that the arms get past the other's cord, the body and
 * each other, where elbows can.
 *
 * <p>Swivel angles from −30° to 110° in steps of 10°, and at most {@value #RATE_DEG}°/s, are our
 * choice. The course with the fewest instants of passing through is found by dynamic programming
 * (Bellman 1957), of equal ones the one that keeps the elbow nearest to {@value #NATURAL_DEG}°.
 * Where nothing is in the way elbows hang. Hands that do the same as in a mirror, one of them
 * later, have their elbows led so too where that passes through nothing. Else each arm is first led
 * past the other's cord and the body alone, then the right one past the left; where that leaves
 * anything, and only if it is asked for, both are led at once, which is dear but misses no way out.
 *
 * <p>What is of a hand is left out, as hands that meet are told apart, and so is the upper half of
 * an upper arm, which lies at the body. Half thicknesses, shares of stature from memory: forearm
 * and upper arm {@value #ARM_THICK}; a cord is through where it comes as near to an arm's axis as
 * that, two arms where theirs are twice that apart.
 */
final class Swivels {
    private static final double RATE_DEG = 480;
    private static final double NATURAL_DEG = 25;
    private static final double ARM_THICK = 0.02;
    private static final double BREADTH = Place.HAND_BREADTH;
    // Flesh and clothes give way by so much, metres (our choice).
    private static final double SOFT = 0.02;
    // Nearer is the same, metres: what the search for turns of the trunk leaves, and some.
    private static final double LIKE = 5e-3;
    private static final int ALIKE = 6;
    private static final double LEAST = Math.toRadians(-30);
    private static final double STEP = Math.toRadians(10);
    private static final int COUNT = 15;

    private final BodyOutline body;
    private final double thick;
    private final double headRadius;
    private final double soft;
    private final boolean round;
    private final int slot;
    private final int count;
    // By side, instant, swivel.
    private final @Nullable ArmLine[][][] arms = new ArmLine[2][][];
    private final ArmLine.Hung[][] hung;
    private final Vector3D[][] grips;
    private final Vector3D[][] heads;

    /**
     * @param hung by side and instant, as the trunk sees them
     * @param grips where the cords begin, likewise
     * @param heads where they end
     * @param step from one instant to the next, seconds
     * @param round whether the last is followed by the first
     * @param headRadius of heads that are not to touch an arm either, metres; 0 where only cords
     *     are kept off, with heads as points
     * @param margin how much further off all is kept than it need be, metres
     */
    Swivels(
            Performer performer,
            ArmLine.Hung[][] hung,
            Vector3D[][] grips,
            Vector3D[][] heads,
            double step,
            boolean round,
            double headRadius,
            double margin) {
        this.body = BodyOutline.of(performer);
        this.thick = ARM_THICK * performer.stature() + margin;
        this.headRadius = headRadius;
        this.soft = SOFT - margin;
        this.round = round;
        this.count = hung[0].length;
        this.slot = Math.max(1, (int) Math.ceil(STEP / Math.toRadians(RATE_DEG) / step - 1e-6));
        this.grips = grips;
        this.heads = heads;
        this.hung = hung;
        for (Side side : Side.values()) {
            arms[side.ordinal()] = new ArmLine[count][COUNT];
        }
    }

    /** Worked out where it is asked for first. */
    private ArmLine arm(int side, int i, int k) {
        ArmLine[] here = arms[side][i];
        ArmLine arm = here[k];
        if (arm == null) {
            arm = hung[side][i].at(LEAST + k * STEP);
            here[k] = arm;
        }
        return arm;
    }

    /** Swivels held for some instants each: by side, in steps from the least. */
    final class Course {
        private final int[][] held;

        private Course(int[][] held) {
            this.held = held;
        }

        ArmLine arm(Side side, int i) {
            return Swivels.this.arm(side.ordinal(), i, held[side.ordinal()][i / slot]);
        }

        /** In between, as an elbow goes from one to the next; radians. */
        double swivel(Side side, int i) {
            int[] course = held[side.ordinal()];
            double at = (i - (slot - 1) / 2.0) / slot;
            int before = (int) Math.floor(at);
            double share = at - before;
            double mean =
                    (1 - share) * course[within(before, course.length)]
                            + share * course[within(before + 1, course.length)];
            return LEAST + STEP * mean;
        }

        private int within(int j, int slots) {
            return round ? Math.floorMod(j, slots) : Math.max(0, Math.min(slots - 1, j));
        }

        boolean through(Side side, int i, ArmThrough.What what, boolean forearm) {
            return Swivels.this.through(side, i, arm(side, i), arm(side.other(), i), what, forearm);
        }

        /** By how much an arm runs into something, metres; 0 where it does not. */
        double depth(Side side, int i, ArmThrough.What what) {
            ArmLine arm = arm(side, i);
            ArmLine other = arm(side.other(), i);
            return Math.max(
                    0,
                    Math.max(
                            Swivels.this.depth(side, i, arm, other, what, true),
                            Swivels.this.depth(side, i, arm, other, what, false)));
        }

        private boolean any() {
            for (int i = 0; i < count; i++) {
                for (Side side : Side.values()) {
                    for (ArmThrough.What what : ArmThrough.What.values()) {
                        if (anyOf(side, i, arm(side, i), arm(side.other(), i), what)) {
                            return true;
                        }
                    }
                }
            }
            return false;
        }
    }

    /**
     * The course that passes through least.
     *
     * @param surely whether both arms are led at once where one after the other is not enough
     */
    Course course(boolean surely) {
        int slots = (count + slot - 1) / slot;
        int[] natural = new int[slots];
        Arrays.fill(natural, (int) Math.round((Math.toRadians(NATURAL_DEG) - LEAST) / STEP));
        Course hanging = new Course(new int[][] {natural, natural});
        if (!hanging.any()) {
            return hanging;
        }
        double[][][] alone = new double[2][][];
        for (Side side : Side.values()) {
            alone[side.ordinal()] = alone(side);
        }
        Optional<Course> alike = alike(alone[0]);
        if (alike.isPresent()) {
            return alike.get();
        }
        int[] left = least(alone[0], false);
        double[][] past = new double[alone[1].length][];
        for (int j = 0; j < past.length; j++) {
            past[j] = alone[1][j].clone();
        }
        for (int i = 0; i < count; i++) {
            ArmLine other = arm(0, i, left[i / slot]);
            for (int k = 0; k < COUNT && near(i); k++) {
                if (anyOf(Side.RIGHT, i, arm(1, i, k), other, ArmThrough.What.ARM)) {
                    past[i / slot][k] += 1;
                }
            }
        }
        Course course = new Course(new int[][] {left, least(past, false)});
        return surely && course.any() ? together(alone) : course;
    }

    /**
     * Both elbows led alike, where one side's hand and head are the other's as in a mirror some
     * slots earlier and that passes through nothing: so neither arm gives way to the other always.
     */
    private Optional<Course> alike(double[][] alone) {
        int slots = alone.length;
        int lag = 0;
        while (lag < slots && !mirrored(lag * slot)) {
            lag++;
        }
        if (!round || count % slot != 0 || lag == slots) {
            return Optional.empty();
        }
        double[][] cost = Arrays.stream(alone).map(double[]::clone).toArray(double[][]::new);
        for (int tried = 0; tried < ALIKE; tried++) {
            int[] left = least(cost, false);
            int[] right = new int[slots];
            for (int j = 0; j < slots; j++) {
                right[(j + lag) % slots] = left[j];
            }
            Course course = new Course(new int[][] {left, right});
            if (!course.any()) {
                return Optional.of(course);
            }
            for (int i = 0; i < count; i++) {
                int later = (i + lag * slot) % count;
                for (int k = 0; k < COUNT; k++) {
                    if (armsMeet(i, k, right[i / slot]) || armsMeet(later, left[later / slot], k)) {
                        cost[i / slot][k] += 1;
                    }
                }
            }
        }
        return Optional.empty();
    }

    private boolean armsMeet(int i, int left, int right) {
        return near(i)
                && anyOf(Side.RIGHT, i, arm(1, i, right), arm(0, i, left), ArmThrough.What.ARM);
    }

    private boolean mirrored(int lag) {
        for (int i = 0; i < count; i++) {
            int later = (i + lag) % count;
            if (unlike(grips[0][i], grips[1][later])
                    || unlike(heads[0][i], heads[1][later])
                    || unlike(hung[0][i].shoulder(), hung[1][later].shoulder())) {
                return false;
            }
        }
        return true;
    }

    private static boolean unlike(Vector3D left, Vector3D right) {
        Vector3D mirrored = new Vector3D(-left.getX(), left.getY(), left.getZ());
        return mirrored.distance(right) > LIKE;
    }

    private Course together(double[][][] alone) {
        double[][] cost = new double[alone[0].length][COUNT * COUNT];
        for (int j = 0; j < cost.length; j++) {
            for (int pair = 0; pair < COUNT * COUNT; pair++) {
                cost[j][pair] = alone[0][j][pair / COUNT] + alone[1][j][pair % COUNT];
            }
        }
        for (int i = 0; i < count; i += 2) {
            for (int pair = 0; pair < COUNT * COUNT && near(i); pair++) {
                ArmLine left = arm(0, i, pair / COUNT);
                if (anyOf(Side.RIGHT, i, arm(1, i, pair % COUNT), left, ArmThrough.What.ARM)) {
                    cost[i / slot][pair] += 2;
                }
            }
        }
        int[] pairs = least(cost, true);
        return new Course(
                new int[][] {
                    Arrays.stream(pairs).map(pair -> pair / COUNT).toArray(),
                    Arrays.stream(pairs).map(pair -> pair % COUNT).toArray()
                });
    }

    /**
     * By slot, then by swivel: instants of passing through cord or body, and a little for comfort.
     */
    private double[][] alone(Side side) {
        double[][] cost = new double[(count + slot - 1) / slot][COUNT];
        for (int i = 0; i < count; i++) {
            boolean passes = comesNear(side, i);
            for (int k = 0; k < COUNT; k++) {
                ArmLine arm = arm(side.ordinal(), i, k);
                double off = LEAST + k * STEP - Math.toRadians(NATURAL_DEG);
                boolean through =
                        passes && anyOf(side, i, arm, arm, ArmThrough.What.CORD)
                                || anyOf(side, i, arm, arm, ArmThrough.What.BODY);
                cost[i / slot][k] += 1e-4 * off * off + (through ? 1 : 0);
            }
        }
        return cost;
    }

    // Whether the other's poi comes to where this arm is with any elbow.
    private boolean comesNear(Side side, int i) {
        ArmLine arm = arm(side.ordinal(), i, 0);
        int o = side.other().ordinal();
        return apart(arm.shoulder(), arm.grip(), grips[o][i], heads[o][i])
                < off(arm) + thick + headRadius;
    }

    // Whether the arms' balls about the lines from shoulder to grip come together at all.
    private boolean near(int i) {
        ArmLine left = arm(0, i, 0);
        ArmLine right = arm(1, i, 0);
        return apart(left.shoulder(), left.grip(), right.shoulder(), right.grip())
                < off(left) + off(right) + 2 * thick;
    }

    private static double off(ArmLine arm) {
        Vector3D line = arm.grip().subtract(arm.shoulder()).normalize();
        Vector3D elbow = arm.elbow().subtract(arm.shoulder());
        return Vector3D.crossProduct(line, elbow).getNorm();
    }

    // Over two rounds where the trace comes round, of which the second is taken.
    private int[] least(double[][] cost, boolean both) {
        int slots = cost.length;
        int states = cost[0].length;
        int all = round ? 2 * slots : slots;
        double[] sum = cost[0].clone();
        int[][] from = new int[all][states];
        for (int j = 1; j < all; j++) {
            double[] next = new double[states];
            for (int state = 0; state < states; state++) {
                int best = before(state, sum, both);
                from[j][state] = best;
                next[state] = sum[best] + cost[j % slots][state];
            }
            sum = next;
        }
        int end = 0;
        for (int state = 1; state < states; state++) {
            end = sum[state] < sum[end] ? state : end;
        }
        int[] swivels = new int[slots];
        for (int j = all - 1; j >= all - slots; j--) {
            swivels[j % slots] = end;
            end = from[j][end];
        }
        return swivels;
    }

    /** The least of those from which a step leads here; of equal ones the one that stays. */
    private static int before(int state, double[] sum, boolean both) {
        int best = state;
        int left = both ? state / COUNT : 0;
        for (int l = both ? -1 : 0; l <= (both ? 1 : 0); l++) {
            for (int r = -1; r <= 1; r++) {
                int k = left + l;
                int m = state % COUNT + r;
                if (k >= 0 && k < COUNT && m >= 0 && m < COUNT) {
                    int one = k * COUNT + m;
                    best = sum[one] < sum[best] ? one : best;
                }
            }
        }
        return best;
    }

    private boolean anyOf(Side side, int i, ArmLine arm, ArmLine other, ArmThrough.What what) {
        return through(side, i, arm, other, what, true)
                || through(side, i, arm, other, what, false);
    }

    private boolean through(
            Side side, int i, ArmLine arm, ArmLine other, ArmThrough.What what, boolean forearm) {
        return depth(side, i, arm, other, what, forearm) > 0;
    }

    private double depth(
            Side side, int i, ArmLine arm, ArmLine other, ArmThrough.What what, boolean forearm) {
        Vector3D p = forearm ? arm.elbow() : arm.half();
        Vector3D q = forearm ? arm.wrist() : arm.elbow();
        return switch (what) {
            case CORD -> {
                int o = side.other().ordinal();
                Vector3D grip = grips[o][i];
                Vector3D cord = heads[o][i].subtract(grip);
                double length = cord.getNorm();
                if (length <= BREADTH) {
                    yield 0;
                }
                Vector3D bare = grip.add(BREADTH / length, cord);
                double off = apart(p, q, bare, heads[o][i], thick);
                yield Math.max(thick - off, struck(arm, p, q, heads[o][i]));
            }
            case ARM ->
                    2 * thick
                            - Math.min(
                                    apart(p, q, other.elbow(), other.wrist(), 2 * thick),
                                    apart(p, q, other.half(), other.elbow(), 2 * thick));
            case BODY -> -soft - body.distance(p, q);
        };
    }

    // By how much a head runs into an arm. At the hand, which is told apart, it may stay.
    private double struck(ArmLine arm, Vector3D p, Vector3D q, Vector3D head) {
        if (headRadius == 0 || head.distance(arm.grip()) < BREADTH + headRadius) {
            return 0;
        }
        Vector3D along = q.subtract(p);
        double share = head.subtract(p).dotProduct(along) / along.getNormSq();
        Vector3D nearest = p.add(Math.max(0, Math.min(1, share)), along);
        return thick + headRadius - head.distance(nearest);
    }

    /** The same where it is under a limit; else that, mostly seen from the balls about both. */
    private static double apart(Vector3D p, Vector3D q, Vector3D r, Vector3D s, double limit) {
        double x = p.getX() + q.getX() - r.getX() - s.getX();
        double y = p.getY() + q.getY() - r.getY() - s.getY();
        double z = p.getZ() + q.getZ() - r.getZ() - s.getZ();
        double most = 2 * limit + length(p, q) + length(r, s);
        return x * x + y * y + z * z > most * most ? limit : apart(p, q, r, s);
    }

    private static double length(Vector3D p, Vector3D q) {
        double x = p.getX() - q.getX();
        double y = p.getY() - q.getY();
        double z = p.getZ() - q.getZ();
        return Math.sqrt(x * x + y * y + z * z);
    }

    private static double apart(Vector3D p, Vector3D q, Vector3D r, Vector3D s) {
        return TetherSegments.apart(
                new double[] {
                    p.getX(), p.getY(), p.getZ(), q.getX(), q.getY(), q.getZ(),
                    r.getX(), r.getY(), r.getZ(), s.getX(), s.getY(), s.getZ()
                });
    }
}
