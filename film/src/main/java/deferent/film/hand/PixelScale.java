package deferent.film.hand;

import deferent.motion.pairing.Refusal;

/**
 * How pixels of an upright picture become metres in the wall plane: the performer faces the camera,
 * so the picture's right is the performer's left.
 *
 * @param metres a pixel
 * @param x the picture's place of x = 0, pixels
 * @param y the picture's place of y = 0, pixels downward
 * @param mirrored whether the film is a mirror's, as a phone's front camera may store it
 */
public record PixelScale(double metres, double x, double y, boolean mirrored) {
    public PixelScale {
        Refusal.numbers("a film's scale", metres, x, y);
        Refusal.positive(metres, 1, "a film's scale", "metres a pixel");
    }

    /** Metres across for a place across the picture. */
    public double across(double pixels) {
        return (mirrored ? x - pixels : pixels - x) * metres;
    }

    /** Metres up for a place down the picture. */
    public double up(double pixels) {
        return (y - pixels) * metres;
    }

    /** The picture's place across, pixels from its left, of metres across. */
    public double right(double across) {
        return mirrored ? x - across / metres : x + across / metres;
    }

    /** The picture's place downward, pixels from its top, of metres up. */
    public double down(double up) {
        return y - up / metres;
    }
}
