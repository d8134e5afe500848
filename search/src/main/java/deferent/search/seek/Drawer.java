package deferent.search.seek;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Tether;

/**
 * A motion whose head draws a wanted figure, or comes close.
 *
 * @param key of the motion in its space
 * @param headClass its head path's class
 * @param gap root mean square distance of the two outlines in the figure's own size, metres, timing
 *     forgotten
 * @param tether the tether that draws it as large as it was given
 * @param motion the motion on that tether
 * @param said in words
 */
public record Drawer(
        long key, int headClass, double gap, Tether tether, Motion motion, String said) {}
