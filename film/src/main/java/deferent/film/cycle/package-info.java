/**
 * What a measured motion has that comes back: its period, how that drifts, and one mean cycle of
 * each head with its scatter, fitted to all cycles at once.
 */
@NullMarked
package deferent.film.cycle;

import org.jspecify.annotations.NullMarked;
