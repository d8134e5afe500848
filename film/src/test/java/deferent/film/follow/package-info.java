@NullMarked
package deferent.film.follow;

import org.jspecify.annotations.NullMarked;
