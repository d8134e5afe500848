/** Films of practice over weeks: what is kept of each, how it compares, in words and a picture. */
@NullMarked
package deferent.film.practice;

import org.jspecify.annotations.NullMarked;
