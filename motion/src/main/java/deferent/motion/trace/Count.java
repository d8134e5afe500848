package deferent.motion.trace;

/**
 * A count as it is said aloud.
 *
 * @param time when it falls, seconds
 * @param said "1", "2", "3"; between them "&amp;", or "e", "&amp;", "a"
 */
public record Count(double time, String said) {}
