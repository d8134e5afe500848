package deferent.motion.trace;

/** Where a trace comes from. */
public enum Origin {
    /** The motions as said, the tether a rod. */
    IDEAL,
    /** What a cord asks for or does, worked out in closed form or as a periodic solution. */
    CORDED,
    /** Simulated from a state. */
    SIMULATED,
    /** Read from film. */
    MEASURED
}
