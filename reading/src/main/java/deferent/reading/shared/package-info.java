/** What every reading of a link shares with those who ask for it: the kinds of a link. */
@NullMarked
package deferent.reading.shared;

import org.jspecify.annotations.NullMarked;
