package deferent.motion.pairing;

/**
 * How far the right hand's cycle is ahead of the left hand's, as a share of its own cycle in [0,
 * 1): together 0, quarter 1/4, split 1/2.
 */
public record Timing(double ahead) {
    public static final Timing TOGETHER = new Timing(0);
    public static final Timing QUARTER = new Timing(0.25);
    public static final Timing SPLIT = new Timing(0.5);

    public Timing {
        if (!(ahead >= 0 && ahead < 1)) {
            throw new Refusal(
                    "is " + ahead + " cycles",
                    "timing",
                    "give a share of a cycle from 0 to below 1");
        }
    }

    /** Any number of cycles, brought into [0, 1). */
    public static Timing of(double cycles) {
        double share = Refusal.finite(cycles, "timing") - Math.floor(cycles);
        return new Timing(share >= 1 ? 0 : share);
    }

    /** A quarter of a cycle further. */
    public Timing stepped() {
        return of(ahead + 0.25);
    }
}
