/** What was read from a film, in metres and the house's frame. */
@NullMarked
package deferent.film.measured;

import org.jspecify.annotations.NullMarked;
