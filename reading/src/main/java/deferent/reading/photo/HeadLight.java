package deferent.reading.photo;

import deferent.motion.shared.Side;
import java.util.Optional;

/**
 * One head's light before a camera and an eye.
 *
 * @param side whose
 * @param figure the time of one figure of its own
 * @param length metres the head travels for it
 * @param speed greatest, m/s
 * @param frames a second at which the head moves its own diameter between two frames where it is
 *     fastest: anything above leaves no gaps
 * @param framesMean the same on average
 * @param turns of the tether a second, whichever way: how often the light passes one way out
 * @param seen how much of the figure an eye holds
 * @param blinks what a blinking light leaves, where one was given
 */
public record HeadLight(
        Side side,
        FigureTime figure,
        double length,
        double speed,
        double frames,
        double framesMean,
        double turns,
        Persistence seen,
        Optional<Blinks> blinks) {}
