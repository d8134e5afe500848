/**
 * A pairing worked out: where both hands and both heads are at any instant, with exact derivatives
 * up to the third, in the frame of {@code deferent.motion.pairing}; and what the drawn figures
 * measure.
 */
@NullMarked
package deferent.motion.trace;

import org.jspecify.annotations.NullMarked;
