/**
 * The reading of a link: how far the carrier's head path and the rider's hand path are apart, as
 * shapes, as shapes with timing, and as placed.
 *
 * <p>Lengths are metres, times seconds, lags cycles, vectors in the frame of {@code
 * deferent.motion.pairing}. Shapes are compared by the discrete Fréchet distance (Eiter and
 * Mannila, 1994) after the best rigid motion.
 */
@NullMarked
package deferent.reading.link;

import org.jspecify.annotations.NullMarked;
