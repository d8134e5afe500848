package deferent.reading.body;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * An arm that can't but pass through the other cord, the other arm or the body.
 *
 * <p>Arms are held as {@link PoseOver} has them, elbows led as {@link Swivels} has them: so an arm
 * counts as through only where no elbow gets out of the way.
 *
 * @param side whose arm
 * @param forearm whether it is the forearm, else the upper arm
 * @param what through what it passes
 * @param time when first, seconds
 */
public record ArmThrough(Side side, boolean forearm, What what, double time) {
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
        return judged(reach) ? of(PoseOver.surely(trace, reach), reach) : List.of();
    }

    /**
     * The same of a pose that is there already.
     *
     * @param pose as {@link PoseOver#surely} has it
     */
    public static List<ArmThrough> of(PoseOver pose, Reach reach) {
        if (!judged(reach)) {
            return List.of();
        }
        return of(pose);
    }

    /** Those of a pose, wherever its hands are. */
    static List<ArmThrough> of(PoseOver pose) {
        List<ArmThrough> all = new ArrayList<>();
        for (Side side : Side.values()) {
            for (What what : What.values()) {
                first(pose, side, what).ifPresent(all::add);
            }
        }
        return List.copyOf(all);
    }

    private static boolean judged(Reach reach) {
        return reach.trunk().reached() && !reach.left().near() && !reach.right().near();
    }

    private static Optional<ArmThrough> first(PoseOver pose, Side side, What what) {
        for (int i = 0; i < pose.count(); i++) {
            // Two arms are through one another: told of the right one.
            boolean asked = what != What.ARM || side == Side.RIGHT;
            for (boolean forearm : new boolean[] {true, false}) {
                if (asked && pose.course().through(side, i, what, forearm)) {
                    return Optional.of(new ArmThrough(side, forearm, what, pose.time(i)));
                }
            }
        }
        return Optional.empty();
    }
}
