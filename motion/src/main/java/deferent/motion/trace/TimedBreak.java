package deferent.motion.trace;

import deferent.motion.shared.Side;

/**
 * A break of a trace: at {@code time} (seconds) the derivative of that {@code order} of one side's
 * hand or head jumps.
 */
public record TimedBreak(double time, int order, Side side, String why) {}
