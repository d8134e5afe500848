package deferent.film.light;

import deferent.motion.pairing.Refusal;

/**
 * How a camera reads its rows: most phones one after another, so that what is lower in the picture
 * is seen later. Lights alone cannot tell how fast: a delay that depends on where a head is comes
 * back each cycle as the figure does, so it must be given, or looked up for the camera.
 *
 * @param readout seconds from the first row to the last; 0 where all rows are read at once
 * @param rows of the picture, as it lies after turning
 */
public record RollingShutter(double readout, int rows) {
    /** All rows at once. */
    public static final RollingShutter GLOBAL = new RollingShutter(0, 1);

    public RollingShutter {
        Refusal.within(readout, 0, 0.1, "a camera's readout", "s");
        if (rows < 1) {
            throw new Refusal("is " + rows, "a picture's rows", "at least 1");
        }
    }

    /** When a spot was seen, seconds: the frame's time is that of its middle row. */
    public double time(LitSpot spot) {
        return spot.time() + readout * (spot.y() / rows - 0.5);
    }
}
