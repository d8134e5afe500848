package deferent.motion.trace;

import deferent.motion.pairing.Refusal;

/** A stretch of time from {@code start} to {@code end}, seconds. */
public record Interval(double start, double end) {
    public Interval {
        if (!(end >= start)) {
            throw new Refusal(
                    "ends at " + end + " s before it starts at " + start + " s",
                    "interval",
                    "swap them");
        }
    }

    public double length() {
        return end - start;
    }
}
