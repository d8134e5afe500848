package deferent.film.light;

import deferent.motion.pairing.Refusal;

/**
 * A lit head in one frame: the streak it drew while the shutter was open, as a shallow arc with two
 * ends. Which of them it came to first a single frame cannot tell.
 *
 * @param time the frame's, seconds
 * @param x middle of its light, pixels from the left edge to a pixel's middle: the mean of where
 *     the head was while the shutter was open, which in a curve is not where it was halfway
 * @param y likewise from the top edge, downward
 * @param ax one end of the arc
 * @param ay one end of the arc
 * @param bx the other end
 * @param by the other end
 * @param thickness standard deviation of the light across the arc, pixels
 * @param glow brightness added up over the spot, 255 a pixel at most
 * @param blue mean of blue against brightness, 0 where there is no colour
 * @param red mean of red against brightness, likewise
 */
public record LitSpot(
        double time,
        double x,
        double y,
        double ax,
        double ay,
        double bx,
        double by,
        double thickness,
        double glow,
        double blue,
        double red) {
    public LitSpot {
        Refusal.numbers("a spot", time, x, y, ax, ay, bx, by, thickness, glow, blue, red);
    }

    /** From end to end, pixels. */
    public double length() {
        return Math.hypot(bx - ax, by - ay);
    }
}
