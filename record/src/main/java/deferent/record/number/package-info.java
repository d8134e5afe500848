/**
 * The numbers of readings, a row each: key, name, unit, how it is rounded, and where in the reading
 * it comes from. JSON, its schema and every table that a face shows are written from these rows, so
 * a number is added in one line.
 */
@NullMarked
package deferent.record.number;

import org.jspecify.annotations.NullMarked;
