/**
 * What every room and every face shares: which hand, and how something is refused. Exported to
 * everybody; see {@code deferent.motion.api}.
 */
@NullMarked
package deferent.motion.shared;

import org.jspecify.annotations.NullMarked;
