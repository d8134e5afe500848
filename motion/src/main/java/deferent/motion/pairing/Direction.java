package deferent.motion.pairing;

/** Whether the two hand cycles go round the same way; a still hand counts as its head. */
public enum Direction {
    SAME,
    OPPOSITE
}
