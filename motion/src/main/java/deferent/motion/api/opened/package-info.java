/**
 * For the house alone: how its other rooms get at the pairing that {@link
 * deferent.motion.api.TwoPoi} holds closed to everybody else.
 */
@NullMarked
package deferent.motion.api.opened;

import org.jspecify.annotations.NullMarked;
