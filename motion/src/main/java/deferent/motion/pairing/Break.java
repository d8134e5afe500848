package deferent.motion.pairing;

/**
 * Where a motion is not smooth: from {@code phase} on, the derivative of that {@code order} has
 * another value than just before (0 a jump of place, 1 of velocity, 2 of acceleration, 3 of jerk).
 *
 * @param phase in cycles of the motion, in [0, 1)
 * @param order the lowest order that jumps
 * @param why in a few words
 */
public record Break(double phase, int order, String why) {
    public Break {
        Refusal.within(phase, 0, 1, "break phase", "cycles");
        Refusal.within(order, 0, 3, "break order", "");
    }
}
