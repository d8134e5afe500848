/** Which spot is which head's, frame by frame, through crossings, gaps and other lights. */
@NullMarked
package deferent.film.follow;

import org.jspecify.annotations.NullMarked;
