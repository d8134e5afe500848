package deferent.reading.body;

import deferent.motion.shared.Side;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A body to be looked at: rounded limbs that go with a pose, each all that lies between some balls.
 * It is drawn only: what hits the body is read from {@link BodyOutline}, which is plainer.
 *
 * <p>Heights, half breadths and lengths are shares of stature, from memory after the drawing of
 * Drillis and Contini (1966) in Winter, Biomechanics and Motor Control of Human Movement; how thick
 * the limbs are, and that a head goes along with a third of the trunk's turn, is our choice.
 */
public final class Person {
    /** What is drawn as one silhouette; a forearm has its hand with it. */
    public enum Group {
        TRUNK,
        LEFT_UPPER_ARM,
        LEFT_FOREARM,
        RIGHT_UPPER_ARM,
        RIGHT_FOREARM
    }

    /**
     * A ball that limbs are hung between.
     *
     * @param radius metres
     * @param at where its middle is, at each instant, or once where it never moves; metres
     */
    public record Ball(double radius, List<Vector3D> at) {
        public Ball {
            at = List.copyOf(at);
        }

        public Vector3D at(int i) {
            return at.size() == 1 ? at.get(0) : at.get(i);
        }
    }

    /** All that lies between some balls, which are given by their place in the list of balls. */
    public record Limb(Group group, List<Integer> balls) {
        public Limb {
            balls = List.copyOf(balls);
        }
    }

    private final PoseOver pose;
    private final double stature;
    private final List<Ball> balls = new ArrayList<>();
    private final List<Limb> limbs = new ArrayList<>();

    private Person(PoseOver pose) {
        this.pose = pose;
        this.stature = pose.performer().stature();
        int[] hips = new int[2];
        int[] waist = pair(0.026, 0.640, 0, 0.046, 0.35);
        int[] ribs = pair(0.040, 0.712, 0.004, 0.052, 0.8);
        int[] chest = pair(0.064, 0.772, 0.002, 0.046, 1);
        for (Side side : Side.values()) {
            hips[side.ordinal()] = legs(side);
        }
        limb(hips[0], hips[1], waist[0], waist[1]);
        limb(waist[0], waist[1], ribs[0], ribs[1]);
        limb(ribs[0], ribs[1], chest[0], chest[1]);
        int nape = ball(0, 0.848, -0.004, 0.029, 1);
        int throat = ball(0, 0.885, 0, 0.0285, 0.5);
        for (Side side : Side.values()) {
            arm(side, nape, chest[side.ordinal()], ribs[side.ordinal()]);
        }
        limb(nape, throat);
        int jaw = ball(0, 0.906, 0.010, 0.034, 0.35);
        int skull = ball(0, 0.951, 0.002, 0.049, 0.35);
        limb(throat, jaw);
        limb(jaw, skull);
    }

    /** As a pose over the cycle has it. */
    public static Person of(PoseOver pose) {
        return new Person(pose);
    }

    /** The same without arms, for a picture in which they could not follow the hands. */
    public Person withoutArms() {
        Person trunk = new Person(pose);
        trunk.limbs.removeIf(limb -> limb.group() != Group.TRUNK);
        return trunk;
    }

    /** How many instants there are, evenly over the trace's interval from its start on. */
    public int count() {
        return pose.count();
    }

    /** Whether that side's hand is anywhere out of reach, its arm stretched toward it. */
    public boolean stretched(Side side) {
        return pose.stretched(side);
    }

    public List<Ball> balls() {
        return List.copyOf(balls);
    }

    public List<Limb> limbs() {
        return List.copyOf(limbs);
    }

    private int legs(Side side) {
        double out = side == Side.LEFT ? 1 : -1;
        int hip = ball(out * 0.050, 0.530, 0, 0.047, 0);
        int knee = ball(out * 0.056, 0.285, 0.004, 0.030, 0);
        int calf = ball(out * 0.059, 0.215, -0.010, 0.029, 0);
        int ankle = ball(out * 0.062, 0.044, -0.010, 0.017, 0);
        int heel = ball(out * 0.062, 0.018, -0.026, 0.018, 0);
        int toes = ball(out * 0.076, 0.012, 0.076, 0.012, 0);
        limb(hip, knee);
        limb(knee, calf);
        limb(calf, ankle);
        limb(ankle, heel, toes);
        return hip;
    }

    private void arm(Side side, int nape, int chest, int ribs) {
        boolean left = side == Side.LEFT;
        Group over = left ? Group.LEFT_UPPER_ARM : Group.RIGHT_UPPER_ARM;
        Group fore = left ? Group.LEFT_FOREARM : Group.RIGHT_FOREARM;
        int slope = ball(left ? 0.058 : -0.058, 0.831, -0.004, 0.026, 1);
        int joint = ball(0.027, i -> pose.shoulder(side, i));
        int upper = ball(0.027, i -> between(pose.shoulder(side, i), pose.elbow(side, i), 0.35));
        int elbow = ball(0.0205, i -> pose.elbow(side, i));
        int lower = ball(0.0225, i -> between(pose.elbow(side, i), pose.wrist(side, i), 0.22));
        int wrist = ball(0.0145, i -> pose.wrist(side, i));
        int fist = ball(0.021, i -> pose.grip(side, i));
        limb(nape, slope);
        limb(slope, joint);
        limb(slope, joint, chest, ribs);
        limbs.add(new Limb(over, List.of(joint, upper)));
        limbs.add(new Limb(over, List.of(upper, elbow)));
        limbs.add(new Limb(fore, List.of(elbow, lower)));
        limbs.add(new Limb(fore, List.of(lower, wrist)));
        limbs.add(new Limb(fore, List.of(wrist, fist)));
    }

    private static Vector3D between(Vector3D a, Vector3D b, double share) {
        return new Vector3D(1 - share, a, share, b);
    }

    private void limb(int... ends) {
        List<Integer> all = new ArrayList<>();
        for (int end : ends) {
            all.add(end);
        }
        limbs.add(new Limb(Group.TRUNK, all));
    }

    private int[] pair(double out, double up, double ahead, double radius, double share) {
        return new int[] {
            ball(out, up, ahead, radius, share), ball(-out, up, ahead, radius, share)
        };
    }

    /** A ball of the upright body, in shares of stature; ahead of the plane of its shoulders. */
    private int ball(double out, double up, double ahead, double radius, double share) {
        Vector3D rest =
                new Vector3D(
                        out * stature,
                        pose.performer().height(up),
                        (ahead - Performer.DEPTH) * stature);
        boolean stands = share == 0;
        if (stands && !pose.faces()) {
            balls.add(new Ball(radius * stature, List.of(rest)));
            return balls.size() - 1;
        }
        if (stands) {
            return ball(radius, i -> pose.standing(rest, i));
        }
        return ball(radius, i -> pose.placed(rest, share, i));
    }

    private interface Moving {
        Vector3D at(int i);
    }

    private int ball(double radius, Moving moving) {
        List<Vector3D> at = new ArrayList<>();
        for (int i = 0; i < pose.count(); i++) {
            at.add(moving.at(i));
        }
        balls.add(new Ball(radius * stature, at));
        return balls.size() - 1;
    }
}
