package deferent.film.follow;

import deferent.motion.pairing.Refusal;

/**
 * A head that somebody pointed at in one frame.
 *
 * @param time of the frame, seconds from the film's beginning; the nearest frame in which something
 *     is seen there is taken
 * @param x pixels from the left edge of the upright picture
 * @param y pixels from its top edge, downward
 */
public record HeadAt(double time, double x, double y) {
    public HeadAt {
        Refusal.within(time, 0, 86400, "when a head was pointed at", "s");
        Refusal.within(x, -1, 20_000, "where a head was pointed at", "pixels");
        Refusal.within(y, -1, 20_000, "where a head was pointed at", "pixels");
    }
}
