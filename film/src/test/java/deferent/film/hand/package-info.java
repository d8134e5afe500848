@NullMarked
package deferent.film.hand;

import org.jspecify.annotations.NullMarked;
