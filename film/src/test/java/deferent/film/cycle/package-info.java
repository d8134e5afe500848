@NullMarked
package deferent.film.cycle;

import org.jspecify.annotations.NullMarked;
