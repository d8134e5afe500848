/**
 * What else there is, for other programs: the sizes that close a link ({@link
 * deferent.search.api.Fitted}).
 *
 * <p>Public is what this package holds, and nothing else of the module. While the version begins
 * with 0, a new second number may change it and the change log says how; a new third number only
 * adds or mends.
 */
@NullMarked
package deferent.search.api;

import org.jspecify.annotations.NullMarked;
