/** Positions with all their rates up to the jerk, from which smooth passages are made. */
@NullMarked
package deferent.search.crossing;

import org.jspecify.annotations.NullMarked;
