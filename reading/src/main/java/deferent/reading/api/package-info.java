/**
 * What follows from a pairing, for other programs: whether one poi's head and the other hand link
 * ({@link deferent.reading.api.Link}). All other readings (reach, room, pull, dangers) are to be
 * had as JSON, from {@code deferent.record.api}.
 *
 * <p>Public is what this package and {@code deferent.reading.shared} hold, and nothing else of the
 * module. While the version begins with 0, a new second number may change it and the change log
 * says how; a new third number only adds or mends.
 */
@NullMarked
package deferent.reading.api;

import org.jspecify.annotations.NullMarked;
