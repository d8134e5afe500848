/** How it is said what was found in a song: in sentences and as JSON. */
@NullMarked
package deferent.sound.words;

import org.jspecify.annotations.NullMarked;
