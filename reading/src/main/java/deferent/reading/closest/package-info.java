/**
 * Between the figure that no hand can keep and the hand path behind which the figure runs away: the
 * closest figure that a real hand draws. It needs cord and body at once, so it stands one floor
 * above their rooms, which do not know each other.
 */
@NullMarked
package deferent.reading.closest;

import org.jspecify.annotations.NullMarked;
