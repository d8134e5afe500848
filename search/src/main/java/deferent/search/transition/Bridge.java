package deferent.search.transition;

import deferent.motion.shared.Side;

/**
 * One hand's share of a transition: a passage from a moment of the one pattern to a moment of the
 * other, its poi taut on its cord.
 *
 * @param side whose
 * @param kind what it does
 * @param leaves when it leaves the one pattern, on that one's clock, seconds
 * @param joins when it joins the other, on that one's clock, seconds; {@code leaves} and {@code
 *     joins} may lie whole cycles on
 * @param seconds how long it takes
 * @param turns whole turns added to the tether's angle of the pattern that is joined
 * @param swell what is added to the plain blend
 * @param stray how far the hand is at most from where the two patterns' own hands would blend,
 *     metres
 * @param leastPull least pull in the cord, head weights
 * @param greatestPull greatest, head weights
 * @param quickening by which factor the pull is greater, or it or the hand quickens more, than in
 *     the livelier of the two patterns
 * @param jerk root mean square of the hand's, m/s³
 */
public record Bridge(
        Side side,
        TransitionKind kind,
        double leaves,
        double joins,
        double seconds,
        int turns,
        Swell swell,
        double stray,
        double leastPull,
        double greatestPull,
        double quickening,
        double jerk) {

    Bridge of(TransitionKind other) {
        return new Bridge(
                side,
                other,
                leaves,
                joins,
                seconds,
                turns,
                swell,
                stray,
                leastPull,
                greatestPull,
                quickening,
                jerk);
    }

    /** The other side's, which goes on as it was meanwhile. */
    Bridge kept(Side other) {
        return new Bridge(
                other,
                TransitionKind.KEEPS,
                leaves,
                joins,
                seconds,
                0,
                Swell.NONE,
                0,
                Double.POSITIVE_INFINITY,
                0,
                0,
                0);
    }

    /** How much the joined pattern's clock is ahead of the left one's, seconds. */
    double later() {
        return joins - seconds - leaves;
    }

    /** When it is over, on the left pattern's clock, seconds. */
    public double over() {
        return leaves + seconds;
    }

    /** Whether the hand goes on as it was. */
    public boolean keeps() {
        return kind == TransitionKind.KEEPS;
    }
}
