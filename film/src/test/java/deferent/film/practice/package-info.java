@NullMarked
package deferent.film.practice;

import org.jspecify.annotations.NullMarked;
