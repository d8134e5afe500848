package deferent.reading.photo;

import deferent.motion.pairing.Refusal;

/**
 * A light that blinks evenly, as dimmed LEDs do.
 *
 * @param hertz blinks a second, above 0, at most 100 000
 * @param duty the share of each blink that it is lit, above 0, at most 1
 */
public record Led(double hertz, double duty) {
    public Led {
        Refusal.positive(hertz, 100_000, "rate of a blinking light", "Hz");
        Refusal.positive(duty, 1, "duty of a blinking light", "of each blink");
    }
}
