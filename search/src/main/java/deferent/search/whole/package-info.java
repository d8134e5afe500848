/**
 * All that is read of one pairing, put together: its links, body and cords, what would close it and
 * what it lies near, and what the stage shows of it.
 */
@NullMarked
package deferent.search.whole;

import org.jspecify.annotations.NullMarked;
