package deferent.reading.tether;

import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Trace;

/**
 * By how much one cord's shadow runs ahead of another's: the mean of the unit vectors at that angle
 * over a cycle; and how far it goes to and fro or round beside the other.
 *
 * @param angle of that mean, radians in (−π, π]
 * @param length of that mean: 1 where the shadow runs ahead by the same throughout, 0 where it is
 *     spread all round and the angle says nothing
 * @param swing the one's angle from end to end over the other's: 0 where it only hangs
 */
public record Lead(double angle, double length, double swing) {
    private static final int COUNT = 120;

    /** Half the whole: where the shadow strays from its mean by 60 degrees each way, 0.83. */
    private static final double SPREAD = 0.5;

    /** A cord that goes less than this share of its way stands still. */
    private static final double STILL = 0.1;

    static Lead of(Turning turning, Course hand, Course head, Trace ideal, Side side) {
        double[] one = new double[COUNT + 1];
        double[] other = new double[COUNT + 1];
        double x = 0;
        double y = 0;
        for (int i = 0; i <= COUNT; i++) {
            double t = turning.over().start() + turning.over().length() * i / COUNT;
            one[i] = turning.angle(head.position(t).subtract(hand.position(t)));
            other[i] =
                    turning.angle(
                            ideal.head(side).position(t).subtract(ideal.hand(side).position(t)));
            if (i < COUNT) {
                x += Math.cos(one[i] - other[i]);
                y += Math.sin(one[i] - other[i]);
            }
        }
        double wide = wide(other);
        return new Lead(
                Math.atan2(y, x), Math.hypot(x, y) / COUNT, wide > 0 ? wide(one) / wide : 1);
    }

    /** From end to end, radians. */
    private static double wide(double[] angles) {
        double at = 0;
        double least = 0;
        double most = 0;
        for (int i = 1; i < angles.length; i++) {
            at += Math.IEEEremainder(angles[i] - angles[i - 1], 2 * Math.PI);
            least = Math.min(least, at);
            most = Math.max(most, at);
        }
        return most - least;
    }

    /** Whether it hangs all but still where the other moves. */
    public boolean still() {
        return swing < STILL;
    }

    /** Whether it says something. */
    public boolean says() {
        return length >= SPREAD;
    }

    /**
     * Within a third of a turn, and moving. Behind the same hand circle an isolation and an
     * extension lie half a turn apart, and so do a level and an upright cat-eye.
     */
    public boolean meant() {
        return says() && !still() && Math.abs(angle) < 2 * Math.PI / 3;
    }
}
