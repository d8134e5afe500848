/**
 * Which lights a frame holds: bright pieces as arcs that a head drew while the shutter was open,
 * and of a whole film those that move.
 */
@NullMarked
package deferent.film.light;

import org.jspecify.annotations.NullMarked;
