/**
 * A pairing worked out: where both hands and both heads are at any instant, with exact derivatives
 * up to the third, in the frame of {@code deferent.motion.pairing}; and what the drawn figures
 * measure. A trace is in the room; {@link deferent.motion.trace.Trace#aroundBody} has it as a body
 * sees it that turns.
 */
@NullMarked
package deferent.motion.trace;

import org.jspecify.annotations.NullMarked;
