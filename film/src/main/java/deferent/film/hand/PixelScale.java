package deferent.film.hand;

import deferent.film.cycle.Wave;
import deferent.motion.pairing.Refusal;

/**
 * How pixels of an upright picture become metres in the wall plane: the performer faces the camera,
 * so the picture's right is the performer's left.
 *
 * @param metres a pixel
 * @param x the picture's place of x = 0, pixels
 * @param y the picture's place of y = 0, pixels downward
 * @param mirrored whether the film is a mirror's, as a phone's front camera may store it
 * @param roll radians by which what is upright is turned counter-clockwise in the picture
 */
public record PixelScale(double metres, double x, double y, boolean mirrored, double roll) {
    public PixelScale {
        Refusal.numbers("a film's scale", metres, x, y, roll);
        Refusal.positive(metres, 1, "a film's scale", "metres a pixel");
    }

    /**
     * Where a place in the wall plane is in the picture: pixels from its left, and from its top.
     */
    public double[] picture(double across, double up) {
        double right = (mirrored ? -across : across) / metres;
        double above = up / metres;
        double c = Math.cos(roll);
        double s = Math.sin(roll);
        return new double[] {x + c * right - s * above, y - s * right - c * above};
    }

    /** A head's mean cycle in pixels, in metres across and up. */
    public Wave upright(Wave pixels) {
        double across = mirrored ? -metres : metres;
        return pixels.turned(x, y, roll).through(-x * across, across, y * metres, -metres);
    }
}
