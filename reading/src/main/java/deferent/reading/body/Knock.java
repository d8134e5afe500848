package deferent.reading.body;

import deferent.motion.pairing.Refusal;

/**
 * Two things that come within reach of one another.
 *
 * @param speed the greatest at which they pass one another while they are so near, m/s
 * @param time when, seconds
 */
public record Knock(double speed, double time) {
    public Knock {
        Refusal.numbers("a meeting", speed, time);
    }
}
