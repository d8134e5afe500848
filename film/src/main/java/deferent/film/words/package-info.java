/** What was read from a film, as faces say it: in sentences, in JSON, and as a picture. */
@NullMarked
package deferent.film.words;

import org.jspecify.annotations.NullMarked;
