@NullMarked
package deferent.film.light;

import org.jspecify.annotations.NullMarked;
