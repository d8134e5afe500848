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

    /** The same at another time, seconds. */
    public LitSpot at(double when) {
        return new LitSpot(when, x, y, ax, ay, bx, by, thickness, glow, blue, red);
    }

    /**
     * Of a picture that was stored lying, where it is in the upright one.
     *
     * @param quarters turns clockwise that bring the stored picture upright, 0 to 3
     * @param width of the stored picture, pixels
     * @param height of it
     */
    public LitSpot upright(int quarters, int width, int height) {
        double w = width - 1;
        double h = height - 1;
        return switch (quarters) {
            case 1 -> moved(h - y, x, h - ay, ax, h - by, bx);
            case 2 -> moved(w - x, h - y, w - ax, h - ay, w - bx, h - by);
            case 3 -> moved(y, w - x, ay, w - ax, by, w - bx);
            default -> this;
        };
    }

    private LitSpot moved(double nx, double ny, double nax, double nay, double nbx, double nby) {
        return new LitSpot(time, nx, ny, nax, nay, nbx, nby, thickness, glow, blue, red);
    }
}
