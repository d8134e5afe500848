package deferent.reading.body;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How far one hand's path lies within its arm's reach.
 *
 * @param side whose hand
 * @param arm the farthest the hand can be from its shoulder, metres
 * @param bentArm the nearest, metres
 * @param farthest how far from the shoulder the path goes, metres
 * @param farthestTime when, seconds
 * @param nearest how near to the shoulder it comes, metres
 * @param nearestTime when, seconds
 * @param missing the times in which the hand cannot be there; one that runs over the cycle's end
 *     ends beyond the period
 * @param largestRadius the largest hand circle about this hand's centre, in its plane, of which
 *     every point is within reach, metres; empty where there is none
 */
public record HandReach(
        Side side,
        double arm,
        double bentArm,
        double farthest,
        double farthestTime,
        double nearest,
        double nearestTime,
        List<Interval> missing,
        OptionalDouble largestRadius) {
    public HandReach {
        missing = List.copyOf(missing);
        Refusal.numbers(
                "the reach of the " + side.word() + " hand",
                arm,
                bentArm,
                farthest,
                farthestTime,
                nearest,
                nearestTime,
                largestRadius.orElse(0));
    }

    /** By how much the arm is too short at worst, metres; 0 where it is long enough. */
    public double tooFar() {
        return Math.max(0, farthest - arm);
    }

    /** By how much the hand would come too near its own shoulder at worst, metres. */
    public double tooNear() {
        return Math.max(0, bentArm - nearest);
    }

    /** Whether it comes too near, to a tenth of a millimetre. */
    public boolean near() {
        return tooNear() > Reach.SLACK;
    }

    /** The worse of the two, metres. */
    public double worst() {
        return Math.max(tooFar(), tooNear());
    }

    /** When it is worst, seconds. */
    public double worstTime() {
        return tooFar() >= tooNear() ? farthestTime : nearestTime;
    }

    /** Whether the hand can get everywhere along its path, to a tenth of a millimetre. */
    public boolean everywhere() {
        return worst() <= Reach.SLACK;
    }
}
