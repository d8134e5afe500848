/**
 * How it is said in words, for other programs: what follows from a pairing, in the {@link
 * deferent.tell.api.Sentence sentences} of the studio and the command line.
 *
 * <p>Public is what this package holds, and nothing else of the module. While the version begins
 * with 0, a new second number may change it and the change log says how; a new third number only
 * adds or mends. The wording of a sentence may change with any version.
 */
@NullMarked
package deferent.tell.api;

import org.jspecify.annotations.NullMarked;
