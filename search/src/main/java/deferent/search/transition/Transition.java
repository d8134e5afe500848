package deferent.search.transition;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;

/**
 * A short passage from one pattern to another: each hand leaves the one and joins the other at a
 * time of its own, both on cords that stay taut, and the other's clock runs on from then.
 *
 * @param from the pattern that is left
 * @param to the pattern that is joined
 * @param left what the left hand does
 * @param right what the right hand does
 * @param hardness how hard it is on the scale of {@link Grade}, which runs on between the grades
 */
public record Transition(Pairing from, Pairing to, Bridge left, Bridge right, double hardness) {

    public Grade grade() {
        return Grade.of(hardness);
    }

    public Bridge bridge(Side side) {
        return side == Side.LEFT ? left : right;
    }

    /** When the first hand leaves, on {@code from}'s clock, seconds. */
    public double leaves() {
        return left.keeps()
                ? right.leaves()
                : right.keeps() ? left.leaves() : Math.min(left.leaves(), right.leaves());
    }

    /** From the first hand's leaving to the last one's joining, seconds. */
    public double seconds() {
        double over =
                left.keeps()
                        ? right.over()
                        : right.keeps() ? left.over() : Math.max(left.over(), right.over());
        return over - leaves();
    }

    /** When the last hand has joined, on {@code to}'s clock, seconds. */
    public double joins() {
        return leaves() + seconds() + later();
    }

    /** How much {@code to}'s clock is ahead of {@code from}'s, seconds. */
    public double later() {
        return left.later();
    }

    /** Whether one hand has joined before the other leaves. */
    public boolean oneAfterTheOther() {
        return !left.keeps()
                && !right.keeps()
                && (left.over() <= right.leaves() || right.over() <= left.leaves());
    }

    /** The jerk of both hands together, m/s³. */
    public double jerk() {
        return left.jerk() + right.jerk();
    }

    /** How far a hand strays at most, metres. */
    public double stray() {
        return Math.max(left.stray(), right.stray());
    }

    public double leastPull() {
        return Math.min(left.leastPull(), right.leastPull());
    }

    public double greatestPull() {
        return Math.max(left.greatestPull(), right.greatestPull());
    }
}
