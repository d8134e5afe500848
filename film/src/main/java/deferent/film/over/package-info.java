/** What lies over a film, in pixels of its upright picture. */
@NullMarked
package deferent.film.over;

import org.jspecify.annotations.NullMarked;
