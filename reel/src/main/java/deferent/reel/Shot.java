package deferent.reel;

/**
 * One frame of a film as its planes: brightness for each pixel, colour for each two by two. The
 * arrays are filled anew for each frame of a {@link Footage}, so whoever keeps them copies them.
 *
 * @param time seconds from the film's first frame
 * @param width pixels a row as stored, before any turn
 * @param height rows as stored
 * @param luma brightness, row by row from the top, 0 to 255 unsigned
 * @param blue blue against brightness, 128 where there is no colour; ⌈width/2⌉ a row
 * @param red red against brightness, likewise
 */
public record Shot(double time, int width, int height, byte[] luma, byte[] blue, byte[] red) {}
