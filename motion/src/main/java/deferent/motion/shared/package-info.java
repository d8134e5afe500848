/**
 * Which hand, and how something is refused: what every room and other programs share. Exported to
 * everybody; see {@code deferent.motion.api}.
 */
@NullMarked
package deferent.motion.shared;

import org.jspecify.annotations.NullMarked;
