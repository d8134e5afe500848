/** Metres, and where the hands were, worked out from the lights alone. */
@NullMarked
package deferent.film.hand;

import org.jspecify.annotations.NullMarked;
